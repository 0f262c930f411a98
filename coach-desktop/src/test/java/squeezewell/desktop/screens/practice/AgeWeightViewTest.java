package squeezewell.desktop.screens.practice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;

class AgeWeightViewTest {
  private static Protocol edition(String id) {
    return GuidelineLibrary.editions().stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  private static Guidance adult(Situation situation) {
    return edition("aha-2020").find(PatientGroup.ADULT, situation).orElseThrow();
  }

  /**
   * AHA 2020, Part 4: infant under 1 year, child from there to puberty. ERC 2021: child to 18 years
   * unless the person looks adult. 1 lb = 0.45359237 kg.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2020, 9, MONTHS, INFANT",
    "aha-2020, 1.5, YEARS, CHILD",
    "erc-2021, 13, YEARS, CHILD",
    "aha-2020, 200, DAYS, INFANT",
    "aha-2020, 12, KILOGRAMS, CHILD",
    "aha-2020, 20, POUNDS, INFANT"
  })
  void anAgeOrAWeightFindsOneGroup(
      String id, String typed, AgeWeightView.Unit unit, PatientGroup group) {
    AgeWeightView found = AgeWeightView.of(edition(id), typed, unit);
    assertThat(found.possible()).containsExactly(group);
    assertThat(found.text()).contains(": " + group.id() + ", ").endsWith(".");
  }

  @Test
  void aWeightIsMarkedAsAnEstimateWithItsSource() {
    assertThat(AgeWeightView.of(edition("aha-2020"), "12", AgeWeightView.Unit.KILOGRAMS).text())
        .isEqualTo(
            "12 kg, a usual weight at 2 years: child, 1 year to the start of puberty (AHA 2020)."
                + " An estimate from the usual weight at an age (Advanced Paediatric Life Support,"
                + " 5th edition), not a guideline's limit: check it against the age.");
  }

  @Test
  void whereTwoGroupsFitBothAreOffered() {
    AgeWeightView found = AgeWeightView.of(edition("aha-2020"), "10", AgeWeightView.Unit.YEARS);
    assertThat(found.possible()).containsExactly(PatientGroup.ADULT, PatientGroup.CHILD);
    assertThat(found.text()).endsWith("a person has to judge.");
  }

  @ParameterizedTest
  @CsvSource({
    "aha-2020, '', YEARS, No number yet. Type a number such as 9",
    "aha-2020, abc, YEARS, “abc” won't do. Type a number such as 9",
    "aha-2020, '1,5', YEARS, or 1.5",
    "aha-2020, 121, YEARS, up to 120 years.",
    "aha-2020, -1, DAYS, “-1” won't do.",
    "aha-2020, 401, KILOGRAMS, from 0.2 to 400 kg.",
    "aha-2020, 0, POUNDS, from 0.2 to 400 kg.",
    "nrp-8, 9, YEARS, Age is 9 years; allowed: what nrp-8 covers: newborn"
  })
  void whatCanNotBeJudgedIsExplained(
      String id, String typed, AgeWeightView.Unit unit, String words) {
    AgeWeightView found = AgeWeightView.of(edition(id), typed, unit);
    assertThat(found.possible()).isEmpty();
    assertThat(found.text()).contains(words);
  }

  @Test
  void anEditionWithoutAgesSaysSo() {
    Protocol bare =
        new Protocol("own", "Own", "A service", 2026, true, edition("aha-2020").guidance());
    assertThat(AgeWeightView.of(bare, "5", AgeWeightView.Unit.YEARS).text())
        .isEqualTo(
            "Own (2026), local protocol gives no age limits. Choose the patient from the list.");
  }

  @Test
  void theSituationStaysWhereTheGroupHasIt() {
    Protocol edition = edition("aha-2020");
    Optional<Guidance> child =
        AgeWeightView.rhythm(
            edition, PatientGroup.CHILD, adult(Situation.ARREST_NO_ADVANCED_AIRWAY));
    assertThat(child.orElseThrow().situation()).isEqualTo(Situation.ARREST_NO_ADVANCED_AIRWAY);
    Optional<Guidance> newborn =
        AgeWeightView.rhythm(edition, PatientGroup.NEWBORN, adult(Situation.PULSE_NO_BREATHING));
    assertThat(newborn.orElseThrow().situation()).isEqualTo(Situation.NEWBORN_VENTILATION);
    assertThat(AgeWeightView.chosen(edition, PatientGroup.CHILD, child))
        .isEqualTo("Chosen: Child, no pulse, no advanced airway, 1 rescuer.");
    Protocol empty = new Protocol("own", "Own 2026", "A service", 2026, false, List.of());
    assertThat(AgeWeightView.rhythm(empty, PatientGroup.CHILD, child.orElseThrow())).isEmpty();
    assertThat(AgeWeightView.chosen(empty, PatientGroup.CHILD, Optional.empty()))
        .isEqualTo("Own 2026 has no rhythm for this group: child.");
  }
}
