package squeezewell.desktop.screens.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.screens.Phrases;
import squeezewell.desktop.screens.Practices;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;

/** What is said before a practice; the values are the guidelines', as their course texts report. */
class PlanViewTest {
  private static Guidance guidance(PatientGroup patient, Situation situation, int rescuers) {
    return Practices.protocol("aha-2025").guidance().stream()
        .filter(g -> g.patient() == patient && g.situation() == situation)
        .filter(g -> g.rescuers() == rescuers)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void whatAnEditionHasNoConfirmedValueForIsSaid() {
    assertThat(PlanView.missing(Practices.protocol("erc-2025"), PatientGroup.CHILD))
        .contains(
            "No rhythm here for: pulse, not breathing; pulse, breathing too slowly; no pulse,"
                + " advanced airway in place. Its value could not be confirmed. Follow your local"
                + " protocol, or choose another edition.");
    assertThat(PlanView.missing(Practices.protocol("erc-2025"), PatientGroup.NEWBORN).get())
        .contains("not breathing or gasping");
    assertThat(PlanView.missing(Practices.protocol("aha-2025"), PatientGroup.NEWBORN)).isEmpty();
    assertThat(PlanView.missing(Practices.protocol("erc-2025"), PatientGroup.ADULT)).isEmpty();
    assertThat(PlanView.missing(Practices.protocol("nrp-8"), PatientGroup.NEWBORN)).isEmpty();
    assertThat(PlanView.missing(Practices.protocol("nrp-8"), PatientGroup.ADULT)).isEmpty();
  }

  @Test
  void anAdultWithoutAnAirwayGetsThirtyToTwo() {
    List<String> lines =
        PlanView.lines(guidance(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY, 0));
    assertThat(lines.get(0))
        .isEqualTo("30 compressions, then 2 breaths, at 100 to 120 a minute. Pause under 10 s.");
    assertThat(lines.get(1)).startsWith("Squeeze for 1 s");
  }

  @Test
  void twoRescuersOfAChildGiveFifteenToTwo() {
    assertThat(PlanView.lines(guidance(PatientGroup.CHILD, Situation.ARREST_NO_ADVANCED_AIRWAY, 2)))
        .first()
        .asString()
        .startsWith("15 compressions, then 2 breaths, at 100 to 120 a minute.");
  }

  @Test
  void whatOnlyWeChoseIsNotSaidToBeAsked() {
    // Our own range of 100 to 140 and limit of 1 s are left out; 120 events a minute is published.
    assertThat(
            PlanView.lines(guidance(PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY, 0)))
        .first()
        .isEqualTo("3 compressions, then 1 breath, at 90 a minute (120 events).");
  }

  @Test
  void withAnAirwayCompressionsDoNotWaitForBreaths() {
    assertThat(PlanView.lines(guidance(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY, 0)))
        .first()
        .isEqualTo("Compressions without a pause at 100 to 120 a minute; one breath every 6 s.");
  }

  @Test
  void whoBreathesTooSlowlyIsHelpedBetweenTheirOwnBreaths() {
    assertThat(PlanView.lines(guidance(PatientGroup.ADULT, Situation.PULSE_SLOW_BREATHING, 0)))
        .contains("Squeeze with the patient's own breaths, and fill in where none comes.");
  }

  @Test
  void whoCompressesIsChangedWithTheRhythmCheck() {
    // AHA basic life support, 2020 and before: change compressors about every 2 minutes.
    assertThat(PlanView.lines(guidance(PatientGroup.ADULT, Situation.ARREST_ADVANCED_AIRWAY, 0)))
        .contains("Check rhythm and pulse, and change who compresses, every 2 min, for 5 to 10 s.");
  }

  @Test
  void breathsAloneAreSaidAsBefore() {
    assertThat(PlanView.lines(guidance(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0)))
        .contains("One breath every 6 s.", "Check the pulse every 2 min, for 5 to 10 s.");
  }

  @Test
  void everySituationHasItsWordsAndASourceAndNoSourceTwice() {
    GuidelineLibrary.editions().stream()
        .flatMap(p -> p.guidance().stream())
        .forEach(
            g -> {
              assertThat(PlanView.lines(g)).hasSizeBetween(4, 5).noneMatch(l -> l.startsWith("."));
              assertThat(Phrases.shortRhythm(g)).isNotBlank().hasSizeLessThan(40);
              assertThat(PlanView.sources(g))
                  .isNotEmpty()
                  .extracting(Citation::line)
                  .doesNotHaveDuplicates();
            });
  }
}
