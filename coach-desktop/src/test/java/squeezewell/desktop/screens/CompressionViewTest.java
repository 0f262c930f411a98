package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static squeezewell.desktop.screens.Practices.SECOND;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.CareKind;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

/** The compression pad. All values worked by hand. */
class CompressionViewTest {
  private static final long MS = 1_000_000L;

  private final Coach cycle = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY);
  private final Coach continuous = coach(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY);

  private static Coach coach(PatientGroup patient, Situation situation) {
    return new Coach(
        Practices.plan(Practices.protocol("aha-2025"), patient, situation, 0, 2),
        Journal.none(),
        List.of());
  }

  /** Compressions from an instant on, so many milliseconds apart; returns when the last was. */
  private static long compress(Coach coach, long fromMillis, int howMany, long apartMillis) {
    for (int i = 0; i < howMany; i++) {
      coach.command(Command.COMPRESS, (fromMillis + i * apartMillis) * MS);
    }
    return (fromMillis + (howMany - 1) * apartMillis) * MS;
  }

  private static CompressionView after(Coach coach, long lastNanos) {
    return CompressionView.of(coach.state(), lastNanos + 50 * MS);
  }

  /**
   * A newborn whose breathing came back: this edition has no rhythm for that, so there is only to
   * watch, on the running station and in a replay as on the live screen.
   */
  @Test
  void compressionsAreNotAskedForWhereThereIsOnlyToWatch() {
    Coach newborn = coach(PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(CompressionView.asked(newborn.state(), SECOND)).isTrue();
    newborn.find(PatientChange.BREATHING_BACK, 2 * SECOND);
    assertThat(newborn.state().course().care()).isEqualTo(CareKind.WATCH);
    assertThat(CompressionView.asked(newborn.state(), 3 * SECOND)).isFalse();
    assertThat(CompressionView.asked(cycle.state(), SECOND)).isTrue();
  }

  @Test
  void beforeTheFirstCompressionNothingIsCounted() {
    CompressionView view = CompressionView.of(cycle.state(), SECOND);
    assertThat(view).isEqualTo(new CompressionView(false, "", "", Judgement.UNJUDGED));
  }

  @Test
  void aRateNeedsTwoIntervals() {
    assertThat(after(cycle, compress(cycle, 0, 2, 550)).rate()).isEmpty();
    assertThat(after(cycle, compress(cycle, 1_100, 1, 550)).rate()).isNotEmpty();
  }

  @Test
  void theRateIsSixtySecondsOverTheMeanInterval() {
    // 60 / 0.555 s = 108.1 a minute; asked: 100 to 120 (American Heart Association, 2025).
    CompressionView view = after(cycle, compress(cycle, 0, 8, 555));
    assertThat(view.rate()).isEqualTo("108/min  in range");
    assertThat(view.judgement()).isEqualTo(Judgement.IN_RANGE);
    assertThat(view.count()).isEqualTo("8 so far");
    assertThat(view.lit()).isTrue();
  }

  @Test
  void tooFastAndTooSlowAreSaid() {
    // 60 / 0.48 s = 125 a minute, 60 / 0.64 s = 93.75 a minute.
    assertThat(after(cycle, compress(cycle, 0, 8, 480)).rate()).isEqualTo("125/min  fast");
    assertThat(after(continuous, compress(continuous, 0, 8, 640)).rate()).isEqualTo("94/min  slow");
  }

  @Test
  void theEndsOfTheRangeAreInRangeAsTheyAreRead() {
    assertThat(after(cycle, compress(cycle, 0, 8, 500)).rate()).isEqualTo("120/min  in range");
    // 60 / 0.498 s = 120.48, read as 120.
    assertThat(after(continuous, compress(continuous, 0, 8, 498)).rate())
        .isEqualTo("120/min  in range");
    Coach slow = coach(PatientGroup.CHILD, Situation.ARREST_ADVANCED_AIRWAY);
    assertThat(after(slow, compress(slow, 0, 8, 600)).rate()).isEqualTo("100/min  in range");
  }

  @Test
  void onlyTheLastTenIntervalsCount() {
    compress(continuous, 0, 11, 600);
    // The eleventh stands at 6 s; ten more, 0.5 s apart, begin half a second later.
    long last = compress(continuous, 6_500, 10, 500);
    assertThat(CompressionView.perMinute(continuous.state()).orElseThrow())
        .isCloseTo(120, within(1e-9));
    assertThat(after(continuous, last).count()).isEqualTo("21 so far");
  }

  @Test
  void aPauseForBreathsDoesNotSlowTheRate() {
    // 30 compressions 0.5 s apart end at 14.5 s; the breath at 15 s; go on at 15.9 s.
    compress(cycle, 0, 30, 500);
    cycle.command(Command.BREATH, 15_000 * MS);
    compress(cycle, 15_900, 5, 500);
    assertThat(CompressionView.perMinute(cycle.state()).orElseThrow()).isCloseTo(120, within(1e-9));
  }

  @Test
  void aBreathWithAnAdvancedAirwayDoesNotInterruptCompressions() {
    // Two intervals of 0.5 s and one of 0.8 s with a breath in it: 60 / 0.6 = 100 a minute.
    compress(continuous, 1_000, 2, 500);
    continuous.command(Command.BREATH, 1_700 * MS);
    compress(continuous, 2_300, 2, 500);
    assertThat(CompressionView.perMinute(continuous.state()).orElseThrow())
        .isCloseTo(100, within(1e-9));
  }

  @Test
  void theNewbornRhythmIsTwoIntervalsToABreath() {
    // Three compressions 0.5 s apart, then a breath: 1 s to the next three.
    Coach newborn = coach(PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY);
    for (int cycles = 0; cycles < 4; cycles++) {
      compress(newborn, cycles * 2_000L, 3, 500);
      newborn.command(Command.BREATH, (cycles * 2_000L + 1_500) * MS);
    }
    assertThat(CompressionView.perMinute(newborn.state()).orElseThrow())
        .isCloseTo(120, within(1e-9));
  }

  @Test
  void aBreakLongerThanACompressionCanBeIsNoInterval() {
    compress(continuous, 0, 4, 500);
    compress(continuous, 4_000, 4, 500);
    assertThat(CompressionView.perMinute(continuous.state()).orElseThrow())
        .isCloseTo(120, within(1e-9));
  }

  @Test
  void anOldRateIsNotShownAndNeitherIsOneInACheck() {
    long last = compress(continuous, 0, 8, 500);
    CompressionView old = CompressionView.of(continuous.state(), last + 10 * SECOND + 1);
    assertThat(old.rate()).isEmpty();
    assertThat(old.count()).isEqualTo("8 so far");
    assertThat(old.lit()).isFalse();
    continuous.command(Command.PULSE_CHECK, last + SECOND);
    assertThat(CompressionView.of(continuous.state(), last + 2 * SECOND).rate()).isEmpty();
  }
}
