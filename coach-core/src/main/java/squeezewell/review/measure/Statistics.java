package squeezewell.review.measure;

import java.util.Arrays;
import java.util.OptionalDouble;

/** The usual statistics of a sample. What can't be computed is empty, never 0. */
public final class Statistics {
  public static final double Z95 = 1.959963984540054;

  /** Makes the median of distances from the median equal the SD of a normal distribution. */
  private static final double MAD_TO_SD = 1.4826;

  private Statistics() {}

  public static OptionalDouble mean(double[] sample) {
    return Arrays.stream(sample).average();
  }

  public static OptionalDouble median(double[] sample) {
    return quantile(sample, 0.5);
  }

  /** With n − 1 below; empty for fewer than two values. */
  public static OptionalDouble standardDeviation(double[] sample) {
    if (sample.length < 2) {
      return OptionalDouble.empty();
    }
    double mean = mean(sample).getAsDouble();
    double squares = 0;
    for (double value : sample) {
      squares += (value - mean) * (value - mean);
    }
    return OptionalDouble.of(Math.sqrt(squares / (sample.length - 1)));
  }

  /** 1.4826 times the median distance from the median; empty for fewer than two values. */
  static OptionalDouble robustDeviation(double[] sample) {
    if (sample.length < 2) {
      return OptionalDouble.empty();
    }
    double median = median(sample).getAsDouble();
    double[] distances = Arrays.stream(sample).map(v -> Math.abs(v - median)).toArray();
    return OptionalDouble.of(MAD_TO_SD * median(distances).getAsDouble());
  }

  /**
   * A quantile, interpolated linearly between order statistics (type 7 of Hyndman and Fan, 1996).
   *
   * @param share 0 to 1
   */
  static OptionalDouble quantile(double[] sample, double share) {
    if (sample.length == 0) {
      return OptionalDouble.empty();
    }
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    double place = share * (sorted.length - 1);
    int below = (int) Math.floor(place);
    int above = Math.min(below + 1, sorted.length - 1);
    return OptionalDouble.of(sorted[below] + (place - below) * (sorted[above] - sorted[below]));
  }

  /** Lower end of the 95 % score interval of a share (Wilson, 1927); empty for no trials. */
  public static OptionalDouble wilsonLow(int successes, int trials) {
    return wilson(successes, trials, -1);
  }

  /** Upper end of the 95 % score interval of a share (Wilson, 1927); empty for no trials. */
  public static OptionalDouble wilsonHigh(int successes, int trials) {
    return wilson(successes, trials, 1);
  }

  private static OptionalDouble wilson(int successes, int trials, int sign) {
    return trials == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(score(successes, trials, sign * Z95));
  }

  /**
   * One end of the score interval of a share (Wilson, 1927).
   *
   * @param trials at least 1
   * @param z two-sided normal quantile of the level, negative for the lower end
   */
  public static double score(int successes, int trials, double z) {
    double share = (double) successes / trials;
    double square = z * z / trials;
    double half = z * Math.sqrt(share * (1 - share) / trials + square / (4 * trials));
    double end = (share + square / 2 + half) / (1 + square);
    return Math.min(1, Math.max(0, end));
  }
}
