package squeezewell.review.measure;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Whether the interval grew or shrank over the session: the median of the slopes between all pairs
 * of points (Theil, 1950; Sen, 1968), as a share of the median interval.
 *
 * @param percentPerMinute positive if the intervals grew (slowing); empty below 8 intervals
 * @param lowPercentPerMinute lower end of Sen's 95 % interval; empty with the value
 * @param highPercentPerMinute upper end of it
 * @param intervals how many intervals it rests on
 */
public record Drift(
    OptionalDouble percentPerMinute,
    OptionalDouble lowPercentPerMinute,
    OptionalDouble highPercentPerMinute,
    int intervals) {
  // What is told to a trainee (our own choice): a steady trainee's drift lies within 2 % a minute
  // over 30 intervals and within 5 % over 19, nearly always.
  private static final int MANY = 25;
  private static final int FEW = 15;
  private static final double LEAST_OF_MANY = 2;
  private static final double LEAST_OF_FEW = 5;

  private static final int FEWEST = 8;

  /** Long sessions are averaged down to this many points, since the pairs grow as the square. */
  private static final int MOST_POINTS = 400;

  static Drift none(int intervals) {
    return new Drift(
        OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), intervals);
  }

  /**
   * @param middles the instants in the middle of the intervals, in seconds, rising
   * @param intervals the intervals, in seconds
   */
  static Drift of(double[] middles, double[] intervals) {
    if (intervals.length < FEWEST) {
      return none(intervals.length);
    }
    int block = (intervals.length + MOST_POINTS - 1) / MOST_POINTS;
    double[] x = averaged(middles, block);
    double[] y = averaged(intervals, block);
    int n = x.length;
    double[] slopes = new double[n * (n - 1) / 2];
    int count = 0;
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        if (x[j] > x[i]) {
          slopes[count++] = (y[j] - y[i]) / (x[j] - x[i]);
        }
      }
    }
    double usual = Statistics.median(intervals).getAsDouble();
    // Breaths at the same instant, as a list can hold them, have no tempo to drift.
    if (count == 0 || usual <= 0) {
      return none(intervals.length);
    }
    slopes = Arrays.copyOf(slopes, count);
    Arrays.sort(slopes);
    double scale = 6_000 / usual;
    double spread = Statistics.Z95 * Math.sqrt(n * (n - 1.0) * (2.0 * n + 5) / 18);
    int low = Math.max(0, (int) Math.floor((count - spread) / 2) - 1);
    int high = Math.min(count - 1, (int) Math.ceil((count + spread) / 2));
    return new Drift(
        OptionalDouble.of(scale * Statistics.median(slopes).getAsDouble()),
        OptionalDouble.of(scale * slopes[low]),
        OptionalDouble.of(scale * slopes[high]),
        intervals.length);
  }

  /** Whether it is large and certain enough to tell a trainee about. */
  public boolean worthTelling() {
    double least = intervals >= MANY ? LEAST_OF_MANY : LEAST_OF_FEW;
    return intervals >= FEW
        && percentPerMinute.isPresent()
        && Math.abs(percentPerMinute.getAsDouble()) >= least
        && lowPercentPerMinute.getAsDouble() * highPercentPerMinute.getAsDouble() > 0;
  }

  private static double[] averaged(double[] values, int block) {
    double[] means = new double[(values.length + block - 1) / block];
    for (int i = 0; i < means.length; i++) {
      double[] part =
          Arrays.copyOfRange(values, i * block, Math.min(values.length, (i + 1) * block));
      means[i] = Statistics.mean(part).getAsDouble();
    }
    return means;
  }
}
