package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import squeezewell.cue.Segment;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Rhythm;
import squeezewell.session.Breath;

/**
 * Computes {@link Metrics} over a list of parts with a rhythm each; a practice whose rhythm never
 * changed is a list of one. Counts and sums add up; each interval is judged by the range of its own
 * part. A mean over different rhythms says nothing and is empty.
 */
public final class Measure {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final double SHORTEST_SQUEEZE = 0.8;
  private static final double LONGEST_SQUEEZE = 1.3;

  /** A newborn's squeeze is short; nobody's hand is exact to a tenth of a second. */
  private static final double LEAST_SQUEEZE_MARGIN_SECONDS = 0.15;

  private final List<Part> parts = new ArrayList<>();
  private final List<IntervalPoint> intervals = new ArrayList<>();
  private final List<IntervalPoint> valid = new ArrayList<>();

  /** The valid intervals in seconds if all were asked for at the same length; else none. */
  private final double[] lengths;

  private Measure(List<Marks> marks) {
    for (Marks one : marks) {
      parts.add(new Part(one, Spans.excused(one.practice().holds())));
      intervals.addAll(one.intervals());
      valid.addAll(one.valid());
    }
    lengths =
        ofOneRhythm()
            ? valid.stream().mapToDouble(IntervalPoint::seconds).toArray()
            : new double[0];
  }

  /**
   * Measures a practice, or a part of it.
   *
   * @param whole all of it
   * @param parts its parts, in order
   * @param alignment which breath met which prompt in all of it
   */
  public static Metrics of(Practice whole, List<Marks> parts, Alignment alignment) {
    Measure measure = new Measure(parts);
    List<Interruption> holes = whole.holds(Segment.Kind.STALLED);
    return new Metrics(
        (int) measure.sum(p -> p.practice().breaths().size()),
        measure.sum(p -> p.practice().endNanos() - p.practice().startNanos()) / NANOS_PER_SECOND,
        measure.sum(Part::effectiveNanos) / NANOS_PER_SECOND,
        whole.breaths().stream()
            .limit(1)
            .mapToDouble(b -> seconds(b.startNanos() - whole.startNanos()))
            .findFirst(),
        measure.rate(),
        measure.interval(),
        measure.hyperventilationMinutes(),
        measure.gap(whole),
        measure.prompts(),
        measure.asynchrony(alignment),
        MeasureUnprompted.of(parts),
        measure.inspiration(),
        measure.each(p -> InterruptionResults.pulseChecks(p.practice())),
        measure.each(p -> InterruptionResults.suctions(p.practice())),
        holes.size(),
        holes.stream().mapToDouble(Interruption::seconds).sum(),
        measure.drift(),
        Volumes.of(whole.breaths(), measure.intervals),
        MeasureCompressions.of(parts.stream().map(Marks::practice).collect(Collectors.toList())));
  }

  private long sum(ToLongFunction<Part> figure) {
    return parts.stream().mapToLong(figure).sum();
  }

  private <T> List<T> each(Function<Part, List<T>> figures) {
    return parts.stream().flatMap(p -> figures.apply(p).stream()).collect(Collectors.toList());
  }

  private boolean ofOneRhythm() {
    List<BreathPlan> plans =
        parts.stream()
            .map(p -> p.practice().breathPlan())
            .filter(Optional::isPresent)
            .map(Optional::get)
            .collect(Collectors.toList());
    return !plans.isEmpty() && plans.stream().allMatch(p -> p.asksTheSame(plans.get(0)));
  }

  private OptionalDouble hyperventilationMinutes() {
    double minutes = 0;
    boolean known = false;
    for (Part part : parts) {
      Optional<BreathPlan> plan = part.practice().breathPlan();
      List<RatePoint> rates = part.marks().rollingRate();
      if (!rates.isEmpty() && plan.isPresent()) {
        minutes += RollingRate.secondsAbove(rates, plan.get().highestPerMinute()) / 60.0;
        known = true;
      }
    }
    return known ? OptionalDouble.of(minutes) : OptionalDouble.empty();
  }

