package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

/** Checks: how they end, and what is written down about that. */
class CoachChecksTest {
  private static final long SECOND = TestPlans.SECOND;

  private final MemoryJournal journal = new MemoryJournal();
  private final Recorder output = new Recorder();

  private Coach coach(PatientGroup patient, Situation situation) {
    return coach("aha-2020", patient, situation);
  }

  private Coach coach(String edition, PatientGroup patient, Situation situation) {
    Protocol protocol = GuidelineLibrary.find(edition).get();
    PracticePlan plan =
        PracticePlan.of(
            protocol, protocol.find(patient, situation, 2).get(), 2, 0, 5 * TestPlans.MINUTE, 0);
    return new Coach(plan, journal, List.of(output));
  }

  private static void pass(Coach coach, double seconds) {
    long to = Math.round(seconds * SECOND);
    while (coach.nextDueNanos().isPresent() && coach.nextDueNanos().getAsLong() < to) {
      coach.advance(coach.nextDueNanos().getAsLong());
    }
    coach.advance(to);
  }

  private static void tell(Coach coach, Command command, double seconds) {
    pass(coach, seconds);
    coach.command(command, Math.round(seconds * SECOND));
  }

  private static void tell(Coach coach, CheckAnswer answer, double seconds) {
    pass(coach, seconds);
    coach.answer(answer, Math.round(seconds * SECOND));
  }

  @DisplayName(
      "in a rhythm check a squeeze is written down and ends nothing; a compression ends it")
  @Test
  void squeezeInARhythmCheck() {
    for (Situation arrest :
        List.of(Situation.ARREST_NO_ADVANCED_AIRWAY, Situation.ARREST_ADVANCED_AIRWAY)) {
      journal.events.clear();
      Coach coach = coach(PatientGroup.ADULT, arrest);
      tell(coach, Command.PULSE_CHECK, 1);
      tell(coach, Command.BREATH, 4);
      tell(coach, Command.SQUEEZE, 6);
      tell(coach, Command.SQUEEZE_END, 7);
      assertThat(kind(coach, 7)).isEqualTo(Segment.Kind.PULSE_CHECK);
      tell(coach, Command.COMPRESS, 8);
      assertThat(kind(coach, 8)).isEqualTo(Segment.Kind.PACED);
      assertThat(journal.lines())
          .containsExactly(
              "1000 pulse-check",
              "4000 breath",
              "6000 breath",
              "7000 breath-end",
              "8000 pulse-check-end compression",
              "8000 compression");
    }
  }

  @DisplayName("a pulse that returned ends a rhythm check and the compressions")
  @Test
  void pulseReturned() {
    Coach coach = coach(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY);
    tell(coach, Command.PULSE_CHECK, 1);
    tell(coach, CheckAnswer.PULSE_RETURNED, 8);
    assertThat(journal.lines())
        .containsExactly(
            "1000 pulse-check", "8000 pulse-check-end pulse-returned", "8000 finding pulse-back");
    assertThat(coach.state().schedule().guidanceAt(9 * SECOND).situation())
        .isEqualTo(Situation.PULSE_NO_BREATHING);
  }

  @DisplayName("a squeeze that ends a check never says that a pulse was felt")
  @Test
  void endedByASqueeze() {
    Coach coach = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    tell(coach, Command.PULSE_CHECK, 1);
    tell(coach, Command.SQUEEZE, 8);
    assertThat(journal.lines())
        .containsExactly("1000 pulse-check", "8000 pulse-check-end squeeze", "8000 breath");
  }

  @DisplayName("no pulse ends the check and starts CPR; pulse felt goes on with the breaths")
  @Test
  void answers() {
    Coach felt = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    tell(felt, Command.PULSE_CHECK, 1);
    tell(felt, CheckAnswer.PULSE_FELT, 8);
    assertThat(kind(felt, 8)).isEqualTo(Segment.Kind.PACED);
    assertThat(felt.state().findings()).isEmpty();
    // An answer to no check is none.
    tell(felt, CheckAnswer.NO_PULSE, 9);
    assertThat(journal.lines())
        .containsExactly("1000 pulse-check", "8000 pulse-check-end pulse-felt");
    journal.events.clear();
    Coach lost = coach(PatientGroup.CHILD, Situation.PULSE_NO_BREATHING);
    tell(lost, Command.PULSE_CHECK, 1);
    tell(lost, CheckAnswer.UNDER_60_POOR_PERFUSION, 8);
    assertThat(journal.lines())
        .containsExactly(
            "1000 pulse-check",
            "8000 pulse-check-end under-60-poor-perfusion",
            "8000 finding heart-rate-low");
    assertThat(lost.state().schedule().guidanceAt(9 * SECOND).rhythm().compressions()).isPresent();
  }

  @DisplayName(
      "what is offered: adult two answers, child and infant three, rhythm the pulse's return")
  @Test
  void offered() {
    assertThat(offered(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING))
        .containsExactly("No pulse", "Pulse felt");
    for (PatientGroup small : List.of(PatientGroup.CHILD, PatientGroup.INFANT)) {
      assertThat(offered(small, Situation.PULSE_NO_BREATHING))
          .containsExactly("No pulse", "Pulse felt", "Under 60, poor perfusion: CPR");
    }
    assertThat(offered(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY))
        .containsExactly("Pulse returned");
    Coach newborn = coach("nrp-8", PatientGroup.NEWBORN, Situation.NEWBORN_VENTILATION);
    assertThat(CheckAnswer.offered(newborn.state().schedule().inForceAt(0)))
        .extracting(CheckAnswer::label)
        .containsExactly("Under 60", "60 to 99", "100 or more");
  }

  private List<String> offered(PatientGroup patient, Situation situation) {
    return CheckAnswer.offered(coach(patient, situation).state().schedule().inForceAt(0)).stream()
        .map(CheckAnswer::label)
        .collect(Collectors.toList());
  }

  @DisplayName("a squeeze under 2 s into a check: not made, overdue until the next, none by itself")
  @Test
  void brokenOff() {
    Coach coach = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    pass(coach, 121);
    tell(coach, Command.PULSE_CHECK, 121);
    pass(coach, 122.9);
    tell(coach, Command.SQUEEZE, 122.9);
    tell(coach, Command.SQUEEZE_END, 124);
    pass(coach, 134);
    assertThat(coach.state().schedule().nextPulseCheckAt(134 * SECOND)).hasValue(120 * SECOND);
    assertThat(kind(coach, 134)).isEqualTo(Segment.Kind.PACED);
    pass(coach, 136);
    // It is told again as of any check that is overdue.
    assertThat(output.instantsOf(CueKind.PULSE_CHECK_DUE))
        .containsExactly(120 * SECOND, 135 * SECOND);
    tell(coach, Command.PULSE_CHECK, 137.3);
    pass(coach, 143);
    tell(coach, CheckAnswer.PULSE_FELT, 143.3);
    assertThat(coach.state().schedule().nextPulseCheckAt(144 * SECOND)).hasValue(257_300_000_000L);
  }

  @DisplayName("a check of 2 s is made, and the next is due two minutes after its start")
  @Test
  void madeFromTwoSeconds() {
    Coach coach = coach(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    tell(coach, Command.PULSE_CHECK, 121.3);
    tell(coach, Command.SQUEEZE, 123.3);
    assertThat(coach.state().schedule().nextPulseCheckAt(124 * SECOND)).hasValue(241_300_000_000L);
  }

  private static Segment.Kind kind(Coach coach, int second) {
    return coach.state().schedule().stretchAt(second * SECOND + 1).kind();
  }
}
