package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

/**
 * What `drill` writes for each kind of cue in each situation. After a check compressions are
 * resumed at once where there are any (AHA 2020, adult basic life support); which breaths or
 * compressions follow is the schedule's, tested there.
 */
class DrillWordsTest {
  private static final long SECOND = 1_000_000_000L;

  private final CliRun.Screen paper = new CliRun.Screen();
  private final DrillScreen screen = new DrillScreen(paper.around(), true, () -> "");

  private Coach start(String id, PatientGroup patient, Situation situation, int rescuers) {
    Protocol edition =
        GuidelineLibrary.editions().stream().filter(p -> p.id().equals(id)).findFirst().get();
    Guidance guidance = edition.find(patient, situation, rescuers).orElseThrow();
    return new Coach(
        PracticePlan.of(edition, guidance, rescuers, 0, 600 * SECOND, 0),
        Journal.none(),
        List.of(screen));
  }

  /** What is written for each kind while that hold goes on, if any. */
  private String said(Coach coach, Command hold, CueKind... kinds) {
    StringBuilder all = new StringBuilder();
    coach.command(hold, 10 * SECOND);
    for (CueKind kind : kinds) {
      String before = paper.text();
      screen.cue(new Cue(12 * SECOND, kind, 1, 0, 0, false), 12 * SECOND);
      all.append(paper.text().substring(before.length()).replaceAll("\\R|\\r|\u001B\\[K", ""));
      all.append('|');
    }
    all.append(screen.status(coach.state(), 12 * SECOND), 0, 12);
    return all.toString().replace("0:12  ", "").trim();
  }

  private String check(Coach coach) {
    return said(
        coach,
        Command.PULSE_CHECK,
        CueKind.PULSE_CHECK_SOON,
        CueKind.PULSE_CHECK_DUE,
        CueKind.PULSE_CHECK_LIMIT);
  }

  private String suction(Coach coach) {
    return said(coach, Command.SUCTION, CueKind.SUCTION_LIMIT);
  }

  @Test
  void withAPulse() {
    Coach coach = start("aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2);
    assertThat(check(coach))
        .isEqualTo(
            "pulse check soon|pulse check due: p starts it, p ends it|end the check and breathe: p|"
                + "CHECK PULSE");
    assertThat(suction(start("aha-2020", PatientGroup.ADULT, Situation.PULSE_SLOW_BREATHING, 2)))
        .isEqualTo("end suction and breathe: s|SUCTION");
  }

  @Test
  void inAnArrestByTwo() {
    Coach coach = start("aha-2020", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    assertThat(check(coach))
        .isEqualTo(
            "rhythm check and change of hands soon|rhythm check and change of hands due: p starts"
                + " it, p ends it|end the check and compress: p|CHECK RHYTHM");
    assertThat(suction(start("aha-2020", PatientGroup.CHILD, Situation.ARREST_ADVANCED_AIRWAY, 2)))
        .isEqualTo("end suction, breathe, compress on: s|SUCTION");
  }

  @Test
  void inAnArrestByOneWhoIsAlone() {
    Coach coach = start("aha-2020", PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    assertThat(check(coach))
        .isEqualTo(
            "rhythm check soon|rhythm check due: p starts it, p ends it|end the check and compress:"
                + " p|CHECK RHYTHM");
    assertThat(
            suction(start("aha-2020", PatientGroup.INFANT, Situation.ARREST_NO_ADVANCED_AIRWAY, 1)))
        .isEqualTo("end suction and compress: s|SUCTION");
  }

  @Test
  void ofAnAdultInAnArrestByOneWhoIsAlone() {
    Coach coach = start("aha-2020", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 1);
    assertThat(check(coach))
        .isEqualTo(
            "rhythm check soon|rhythm check due: p starts it, p ends it|end the check and compress:"
                + " p|CHECK RHYTHM");
    assertThat(
            suction(start("aha-2020", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 1)))
        .isEqualTo("end suction and compress: s|SUCTION");
  }

  @Test
  void ofANewborn() {
    Coach coach = start("nrp-8", PatientGroup.NEWBORN, Situation.NEWBORN_VENTILATION, 2);
    assertThat(check(coach))
        .isEqualTo(
            "heart rate check soon|heart rate check due: p starts it, p ends it|end the check and"
                + " breathe: p|CHECK HEART");
    Coach arrest = start("nrp-8", PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    assertThat(check(arrest)).contains("heart rate check due").contains("check and compress");
  }

  @Test
  void ofOneWhoIsOnlyWatched() {
    Coach coach = start("aha-2020", PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 2);
    coach.find(PatientChange.BREATHING_BACK, 5 * SECOND);
    assertThat(check(coach))
        .isEqualTo(
            "pulse check soon|pulse check due: p starts it, p ends it|end the check and watch: p|"
                + "CHECK PULSE");
    assertThat(suction(coach)).isEqualTo("end suction and watch: s|SUCTION");
  }

  @Test
  void aChangeSaysTheNewRhythm() {
    Coach coach = start("aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2);
    coach.find(PatientChange.PULSE_LOST, 5 * SECOND);
    coach.advance(6 * SECOND);
    assertThat(paper.text()).contains("0:05  now 30 compressions, then 2 breaths");
    coach.find(PatientChange.ADVANCED_AIRWAY, 7 * SECOND);
    coach.advance(8 * SECOND);
    assertThat(paper.text()).contains("now compress without a pause, a breath every 6 s");
    coach.find(PatientChange.BREATHING_BACK, 9 * SECOND);
    coach.advance(10 * SECOND);
    assertThat(paper.text()).contains("nothing is prompted now: watch the breathing");
  }
}
