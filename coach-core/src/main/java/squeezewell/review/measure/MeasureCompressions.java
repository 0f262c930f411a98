package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import squeezewell.cue.InOrder;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Rhythm;

/** Computes {@link Compressions}. */
public final class MeasureCompressions {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final long SHORTEST_PAUSE = 2_000_000_000L;
  private static final double PLANNED_PAUSE_TIMES = 1.5;

  private final Practice practice;
  private final Optional<CompressionPlan> plan;
  private final Optional<Rhythm.CompressionCycle> cycle;
  private final Spans excused;
  private final Spans whole;

  /** Suction during which compressions were to go on. */
  private final Spans through;

  private final long[] at;
  private final long[] breaths;
  private final long pauseFrom;

  private MeasureCompressions(Practice practice) {
    this.practice = practice;
    Rhythm rhythm = practice.guidance().rhythm();
    plan = rhythm.compressions();
    cycle = cycleOf(practice);
    Map<Boolean, List<Interruption>> holds =
        practice.holds().stream().collect(Collectors.partitioningBy(Interruption::compressing));
    excused = Spans.excused(holds.get(false));
    whole = Spans.whole(holds.get(false));
    through = Spans.whole(holds.get(true));
    at = practice.compressions().stream().mapToLong(Long::longValue).toArray();
    breaths = practice.breathTimes();
    pauseFrom =
        cycle
            .map(c -> Math.min(SHORTEST_PAUSE, period(c) + c.pauseNanos() / 2))
            .orElse(SHORTEST_PAUSE);
  }

  /**
   * The figures over the parts whose rhythm has compressions; empty if there is no such part and
   * none were given. Compressions in other parts, such as one that was under way when the pulse
   * came back, are counted only; but if no part asked for any, they are measured all the same.
   */
  static Optional<Compressions> of(List<Practice> parts) {
    List<MeasureCompressions> asked = new ArrayList<>();
    List<MeasureCompressions> given = new ArrayList<>();
    for (Practice part : parts) {
      MeasureCompressions measure = new MeasureCompressions(part);
      if (measure.plan.isPresent() && !part.place().slip()) {
        asked.add(measure);
      } else if (measure.at.length > 0) {
        given.add(measure);
      }
    }
    if (asked.isEmpty() && given.isEmpty()) {
      return Optional.empty();
    }
    int others = asked.isEmpty() ? 0 : given.stream().mapToInt(m -> m.at.length).sum();
    return Optional.of(pooled(asked.isEmpty() ? given : asked, others));
  }

  public static Optional<Rhythm.CompressionCycle> cycleOf(Practice practice) {
    return practice.guidance().rhythm() instanceof Rhythm.CompressionCycle cycle
        ? Optional.of(cycle)
        : Optional.empty();
  }

  private static long period(Rhythm.CompressionCycle cycle) {
    return cycle.compressing().tempo().nanosAt(1);
  }

  private static Compressions pooled(List<MeasureCompressions> measures, int others) {
    List<Double> intervals = new ArrayList<>();
    List<Compressions.Cycle> cycles = new ArrayList<>();
    int count = others;
    int inRange = 0;
    int judged = 0;
    int pauses = 0;
    int over = 0;
    int good = 0;
    long handsOff = 0;
    long effective = 0;
    OptionalDouble longest = OptionalDouble.empty();
    OptionalDouble limit = OptionalDouble.empty();
    for (MeasureCompressions measure : measures) {
      long[] lengths = measure.intervals();
      double[] own = Arrays.stream(lengths).mapToDouble(MeasureCompressions::seconds).toArray();
      Arrays.stream(own).forEach(intervals::add);
      List<Compressions.Cycle> found = measure.cycles(true);
      count += measure.at.length;
      judged += measure.plan.isPresent() ? own.length : 0;
      inRange += measure.inRange(lengths);
      pauses += found.size();
      for (Compressions.Cycle cycle : found) {
        double seconds = cycle.pauseSeconds();
        longest = OptionalDouble.of(Math.max(longest.orElse(seconds), seconds));
        over += seconds > measure.limit().orElse(seconds) ? 1 : 0;
      }
      if (measure.cycle.isPresent()) {
        List<Compressions.Cycle> whole = measure.cycles(false);
        good += (int) whole.stream().filter(measure::isGood).count();
        cycles.addAll(whole);
        limit = measure.limit();
      }
      long practised = measure.effectiveNanos();
      handsOff += measure.handsOff(practised, Statistics.mean(own));
      effective += practised;
    }
    double[] all = intervals.stream().mapToDouble(Double::doubleValue).toArray();
    OptionalDouble mean = Statistics.mean(all);
    OptionalDouble none = OptionalDouble.empty();
    boolean known = mean.isPresent() && mean.getAsDouble() > 0;
    double beat = known ? 60 / mean.getAsDouble() : 0;
    boolean events =
        !measures.isEmpty()
            && measures.stream().allMatch(m -> m.cycle.map(c -> c.byEvents()).orElse(false));
    double share = events ? measures.get(0).cycle.get().compressionShare() : 1;
    return new Compressions(
        count,
        known ? OptionalDouble.of(share * beat) : none,
        known && events ? OptionalDouble.of(beat) : none,
        judged > 0 ? OptionalDouble.of((double) inRange / judged) : none,
        pauses,
        longest,
        limit,
        over,
        seconds(handsOff),
        effective > 0 ? OptionalDouble.of(Math.max(0, 1 - (double) handsOff / effective)) : none,
        cycles,
        good);
  }

