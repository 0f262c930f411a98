package squeezewell.review.measure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Rhythm;
import squeezewell.review.Reviewer;
import squeezewell.session.Breath;

/** Computes {@link Metrics}. */
public final class Measure {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final double SHORTEST_SQUEEZE = 0.8;
  private static final double LONGEST_SQUEEZE = 1.3;

  /** A newborn's squeeze is short; nobody's hand is exact to a tenth of a second. */
  private static final double LEAST_SQUEEZE_MARGIN_SECONDS = 0.15;

  private final Practice practice;
  private final List<IntervalPoint> intervals;
  private final List<IntervalPoint> valid;
  private final Spans excused;

  private Measure(Practice practice, List<IntervalPoint> intervals) {
    this.practice = practice;
    this.intervals = intervals;
    this.valid = intervals.stream().filter(IntervalPoint::valid).collect(Collectors.toList());
    this.excused = Spans.excused(practice.holds());
  }

  public static Metrics of(
      Practice practice,
      List<IntervalPoint> intervals,
      List<RatePoint> rollingRate,
      List<PromptMark> prompts,
      Alignment alignment) {
    Measure measure = new Measure(practice, intervals);
    long start = practice.startNanos();
    long end = practice.endNanos();
    long effective = end - start - measure.excused.overlap(start, end);
    List<Hold> holes = practice.holds(Hold.Kind.HOLE);
    OptionalDouble first =
        practice.breaths().stream()
            .limit(1)
            .mapToDouble(b -> (b.startNanos() - start) / NANOS_PER_SECOND)
            .findFirst();
    double[] middles = new double[measure.valid.size()];
    for (int i = 0; i < middles.length; i++) {
      IntervalPoint point = measure.valid.get(i);
      middles[i] = (point.atNanos() - point.lengthNanos() / 2.0) / NANOS_PER_SECOND;
    }
    return new Metrics(
        practice.breaths().size(),
        (end - start) / NANOS_PER_SECOND,
        effective / NANOS_PER_SECOND,
        first,
        measure.rate(effective),
        measure.interval(),
        measure.hyperventilationMinutes(rollingRate),
        measure.gap(),
        measure.prompts(prompts, alignment),
        measure.asynchrony(alignment),
        MeasureUnprompted.of(practice, intervals),
        measure.inspiration(),
        HoldResults.pulseChecks(practice),
        HoldResults.suctions(practice),
        holes.size(),
        holes.stream().mapToDouble(Hold::seconds).sum(),
        Drift.of(middles, measure.lengths()),
        Volumes.of(practice.breaths(), intervals),
        MeasureCompressions.of(List.of(practice)));
  }

  private double[] lengths() {
    return valid.stream().mapToDouble(IntervalPoint::seconds).toArray();
  }

