package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import squeezewell.protocol.BreathPlan;

/**
 * The figures of a session whose rhythm changed, from those of its parts. Counts and sums add up;
 * each interval is judged by the range of its own part. A mean over different rhythms says nothing
 * and is empty.
 */
public final class WholeMeasure {
  private final List<Facts> parts;
  private final List<Metrics> metrics;

  private WholeMeasure(List<Facts> parts) {
    this.parts = parts;
    this.metrics = parts.stream().map(Facts::metrics).collect(Collectors.toList());
  }

  public static Metrics of(Practice whole, List<Facts> parts, Alignment alignment) {
    WholeMeasure measure = new WholeMeasure(parts);
    double effective = measure.sum(Metrics::effectiveSeconds);
    return new Metrics(
        measure.count(Metrics::breathCount),
        measure.sum(Metrics::sessionSeconds),
        effective,
        whole.breaths().stream()
            .limit(1)
            .mapToDouble(b -> (b.startNanos() - whole.startNanos()) / 1e9)
            .findFirst(),
        measure.rate(effective),
        measure.interval(),
        measure.hyperventilationMinutes(),
        Measure.longestGap(
            whole,
            measure.count(m -> m.gap().overLimitCount()),
            measure.sum(m -> m.gap().overLimitSeconds())),
        new Metrics.Prompts(
            measure.count(m -> m.prompts().given()),
            measure.count(m -> m.prompts().met()),
            measure.count(m -> m.prompts().missed()),
            measure.count(m -> m.prompts().extra()),
            measure.count(m -> m.prompts().forgiven()),
            measure.count(m -> m.prompts().unprompted())),
        measure.asynchrony(alignment),
        MeasureUnprompted.of(parts),
        measure.inspiration(),
        measure.metrics.stream()
            .flatMap(m -> m.pulseChecks().stream())
            .collect(Collectors.toList()),
        measure.metrics.stream().flatMap(m -> m.suctions().stream()).collect(Collectors.toList()),
        whole.holds(Hold.Kind.HOLE).size(),
        whole.holds(Hold.Kind.HOLE).stream().mapToDouble(Hold::seconds).sum(),
        Drift.none(measure.count(m -> m.interval().count())),
        Volumes.of(whole.breaths(), measure.allIntervals()),
        MeasureCompressions.of(parts.stream().map(Facts::practice).collect(Collectors.toList())));
  }

  private int count(ToIntFunction<Metrics> what) {
    return metrics.stream().mapToInt(what).sum();
  }

  private double sum(ToDoubleFunction<Metrics> what) {
    return metrics.stream().mapToDouble(what).sum();
  }

  private OptionalDouble hyperventilationMinutes() {
    return metrics.stream()
        .map(Metrics::hyperventilationMinutes)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .reduce(Double::sum);
  }

  private List<IntervalPoint> allIntervals() {
    return parts.stream().flatMap(p -> p.intervals().stream()).collect(Collectors.toList());
  }

  /** The valid intervals if all of them were asked for at the same length; else none. */
  private Optional<double[]> ofOneRhythm() {
    List<BreathPlan> plans =
        parts.stream()
            .map(p -> p.practice().breathPlan())
            .filter(Optional::isPresent)
            .map(Optional::get)
            .collect(Collectors.toList());
    boolean same = plans.stream().allMatch(p -> p.asksTheSame(plans.get(0)));
    return same && !plans.isEmpty()
        ? Optional.of(
            parts.stream()
                .flatMap(p -> p.valid().stream())
                .mapToDouble(IntervalPoint::seconds)
                .toArray())
        : Optional.empty();
  }

  private Metrics.Rate rate(double effectiveSeconds) {
    OptionalDouble mean = Statistics.mean(ofOneRhythm().orElse(new double[0]));
    double counted = sum(m -> m.rate().countPerMinute().orElse(0) * m.effectiveSeconds());
    return new Metrics.Rate(
        mean.isPresent() && mean.getAsDouble() > 0
            ? OptionalDouble.of(60 / mean.getAsDouble())
            : OptionalDouble.empty(),
        effectiveSeconds > 0
            ? OptionalDouble.of(counted / effectiveSeconds)
            : OptionalDouble.empty());
  }

  private Metrics.Interval interval() {
    int n = count(m -> m.interval().count());
    int inRange = count(m -> m.interval().inRangeCount());
    double[] lengths = ofOneRhythm().orElse(new double[0]);
    OptionalDouble none = OptionalDouble.empty();
    double[] inAndOut = new double[2];
    double tempoError = 0;
    for (Facts part : parts) {
      double[] own = Measure.inAndOut(part);
      inAndOut[0] += own[0];
      inAndOut[1] += own[1];
      Metrics.Interval interval = part.metrics().interval();
      tempoError += interval.tempoErrorPercent().orElse(0) * interval.count();
    }
    return new Metrics.Interval(
        n,
        Statistics.mean(lengths),
        Statistics.median(lengths),
        Statistics.standardDeviation(lengths),
        Statistics.robustDeviation(lengths),
        inRange,
        count(m -> m.interval().fastCount()),
        count(m -> m.interval().slowCount()),
        n == 0 ? none : OptionalDouble.of((double) inRange / n),
        Statistics.wilsonLow(inRange, n),
        Statistics.wilsonHigh(inRange, n),
        Measure.share(inAndOut),
        n == 0 ? none : OptionalDouble.of(tempoError / n),
        sum(m -> m.interval().excessBreaths()),
        sum(m -> m.interval().deficitBreaths()),
        sum(m -> m.interval().fastMinutes()),
        sum(m -> m.interval().slowMinutes()));
  }

  private Metrics.Asynchrony asynchrony(Alignment alignment) {
    double[] errors = alignment.pairs().stream().mapToDouble(p -> p.errorNanos() / 1e9).toArray();
    return new Metrics.Asynchrony(
        Statistics.mean(errors),
        Statistics.median(errors),
        Statistics.standardDeviation(errors),
        OptionalDouble.empty(),
        metrics.stream().anyMatch(m -> m.asynchrony().ownTempo()));
  }

  private Metrics.Inspiration inspiration() {
    List<Double> lengths = new ArrayList<>();
    double shortest = Double.MAX_VALUE;
    double longest = 0;
    for (Facts part : parts) {
      for (double length : Measure.squeezes(part.practice())) {
        lengths.add(length);
      }
      shortest = Math.min(shortest, part.metrics().inspiration().shortestGoodSeconds());
      longest = Math.max(longest, part.metrics().inspiration().longestGoodSeconds());
    }
    return Measure.inspiration(
        lengths.stream().mapToDouble(Double::doubleValue).toArray(),
        count(m -> m.inspiration().goodCount()),
        shortest,
        longest);
  }
}