  private long effectiveNanos() {
    long start = practice.startNanos();
    long end = practice.endNanos();
    return end - start - excused.overlap(start, end);
  }

  /**
   * One for each pause, whether the rhythm asks for cycles or not.
   *
   * @param all also those in which compressions were to go on through suction: their number was
   *     nobody's fault
   */
  private List<Compressions.Cycle> cycles(boolean all) {
    List<Compressions.Cycle> cycles = new ArrayList<>();
    int run = at.length > 0 ? 1 : 0;
    for (int k = 1; k < at.length; k++) {
      if (isPause(k) && (all || through.overlap(at[k - run], at[k]) == 0)) {
        cycles.add(new Compressions.Cycle(run, breathsBetween(k), seconds(at[k] - at[k - 1])));
      }
      run = isPause(k) || held(k) ? 1 : run + 1;
    }
    return cycles;
  }

  private boolean held(int k) {
    return whole.overlap(at[k - 1], at[k]) > 0;
  }

  private boolean isPause(int k) {
    return !held(k) && at[k] - at[k - 1] > pauseFrom;
  }

  /** In nanoseconds, those that count for the rate. */
  private long[] intervals() {
    List<Long> lengths = new ArrayList<>();
    for (int k = 1; k < at.length; k++) {
      if (!held(k) && !isPause(k)) {
        lengths.add(at[k] - at[k - 1]);
      }
    }
    return lengths.stream().mapToLong(Long::longValue).toArray();
  }

  private int inRange(long[] intervals) {
    return (int) Arrays.stream(intervals).filter(i -> judge(i) == Judgement.IN_RANGE).count();
  }

  private Judgement judge(long intervalNanos) {
    return plan.map(p -> p.judge(intervalNanos)).orElse(Judgement.UNJUDGED);
  }

  /** Each compression of a part, in order. */
  public static List<CompressionMark> marks(Practice part) {
    MeasureCompressions measure = new MeasureCompressions(part);
    List<CompressionMark> marks = new ArrayList<>();
    for (int k = 0; k < measure.at.length; k++) {
      boolean known = k > 0 && !measure.held(k);
      boolean pause = known && measure.isPause(k);
      long interval = known ? measure.at[k] - measure.at[k - 1] : 0;
      boolean judged = known && !pause && !part.place().slip();
      marks.add(
          new CompressionMark(
              measure.at[k],
              known ? OptionalLong.of(interval) : OptionalLong.empty(),
              pause,
              judged ? measure.judge(interval) : Judgement.UNJUDGED));
    }
    return marks;
  }

  private int breathsBetween(int k) {
    return breathsBefore(at[k]) - breathsBefore(at[k - 1]);
  }

  private int breathsBefore(long nanos) {
    return InOrder.countBefore(breaths.length, i -> breaths[i], nanos);
  }

  /** Since a pause is told from compression to compression, one compression's own time is in it. */
  private OptionalDouble limit() {
    if (!cycle.isPresent()) {
      return OptionalDouble.empty();
    }
    double asked = seconds(cycle.get().pauseLimitNanos());
    double own = seconds(period(cycle.get()));
    double planned = seconds(cycle.get().pauseNanos()) + own;
    return OptionalDouble.of(Math.max(asked, Math.min(asked + own, PLANNED_PAUSE_TIMES * planned)));
  }

  private boolean isGood(Compressions.Cycle done) {
    return cycle.isPresent()
        && done.compressions() == cycle.get().perCycle()
        && done.breaths() == cycle.get().breathsPerCycle()
        && done.pauseSeconds() <= limit().getAsDouble();
  }

  private long handsOff(long effective, OptionalDouble mean) {
    if (at.length == 0) {
      return Math.max(0, effective);
    }
    double planned = plan.map(p -> p.tempo().seconds()).orElse(0.0);
    long own = Math.round(mean.orElse(planned) * NANOS_PER_SECOND);
    OptionalLong before = practice.place().compressedAtNanos();
    long from = before.isPresent() ? before.getAsLong() + own : practice.startNanos();
    long sum = without(from, at[0], 0);
    for (int k = 1; k < at.length; k++) {
      sum += held(k) || isPause(k) ? without(at[k - 1], at[k], own) : 0;
    }
    return Math.min(effective, sum + without(at[at.length - 1], practice.endNanos(), own));
  }

  /** From a compression to the next, less what is excused and what it takes itself. */
  private long without(long from, long to, long ownNanos) {
    long start = Math.max(practice.startNanos(), from);
    return Math.max(0, to - start - excused.overlap(start, to) - ownNanos);
  }

  private static double seconds(long nanos) {
    return nanos / NANOS_PER_SECOND;
  }
}
