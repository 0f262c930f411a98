package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.FloatRange;

class LimiterTest {
  @Property
  void noSumLeavesFullScaleAndNoOrderChanges(
      @ForAll @FloatRange(min = -8, max = 8) float one,
      @ForAll @FloatRange(min = -8, max = 8) float other) {
    float[] samples = {Math.min(one, other), Math.max(one, other)};
    Limiter.apply(samples, 2);
    assertThat(samples[0]).isBetween(-1f, 1f).isLessThanOrEqualTo(samples[1]);
    assertThat(samples[1]).isBetween(-1f, 1f);
  }

  @Property
  void aQuietSumStaysAsItIs(@ForAll @FloatRange(min = -0.7f, max = 0.7f) float sample) {
    float[] samples = {sample};
    Limiter.apply(samples, 1);
    assertThat(samples[0]).isEqualTo(sample);
  }
}
