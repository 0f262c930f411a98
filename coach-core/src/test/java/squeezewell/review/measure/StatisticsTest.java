package squeezewell.review.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Offset;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.descriptive.moment.StandardDeviation;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.interval.BinomialProportion;
import org.hipparchus.stat.interval.ConfidenceInterval;
import org.junit.jupiter.api.Test;

/** Against the Hipparchus statistics library and published intervals. */
class StatisticsTest {
  private static final Offset<Double> CLOSE = within(1e-9);

  @Property
  void meanSpreadAndQuantilesAgreeWithTheReference(
      @ForAll("samples") double[] sample, @ForAll @DoubleRange(min = 0.01, max = 1) double share) {
    assertThat(Statistics.mean(sample).getAsDouble()).isCloseTo(StatUtils.mean(sample), CLOSE);
    Percentile type7 = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
    assertThat(Statistics.median(sample).getAsDouble())
        .isCloseTo(type7.evaluate(sample, 50), CLOSE);
    assertThat(Statistics.quantile(sample, share).getAsDouble())
        .isCloseTo(type7.evaluate(sample, 100 * share), CLOSE);
    if (sample.length > 1) {
      assertThat(Statistics.standardDeviation(sample).getAsDouble())
          .isCloseTo(new StandardDeviation().evaluate(sample), CLOSE);
    }
  }

  @Test
  void theRobustSpreadIgnoresAnOutlier() {
    // Median 6; distances 1 0 0 1 94: median 1; times 1.4826.
    assertThat(Statistics.robustDeviation(new double[] {5, 6, 6, 7, 100}).getAsDouble())
        .isCloseTo(1.4826, CLOSE);
  }

  @Test
  void theScoreIntervalAgreesWithPublishedExamples() {
    // Newcombe (1998), Statistics in Medicine 17:857, score method without continuity correction:
    // 81 of 263, 15 of 148, 0 of 20 and 1 of 29 (table quoted from memory).
    assertWilson(81, 263, 0.2553, 0.3662);
    assertWilson(15, 148, 0.0624, 0.1605);
    assertWilson(0, 20, 0.0000, 0.1611);
    assertWilson(1, 29, 0.0061, 0.1718);
  }

  @Property
  void theScoreIntervalAgreesWithTheReference(
      @ForAll @IntRange(min = 1, max = 500) int trials,
      @ForAll @DoubleRange(min = 0, max = 1) double share) {
    int successes = (int) Math.round(share * trials);
    ConfidenceInterval reference =
        BinomialProportion.getWilsonScoreInterval(trials, (double) successes / trials, 0.95);
    assertThat(Statistics.wilsonLow(successes, trials).getAsDouble())
        .isCloseTo(Math.max(0, reference.getLowerBound()), CLOSE);
    assertThat(Statistics.wilsonHigh(successes, trials).getAsDouble())
        .isCloseTo(Math.min(1, reference.getUpperBound()), CLOSE);
  }

  @Test
  void nothingComesOfNothing() {
    double[] none = {};
    assertThat(Statistics.mean(none)).isEmpty();
    assertThat(Statistics.median(none)).isEmpty();
    assertThat(Statistics.standardDeviation(new double[] {6})).isEmpty();
    assertThat(Statistics.robustDeviation(new double[] {6})).isEmpty();
    assertThat(Statistics.wilsonLow(0, 0)).isEmpty();
  }

  @Provide
  Arbitrary<double[]> samples() {
    return Arbitraries.doubles().between(0, 100).array(double[].class).ofMinSize(1).ofMaxSize(60);
  }

  private static void assertWilson(int successes, int trials, double low, double high) {
    assertThat(Statistics.wilsonLow(successes, trials).getAsDouble()).isCloseTo(low, within(5e-5));
    assertThat(Statistics.wilsonHigh(successes, trials).getAsDouble())
        .isCloseTo(high, within(5e-5));
  }
}
