package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;

/**
 * Spoken lines under the prompts. What a line adds is heard by mixing twice, with it and without;
 * volumes are low enough for the limiter to leave both as they are.
 */
class SpokenLinesTest {
  private static final int RATE = 48_000;
  private static final int BLOCK = 256;
  private static final long MILLI = 1_000_000L;
  private static final double VOLUME = 0.4;

  private static final PracticePlan PLAN =
      Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 0, 600 * Plans.SECOND, 0);
  private static final SoundLevels QUIET =
      SoundLevels.defaults()
          .withVolume(SoundKind.SQUEEZE, 0.2)
          .withVolume(SoundKind.RELEASE, 0.2)
          .withVolume(SoundKind.COUNT, 0.2)
          .withVolume(SoundKind.REMINDER, 0.2)
          .withVolume(SoundKind.VOICE, 0.2)
          .withVolume(SoundKind.EXAMINER, VOLUME);

  private final CueMixer mixer = new CueMixer(RATE, QUIET);
  private final CueMixer plain = new CueMixer(RATE, QUIET);

  @Test
  void aLineSoundsFromItsFrameOnAndEndsWithIt() {
    mixer.say(level(0.5, 1_000), 0, false);
    float[] added = added(2_000);
    assertThat(added[0]).isGreaterThan(0.1f);
    assertThat(added[RATE / 2]).isCloseTo((float) (0.5 * VOLUME), within(0.001f));
    assertThat(lastSound(added)).isEqualTo(RATE - 1);
  }

  @Test
  void aLineThatIsSaidLaterStartsOnThatFrame() {
    mixer.say(level(0.5, 500), 333 * MILLI, false);
    assertThat(firstSound(added(1_000))).isEqualTo(RATE * 333 / 1_000);
  }

  @ParameterizedTest
  @ValueSource(ints = {8_000, 11_025, 12_000, 16_000, 22_050, 44_100})
  void aLineOfAnyRateKeepsItsLength(int rate) {
    short[] samples = new short[rate];
    Arrays.fill(samples, (short) 16_384);
    mixer.say(new SpokenLine(samples, rate), 0, false);
    assertThat(lastSound(added(2_000))).isBetween(RATE - 10, RATE);
  }

  @Test
  void aSilentLineLeavesEverySampleOfThePromptsAsItIs() {
    publish();
    mixer.say(level(0, 20_000), 0, false);
    assertThat(added(20_000)).containsOnly(0f);
  }

  @Test
  void thePromptsKeepTheirFramesUnderALine() {
    publish();
    // From 1.2 s on: the line sounds when the second squeeze begins, at 6 s.
    mixer.say(level(0.5, 8_000), 1_200 * MILLI, false);
    float[] with = new float[10 * RATE];
    float[] without = new float[10 * RATE];
    mix(mixer, with);
    mix(plain, without);
    int squeeze = 6 * RATE;
    for (int i = squeeze - 20; i < squeeze + 20; i++) {
      // The line is a level, so what is left of the differences is the prompt itself.
      float step = with[i + 1] - with[i];
      float expected = without[i + 1] - without[i];
      assertThat(step).isCloseTo(expected, within(0.001f));
    }
    assertThat(without[squeeze + 1] - without[squeeze - 1]).as("it begins").isGreaterThan(0.01f);
  }

  @Test
  void aLineIsHalfAsLoudWhileASqueezeSounds() {
    publish();
    mixer.say(level(0.5, 12_000), 0, false);
    float[] added = added(12_000);
    float full = (float) (0.5 * VOLUME);
    assertThat(added[RATE / 2]).isCloseTo(full / 2, within(0.002f));
    assertThat(added[3 * RATE]).isCloseTo(full, within(0.002f));
    assertThat(added[6 * RATE + RATE / 2]).isCloseTo(full / 2, within(0.002f));
    assertThat(largestStep(Arrays.copyOfRange(added, RATE / 2, 11 * RATE)))
        .as("no click")
        .isLessThan(0.01f);
  }

  @Test
  void nothingClipsHoweverLoudItAllIs() {
    SoundLevels loud = SoundLevels.defaults();
    for (SoundKind kind : SoundKind.values()) {
      loud = loud.withVolume(kind, 1);
    }
    mixer.setLevels(loud.withCountStyle(CountStyle.SPOKEN));
    publish();
    float[] heard = new float[130 * RATE];
    for (int from = 0; from < heard.length; from += BLOCK) {
      if (from % RATE < BLOCK) {
        mixer.say(level(0.999, 900), Frames.nanosOf(from, RATE), false);
      }
      block(mixer, heard, from);
    }
    assertThat(peak(heard)).isBetween(0.9f, 0.98f);
  }

  @Test
  void twoLinesAreNeverHeardAtOnce() {
    mixer.say(level(0.5, 1_000), 0, false);
    mixer.say(level(0.25, 1_000), 0, false);
    float[] added = added(3_000);
    assertThat(peak(added)).isLessThan((float) (0.5 * VOLUME) * 1.2f);
    assertThat(added[RATE / 2]).isCloseTo((float) (0.5 * VOLUME), within(0.001f));
    assertThat(added[RATE + RATE / 8]).as("a pause between them").isZero();
    assertThat(added[RATE * 7 / 4]).isCloseTo((float) (0.25 * VOLUME), within(0.001f));
  }

  @Test
  void anUrgentLineCutsOneThatIsNotWithoutAClick() {
    mixer.say(level(0.5, 3_000), 0, false);
    float[] before = added(1_000);
    mixer.say(level(0.25, 1_000), 1_000 * MILLI, true);
    float[] after = added(3_000);
    assertThat(before[before.length - 1]).isCloseTo((float) (0.5 * VOLUME), within(0.001f));
    assertThat(largestStep(Arrays.copyOf(after, RATE / 10))).isLessThan(0.01f);
    assertThat(after[RATE / 10]).isZero();
    assertThat(after[RATE / 2]).isCloseTo((float) (0.25 * VOLUME), within(0.001f));
    assertThat(after[2 * RATE]).as("the cut line does not come back").isZero();
  }

  @Test
  void aLineThatCouldNotBeginInFiveSecondsIsDropped() {
    mixer.say(level(0.5, 6_000), 0, false);
    mixer.say(level(0.25, 1_000), 0, false);
    float[] added = added(9_000);
    assertThat(lastSound(added)).isLessThan(6 * RATE + 10);
    assertThat(mixer.silentFrames(RATE)).isEqualTo(RATE);
  }

  /** The pulse check is due every two minutes; its words come 0.55 s after its tone. */
  @Test
  void aLineGivesWayToTheCoachsWordsAndBeginsAgainAfterThem() {
    publish();
    mixTo(119_000);
    mixer.say(level(0.5, 3_000), 119_000 * MILLI, false);
    float[] added = added(9_000);
    int words = (int) (1.55 * RATE);
    int length = Phrase.CHECK_THE_PULSE.samples(RATE).length;
    assertThat(added[0]).as("it begins before the words are due").isZero();
    assertThat(peak(Arrays.copyOfRange(added, words, words + length))).isZero();
    assertThat(peak(Arrays.copyOfRange(added, words + length, words + length + RATE)))
        .isGreaterThan(0.05f);
  }

  @Test
  void aLineThatSoundsWhenTheCoachSpeaksFallsSilentBeforeItsFirstWord() {
    publish();
    mixTo(117_500);
    mixer.say(level(0.5, 4_000), 117_500 * MILLI, false);
    float[] added = added(10_000);
    int words = (int) ((2.5 + 0.55) * RATE);
    int length = Phrase.CHECK_THE_PULSE.samples(RATE).length;
    assertThat(added[RATE]).isGreaterThan(0.05f);
    assertThat(peak(Arrays.copyOfRange(added, words, words + length))).isZero();
  }

  @Test
  void hushedAtOnceAndForGood() {
    mixer.say(level(0.5, 3_000), 0, false);
    mixer.say(level(0.5, 3_000), 0, true);
    added(500);
    mixer.hush();
    float[] after = added(5_000);
    assertThat(after[0]).isGreaterThan(0.1f);
    assertThat(lastSound(after)).isLessThan(RATE / 20);
  }

  @Test
  void aMutedExaminerIsNotHeardAndDelaysNothing() {
    mixer.setLevels(QUIET.withMuted(SoundKind.EXAMINER, true));
    mixer.say(level(0.5, 3_000), 0, false);
    assertThat(lastSound(added(100))).isEqualTo(-1);
    mixer.setLevels(QUIET);
    assertThat(lastSound(added(4_000))).isEqualTo(-1);
  }

  private void publish() {
    mixer.publish(CueSchedule.of(PLAN));
    plain.publish(CueSchedule.of(PLAN));
  }

  private void mixTo(long millis) {
    int frames = (int) (millis * RATE / 1_000);
    mix(mixer, new float[frames]);
    mix(plain, new float[frames]);
  }

  /** What spoken lines add over the next time. */
  private float[] added(long millis) {
    float[] with = new float[(int) (millis * RATE / 1_000)];
    float[] without = new float[with.length];
    mix(mixer, with);
    mix(plain, without);
    for (int i = 0; i < with.length; i++) {
      with[i] -= without[i];
    }
    return with;
  }

  private static void mix(CueMixer from, float[] into) {
    for (int at = 0; at < into.length; at += BLOCK) {
      block(from, into, at);
    }
  }

  private static void block(CueMixer from, float[] into, int at) {
    float[] block = new float[BLOCK];
    int frames = Math.min(BLOCK, into.length - at);
    from.mix(block, frames);
    System.arraycopy(block, 0, into, at, frames);
  }

  /** A line that is one level for its whole length, so that its loudness can be read off. */
  private static SpokenLine level(double level, long millis) {
    short[] samples = new short[(int) (12 * millis)];
    Arrays.fill(samples, (short) Math.round(level * 32_768));
    return new SpokenLine(samples, 12_000);
  }

  private static int firstSound(float[] samples) {
    int at = 0;
    while (at < samples.length && Math.abs(samples[at]) < 1e-6) {
      at++;
    }
    return at;
  }

  private static int lastSound(float[] samples) {
    int at = samples.length - 1;
    while (at >= 0 && Math.abs(samples[at]) < 1e-6) {
      at--;
    }
    return at;
  }

  private static float peak(float[] samples) {
    float peak = 0;
    for (float sample : samples) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  private static float largestStep(float[] samples) {
    float step = 0;
    for (int i = 1; i < samples.length; i++) {
      step = Math.max(step, Math.abs(samples[i] - samples[i - 1]));
    }
    return step;
  }
}
