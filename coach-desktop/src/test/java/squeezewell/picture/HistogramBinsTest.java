package squeezewell.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.junit.jupiter.api.Test;

class HistogramBinsTest {
  private static final long SECOND = 1_000_000_000L;

  @Test
  void theWidthIsThatOfFreedmanAndDiaconisWithTheQuartilesOfHipparchus() {
    SplittableRandom random = new SplittableRandom(3);
    for (int count : new int[] {1, 2, 5, 19, 100, 599}) {
      long[] nanos = random.longs(count, SECOND, 14 * SECOND).toArray();
      double[] values = Arrays.stream(nanos).asDoubleStream().toArray();
      Percentile quartile = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
      quartile.setData(values);
      double expected =
          2 * (quartile.evaluate(75) - quartile.evaluate(25)) * Math.pow(count, -1 / 3.0);
      assertThat(HistogramBins.exactWidthNanos(nanos)).isCloseTo(expected, within(10.0));
    }
  }

  @Test
  void theWidthIsRoundedUpToOneThatCanBeRead() {
    // Worked by hand: 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5: quartiles at places 1.75 and 5.25, so 5.875
    // and 7.625; 2 · 1.75 / 2 = 1.75 s, rounded up to 2 s. Edges at 4, 6, 8 s.
    long[] nanos = new long[8];
    for (int i = 0; i < 8; i++) {
      nanos[i] = 5 * SECOND + i * SECOND / 2;
    }
    assertThat(HistogramBins.exactWidthNanos(nanos)).isCloseTo(1.75e9, within(1.0));
    HistogramBins bins = HistogramBins.of(nanos, 14 * SECOND);
    assertThat(bins.widthNanos()).isEqualTo(2 * SECOND);
    assertThat(bins.firstNanos()).isEqualTo(4 * SECOND);
    assertThat(bins.counts()).containsExactly(2, 4, 2);
    assertThat(bins.openEnd()).isFalse();
  }

  @Test
  void aLowerEdgeBelongsToItsBinAndTheLastBinHoldsAllThatIsLonger() {
    // Equal quartiles; sixty bars at most, so 250 ms for an edge at 14 s.
    long[] nanos = {6 * SECOND, 6 * SECOND, 6 * SECOND, 6 * SECOND, 6 * SECOND, 90 * SECOND};
    HistogramBins bins = HistogramBins.of(nanos, 14 * SECOND);
    assertThat(bins.widthNanos()).isEqualTo(SECOND / 4);
    assertThat(bins.firstNanos()).isEqualTo(6 * SECOND);
    assertThat(bins.counts().get(0)).isEqualTo(5);
    assertThat(bins.counts()).hasSize(33);
    assertThat(bins.lowNanos(32)).isEqualTo(14 * SECOND);
    assertThat(bins.counts().get(32)).isEqualTo(1);
    assertThat(bins.openEnd()).isTrue();
    assertThat(bins.binOf(90 * SECOND)).isEqualTo(32);
  }

  @Test
  void everyIntervalIsCountedOnce() {
    SplittableRandom random = new SplittableRandom(5);
    for (int run = 0; run < 100; run++) {
      long[] nanos = random.longs(1 + random.nextInt(300), 0, 30 * SECOND).toArray();
      HistogramBins bins = HistogramBins.of(nanos, 2 * SECOND + random.nextLong(20 * SECOND));
      assertThat(bins.counts().stream().mapToInt(c -> c).sum()).isEqualTo(nanos.length);
      for (long each : nanos) {
        int bin = bins.binOf(each);
        assertThat(each).isGreaterThanOrEqualTo(bins.lowNanos(bin));
        assertThat(each < bins.lowNanos(bin + 1) || bin == bins.counts().size() - 1).isTrue();
      }
    }
    assertThat(HistogramBins.of(new long[0], SECOND).counts()).isEmpty();
  }
}