  private OptionalDouble hyperventilationMinutes(List<RatePoint> rollingRate) {
    Optional<BreathPlan> plan = practice.breathPlan();
    if (rollingRate.isEmpty() || !plan.isPresent()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(
        RollingRate.secondsAbove(rollingRate, plan.get().highestPerMinute()) / 60.0);
  }

  private Metrics.Rate rate(long effective) {
    OptionalDouble mean = Statistics.mean(lengths());
    OptionalDouble overall = OptionalDouble.empty();
    if (mean.isPresent() && mean.getAsDouble() > 0) {
      overall = OptionalDouble.of(60 / mean.getAsDouble());
    }
    OptionalDouble count = OptionalDouble.empty();
    if (effective > 0) {
      long outside =
          practice.breaths().stream().filter(b -> !excused.holds(b.startNanos())).count();
      count = OptionalDouble.of(60 * outside / (effective / NANOS_PER_SECOND));
    }
    return new Metrics.Rate(overall, count);
  }

  private Metrics.Interval interval() {
    double[] lengths = lengths();
    int n = lengths.length;
    int inRange = count(Judgement.IN_RANGE);
    OptionalDouble none = OptionalDouble.empty();
    Optional<BreathPlan> plan = practice.breathPlan();
    OptionalDouble mean = Statistics.mean(lengths);
    double excess = 0;
    double deficit = 0;
    double fast = 0;
    double slow = 0;
    for (IntervalPoint point : valid) {
      double beyond = plan.get().beyond(point.lengthNanos());
      excess += Math.max(0, -beyond);
      deficit += Math.max(0, beyond);
      fast += point.judgement() == Judgement.FAST ? point.seconds() / 60 : 0;
      slow += point.judgement() == Judgement.SLOW ? point.seconds() / 60 : 0;
    }
    return new Metrics.Interval(
        n,
        mean,
        Statistics.median(lengths),
        Statistics.standardDeviation(lengths),
        Statistics.robustDeviation(lengths),
        inRange,
        count(Judgement.FAST),
        count(Judgement.SLOW),
        n == 0 ? none : OptionalDouble.of((double) inRange / n),
        Statistics.wilsonLow(inRange, n),
        Statistics.wilsonHigh(inRange, n),
        plan.map(this::timeInRange).orElse(none),
        n == 0
            ? none
            : OptionalDouble.of(100 * (mean.getAsDouble() / plan.get().interval().seconds() - 1)),
        excess,
        deficit,
        fast,
        slow);
  }

  private int count(Judgement judgement) {
    return (int) valid.stream().filter(p -> p.judgement() == judgement).count();
  }

  private OptionalDouble timeInRange(BreathPlan plan) {
    return share(inAndOut(plan));
  }

  /** The first value as a share of both; empty if both are 0. */
  static OptionalDouble share(double[] inAndOut) {
    double sum = inAndOut[0] + inAndOut[1];
    return sum == 0 ? OptionalDouble.empty() : OptionalDouble.of(inAndOut[0] / sum);
  }

  /** Time in intervals in range and time out of it, in nanoseconds. */
  static double[] inAndOut(Facts facts) {
    Optional<BreathPlan> plan = facts.practice().breathPlan();
    return plan.isPresent()
        ? new Measure(facts.practice(), facts.intervals()).inAndOut(plan.get())
        : new double[2];
  }

  private double[] inAndOut(BreathPlan plan) {
    double in = 0;
    double out = 0;
    for (IntervalPoint point : intervals) {
      if (point.valid() && point.judgement() == Judgement.IN_RANGE) {
        in += point.lengthNanos();
      } else if (point.valid()) {
        out += point.lengthNanos();
      } else {
        out += overrun(point.atNanos() - point.lengthNanos(), point.atNanos(), plan);
      }
    }
    List<Breath> breaths = practice.breaths();
    long end = practice.endNanos();
    long first = breaths.isEmpty() ? end : breaths.get(0).startNanos();
    out += overrun(practice.startNanos(), first, plan);
    if (!breaths.isEmpty()) {
      out += overrun(breaths.get(breaths.size() - 1).startNanos(), end, plan);
    }
    return new double[] {in, out};
  }

  private long overrun(long from, long to, BreathPlan plan) {
    return plan.overNanos(to - from - excused.overlap(from, to));
  }

  private Metrics.Gap gap() {
    long limit = practice.limits().gapLongest().nanos();
    long[] over =
        Gaps.of(practice).stream()
            .mapToLong(g -> g.netNanos() - limit)
            .filter(nanos -> nanos > 0)
            .toArray();
    return longestGap(practice, over.length, Arrays.stream(over).sum() / NANOS_PER_SECOND);
  }

  static Metrics.Gap longestGap(Practice practice, int overLimit, double overLimitSeconds) {
    List<Gaps.Gap> gaps = Gaps.of(practice);
    Gaps.Gap raw = longest(gaps, Comparator.comparingLong(Gaps.Gap::rawNanos));
    Gaps.Gap net = longest(gaps, Comparator.comparingLong(Gaps.Gap::netNanos));
    return new Metrics.Gap(
        seconds(raw.rawNanos()),
        seconds(raw.startNanos()),
        seconds(net.netNanos()),
        seconds(net.startNanos()),
        overLimit,
        overLimitSeconds);
  }

  /** The first of the longest. */
  private static Gaps.Gap longest(List<Gaps.Gap> gaps, Comparator<Gaps.Gap> order) {
    return gaps.stream().reduce((a, b) -> order.compare(b, a) > 0 ? b : a).get();
  }

  private Metrics.Prompts prompts(List<PromptMark> prompts, Alignment alignment) {
    int forgiven =
        (int) prompts.stream().filter(p -> p.outcome() == PromptMark.Outcome.FORGIVEN).count();
    int met = alignment.pairs().size();
    return new Metrics.Prompts(
        prompts.size(),
        met,
        prompts.size() - met - forgiven,
        alignment.unpairedBreaths().size(),
        forgiven,
        practice.breaths().size() - met - alignment.unpairedBreaths().size());
  }

  private Metrics.Asynchrony asynchrony(Alignment alignment) {
    double[] errors =
        alignment.pairs().stream().mapToDouble(p -> seconds(p.errorNanos())).toArray();
    PhaseLocking locking =
        practice.breathPlan().isPresent()
            ? PhaseLocking.of(Reviewer.promptTimes(practice), Reviewer.promptedBreaths(practice))
            : new PhaseLocking(OptionalDouble.empty(), 0, 0, 0);
    return new Metrics.Asynchrony(
        Statistics.mean(errors),
        Statistics.median(errors),
        Statistics.standardDeviation(errors),
        locking.strength(),
        locking.ownTempo());
  }

  /** The lengths of the squeezes whose end is known, in seconds. */
  static double[] squeezes(Practice practice) {
    return practice.breaths().stream()
        .filter(b -> b.endNanos().isPresent())
        .mapToDouble(b -> seconds(b.endNanos().getAsLong() - b.startNanos()))
        .toArray();
  }

  private Metrics.Inspiration inspiration() {
    double[] lengths = squeezes(practice);
    double asked = seconds(inspirationNanos(practice));
    double shortest =
        Math.max(0, Math.min(SHORTEST_SQUEEZE * asked, asked - LEAST_SQUEEZE_MARGIN_SECONDS));
    double longest = Math.max(LONGEST_SQUEEZE * asked, asked + LEAST_SQUEEZE_MARGIN_SECONDS);
    int good = 0;
    for (double length : lengths) {
      good += length >= shortest && length <= longest ? 1 : 0;
    }
    return inspiration(lengths, good, shortest, longest);
  }

  static Metrics.Inspiration inspiration(
      double[] lengths, int good, double shortest, double longest) {
    return new Metrics.Inspiration(
        lengths.length,
        Statistics.mean(lengths),
        Statistics.median(lengths),
        Statistics.quantile(lengths, 0.25),
        Statistics.quantile(lengths, 0.75),
        good,
        lengths.length == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of((double) good / lengths.length),
        shortest,
        longest);
  }

  public static long inspirationNanos(Practice practice) {
    Rhythm rhythm = practice.guidance().rhythm();
    return rhythm instanceof Rhythm.CompressionCycle cycle
        ? cycle.inspirationNanos()
        : rhythm.steadyBreaths().get().inspirationNanos();
  }

  private static double seconds(long nanos) {
    return nanos / NANOS_PER_SECOND;
  }
}
