package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** Against a walk through all values. */
class InOrderTest {
  private static long[] values(Random random, int size) {
    long[] values = random.longs(size, -20, 20).sorted().toArray();
    if (size > 0 && random.nextInt(4) == 0) {
      values[0] = Long.MIN_VALUE;
      values[size - 1] = Long.MAX_VALUE;
    }
    return values;
  }

  @Test
  void eachPlaceIsTheOneThatAWalkThroughAllFinds() {
    Random random = new Random(3);
    for (int run = 0; run < 2_000; run++) {
      long[] values = values(random, random.nextInt(40));
      long[] limits = {Long.MIN_VALUE, random.nextInt(44) - 22, 0, Long.MAX_VALUE};
      for (long limit : limits) {
        assertThat(InOrder.countBefore(values.length, i -> values[i], limit))
            .isEqualTo((int) Arrays.stream(values).filter(v -> v < limit).count());
        assertThat(InOrder.countUpTo(values.length, i -> values[i], limit))
            .isEqualTo((int) Arrays.stream(values).filter(v -> v <= limit).count());
      }
    }
  }

  /** Halving a million places to none takes twenty steps, since 2^20 is 1,048,576. */
  @Test
  void aMillionValuesAreLookedAtTwentyTimesAtMost() {
    for (long limit : new long[] {-1, 0, 123_456, 999_999, 1_000_000}) {
      AtomicInteger looks = new AtomicInteger();
      InOrder.countBefore(
          1_000_000,
          i -> {
            looks.incrementAndGet();
            return i;
          },
          limit);
      assertThat(looks.get()).isBetween(1, 20);
    }
  }
}