  private Metrics.Rate rate() {
    OptionalDouble mean = Statistics.mean(lengths);
    OptionalDouble overall = OptionalDouble.empty();
    if (mean.isPresent() && mean.getAsDouble() > 0) {
      overall = OptionalDouble.of(60 / mean.getAsDouble());
    }
    long effective = sum(Part::effectiveNanos);
    OptionalDouble count = OptionalDouble.empty();
    if (effective > 0) {
      long outside = sum(Part::breathsOutsideHolds);
      count = OptionalDouble.of(60 * outside / (effective / NANOS_PER_SECOND));
    }
    return new Metrics.Rate(overall, count);
  }

  private Metrics.Interval interval() {
    int n = valid.size();
    int inRange = count(Judgement.IN_RANGE);
    double in = 0;
    double out = 0;
    double excess = 0;
    double deficit = 0;
    double error = 0;
    for (Part part : parts) {
      Optional<BreathPlan> plan = part.practice().breathPlan();
      if (!plan.isPresent()) {
        continue;
      }
      in += part.inRangeNanos();
      out += part.outOfRangeNanos(plan.get());
      double sum = 0;
      for (IntervalPoint point : part.marks().valid()) {
        double beyond = plan.get().beyond(point.lengthNanos());
        excess += Math.max(0, -beyond);
        deficit += Math.max(0, beyond);
        sum += point.seconds() / plan.get().interval().seconds() - 1;
      }
      error += sum;
    }
    OptionalDouble none = OptionalDouble.empty();
    return new Metrics.Interval(
        n,
        Statistics.mean(lengths),
        Statistics.median(lengths),
        Statistics.standardDeviation(lengths),
        Statistics.robustDeviation(lengths),
        inRange,
        count(Judgement.FAST),
        count(Judgement.SLOW),
        n == 0 ? none : OptionalDouble.of((double) inRange / n),
        Statistics.wilsonLow(inRange, n),
        Statistics.wilsonHigh(inRange, n),
        in + out == 0 ? none : OptionalDouble.of(in / (in + out)),
        n == 0 ? none : OptionalDouble.of(100 * error / n),
        excess,
        deficit,
        minutes(Judgement.FAST),
        minutes(Judgement.SLOW));
  }

  private int count(Judgement judgement) {
    return (int) valid.stream().filter(p -> p.judgement() == judgement).count();
  }

  private double minutes(Judgement judgement) {
    return valid.stream()
        .filter(p -> p.judgement() == judgement)
        .mapToDouble(p -> p.seconds() / 60)
        .sum();
  }

  private Metrics.Gap gap(Practice whole) {
    List<Long> over = new ArrayList<>();
    for (Part part : parts) {
      long limit = part.practice().limits().gapLongest().nanos();
      Gaps.of(part.practice()).stream()
          .map(g -> g.unheldNanos() - limit)
          .filter(nanos -> nanos > 0)
          .forEach(over::add);
    }
    // The first of the longest.
    Gaps.Gap longest =
        Gaps.of(whole).stream().reduce((a, b) -> b.unheldNanos() > a.unheldNanos() ? b : a).get();
    return new Metrics.Gap(
        seconds(longest.unheldNanos()),
        seconds(longest.startNanos()),
        over.size(),
        seconds(over.stream().mapToLong(Long::longValue).sum()));
  }

  /** Parts without prompts say nothing of it. */
  private boolean paired() {
    return parts.stream()
        .filter(p -> !p.practice().place().slip() && !p.marks().prompts().isEmpty())
        .allMatch(p -> p.marks().paired());
  }

  private Optional<Metrics.Prompts> prompts() {
    if (!paired()) {
      return Optional.empty();
    }
    int given = (int) sum(p -> p.marks().prompts().size());
    int met = (int) sum(p -> p.marks().alignment().pairs().size());
    int extra = (int) sum(p -> p.marks().alignment().unpairedBreaths().size());
    int forgiven =
        (int)
            sum(
                p ->
                    p.marks().prompts().stream()
                        .filter(mark -> mark.outcome() == PromptMark.Outcome.FORGIVEN)
                        .count());
    int breaths = (int) sum(p -> p.practice().breaths().size());
    return Optional.of(
        new Metrics.Prompts(
            given, met, given - met - forgiven, extra, forgiven, breaths - met - extra));
  }

  private Optional<Metrics.Asynchrony> asynchrony(Alignment alignment) {
    if (!paired()) {
      return Optional.empty();
    }
    double[] errors =
        alignment.pairs().stream().mapToDouble(p -> seconds(p.errorNanos())).toArray();
    return Optional.of(
        new Metrics.Asynchrony(
            Statistics.mean(errors),
            Statistics.median(errors),
            Statistics.standardDeviation(errors),
            parts.size() == 1
                ? parts.get(0).practice().lockingAsOne().strength()
                : OptionalDouble.empty()));
  }

