package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class FramesTest {
  private static final BigInteger TWO_SECONDS = BigInteger.valueOf(2_000_000_000L);

  @Property
  void theFrameOfAnInstantIsTheNearest(
      @ForAll @LongRange(min = -1_000_000_000_000L, max = 10_000_000_000_000_000L) long nanos) {
    for (int rate : new int[] {44_100, 48_000}) {
      BigInteger[] parts =
          BigInteger.valueOf(nanos)
              .multiply(BigInteger.valueOf(2L * rate))
              .add(BigInteger.valueOf(1_000_000_000L))
              .divideAndRemainder(TWO_SECONDS);
      long floor = parts[0].longValueExact() - (parts[1].signum() < 0 ? 1 : 0);
      assertThat(Frames.at(nanos, rate)).isEqualTo(floor);
    }
  }

  @Property
  void aFrameAndItsInstantBelongTogether(
      @ForAll @LongRange(min = -100_000, max = 1_000_000_000_000L) long frame) {
    for (int rate : new int[] {44_100, 48_000}) {
      assertThat(Frames.at(Frames.nanosOf(frame, rate), rate)).isEqualTo(frame);
    }
  }
}
