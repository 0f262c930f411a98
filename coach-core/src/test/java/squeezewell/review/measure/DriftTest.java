package squeezewell.review.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class DriftTest {
  @Test
  void aShrinkingIntervalIsANegativeDrift() {
    // Intervals 6.0, 5.9 .. 5.1 s, one after the other. From the middle of interval i to the
    // middle of interval j are (j - i) times the mean of the two lengths, and the interval falls
    // by 0.1 (j - i): so each of the 45 slopes is -0.1 over the mean of two lengths. Those means
    // lie evenly about (6.0 + 5.1) / 2 = 5.55 s: median slope -0.1 / 5.55 = -0.018018. Per minute
    // and per median interval of 5.55 s: -0.018018 x 6000 / 5.55 = -19.479 %.
    double[] intervals = new double[10];
    double[] middles = new double[10];
    double at = 0;
    for (int k = 0; k < 10; k++) {
      intervals[k] = 6 - 0.1 * k;
      middles[k] = at + intervals[k] / 2;
      at += intervals[k];
    }
    Drift drift = Drift.of(middles, intervals);
    assertThat(drift.percentPerMinute().getAsDouble()).isCloseTo(-19.479, within(0.001));
    assertThat(drift.worthTelling()).isFalse();
  }

  /**
   * Sixteen intervals one after the other, without ties. SciPy 1.17.1 (scipy.stats.theilslopes of
   * the lengths on their middles, 95 %): slope 0.007940110323, from 0.004751095391 to
   * 0.011559175095; the median interval is 6.315 s.
   */
  @Test
  void slopeAndIntervalAgreeWithAnotherLibrary() {
    double[] intervals = {
      6.1, 5.8, 6.02, 6.3, 5.9, 6.2, 6.4, 6.05, 6.5, 6.33, 6.6, 6.24, 6.7, 6.45, 6.9, 6.55
    };
    double[] middles = new double[intervals.length];
    double at = 0;
    for (int k = 0; k < intervals.length; k++) {
      middles[k] = at + intervals[k] / 2;
      at += intervals[k];
    }
    Drift drift = Drift.of(middles, intervals);
    double scale = 6_000 / 6.315;
    assertThat(drift.percentPerMinute().getAsDouble())
        .isCloseTo(scale * 0.007940110323, within(1e-7));
    assertThat(drift.lowPercentPerMinute().getAsDouble())
        .isCloseTo(scale * 0.004751095391, within(1e-7));
    assertThat(drift.highPercentPerMinute().getAsDouble())
        .isCloseTo(scale * 0.011559175095, within(1e-7));
  }

  @Test
  void belowEightIntervalsThereIsNoDrift() {
    assertThat(Drift.of(new double[7], new double[7]).percentPerMinute()).isEmpty();
  }

  @Test
  void theIntervalHoldsTheTrueSlopeAboutNineteenTimesInTwenty() {
    // A property of the method (Sen, 1968), on made-up data without drift: 95 %, give or take.
    SplittableRandom random = new SplittableRandom(7);
    int holds = 0;
    for (int run = 0; run < 400; run++) {
      double[] intervals = new double[40];
      double[] middles = new double[40];
      for (int k = 0; k < 40; k++) {
        intervals[k] = 6 + 0.4 * random.nextGaussian();
        middles[k] = 6 * k;
      }
      Drift drift = Drift.of(middles, intervals);
      boolean inside =
          drift.lowPercentPerMinute().getAsDouble() <= 0
              && drift.highPercentPerMinute().getAsDouble() >= 0;
      holds += inside ? 1 : 0;
    }
    assertThat(holds).isBetween(370, 398);
  }

  @Test
  void aLongSessionIsAveragedAndKeepsItsDrift() {
    // 6 s plus 0.01 s a minute over 10,000 intervals: 0.01 / median interval a minute.
    double[] intervals = new double[10_000];
    double[] middles = new double[10_000];
    for (int k = 0; k < intervals.length; k++) {
      middles[k] = 6 * k;
      intervals[k] = 6 + 0.01 * middles[k] / 60;
    }
    double median = 6 + 0.01 * (6 * 9_999 / 2.0) / 60;
    assertThat(Drift.of(middles, intervals).percentPerMinute().getAsDouble())
        .isCloseTo(1 / median, within(1e-6));
  }

  @Test
  void breathsAtTheSameInstantHaveNoDrift() {
    double[] middles = {0, 0, 0, 0, 0, 0, 0.5, 1};
    double[] intervals = {0, 0, 0, 0, 0, 0, 1, 0};
    assertThat(Drift.of(middles, intervals).percentPerMinute()).isEmpty();
  }
}