  /** The squeezes of a part by itself. */
  public static Metrics.Inspiration squeezesOf(Practice practice) {
    return inspiration(List.of(practice));
  }

  private Metrics.Inspiration inspiration() {
    return inspiration(parts.stream().map(Part::practice).collect(Collectors.toList()));
  }

  private static Metrics.Inspiration inspiration(List<Practice> parts) {
    int good = 0;
    double shortest = Double.MAX_VALUE;
    double longest = 0;
    for (Practice part : parts) {
      double asked = seconds(inspirationNanos(part));
      double least =
          Math.max(0, Math.min(SHORTEST_SQUEEZE * asked, asked - LEAST_SQUEEZE_MARGIN_SECONDS));
      double most = Math.max(LONGEST_SQUEEZE * asked, asked + LEAST_SQUEEZE_MARGIN_SECONDS);
      good += (int) squeezes(part).filter(s -> s >= least && s <= most).count();
      shortest = Math.min(shortest, least);
      longest = Math.max(longest, most);
    }
    double[] squeezes = parts.stream().flatMapToDouble(Measure::squeezes).toArray();
    return new Metrics.Inspiration(
        squeezes.length,
        Statistics.mean(squeezes),
        Statistics.median(squeezes),
        Statistics.quantile(squeezes, 0.25),
        Statistics.quantile(squeezes, 0.75),
        good,
        squeezes.length == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of((double) good / squeezes.length),
        shortest,
        longest);
  }

  /** The lengths of the squeezes whose end is known, in seconds. */
  private static DoubleStream squeezes(Practice part) {
    return part.breaths().stream()
        .filter(b -> b.endNanos().isPresent())
        .mapToDouble(b -> seconds(b.endNanos().getAsLong() - b.startNanos()));
  }

  public static long inspirationNanos(Practice practice) {
    Rhythm rhythm = practice.guidance().rhythm();
    return rhythm instanceof Rhythm.CompressionCycle cycle
        ? cycle.inspirationNanos()
        : rhythm.steadyBreaths().get().inspirationNanos();
  }

  private Drift drift() {
    if (parts.size() > 1) {
      return Drift.none(valid.size());
    }
    double[] middles =
        valid.stream()
            .mapToDouble(p -> (p.atNanos() - p.lengthNanos() / 2.0) / NANOS_PER_SECOND)
            .toArray();
    return Drift.of(middles, lengths);
  }

  private static double seconds(long nanos) {
    return nanos / NANOS_PER_SECOND;
  }

  /** A part, and what is excused in it. */
  private record Part(Marks marks, Spans excused) {
    Practice practice() {
      return marks.practice();
    }

    long effectiveNanos() {
      long start = practice().startNanos();
      long end = practice().endNanos();
      return end - start - excused.overlap(start, end);
    }

    long breathsOutsideHolds() {
      return effectiveNanos() <= 0
          ? 0
          : practice().breaths().stream().filter(b -> !excused.holds(b.startNanos())).count();
    }

    double inRangeNanos() {
      return marks.valid().stream()
          .filter(p -> p.judgement() == Judgement.IN_RANGE)
          .mapToDouble(IntervalPoint::lengthNanos)
          .sum();
    }

    /** Waiting less than the longest interval at the ends and at holds costs nothing. */
    double outOfRangeNanos(BreathPlan plan) {
      double out = 0;
      for (IntervalPoint point : marks.intervals()) {
        if (!point.valid()) {
          out += overrun(point.atNanos() - point.lengthNanos(), point.atNanos(), plan);
        } else if (point.judgement() != Judgement.IN_RANGE) {
          out += point.lengthNanos();
        }
      }
      List<Breath> breaths = practice().breaths();
      long end = practice().endNanos();
      long first = breaths.isEmpty() ? end : breaths.get(0).startNanos();
      out += overrun(practice().startNanos(), first, plan);
      if (!breaths.isEmpty()) {
        out += overrun(breaths.get(breaths.size() - 1).startNanos(), end, plan);
      }
      return out;
    }

    private long overrun(long from, long to, BreathPlan plan) {
      return plan.overNanos(to - from - excused.overlap(from, to));
    }
  }
}
