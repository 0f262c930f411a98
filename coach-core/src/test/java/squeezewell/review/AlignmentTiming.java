package squeezewell.review;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.LongStream;

/**
 * Prints how long it takes to align 1,000, 10,000 and 100,000 prompts with as many breaths. Not a
 * test, since a machine may be busy. Run after {@code mvn test-compile -pl coach-core}:
 *
 * <pre>java -cp coach-core/target/classes:coach-core/target/test-classes \
 *     squeezewell.review.AlignmentTiming</pre>
 */
final class AlignmentTiming {
  private static final int RUNS = 9;

  private AlignmentTiming() {}

  public static void main(String[] args) {
    for (int count : new int[] {1_000, 10_000, 100_000}) {
      SplittableRandom random = new SplittableRandom(1);
      long[] prompts = LongStream.range(0, count).map(k -> k * 6_000_000_000L).toArray();
      long[] breaths =
          Arrays.stream(prompts)
              .map(p -> p + 250_000_000L + (long) (400_000_000L * random.nextGaussian()))
              .sorted()
              .toArray();
      double[] millis = new double[RUNS];
      int pairs = 0;
      for (int run = 0; run < RUNS; run++) {
        long start = System.nanoTime();
        pairs = Alignment.of(prompts, breaths).pairs().size();
        millis[run] = (System.nanoTime() - start) / 1e6;
      }
      System.out.printf(
          Locale.ROOT,
          "%,9d prompts: median %.1f ms of %d runs, %,d pairs%n",
          count,
          Statistics.median(millis).getAsDouble(),
          RUNS,
          pairs);
    }
  }
}
