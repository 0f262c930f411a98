package squeezewell.review.measure;

import java.util.Arrays;
import java.util.OptionalDouble;

/** The usual statistics of a sample. What can't be computed is empty, never 0. */
public final class Statistics {
  /** Makes the median of distances from the median equal the SD of a normal distribution. */
  private static final double MAD_TO_SD = 1.4826;

  /** Two-sided normal quantile for 95 %. */
  static final double Z95 = 1.959963984540054;

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
    if (trials == 0) {
      return OptionalDouble.empty();
    }
    double z = sign * Z95;
    double share = (double) successes / trials;
    double square = z * z / trials;
    double half = z * Math.sqrt(share * (1 - share) / trials + square / (4 * trials));
    double end = (share + square / 2 + half) / (1 + square);
    return OptionalDouble.of(Math.min(1, Math.max(0, end)));
  }
}
