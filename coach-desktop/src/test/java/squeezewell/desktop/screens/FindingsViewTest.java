package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.Practices.SECOND;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

class FindingsViewTest {
  private static Coach coach(String edition, PatientGroup patient, Situation situation) {
    Protocol protocol = Practices.protocol(edition);
    return new Coach(Practices.plan(protocol, patient, situation, 0, 5), Journal.none(), List.of());
  }

  private final Coach coach = coach("aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);

  @Test
  void whatIsOfferedTellsWhatFollowsFromIt() {
    assertThat(FindingsView.of(coach.state()).choices())
        .extracting(c -> c.key() + " " + c.label() + ": " + c.leads())
        .containsExactly(
            "1 No pulse: 30 to 2, at 100 to 120 a minute",
            "2 Breathing too slowly: one breath every 6 s",
            "3 Breathing well again: watch",
            "4 Vomit in the airway: suction",
            "5 The chest does not rise: rhythm stays",
            "6 Gags on the oral airway: rhythm stays",
            "7 Advanced airway in place: rhythm stays");
  }

  @Test
  void withoutAPulseOthersAreOffered() {
    coach.find(PatientChange.PULSE_LOST, 20 * SECOND);
    assertThat(FindingsView.of(coach.state()).choices())
        .extracting(c -> c.label() + ": " + c.leads())
        .containsExactly(
            "Pulse is back: one breath every 6 s",
            "Breathing well again: watch",
            "Vomit in the airway: suction, compress on",
            "The chest does not rise: rhythm stays",
            "Advanced airway in place: one breath every 6 s");
  }

  @Test
  void noStateOffersMoreThanTheDigitsCanTell() {
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (var guidance : edition.guidance()) {
        Coach one = coach(edition.id(), guidance.patient(), guidance.situation());
        assertThat(one.state().course().state().possible()).hasSizeLessThanOrEqualTo(9);
        for (PatientChange finding : PatientChange.values()) {
          one.find(finding, SECOND);
          assertThat(one.state().course().state().possible()).hasSizeLessThanOrEqualTo(9);
        }
      }
    }
  }

  @Test
  void whatWasFoundIsToldWithWhatToDoAndTheNewRhythm() {
    assertThat(FindingsView.told(coach.state(), 20 * SECOND)).isEmpty();
    coach.find(PatientChange.PULSE_LOST, 20 * SECOND);
    assertThat(FindingsView.told(coach.state(), 21 * SECOND))
        .contains(
            new FindingsView.Told(
                "No pulse",
                "Start chest compressions at once, 5 to 6 cm deep. Now: 30 to 2, at 100 to 120 a"
                    + " minute."));
    assertThat(FindingsView.told(coach.state(), 30 * SECOND)).isEmpty();
  }

  @Test
  void whatWasTakenBackIsTold() {
    coach.find(PatientChange.PULSE_LOST, 20 * SECOND);
    coach.command(Command.UNDO_FINDING, 22 * SECOND);
    assertThat(FindingsView.told(coach.state(), 23 * SECOND).orElseThrow().title())
        .isEqualTo("Taken back: No pulse");
  }

  @Test
  void vomitIsSuctionedWithinTheLimitOfTheAgeAndCompressionsGoOnInAnArrest() {
    coach.find(PatientChange.VOMIT, 20 * SECOND);
    assertThat(FindingsView.told(coach.state(), 21 * SECOND).orElseThrow().text())
        .endsWith("suction only as deep as you can see. At most 15 s.");
    Coach infant = coach("aha-2020", PatientGroup.INFANT, Situation.ARREST_ADVANCED_AIRWAY);
    infant.find(PatientChange.VOMIT, 20 * SECOND);
    assertThat(FindingsView.told(infant.state(), 21 * SECOND).orElseThrow().text())
        .endsWith("At most 5 s. Compressions go on; breaths wait.");
  }

  @Test
  void whatTheEditionDoesNotCoverIsSaid() {
    Coach child = coach("erc-2025", PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY);
    child.find(PatientChange.PULSE_BACK, 20 * SECOND);
    assertThat(FindingsView.told(child.state(), 21 * SECOND).orElseThrow().text())
        .endsWith(
            "Breaths only: this edition gives no rate here, so nothing is prompted. Follow local"
                + " protocol.");
  }

  @Test
  void theLiveViewFollowsTheRhythmInForce() {
    coach.find(PatientChange.PULSE_LOST, 20 * SECOND);
    LiveView view = LiveView.of(coach.state(), 21 * SECOND);
    assertThat(view.word()).isEqualTo("Compress");
    assertThat(view.countNote()).isEqualTo("of 30 compressions");
    assertThat(view.bar().text()).isEqualTo("Rhythm check in 1:59");
    coach.find(PatientChange.BREATHING_BACK, 30 * SECOND);
    assertThat(LiveView.of(coach.state(), 31 * SECOND).word()).isEqualTo("Watch");
  }
}
