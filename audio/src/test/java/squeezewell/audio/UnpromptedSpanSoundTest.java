package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;

/**
 * Prompts that fall silent and come back, as sound, frame by frame and with every kind of sound on.
 * An adult is breathed for every 6 s (AHA 2020), squeezed for 1 s: the breath of the prompt at 12 s
 * comes at 12.3 s, so its release at 13 s still sounds and the count at 14 s does not. The breath
 * at 40.7 s brings the prompts back: its release is due one second later.
 */
class UnpromptedSpanSoundTest {
  private static final int RATE = 48_000;
  private static final long MILLI = 1_000_000L;

  private static final PracticePlan PLAN =
      Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 600 * Plans.SECOND);

  private final List<Control> controls = new ArrayList<>();
  private final CueMixer mixer;

  UnpromptedSpanSoundTest() {
    mixer = new CueMixer(RATE, SoundLevels.defaults());
    mixer.publish(CueSchedule.of(PLAN));
  }

  private void tell(long millis, Control.Kind kind) {
    controls.add(new Control(millis * MILLI, kind));
    mixer.publish(CueSchedule.of(PLAN, controls));
  }

  private float[] mixTo(long millis) {
    float[] heard = new float[(int) (millis * RATE / 1_000 - mixer.position())];
    float[] block = new float[480];
    for (int at = 0; at < heard.length; at += block.length) {
      int frames = Math.min(block.length, heard.length - at);
      mixer.mix(block, frames);
      System.arraycopy(block, 0, heard, at, frames);
    }
    return heard;
  }

  private static int firstSound(float[] heard) {
    int at = 0;
    while (at < heard.length && heard[at] == 0) {
      at++;
    }
    return at;
  }

  @ParameterizedTest
  @EnumSource(CountStyle.class)
  void nothingIsHeardInASilenceAndTheReleaseIsBackOnItsFrame(CountStyle style) {
    mixer.setLevels(SoundLevels.defaults().withCountStyle(style));
    mixTo(12_340);
    tell(12_300, Control.Kind.PROMPTS_OFF);
    float[] release = mixTo(14_000);
    assertThat(firstSound(Arrays.copyOfRange(release, RATE * 660 / 1_000, release.length)))
        .as("the release at 13 s still sounds")
        .isLessThanOrEqualTo(1);
    float[] silent = mixTo(40_740);
    assertThat(firstSound(silent)).isEqualTo(silent.length);
    tell(40_700, Control.Kind.PROMPTS_ON);
    // Due 41.7 s; a sound may begin with a sample of zero.
    int waits = firstSound(mixTo(43_000));
    assertThat(waits - (41_700 - 40_740) * RATE / 1_000).isBetween(0, 1);
  }

  /** Sample for sample what is heard after a breath that was prompted, some forty seconds later. */
  @Test
  void whatComesBackIsTheSameRhythmCountedFromTheBreath() {
    float[] plain = mixTo(20_000);
    CueMixer other = new CueMixer(RATE, SoundLevels.defaults());
    other.publish(
        CueSchedule.of(
            PLAN,
            List.of(
                new Control(12_300 * MILLI, Control.Kind.PROMPTS_OFF),
                new Control(40_700 * MILLI, Control.Kind.PROMPTS_ON))));
    float[] heard = new float[62 * RATE];
    float[] block = new float[480];
    for (int at = 0; at < heard.length; at += block.length) {
      other.mix(block, block.length);
      System.arraycopy(block, 0, heard, at, block.length);
    }
    // From the count at 2 s to before the count at 20 s, and 40.7 s later.
    float[] from = Arrays.copyOfRange(plain, 2 * RATE, 20 * RATE);
    int back = 42_700 * RATE / 1_000;
    float largest = 0;
    for (int i = 0; i < from.length; i++) {
      largest = Math.max(largest, Math.abs(heard[back + i] - from[i]));
    }
    // Sums of floats may differ in their last places.
    assertThat(largest).isLessThan(1e-5f);
    assertThat(firstSound(from)).isLessThanOrEqualTo(1);
  }

  @Test
  void limitsAreHeardInASilence() {
    mixTo(12_340);
    tell(12_300, Control.Kind.PROMPTS_OFF);
    mixTo(20_040);
    tell(20_000, Control.Kind.SUCTION);
    // The warning comes 5 s before the limit of 15 s (AHA 2020 file), the limit at 35 s.
    float[] before = mixTo(30_000);
    assertThat(firstSound(before)).isEqualTo(before.length);
    float[] soon = mixTo(31_000);
    assertThat(firstSound(soon)).isLessThan(soon.length);
    mixTo(35_000);
    float[] limit = mixTo(36_000);
    assertThat(firstSound(limit)).isLessThan(limit.length);
  }
}
