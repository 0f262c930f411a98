package squeezewell.picture;

import java.util.Arrays;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.stream.LongStream;

/**
 * Bins of intervals for a histogram. Pure.
 *
 * <p>The width is that of Freedman and Diaconis (On the histogram as a density estimator, 1981):
 * twice the interquartile range over the cube root of the number, rounded up to one of a few widths
 * that people can read (our own choice), so that whole and half seconds are edges. Where the
 * quartiles are equal it is the width from which the rounding starts.
 *
 * @param widthNanos width of each bin
 * @param firstNanos lower edge of the first bin, a multiple of the width
 * @param counts how many intervals lie in each bin, its lower edge included
 * @param openEnd whether the last bin also holds all that is longer
 */
record HistogramBins(long widthNanos, long firstNanos, List<Integer> counts, boolean openEnd) {
  /** Widths to choose from, in milliseconds; each divides a second or is a number of them. */
  private static final long[] WIDTHS = {50, 100, 250, 500, 1000, 2000, 5000};

  private static final long MILLI = 1_000_000L;

  HistogramBins {
    counts = List.copyOf(counts);
  }

  /**
   * Counts intervals.
   *
   * @param nanos lengths, 0 or longer, in any order
   * @param longestNanos what is as long or longer goes into the last bin, which begins there or
   *     just below; above 0
   */
  static HistogramBins of(long[] nanos, long longestNanos) {
    long width = width(nanos, longestNanos);
    if (nanos.length == 0) {
      return new HistogramBins(width, 0, List.of(), false);
    }
    long last = longestNanos / width;
    long[] bins = Arrays.stream(nanos).map(each -> Math.min(last, each / width)).toArray();
    LongSummaryStatistics span = Arrays.stream(bins).summaryStatistics();
    List<Integer> counts =
        LongStream.rangeClosed(span.getMin(), span.getMax())
            .mapToObj(bin -> (int) Arrays.stream(bins).filter(each -> each == bin).count())
            .toList();
    return new HistogramBins(width, span.getMin() * width, counts, span.getMax() == last);
  }

  /** Where an interval is counted. */
  int binOf(long nanos) {
    return (int) Math.min(counts.size() - 1L, (nanos - firstNanos) / widthNanos);
  }

  long lowNanos(int bin) {
    return firstNanos + bin * widthNanos;
  }

  /** Freedman and Diaconis's width in nanoseconds, not rounded; 0 where the quartiles are equal. */
  static double exactWidthNanos(long[] nanos) {
    if (nanos.length == 0) {
      return 0;
    }
    long[] sorted = nanos.clone();
    Arrays.sort(sorted);
    double range = quantile(sorted, 0.75) - quantile(sorted, 0.25);
    return 2 * range / Math.cbrt(nanos.length);
  }

  private static long width(long[] nanos, long longestNanos) {
    double exact = exactWidthNanos(nanos);
    for (long width : WIDTHS) {
      // More than sixty bars could not be told apart on a phone (our own choice).
      if (width * MILLI >= exact && longestNanos / (width * MILLI) <= 60) {
        return width * MILLI;
      }
    }
    return WIDTHS[WIDTHS.length - 1] * MILLI;
  }

  /** Linear between order statistics: type 7 of Hyndman and Fan (1996). */
  private static double quantile(long[] sorted, double share) {
    double place = share * (sorted.length - 1);
    int below = (int) place;
    int above = Math.min(below + 1, sorted.length - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }
}
