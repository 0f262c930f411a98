package squeezewell.review.compare;

import java.util.Optional;
import squeezewell.review.measure.Statistics;

/** How two samples differ, as intervals that hold the true difference at a stated level. */
public final class TwoSamples {
  /** Two-sided normal quantile for 95 %. */

  /** Two-sided normal quantile for 99 %. */
  static final double Z99 = 2.5758293035489004;

  private static final double TINY = 1e-30;
  private static final int MOST_TERMS = 10_000;

  private TwoSamples() {}

  /**
   * A difference and the interval around it.
   *
   * @param value the difference
   * @param low lower end
   * @param high upper end
   */
  record Difference(double value, double low, double high) {
    /** Whether 0 lies outside the interval. */
    boolean isClear() {
      return low > 0 || high < 0;
    }
  }

  /**
   * Share 1 minus share 2 with the hybrid score interval without continuity correction (Newcombe,
   * 1998, Statistics in Medicine 17:873, method 10): the score intervals (Wilson, 1927) of both
   * shares, put together by squares.
   *
   * @param z two-sided normal quantile of the level
   * @return empty if there are no trials on one side
   */
  static Optional<Difference> shares(
      int successes1, int trials1, int successes2, int trials2, double z) {
    if (trials1 == 0 || trials2 == 0) {
      return Optional.empty();
    }
    double share1 = (double) successes1 / trials1;
    double share2 = (double) successes2 / trials2;
    double below1 = share1 - Statistics.score(successes1, trials1, -z);
    double above1 = Statistics.score(successes1, trials1, z) - share1;
    double below2 = share2 - Statistics.score(successes2, trials2, -z);
    double above2 = Statistics.score(successes2, trials2, z) - share2;
    double value = share1 - share2;
    return Optional.of(
        new Difference(
            value,
            Math.max(-1, value - Math.hypot(below1, above2)),
            Math.min(1, value + Math.hypot(above1, below2))));
  }

  /**
   * A difference of means with the interval of Welch (1947, Biometrika 34:28): unequal variances,
   * degrees of freedom by Welch and Satterthwaite. Without any spread the interval is the
   * difference itself.
   *
   * @param sample1 at least two values
   * @param sample2 at least two values
   * @param value the difference to put the interval around; it has the spread of mean 1 minus mean
   *     2
   * @param level share of such intervals that hold the true value, above 0 and below 1
   */
  static Difference welch(double[] sample1, double[] sample2, double value, double level) {
    double error1 = meanError(sample1);
    double error2 = meanError(sample2);
    double square = error1 + error2;
    if (square == 0) {
      return new Difference(value, value, value);
    }
    double freedom =
        square
            * square
            / (error1 * error1 / (sample1.length - 1) + error2 * error2 / (sample2.length - 1));
    double half = Math.sqrt(square) * studentQuantile(freedom, level);
    return new Difference(value, value - half, value + half);
  }

  private static double meanError(double[] sample) {
    double deviation = Statistics.standardDeviation(sample).getAsDouble();
    return deviation * deviation / sample.length;
  }

  /**
   * The t that a Student variable stays within, on both sides, with that probability. Found by
   * halving.
   *
   * @param freedom degrees of freedom, above 0, not always whole
   * @param level above 0 and below 1
   */
  static double studentQuantile(double freedom, double level) {
    double high = 1;
    while (outside(high, freedom) > 1 - level) {
      high *= 2;
    }
    double low = 0;
    while (high - low > 1e-12 * high) {
      double middle = (low + high) / 2;
      if (middle == low || middle == high) {
        break;
      }
      if (outside(middle, freedom) > 1 - level) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Probability that a Student variable lies beyond t on either side. */
  private static double outside(double t, double freedom) {
    return incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5);
  }

  /**
   * The regularized incomplete beta function, by its continued fraction (Abramowitz and Stegun,
   * 26.5.8), on the side where that runs fast.
   */
  private static double incompleteBeta(double x, double a, double b) {
    if (x <= 0 || x >= 1) {
      return x <= 0 ? 0 : 1;
    }
    if (x > (a + 1) / (a + b + 2)) {
      return 1 - incompleteBeta(1 - x, b, a);
    }
    double front =
        Math.exp(
            logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
    // Lentz's way of evaluating 1 / (1 + d1 / (1 + d2 / ...)).
    double fraction = TINY;
    double upper = TINY;
    double lower = 0;
    double term = 1;
    for (int i = 0; i < MOST_TERMS; i++) {
      lower = 1 / away(1 + term * lower);
      upper = away(1 + term / upper);
      fraction *= upper * lower;
      if (Math.abs(upper * lower - 1) < 1e-15) {
        break;
      }
      int m = (i + 1) / 2;
      term =
          (i + 1) % 2 == 0
              ? m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
              : -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
    }
    return front * fraction / a;
  }

  private static double away(double value) {
    return Math.abs(value) < TINY ? TINY : value;
  }

  /** Logarithm of the gamma function for x above 0: Stirling's series from 10 on. */
  private static double logGamma(double x) {
    double shift = 0;
    double at = x;
    while (at < 10) {
      shift += Math.log(at);
      at++;
    }
    double square = 1 / (at * at);
    double series =
        (1.0 / 12 - square * (1.0 / 360 - square * (1.0 / 1260 - square * (1.0 / 1680)))) / at;
    return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series - shift;
  }
}
