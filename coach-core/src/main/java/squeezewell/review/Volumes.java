package squeezewell.review;

import java.util.List;
import java.util.OptionalDouble;
import squeezewell.session.Breath;

/** Computes {@link Metrics.Volume}. */
final class Volumes {
  private static final double LITRES_PER_MINUTE = 0.06;

  private Volumes() {}

  /**
   * @param intervals the interval after each breath but the last, in order; none for a rhythm that
   *     has no intervals
   */
  static Metrics.Volume of(List<Breath> breaths, List<IntervalPoint> intervals) {
    double[] volumes =
        breaths.stream()
            .filter(b -> b.millilitres().isPresent())
            .mapToDouble(b -> b.millilitres().getAsDouble())
            .toArray();
    double delivered = 0;
    double seconds = 0;
    for (int k = 0; k < intervals.size(); k++) {
      OptionalDouble volume = breaths.get(k).millilitres();
      if (intervals.get(k).valid() && volume.isPresent()) {
        delivered += volume.getAsDouble();
        seconds += intervals.get(k).seconds();
      }
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
