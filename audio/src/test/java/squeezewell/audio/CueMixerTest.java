package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Situation;

class CueMixerTest {
  private static final int RATE = 48_000;
  private static final long MILLI = 1_000_000L;
  private static final double JUMP = 0.1;

  /** What a change of rhythm may lead to. */
  private static final List<Guidance> RHYTHMS =
      Stream.of(
              Situation.ARREST_NO_ADVANCED_AIRWAY,
              Situation.PULSE_NO_BREATHING,
              Situation.ARREST_ADVANCED_AIRWAY,
              Situation.PULSE_SLOW_BREATHING)
          .map(s -> Plans.adult("aha-2020", s, Plans.SECOND).guidance())
          .toList();

  private static final PracticePlan PLAN =
      Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 0, 600 * Plans.SECOND, 30 * MILLI);
  private static final SoundLevels NO_VOICE =
      SoundLevels.defaults().withMuted(SoundKind.VOICE, true);

  private final CueMixer mixer = new CueMixer(RATE, NO_VOICE);

  @Test
  void aPauseInMidSwellFadesWithoutAClickAndThenIsSilent() {
    mixer.publish(CueSchedule.of(PLAN));
    float[] before = mix(500 * MILLI);
    mixer.publish(schedule(new Control(480 * MILLI, Control.Kind.PAUSE)));
    float[] after = mix(3_000 * MILLI);
    assertThat(Math.abs(before[before.length - 1])).as("it sounds").isGreaterThan(0);
    assertThat(largestStep(before[before.length - 1], after)).isLessThan(0.05f);
    float[] rest = Arrays.copyOfRange(after, RATE / 90, after.length);
    assertThat(peak(rest)).isZero();
    assertThat(peak(Arrays.copyOf(after, RATE / 200)))
        .as("it fades, not stops")
        .isGreaterThan(0.05f);
  }

  @Test
  void aPlannedPauseCutsTheSwellInTheSamePlace() {
    mixer.publish(schedule(new Control(500 * MILLI, Control.Kind.PAUSE)));
    float[] cut = mix(2_000 * MILLI);
    assertThat(largestStep(cut[0], cut)).isLessThan(0.05f);
    assertThat(peak(Arrays.copyOfRange(cut, RATE * 511 / 1_000, cut.length))).isZero();
    assertThat(peak(Arrays.copyOfRange(cut, RATE * 49 / 100, RATE / 2))).isGreaterThan(0.1f);
  }

  @Test
  void aSqueezeCreatedJustBehindThePositionStartsAtOnce() {
    Control suction = new Control(2_000 * MILLI, Control.Kind.SUCTION);
    mixer.publish(schedule(suction));
    mix(4_000 * MILLI);
    mixer.publish(schedule(suction, new Control(3_910 * MILLI, Control.Kind.SUCTION_END)));
    float[] heard = mix(500 * MILLI);
    assertThat(Math.abs(heard[0])).isGreaterThan(0.1f);
    assertThat(onsets(heard)).containsExactly(0L);
  }

  @Test
  void aSqueezeCreatedTooFarBehindIsDropped() {
    Control suction = new Control(2_000 * MILLI, Control.Kind.SUCTION);
    mixer.publish(schedule(suction));
    mix(4_000 * MILLI);
    mixer.publish(schedule(suction, new Control(3_850 * MILLI, Control.Kind.SUCTION_END)));
    assertThat(peak(mix(500 * MILLI))).isZero();
  }

  /** A cue 10 ms late, and one exactly where the next block begins. */
  @Test
  void aScheduleToldTwiceInTheSamePlaceIsHeardOnce() {
    Control suction = new Control(2_000 * MILLI, Control.Kind.SUCTION);
    for (long resumed : new long[] {3_960, 3_970}) {
      CueMixer twice = new CueMixer(RATE, NO_VOICE);
      CueMixer once = new CueMixer(RATE, NO_VOICE);
      CueSchedule held = schedule(suction);
      CueSchedule changed =
          schedule(suction, new Control(resumed * MILLI, Control.Kind.SUCTION_END));
      for (CueMixer each : List.of(twice, once)) {
        each.publish(held);
        mix(each, 4_000 * MILLI);
        each.publish(changed);
      }
      twice.publish(changed);
      float[] heard = mix(twice, 1_500 * MILLI);
      assertThat(heard).isEqualTo(mix(once, 1_500 * MILLI));
      assertThat(onsets(heard)).hasSize(2);
    }
  }

  @Test
  void aPulseCheckInTheLastMomentTakesBackTheSqueezeThatWasWritten() {
    mixer.publish(CueSchedule.of(PLAN));
    mix(6_020 * MILLI);
    mixer.publish(schedule(new Control(5_990 * MILLI, Control.Kind.PULSE_CHECK)));
    float[] heard = mix(900 * MILLI);
    assertThat(peak(Arrays.copyOfRange(heard, RATE / 90, heard.length))).isZero();
  }

  @Test
  void aHoleRejoinsTheRhythmWithoutABurst() {
    mixer.publish(CueSchedule.of(PLAN));
    mix(1_500 * MILLI);
    mixer.jumpTo(mixer.frameAt(3_600_000 * MILLI / 10 + 500 * MILLI));
    assertThat(onsets(mix(2_000 * MILLI))).containsExactly(RATE / 2L, RATE * 3L / 2);
  }

  @Test
  void aCueAtMostATenthOfASecondInAHoleIsGivenLate() {
    mixer.publish(CueSchedule.of(PLAN));
    mix(5_980 * MILLI);
    mixer.jumpTo(mixer.frameAt(6_040 * MILLI));
    assertThat(onsets(mix(500 * MILLI))).containsExactly(0L);
  }

  @Test
  void levelsChangeWithoutAClick() {
    mixer.publish(CueSchedule.of(PLAN));
    float[] before = mix(700 * MILLI);
    mixer.setLevels(NO_VOICE.withAllMuted(true));
    float[] after = mix(200 * MILLI);
    assertThat(largestStep(before[before.length - 1], after)).isLessThan(0.05f);
    assertThat(peak(Arrays.copyOfRange(after, RATE / 50, after.length))).isZero();
  }

  @Test
  void nothingClipsWithEverythingAtItsLoudest() {
    SoundLevels loud = SoundLevels.defaults().withCountStyle(CountStyle.SPOKEN);
    for (SoundKind kind : SoundKind.values()) {
      loud = loud.withVolume(kind, 1);
    }
    CueMixer loudMixer = new CueMixer(RATE, loud);
    loudMixer.publish(
        CueSchedule.of(
            Plans.adult("aha-2020", Situation.ARREST_ADVANCED_AIRWAY, 150 * Plans.SECOND)));
    float[] block = new float[RATE];
    float most = 0;
    for (int second = 0; second < 155; second++) {
      loudMixer.mix(block, block.length);
      most = Math.max(most, peak(block));
    }
    assertThat(most).isBetween(0.7f, 0.99f);
  }

  @Test
  void countsAreSilentOrSpokenAsAsked() {
    CueMixer silent = new CueMixer(RATE, NO_VOICE.withCountStyle(CountStyle.SILENT));
    silent.publish(CueSchedule.of(PLAN));
    assertThat(onsets(mix(silent, 6_000 * MILLI))).containsExactly(0L, (long) RATE);
    SoundLevels levels = SoundLevels.defaults().withCountStyle(CountStyle.SPOKEN);
    CueMixer spoken = new CueMixer(RATE, levels.withMuted(SoundKind.COUNT, true));
    spoken.publish(CueSchedule.of(PLAN));
    mix(spoken, 1_950 * MILLI);
    assertThat(peak(mix(spoken, 500 * MILLI))).isGreaterThan(0.2f);
  }

  /**
   * After two minutes of three, at the same instant a squeeze, a pulse check that is due and the
   * last minute: the words follow each other, and a count that would be talked over is left out.
   */
  @Test
  void wordsNeverTalkOverEachOther() {
    SoundLevels words = SoundLevels.defaults().withCountStyle(CountStyle.SPOKEN);
    for (SoundKind kind : SoundKind.values()) {
      words = words.withMuted(kind, kind != SoundKind.VOICE);
    }
    CueMixer spoken = new CueMixer(RATE, words);
    spoken.publish(
        CueSchedule.of(Plans.adult("aha-2020", Situation.PULSE_NO_BREATHING, 180 * Plans.SECOND)));
    spoken.jumpTo(120L * RATE - RATE / 10);
    mix(spoken, 100 * MILLI);
    float[] heard = mix(spoken, 3_900 * MILLI);

    float[] wanted = new float[heard.length];
    put(wanted, 0, Phrase.SQUEEZE);
    int check = RATE * 55 / 100;
    put(wanted, check, Phrase.CHECK_THE_PULSE);
    put(wanted, check + Phrase.CHECK_THE_PULSE.samples(RATE).length, Phrase.ONE_MINUTE);
    put(wanted, 2 * RATE, Phrase.THREE);
    put(wanted, 3 * RATE, Phrase.FOUR);
    for (int i = 0; i < wanted.length; i++) {
      assertThat(Math.abs(heard[i] - wanted[i])).as("frame " + i).isLessThan(1e-4f);
    }
  }

  private static void put(float[] track, int from, Phrase phrase) {
    float[] words = phrase.samples(RATE);
    float gain = (float) SoundLevels.defaults().gain(SoundKind.VOICE);
    for (int i = 0; i < words.length; i++) {
      track[from + i] += gain * words[i];
    }
  }

  /** The same samples whatever the sizes of the blocks, also if the schedule is told again. */
  @Property(tries = 25)
  void theSizeOfTheBlocksAndTellingAgainChangeNothing(
      @ForAll @Size(min = 20, max = 60) List<@IntRange(min = 1, max = 9_000) Integer> sizes) {
    CueSchedule schedule = CueSchedule.of(PLAN);
    int total = sizes.stream().mapToInt(Integer::intValue).sum();
    CueMixer whole = new CueMixer(RATE, NO_VOICE);
    whole.publish(schedule);
    float[] wanted = new float[total];
    whole.mix(wanted, total);
    CueMixer parts = new CueMixer(RATE, NO_VOICE);
    parts.publish(schedule);
    int at = 0;
    for (int size : sizes) {
      float[] part = new float[size];
      parts.mix(part, size);
      assertThat(part).isEqualTo(Arrays.copyOfRange(wanted, at, at + size));
      parts.publish(schedule);
      at += size;
    }
  }

  /** Whatever is commanded and whenever: no click, no overflow, nothing given twice. */
  @Property(tries = 40)
  void commandsNeverClickNorDouble(
      @ForAll @Size(min = 1, max = 8) List<@LongRange(min = 20, max = 4_000) Long> gapsMillis,
      @ForAll @Size(8) List<Control.Kind> kinds,
      @ForAll @IntRange(min = 0, max = 60) int aheadMillis) {
    CueMixer changing = new CueMixer(RATE, NO_VOICE);
    CueSchedule schedule = CueSchedule.of(PLAN);
    changing.publish(schedule);
    OnsetFinder finder = new OnsetFinder(JUMP, 0);
    long now = 0;
    for (int i = 0; i < gapsMillis.size(); i++) {
      now += gapsMillis.get(i) * MILLI;
      advance(changing, now + aheadMillis * MILLI, finder);
      Control control =
          kinds.get(i) == Control.Kind.CHANGE
              ? Control.change(now, RHYTHMS.get(i % RHYTHMS.size()))
              : new Control(now, kinds.get(i));
      schedule = schedule.with(control);
      changing.publish(schedule);
    }
    advance(changing, now + 8_000 * MILLI, finder);
    List<Long> onsets = finder.onsets();
    for (int i = 1; i < onsets.size(); i++) {
      // Two cues are never closer than this unless a command made a new one.
      assertThat(onsets.get(i)).isNotEqualTo(onsets.get(i - 1) + 1);
    }
    long cues =
        schedule.between(0, now + 8_000 * MILLI).stream().map(c -> c.atNanos()).distinct().count();
    assertThat((long) onsets.size()).isLessThanOrEqualTo(cues + 2L * gapsMillis.size());
  }

  private static void advance(CueMixer mixer, long toNanos, OnsetFinder finder) {
    int frames = (int) (mixer.frameAt(toNanos) - mixer.position());
    if (frames > 0) {
      float[] block = new float[frames];
      mixer.mix(block, frames);
      assertThat(peak(block)).isLessThan(1);
      finder.samples(block, frames);
    }
  }

  private static CueSchedule schedule(Control... controls) {
    return CueSchedule.of(PLAN, List.of(controls));
  }

  private float[] mix(long nanos) {
    return mix(mixer, nanos);
  }

  private static float[] mix(CueMixer mixer, long nanos) {
    float[] block = new float[(int) (nanos * RATE / Plans.SECOND)];
    mixer.mix(block, block.length);
    return block;
  }

  private static List<Long> onsets(float[] samples) {
    OnsetFinder finder = new OnsetFinder(JUMP, 100);
    finder.samples(samples, samples.length);
    return new ArrayList<>(finder.onsets());
  }

  private static float peak(float[] samples) {
    float peak = 0;
    for (float sample : samples) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  private static float largestStep(float before, float[] samples) {
    float most = 0;
    float last = before;
    for (float sample : samples) {
      most = Math.max(most, Math.abs(sample - last));
      last = sample;
    }
    return most;
  }
}
