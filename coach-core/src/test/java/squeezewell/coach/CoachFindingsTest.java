package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.PulseCheckDue;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/**
 * Findings in the middle of a practice. Rates are those of AHA 2020: an adult with a pulse one
 * breath every 6 s; 30:2, our pace 110 a minute; a child one every 2 to 3 s, our pace 2.5 s. The
 * instants are worked by hand.
 */
class CoachFindingsTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long SECOND = TestPlans.SECOND;
  private static final Protocol EDITION = TestPlans.edition("aha-2020");

  private final MemoryJournal journal = new MemoryJournal();
  private final Recorder output = new Recorder();
  private Coach coach = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0);

  private Coach coach(PatientGroup patient, Situation situation, long leadMillis) {
    Guidance guidance = EDITION.find(patient, situation, 2).orElseThrow();
    return new Coach(
        PracticePlan.of(EDITION, guidance, 0, 300 * SECOND, leadMillis * MILLI),
        journal,
        List.of(output));
  }

  private void advance(long millis) {
    long to = millis * MILLI;
    while (coach.nextDueNanos().isPresent() && coach.nextDueNanos().getAsLong() < to) {
      coach.advance(coach.nextDueNanos().getAsLong());
    }
  }

  private void find(PatientChange finding, long millis) {
    advance(millis);
    coach.find(finding, millis * MILLI);
  }

  private void command(Command command, long millis) {
    advance(millis);
    coach.command(command, millis * MILLI);
  }

  private List<Long> squeezeMillis() {
    return output.instantsOf(CueKind.SQUEEZE).stream().map(n -> n / MILLI).toList();
  }

  @Test
  void aLostPulseStartsCompressionsAtOnceAndLeavesTheNextBreathOut() {
    find(PatientChange.PULSE_LOST, 14_200);
    advance(40_000);
    List<Long> compressions = output.instantsOf(CueKind.COMPRESS);
    assertThat(compressions.get(0)).isEqualTo(14_200 * MILLI);
    // 60 s / 110, and 30 of them: 16.3636... s.
    assertThat(compressions.get(1)).isEqualTo(14_200 * MILLI + 545_454_545L);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 30_563L, 32_563L);
    assertThat(journal.lines()).containsExactly("14200 finding pulse-lost");
    assertThat(coach.state().schedule().guidanceAt(15 * SECOND).situation())
        .isEqualTo(Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(coach.state().schedule().guidanceAt(14 * SECOND).situation())
        .isEqualTo(Situation.PULSE_NO_BREATHING);
  }

  @Test
  void theNewRhythmStartsTheLeadAfterTheCommandSoThatSoundIsInTime() {
    coach = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 35);
    find(PatientChange.PULSE_LOST, 14_200);
    advance(15_000);
    assertThat(output.instantsOf(CueKind.COMPRESS).get(0)).isEqualTo(14_235 * MILLI);
  }

  /** Sound has begun it by then; another right behind it would be heard as two. */
  @Test
  void aCueThatComesWithinTheLeadStaysWhereItIs() {
    coach = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 35);
    find(PatientChange.BREATHING_SLOW, 17_990);
    advance(25_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 18_000L, 24_000L);
    coach = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 35);
    // The twelfth compression stands at 11 x 60 / 110 s = 6 s, the first squeeze at 16.3636 s.
    output.cues.clear();
    find(PatientChange.ADVANCED_AIRWAY, 5_980);
    advance(6_600);
    assertThat(output.instantsOf(CueKind.COMPRESS).subList(11, 13))
        .containsExactly(6_000 * MILLI, 6_545_454_545L);
    coach = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 35);
    output.cues.clear();
    find(PatientChange.PULSE_BACK, 16_340);
    advance(23_000);
    assertThat(squeezeMillis()).containsExactly(16_363L, 22_363L);
  }

  @Test
  void aRhythmOfBreathsIsCountedOnFromTheLastSqueeze() {
    // 14.2 s is 2.2 s after the squeeze at 12 s: the next comes at 18 s, not at 14.2 s.
    find(PatientChange.BREATHING_SLOW, 14_200);
    advance(25_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 18_000L, 24_000L);
    // The counts run on without a gap: release at 13 s, then one a second.
    assertThat(output.cues.stream().filter(c -> c.atNanos() > 12 * SECOND).map(Cue::atNanos))
        .startsWith(13 * SECOND, 14 * SECOND, 15 * SECOND, 16 * SECOND, 17 * SECOND, 18 * SECOND);
  }

  @Test
  void aSqueezeThatIsBeingPromptedIsPromptedToItsEnd() {
    find(PatientChange.BREATHING_SLOW, 12_400);
    Cue squeeze =
        coach.state().schedule().between(12 * SECOND, 12 * SECOND + 1).stream()
            .filter(c -> c.kind() == CueKind.SQUEEZE)
            .findFirst()
            .orElseThrow();
    assertThat(squeeze.lengthNanos()).isEqualTo(SECOND);
    find(PatientChange.PULSE_LOST, 12_700);
    Cue cut =
        coach.state().schedule().between(12 * SECOND, 12 * SECOND + 1).stream()
            .filter(c -> c.kind() == CueKind.SQUEEZE)
            .findFirst()
            .orElseThrow();
    assertThat(cut.lengthNanos()).isEqualTo(700 * MILLI);
  }

  @Test
  void aPulseThatComesBackStopsCompressionsAndTheBreathsStartAtOnce() {
    coach = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 0);
    find(PatientChange.PULSE_BACK, 10_000);
    advance(17_000);
    assertThat(squeezeMillis()).containsExactly(10_000L, 16_000L);
    assertThat(output.instantsOf(CueKind.COMPRESS)).allMatch(at -> at < 10 * SECOND);
  }

  @Test
  void aPulseThatComesBackRightAfterABreathOfThePauseWaitsForTheInterval() {
    coach = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 0);
    // The second breath of the first pause stands at 16.3636 s + 2 s.
    find(PatientChange.PULSE_BACK, 19_000);
    advance(30_000);
    assertThat(squeezeMillis()).containsExactly(16_363L, 18_363L, 24_363L);
  }

  @Test
  void anAdvancedAirwayKeepsTheCompressionsInStep() {
    coach = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 0);
    // The eleventh compression stands at 10 / 110 min = 5.4545 s, the twelfth at 6 s.
    find(PatientChange.ADVANCED_AIRWAY, 5_700);
    advance(8_000);
    List<Long> compressions = output.instantsOf(CueKind.COMPRESS);
    for (int i = 1; i < compressions.size(); i++) {
      assertThat(compressions.get(i) - compressions.get(i - 1))
          .isBetween(545_454_544L, 545_454_547L);
    }
    // No breath was given yet, so the first comes at once.
    assertThat(squeezeMillis()).containsExactly(5_700L);
  }

  @Test
  void aPatientWhoBreathesWellAgainIsOnlyWatched() {
    find(PatientChange.BREATHING_BACK, 14_200);
    advance(60_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L);
    assertThat(coach.state().schedule().stretchAt(60 * SECOND).kind())
        .isEqualTo(Segment.Kind.WATCHING);
    command(Command.PULSE_CHECK, 61_000);
    command(Command.PULSE_CHECK_END, 67_000);
    assertThat(coach.state().schedule().stretchAt(68 * SECOND).kind())
        .isEqualTo(Segment.Kind.WATCHING);
    find(PatientChange.BREATHING_STOPPED, 70_000);
    advance(77_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 70_000L, 76_000L);
  }

  @Test
  void breathingThatStopsAgainSoonDoesNotBringTwoBreathsTogether() {
    find(PatientChange.BREATHING_BACK, 13_500);
    find(PatientChange.BREATHING_STOPPED, 15_000);
    advance(20_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 18_000L);
  }

  @Test
  void vomitStartsSuctionAndTheRhythmWaitsForItsEnd() {
    find(PatientChange.VOMIT, 14_200);
    assertThat(journal.lines()).containsExactly("14200 finding vomit", "14200 suction");
    find(PatientChange.BREATHING_SLOW, 16_000);
    assertThat(coach.state().schedule().stretchAt(17 * SECOND).kind())
        .isEqualTo(Segment.Kind.SUCTION);
    command(Command.SUCTION_END, 22_000);
    advance(29_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 22_000L, 28_000L);
    assertThat(coach.state().schedule().guidanceAt(23 * SECOND).situation())
        .isEqualTo(Situation.PULSE_SLOW_BREATHING);
  }

  @Test
  void vomitNotedInAPauseLeavesThePauseAlone() {
    command(Command.PAUSE, 14_000);
    find(PatientChange.VOMIT, 15_000);
    assertThat(journal.lines()).containsExactly("14000 pause", "15000 finding vomit");
    assertThat(coach.state().schedule().stretchAt(16 * SECOND).kind())
        .isEqualTo(Segment.Kind.PAUSED);
  }

  @Test
  void aLostPulseEndsSuctionSinceTheChestCannotWait() {
    find(PatientChange.VOMIT, 14_200);
    find(PatientChange.PULSE_LOST, 16_000);
    advance(17_000);
    assertThat(output.instantsOf(CueKind.COMPRESS).get(0)).isEqualTo(16 * SECOND);
  }

  @Test
  void aFindingOfACheckEndsTheCheck() {
    command(Command.PULSE_CHECK, 119_000);
    find(PatientChange.PULSE_LOST, 126_000);
    advance(127_000);
    assertThat(coach.state().schedule().stretchAt(126 * SECOND + 1).kind())
        .isEqualTo(Segment.Kind.PACED);
    assertThat(output.instantsOf(CueKind.COMPRESS).get(0)).isEqualTo(126 * SECOND);
  }

  @Test
  void aFindingWhilePausedWaitsForTheEndOfThePause() {
    command(Command.PAUSE, 14_000);
    find(PatientChange.PULSE_LOST, 20_000);
    advance(25_000);
    assertThat(output.instantsOf(CueKind.COMPRESS)).isEmpty();
    command(Command.RESUME, 25_000);
    advance(26_000);
    assertThat(output.instantsOf(CueKind.COMPRESS).get(0)).isEqualTo(25 * SECOND);
  }

  @Test
  void aSlipIsTakenBackWithinFiveSecondsAndTheOldRhythmGoesOnInStep() {
    find(PatientChange.PULSE_LOST, 14_200);
    command(Command.UNDO_FINDING, 16_000);
    advance(25_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 18_000L, 24_000L);
    assertThat(journal.lines())
        .containsExactly("14200 finding pulse-lost", "16000 finding-undone 1");
    assertThat(coach.state().findings().get(0).undone()).isTrue();
    assertThat(coach.state().undoable(17 * SECOND)).isEmpty();
    // It can't be taken back twice.
    command(Command.UNDO_FINDING, 26_000);
    assertThat(journal.lines()).hasSize(2);
  }

  @Test
  void aSlipCannotBeTakenBackLater() {
    find(PatientChange.PULSE_LOST, 14_200);
    assertThat(coach.state().undoable(19_200 * MILLI)).isPresent();
    assertThat(coach.state().undoable(19_201 * MILLI)).isEmpty();
    command(Command.UNDO_FINDING, 19_201);
    assertThat(journal.lines()).containsExactly("14200 finding pulse-lost");
  }

  @Test
  void vomitThatWasASlipEndsTheSuctionThatItStarted() {
    find(PatientChange.VOMIT, 14_200);
    command(Command.UNDO_FINDING, 15_000);
    assertThat(journal.lines())
        .containsExactly(
            "14200 finding vomit",
            "14200 suction",
            "15000 finding-undone 1",
            "15000 suction-end slip");
    advance(25_000);
    // As if there had been none: a breath every 6 s.
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 18_000L, 24_000L);
  }

  @Test
  void suctionThatWasBegunAgainAfterVomitGoesOnWhenThatIsTakenBack() {
    find(PatientChange.VOMIT, 14_200);
    command(Command.SUCTION_END, 15_000);
    command(Command.SUCTION, 16_000);
    command(Command.UNDO_FINDING, 17_000);
    assertThat(coach.state().schedule().stretchAt(18 * SECOND).kind())
        .isEqualTo(Segment.Kind.SUCTION);
    assertThat(journal.lines()).endsWith("16000 suction", "17000 finding-undone 1");
  }

  @Test
  void suctionThatALostPulseEndedIsResumedWhenThatIsTakenBack() {
    command(Command.SUCTION, 13_000);
    find(PatientChange.PULSE_LOST, 14_200);
    command(Command.UNDO_FINDING, 15_000);
    assertThat(journal.lines())
        .containsExactly(
            "13000 suction", "14200 finding pulse-lost", "15000 finding-undone 2", "15000 suction");
    command(Command.SUCTION_END, 20_000);
    advance(27_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 20_000L, 26_000L);
  }

  @Test
  void aCheckThatVomitEndedIsResumedWhenThatIsTakenBack() {
    command(Command.PULSE_CHECK, 119_000);
    find(PatientChange.VOMIT, 121_000);
    command(Command.UNDO_FINDING, 122_000);
    assertThat(coach.state().schedule().stretchAt(123 * SECOND).kind())
        .isEqualTo(Segment.Kind.PULSE_CHECK);
  }

  @Test
  void suctionThatRanBeforeVomitWasNotedGoesOnWhenThatIsTakenBack() {
    command(Command.SUCTION, 13_000);
    find(PatientChange.VOMIT, 14_200);
    command(Command.UNDO_FINDING, 15_000);
    assertThat(coach.state().schedule().stretchAt(16 * SECOND).kind())
        .isEqualTo(Segment.Kind.SUCTION);
  }

  @Test
  void adviceChangesNothingAboutTheRhythm() {
    find(PatientChange.NO_CHEST_RISE, 14_200);
    find(PatientChange.GAG, 15_200);
    advance(20_000);
    assertThat(squeezeMillis()).containsExactly(0L, 6_000L, 12_000L, 18_000L);
    assertThat(journal.lines()).containsExactly("14200 finding no-chest-rise", "15200 finding gag");
  }

  @Test
  void whatCannotBeFoundInThePatientIsNotNoted() {
    find(PatientChange.HEART_RATE_LOW, 14_200);
    assertThat(journal.lines()).isEmpty();
  }

  @Test
  void aChildWithASlowHeartIsCompressedFifteenToTwoByTwoRescuers() {
    coach = coach(PatientGroup.CHILD, Situation.PULSE_NO_BREATHING, 0);
    find(PatientChange.HEART_RATE_LOW, 10_100);
    advance(20_000);
    long first =
        output.instantsOf(CueKind.SQUEEZE).stream()
            .filter(at -> at > 10_100 * MILLI)
            .findFirst()
            .get();
    // 15 compressions at 110 a minute: 8.1818 s.
    assertThat(first).isEqualTo(10_100 * MILLI + 8_181_818_182L);
  }

  @Test
  void theNextPulseCheckIsDueAWholeSpacingAfterTheChange() {
    find(PatientChange.PULSE_LOST, 70_000);
    assertThat(coach.state().schedule().pulseChecks())
        .extracting(PulseCheckDue::dueNanos)
        .containsExactly(190 * SECOND);
  }

  @Test
  void aCheckThatWasAnnouncedBeforeTheChangeStaysAnnouncedButIsNotMissed() {
    find(PatientChange.PULSE_LOST, 115_000);
    assertThat(output.instantsOf(CueKind.PULSE_CHECK_SOON)).containsExactly(110 * SECOND);
    assertThat(coach.state().schedule().between(110 * SECOND, 110 * SECOND + 1))
        .anyMatch(c -> c.kind() == CueKind.PULSE_CHECK_SOON);
    assertThat(coach.state().schedule().pulseChecks())
        .extracting(PulseCheckDue::dueNanos)
        .containsExactly(235 * SECOND);
  }

  @Test
  void aRhythmThatTheEditionDoesNotHaveLeavesTheOldOneInForce() {
    // ERC 2025 as it is here has one rhythm for a child: the arrest.
    Protocol edition = TestPlans.edition("erc-2025");
    Guidance arrest =
        edition.find(PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY).orElseThrow();
    coach =
        new Coach(PracticePlan.of(edition, arrest, 0, 60 * SECOND, 0), journal, List.of(output));
    find(PatientChange.PULSE_BACK, 3_000);
    advance(4_000);
    assertThat(coach.state().schedule().guidanceAt(4 * SECOND)).isEqualTo(arrest);
    assertThat(coach.state().findings().get(0).after().covered()).isFalse();
  }
}
