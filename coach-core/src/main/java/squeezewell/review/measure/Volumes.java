package squeezewell.review.measure;

import java.util.List;
import java.util.OptionalDouble;
import squeezewell.session.Breath;

/** Computes {@link Metrics.Volume}. */
final class Volumes {
  private static final double LITRES_PER_MINUTE = 0.06;

  private Volumes() {}

  /**
   * @param intervals from the start of a breath to the start of the next, in order; none where the
   *     rhythm has no intervals
   */
  static Metrics.Volume of(List<Breath> breaths, List<IntervalPoint> intervals) {
    double[] volumes =
        breaths.stream()
            .filter(b -> b.millilitres().isPresent())
            .mapToDouble(b -> b.millilitres().getAsDouble())
            .toArray();
    double delivered = 0;
    double seconds = 0;
    int k = 0;
    for (IntervalPoint interval : intervals) {
      long began = interval.atNanos() - interval.lengthNanos();
      while (breaths.get(k).startNanos() < began) {
        k++;
      }
      OptionalDouble volume = breaths.get(k).millilitres();
      if (interval.valid() && volume.isPresent()) {
        delivered += volume.getAsDouble();
        seconds += interval.seconds();
      }
      // Two breaths of one instant have an interval of no length between them.
      k += interval.lengthNanos() == 0 ? 1 : 0;
    }
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble mean = Statistics.mean(volumes);
    OptionalDouble sd = Statistics.standardDeviation(volumes);
    return new Metrics.Volume(
        volumes.length,
        Statistics.median(volumes),
        sd.isPresent() && mean.getAsDouble() > 0
            ? OptionalDouble.of(sd.getAsDouble() / mean.getAsDouble())
            : none,
        seconds > 0 ? OptionalDouble.of(LITRES_PER_MINUTE * delivered / seconds) : none);
  }
}
