package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.cue.Segment;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;

class CoachCommandsTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long SECOND = TestPlans.SECOND;

  private final MemoryJournal journal = new MemoryJournal();
  private final Recorder output = new Recorder();
  private Coach coach = coach(TestPlans.everySixSeconds(TestPlans.MINUTE));

  private Coach coach(PracticePlan plan) {
    return new Coach(plan, journal, List.of(output));
  }

  private void command(Command command, long millis) {
    advance(millis);
    coach.command(command, millis * MILLI);
  }

  /** Lets time pass without a moment's delay. */
  private void advance(long millis) {
    long to = millis * MILLI;
    while (coach.nextDueNanos().isPresent() && coach.nextDueNanos().getAsLong() < to) {
      coach.advance(coach.nextDueNanos().getAsLong());
    }
  }

  @Test
  void aLateProcessDropsStaleCuesAndNotesTheHole() {
    advance(7_000);
    output.cues.clear();
    // Due meanwhile: 7 s (2.1 s late), 8 s (1.1 s), 9 s (100 ms).
    coach.advance(9_100 * MILLI);
    assertThat(output.cues).extracting(Cue::atNanos).containsExactly(9 * SECOND);
    assertThat(journal.lines()).containsExactly("9100 hole 2.1 s");
    // It is back in the rhythm.
    assertThat(coach.nextDueNanos()).hasValue(10 * SECOND);
  }

  @Test
  void aCueExactlyAQuarterOfASecondLateIsStillGivenAndALaterOneIsNot() {
    coach.advance(250 * MILLI);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).containsExactly(0L);
    coach.advance(1_250 * MILLI + 1);
    assertThat(output.instantsOf(CueKind.RELEASE)).isEmpty();
    assertThat(journal.events).isEmpty();
  }

  @Test
  void aSecondSqueezeWithinABouncingContactIsTheSameBreath() {
    command(Command.SQUEEZE, 100);
    command(Command.SQUEEZE_END, 150);
    command(Command.SQUEEZE, 200);
    assertThat(coach.state().squeezing()).isTrue();
    command(Command.SQUEEZE_END, 1_100);
    assertThat(coach.state().breaths()).hasSize(1);
    assertThat(coach.state().breaths().get(0).endNanos()).hasValue(1_100 * MILLI);
    assertThat(journal.lines()).containsExactly("100 breath", "150 breath-end", "1100 breath-end");
    // 200 ms after its start it is a breath of its own.
    command(Command.SQUEEZE, 2_000);
    command(Command.SQUEEZE_END, 2_100);
    command(Command.SQUEEZE, 2_200);
    assertThat(coach.state().breaths()).hasSize(3);
  }

  @Test
  void aHeldKeyThatRepeatsIsOneSqueeze() {
    command(Command.SQUEEZE, 100);
    for (int millis = 700; millis < 1_000; millis += 40) {
      command(Command.SQUEEZE, millis);
    }
    command(Command.SQUEEZE_END, 1_000);
    command(Command.SQUEEZE_END, 1_000);
    assertThat(journal.lines()).containsExactly("100 breath", "1000 breath-end");
  }

  @Test
  void aSqueezeInACheckEndsItAndTheRhythmGoesOnAtOnce() {
    command(Command.PULSE_CHECK, 10_000);
    command(Command.SQUEEZE, 17_300);
    assertThat(journal.lines())
        .containsExactly("10000 pulse-check", "17300 pulse-check-end squeeze", "17300 breath");
    assertThat(output.instantsOf(CueKind.SQUEEZE)).endsWith(17_300 * MILLI);
    advance(24_000);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).endsWith(17_300 * MILLI, 23_300 * MILLI);
  }

  @Test
  void aSqueezeInTheFirstMomentsOfACheckBelongsToWhatWentBefore() {
    command(Command.PULSE_CHECK, 10_000);
    command(Command.SQUEEZE, 10_299);
    assertThat(coach.state().schedule().stretchAt(11 * SECOND).kind())
        .isEqualTo(Segment.Kind.PULSE_CHECK);
    command(Command.SQUEEZE_END, 10_400);
    command(Command.SQUEEZE, 10_500);
    assertThat(journal.lines()).contains("10500 pulse-check-end squeeze");
  }

  @Test
  @DisplayName("A program that stands still in the test without prompts is written down")
  void standingStillIsNoticedWithNothingToPrompt() {
    PracticePlan test = TestPlans.everySixSeconds(5 * TestPlans.MINUTE).with(Prompting.NONE);
    List<SessionEvent> events = new ArrayList<>();
    Coach alone = new Coach(test, Journal.to(events::add), List.of());
    for (long at = 0; at <= 20 * SECOND; at = alone.nextDueNanos().getAsLong()) {
      alone.advance(at);
    }
    assertThat(events).noneMatch(e -> e.what() == EventType.HOLE);
    alone.advance(50 * SECOND);
    assertThat(events)
        .filteredOn(e -> e.what() == EventType.HOLE)
        .singleElement()
        .satisfies(e -> assertThat(e.atNanos()).isEqualTo(50 * SECOND));
  }

  @Test
  void aPauseStopsThePromptsAndMovesTheEnd() {
    command(Command.PAUSE, 20_000);
    assertThat(coach.nextDueNanos()).isEmpty();
    coach.advance(200 * SECOND);
    assertThat(coach.state().finished()).isFalse();
    assertThat(journal.lines()).containsExactly("20000 pause");
    coach.command(Command.RESUME, 230 * SECOND);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).endsWith(18 * SECOND, 230 * SECOND);
    advance(300_000);
    assertThat(journal.lines()).endsWith("230000 resume", "270000 finish");
    assertThat(output.instantsOf(CueKind.SESSION_END)).containsExactly(270 * SECOND);
  }

  @Test
  void finishingEndsAnOpenSqueezeAndTellsTheEnd() {
    command(Command.SQUEEZE, 6_100);
    command(Command.FINISH, 6_500);
    assertThat(journal.lines()).containsExactly("6100 breath", "6500 breath-end", "6500 finish");
    assertThat(coach.state().finished()).isTrue();
    assertThat(coach.state().squeezing()).isFalse();
    assertThat(output.instantsOf(CueKind.SESSION_END)).containsExactly(6_500 * MILLI);
    assertThat(coach.nextDueNanos()).isEmpty();
  }

  @Test
  void commandsAfterTheFinishChangeNothing() {
    command(Command.FINISH, 6_500);
    List<String> before = journal.lines();
    CoachState state = coach.state();
    for (Command command : Command.values()) {
      coach.command(command, 7 * SECOND);
    }
    coach.advance(100 * SECOND);
    assertThat(journal.lines()).isEqualTo(before);
    assertThat(coach.state()).isEqualTo(state);
  }

  @Test
  void theEndIsToldHoweverLateItIsNoticed() {
    advance(58_000);
    coach.advance(90 * SECOND);
    assertThat(output.instantsOf(CueKind.SESSION_END)).containsExactly(60 * SECOND);
    assertThat(coach.state().finished()).isTrue();
    assertThat(journal.lines()).containsExactly("90000 hole 32.0 s", "90000 finish");
  }

  @Test
  void aFinishInsideTheCountInEndsThePractice() {
    coach =
        coach(
            new PracticePlan(
                TestPlans.everySixSeconds(SECOND).guidance(), 5 * SECOND, TestPlans.MINUTE, 0));
    command(Command.FINISH, 2_500);
    assertThat(coach.state().schedule().endNanos()).hasValue(2_500 * MILLI);
    assertThat(output.instantsOf(CueKind.COUNT)).containsExactly(0L, SECOND, 2 * SECOND);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).isEmpty();
  }

  @Test
  void aCommandAtTheVeryEndComesTooLate() {
    advance(60_000);
    coach.command(Command.SQUEEZE, 60 * SECOND);
    assertThat(journal.lines()).containsExactly("60000 finish");
  }

  @Test
  void aBreathKeepsTheTimeOfItsKeyPressThoughItIsToldLater() {
    advance(6_000);
    coach.advance(6_300 * MILLI);
    coach.command(Command.SQUEEZE, 6_050 * MILLI);
    assertThat(journal.lines()).containsExactly("6050 breath");
    // But time in the journal never goes back.
    coach.command(Command.SQUEEZE_END, 6_000 * MILLI);
    assertThat(journal.lines()).containsExactly("6050 breath", "6050 breath-end");
  }

  @Test
  void aCheckToldLateStartsAfterTheCueThatWasGivenMeanwhile() {
    advance(6_000);
    coach.advance(6_100 * MILLI);
    coach.command(Command.PULSE_CHECK, 5_950 * MILLI);
    // The squeeze of 6 s was heard, so the review must know it.
    assertThat(journal.events).extracting(SessionEvent::atNanos).containsExactly(6 * SECOND + 1);
    assertThat(coach.state().schedule().squeezesUntil(7 * SECOND)).hasSize(2);
  }

  @Test
  void aRetractedBreathIsGoneAndTheJournalSaysSo() {
    command(Command.SQUEEZE, 100);
    command(Command.SQUEEZE_END, 1_000);
    command(Command.SQUEEZE, 3_000);
    command(Command.RETRACT_BREATH, 3_500);
    assertThat(coach.state().breaths()).hasSize(1);
    assertThat(journal.lines()).endsWith("3500 breath-end", "3500 retract 3");
    command(Command.RETRACT_BREATH, 4_000);
    command(Command.RETRACT_BREATH, 4_500);
    assertThat(coach.state().breaths()).isEmpty();
    assertThat(journal.lines()).endsWith("3500 retract 3", "4000 retract 1");
  }

  @Test
  void theLastIntervalIsNotTakenAcrossAHold() {
    command(Command.SQUEEZE, 0);
    command(Command.SQUEEZE_END, 1_000);
    command(Command.SQUEEZE, 6_200);
    command(Command.SQUEEZE_END, 7_000);
    assertThat(coach.state().lastIntervalNanos()).hasValue(6_200 * MILLI);
    command(Command.PULSE_CHECK, 8_000);
    command(Command.PULSE_CHECK_END, 14_000);
    command(Command.SQUEEZE, 14_100);
    assertThat(coach.state().lastIntervalNanos()).isEmpty();
  }

  @Test
  void lostSoundIsWrittenDownOnceAndSoIsItsReturn() {
    command(Command.SOUND_LOST, 1_000);
    command(Command.SOUND_LOST, 2_000);
    assertThat(coach.state().soundLost()).isTrue();
    command(Command.SOUND_BACK, 3_000);
    command(Command.SOUND_BACK, 4_000);
    assertThat(coach.state().soundLost()).isFalse();
    assertThat(journal.lines()).containsExactly("1000 sound-lost", "3000 sound-back");
  }

  @Test
  void aPracticeGoesOnWhenItCanNotBeSavedAndIsCaughtUpWhenItCan() {
    command(Command.SQUEEZE, 100);
    journal.full = true;
    command(Command.SQUEEZE_END, 1_000);
    command(Command.SQUEEZE, 6_100);
    assertThat(coach.state().trouble()).contains("not being saved", "no space left");
    assertThat(coach.state().breaths()).hasSize(2);
    assertThat(output.instantsOf(CueKind.SQUEEZE)).containsExactly(0L, 6 * SECOND);
    journal.full = false;
    command(Command.SQUEEZE_END, 7_000);
    assertThat(coach.state().trouble()).isEmpty();
    assertThat(journal.events).extracting(SessionEvent::number).containsExactly(1, 2, 3, 4);
  }

  @Test
  void whatHoldsBreathingUpEndsTheSqueezeFirst() {
    command(Command.SQUEEZE, 100);
    command(Command.PAUSE, 700);
    assertThat(coach.state().squeezing()).isFalse();
    assertThat(journal.lines()).containsExactly("100 breath", "700 breath-end", "700 pause");
  }

  @Test
  void absurdTimesDoNoHarm() {
    coach.command(Command.SQUEEZE, Long.MIN_VALUE);
    coach.command(Command.PAUSE, 1);
    coach.command(Command.RESUME, Long.MAX_VALUE);
    coach.advance(Long.MAX_VALUE);
    coach.command(Command.FINISH, Long.MAX_VALUE);
    assertThat(coach.state().finished()).isTrue();
    assertThat(journal.events)
        .extracting(SessionEvent::atNanos)
        .isSorted()
        .allMatch(at -> at >= 0 && at <= SessionEvent.LATEST_NANOS);
  }
}
