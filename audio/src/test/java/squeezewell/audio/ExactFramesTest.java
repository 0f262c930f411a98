package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;

/**
 * Every cue of a day starts on its exact frame. The frames asked for are computed here from whole
 * fractions, the frames heard are found in the samples.
 */
class ExactFramesTest {
  private static final long DAY_SECONDS = HeardDay.SECONDS;
  private static final double JUMP = 0.1;

  /** Adult with a pulse: one breath every 6 s (AHA 2020), squeeze 1 s, counts each second. */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aDayOfBreathsEverySixSeconds(int rate) {
    SortedSet<Long> asked = new TreeSet<>();
    for (long k = 0; k < DAY_SECONDS; k++) {
      asked.add(frame(k, 1, rate));
    }
    assertHeard("aha-2020", Situation.PULSE_NO_BREATHING, rate, asked, Set.of());
  }

  /**
   * One breath every 5.5 s (middle of the 5 to 6 s of AHA 2015), squeeze 1 s; the counts part the
   * rest into five of 0.9 s.
   */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aDayOfBreathsEveryFiveAndAHalfSeconds(int rate) {
    SortedSet<Long> asked = new TreeSet<>();
    for (long k = 0; 55 * k < 10 * DAY_SECONDS; k++) {
      for (long tenths : new long[] {0, 10, 19, 28, 37, 46}) {
        if (55 * k + tenths < 10 * DAY_SECONDS) {
          asked.add(frame(55 * k + tenths, 10, rate));
        }
      }
    }
    assertHeard("aha-2015", Situation.PULSE_NO_BREATHING, rate, asked, Set.of(SoundKind.REMINDER));
  }

  /** 110 compressions a minute and a breath every 6 s, advanced airway (AHA 2020). */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aDayOfCompressionsAtOneHundredAndTen(int rate) {
    SortedSet<Long> asked = new TreeSet<>();
    for (long k = 0; 60 * k < 110 * DAY_SECONDS; k++) {
      asked.add(frame(60 * k, 110, rate));
    }
    assertHeard(
        "aha-2020",
        Situation.ARREST_ADVANCED_AIRWAY,
        rate,
        asked,
        Set.of(SoundKind.SQUEEZE, SoundKind.RELEASE, SoundKind.COUNT, SoundKind.REMINDER));
    for (long k = 0; k < DAY_SECONDS; k++) {
      asked.add(frame(k, 1, rate));
    }
    assertHeard(
        "aha-2020", Situation.ARREST_ADVANCED_AIRWAY, rate, asked, Set.of(SoundKind.REMINDER));
  }

  private static void assertHeard(
      String edition, Situation situation, int rate, SortedSet<Long> asked, Set<SoundKind> muted) {
    PracticePlan plan = Plans.adult(edition, situation, DAY_SECONDS * Plans.SECOND);
    SoundLevels levels = SoundLevels.defaults().withMuted(SoundKind.VOICE, true);
    for (SoundKind kind : muted) {
      levels = levels.withMuted(kind, true);
    }
    CueMixer mixer = new CueMixer(rate, levels);
    mixer.publish(CueSchedule.of(plan));
    List<Long> heard = HeardDay.onsets(mixer, new OnsetFinder(JUMP, rate / 50));
    List<Long> wanted = HeardDay.kept(asked, rate);
    assertThat(heard).hasSameSizeAs(wanted);
    assertThat(heard.equals(wanted)).as("all on their frames").isTrue();
  }

  /** The frame nearest to a fraction of a second, by whole numbers alone. */
  private static long frame(long numerator, long denominator, int rate) {
    BigInteger twice = BigInteger.valueOf(2).multiply(BigInteger.valueOf(denominator));
    return BigInteger.valueOf(numerator)
        .multiply(BigInteger.valueOf(2L * rate))
        .add(BigInteger.valueOf(denominator))
        .divide(twice)
        .longValueExact();
  }
}
