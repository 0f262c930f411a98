package squeezewell.review.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.inference.TTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.review.measure.Statistics;

/** Against published examples and the Hipparchus statistics library. */
class TwoSamplesTest {
  /**
   * Newcombe (1998), Statistics in Medicine 17:873, table II, method 10. The first two rows were
   * also seen in the tests of another library that quotes the paper; the others are from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "56, 70, 48, 80, 0.0524, 0.3339",
    "9, 10, 3, 10, 0.1705, 0.8090",
    "6, 7, 2, 7, 0.0582, 0.8062",
    "5, 56, 0, 29, -0.0381, 0.1926",
    "0, 10, 0, 20, -0.1611, 0.2775",
    "0, 10, 0, 10, -0.2775, 0.2775",
    "10, 10, 0, 20, 0.6791, 1.0000",
    "10, 10, 0, 10, 0.6075, 1.0000"
  })
  void theIntervalOfTwoSharesAgreesWithThePublishedExamples(
      int k1, int n1, int k2, int n2, double low, double high) {
    TwoSamples.Difference found = TwoSamples.shares(k1, n1, k2, n2, Statistics.Z95).get();
    assertThat(found.low()).isCloseTo(low, within(5.1e-5));
    assertThat(found.high()).isCloseTo(high, within(5.1e-5));
    assertThat(found.value()).isEqualTo((double) k1 / n1 - (double) k2 / n2);
    TwoSamples.Difference turned = TwoSamples.shares(k2, n2, k1, n1, Statistics.Z95).get();
    assertThat(turned.low()).isCloseTo(-high, within(5.1e-5));
    assertThat(turned.high()).isCloseTo(-low, within(5.1e-5));
  }

  @Test
  void withoutTrialsThereIsNoDifferenceOfShares() {
    assertThat(TwoSamples.shares(0, 0, 3, 4, Statistics.Z95)).isEmpty();
    assertThat(TwoSamples.shares(3, 4, 0, 0, Statistics.Z95)).isEmpty();
  }

  /**
   * Student's sleep data (1908, Biometrika 6:1): hours of sleep gained with two drugs by ten
   * patients. The interval is the output of R's t.test(extra ~ group), as its manual's example
   * prints it: t = -1.8608, df = 17.776, from -3.3654832 to 0.2054832 (from memory).
   */
  @Test
  void welchsIntervalAgreesWithThePublishedExample() {
    double[] first = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
    double[] second = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
    TwoSamples.Difference found = TwoSamples.welch(first, second, 0.75 - 2.33, 0.95);
    assertThat(found.low()).isCloseTo(-3.3654832, within(5e-8));
    assertThat(found.high()).isCloseTo(0.2054832, within(5e-8));
    assertThat(found.isClear()).isFalse();
  }

  @Property(tries = 100)
  void welchsIntervalLeavesOutZeroWhereTheReferenceRejectsEquality(
      @ForAll @Size(min = 2, max = 40) double @DoubleRange(min = 0, max = 20) [] first,
      @ForAll @Size(min = 2, max = 40) double @DoubleRange(min = 0, max = 20) [] second,
      @ForAll @DoubleRange(min = 0.5, max = 0.99) double level) {
    double value = Statistics.mean(first).getAsDouble() - Statistics.mean(second).getAsDouble();
    TwoSamples.Difference found = TwoSamples.welch(first, second, value, level);
    double spread =
        Statistics.standardDeviation(first).getAsDouble()
            + Statistics.standardDeviation(second).getAsDouble();
    if (spread == 0) {
      assertThat(found.low()).isEqualTo(found.high());
      return;
    }
    double chance = new TTest().tTest(first, second);
    if (Math.abs(chance - (1 - level)) > 1e-9) {
      assertThat(found.isClear()).isEqualTo(chance < 1 - level);
    }
  }

  @Property(tries = 100)
  void studentsQuantileAgreesWithTheReference(
      @ForAll @DoubleRange(min = 1, max = 5_000) double freedom,
      @ForAll @DoubleRange(min = 0.01, max = 0.99) double level) {
    double reference = new TDistribution(freedom).inverseCumulativeProbability((1 + level) / 2);
    assertThat(TwoSamples.studentQuantile(freedom, level))
        .isCloseTo(reference, within(1e-7 * Math.max(1, reference)));
  }

  /** Any printed table of t, two-sided 5 % and 1 % (from memory). */
  @ParameterizedTest
  @CsvSource({
    "1, 0.95, 12.706",
    "9, 0.95, 2.262",
    "9, 0.99, 3.250",
    "20, 0.99, 2.845",
    "60, 0.99, 2.660",
    "120, 0.95, 1.980"
  })
  void studentsQuantileAgreesWithPrintedTables(double freedom, double level, double t) {
    assertThat(TwoSamples.studentQuantile(freedom, level)).isCloseTo(t, within(5.1e-4));
  }

  @Test
  void theNormalQuantilesAreThoseOfTheReference() {
    NormalDistribution normal = new NormalDistribution();
    assertThat(Statistics.Z95).isCloseTo(normal.inverseCumulativeProbability(0.975), within(1e-9));
    assertThat(TwoSamples.Z99).isCloseTo(normal.inverseCumulativeProbability(0.995), within(1e-9));
  }
}
