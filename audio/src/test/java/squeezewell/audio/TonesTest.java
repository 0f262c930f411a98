package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What each of our sounds must be; the bounds are our own choice. */
class TonesTest {
  private static final double ONSET = 0.02;

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void eachSoundStartsAtOnceAndEndsInSilence(int rate) {
    for (float[] sound :
        List.of(
            Tones.fall(rate),
            Tones.count(rate, false),
            Tones.count(rate, true),
            Tones.tick(rate),
            Tones.chime(rate),
            Tones.call(rate),
            Tones.note(rate),
            Tones.close(rate))) {
      assertClean(sound);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void eachKindIsHeardFromItsFirstSampleAtItsUsualVolume(int rate) {
    for (SoundKind kind : SoundKind.values()) {
      if (kind != SoundKind.VOICE && kind != SoundKind.EXAMINER) {
        float[] sound = SoundSamples.render(kind, SoundLevels.defaults(), rate);
        assertThat(Math.abs(sound[0])).as(kind.label()).isGreaterThan((float) ONSET);
      }
    }
  }

  @Property(tries = 60)
  void aSwellEndsBeforeItsReleaseWhateverItsLength(
      @ForAll @DoubleRange(min = 0.2, max = 3) double s) {
    float[] swell = Tones.swell(48_000, s);
    assertClean(swell);
    assertThat(swell.length / 48_000.0).isLessThan(s - 0.03);
  }

  @Property(tries = 30)
  void aSwellGrowsLouder(@ForAll @DoubleRange(min = 0.5, max = 3) double seconds) {
    float[] swell = Tones.swell(48_000, seconds);
    assertThat(power(swell, 0.7, 0.9)).isGreaterThan(2 * power(swell, 0.1, 0.3));
  }

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aReleaseFallsAway(int rate) {
    float[] fall = Tones.fall(rate);
    assertThat(power(fall, 0.0, 0.3)).isGreaterThan(4 * power(fall, 0.6, 0.9));
  }

  /** At 110 a minute the next compression comes after 545 ms. */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aTickIsOverBeforeTheNextCompression(int rate) {
    assertThat(Tones.tick(rate).length).isLessThan(rate * 60 / 110);
    assertThat(Tones.count(rate, true).length).isLessThan(rate * 9 / 10);
  }

  private static void assertClean(float[] sound) {
    assertThat(Math.abs(sound[0])).isGreaterThan((float) ONSET);
    assertThat(sound[sound.length - 1]).isZero();
    double sum = 0;
    float last = sound[0];
    for (float sample : sound) {
      assertThat(Math.abs(sample)).isLessThan(0.75f);
      assertThat(Math.abs(sample - last)).as("no click inside").isLessThan(0.09f);
      last = sample;
      sum += sample;
    }
    assertThat(Math.abs(sum / sound.length)).as("direct current").isLessThan(1e-6);
  }

  private static double power(float[] sound, double from, double to) {
    double sum = 0;
    for (int i = (int) (from * sound.length); i < (int) (to * sound.length); i++) {
      sum += sound[i] * sound[i];
    }
    return sum;
  }
}
