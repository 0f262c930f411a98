package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * What is advised differs by age where published teaching does; the source stands at each check.
 */
class FindingAdviceTest {
  private static String of(PatientChange finding, PatientGroup patient) {
    return finding.advice(patient);
  }

  @Test
  void everyFindingHasAdviceForEveryPatientInWhomItCanBeFound() {
    for (PatientChange finding : PatientChange.values()) {
      for (PatientGroup patient : PatientGroup.values()) {
        if (finding.concerns(patient)) {
          assertThat(of(finding, patient)).as("%s %s", finding, patient).endsWith(".");
          // A card of four lines at usual size.
          assertThat(of(finding, patient).length()).isLessThan(150);
        }
      }
    }
  }

  /**
   * American Heart Association as in a physician's reference manual: 5 to 6, about 5, about 4 cm.
   */
  @Test
  void compressionsAreAsDeepAsTheAgeAsksFor() {
    assertThat(of(PatientChange.PULSE_LOST, PatientGroup.ADULT)).contains("5 to 6 cm");
    assertThat(of(PatientChange.PULSE_LOST, PatientGroup.CHILD)).contains("third", "5 cm");
    assertThat(of(PatientChange.PULSE_LOST, PatientGroup.INFANT)).contains("third", "4 cm");
    assertThat(of(PatientChange.HEART_RATE_LOW, PatientGroup.INFANT)).contains("third", "4 cm");
  }

  /**
   * A paramedic directive handbook (Southwest Ontario, 2013) after the paediatric and neonatal
   * guidelines: infants and children under 60 with signs of poor perfusion, newborns under 60 in
   * spite of 30 s of ventilation.
   */
  @Test
  void aSlowHeartIsCompressedForPoorPerfusionOrAfterThirtySecondsOfBreaths() {
    for (PatientGroup patient : new PatientGroup[] {PatientGroup.CHILD, PatientGroup.INFANT}) {
      assertThat(of(PatientChange.HEART_RATE_LOW, patient)).contains("poor perfusion", "oxygen");
      assertThat(of(PatientChange.PULSE_BACK, patient)).contains("60 a minute or more");
    }
    assertThat(of(PatientChange.HEART_RATE_LOW, PatientGroup.NEWBORN)).contains("30 s");
    assertThat(of(PatientChange.PULSE_BACK, PatientGroup.ADULT)).doesNotContain("60");
  }

  /** O.P. Ghai, Essential Pediatrics, as quoted: from 60 to 100 ventilation goes on. */
  @Test
  void aNewbornIsVentilatedUntilTheHeartBeatsAHundred() {
    assertThat(of(PatientChange.HEART_RATE_UP, PatientGroup.NEWBORN)).contains("over 100");
  }

  /** WHO, Basic Newborn Resuscitation, 1999: first the mouth, then the nose. */
  @Test
  void aNewbornsMouthIsSuctionedBeforeTheNose() {
    assertThat(of(PatientChange.VOMIT, PatientGroup.NEWBORN))
        .containsSubsequence("mouth first", "nose");
  }

  /** Oregon EMS skills lab manual, 2023: on the side, and only as deep as can be seen. */
  @Test
  void othersAreTurnedAndSuctionedAsDeepAsCanBeSeen() {
    for (PatientGroup patient : PatientGroup.values()) {
      if (patient != PatientGroup.NEWBORN) {
        assertThat(of(PatientChange.VOMIT, patient)).contains("side", "as deep as you can see");
      }
    }
  }

  /**
   * Newborn programme's corrective steps as in doi 10.1186/s40748-014-0003-0: mask and head, then
   * suction and open mouth, then pressure, then another airway.
   */
  @Test
  void aNewbornsChestThatDoesNotRiseIsCorrectedInTheOrderOfTheProgramme() {
    assertThat(of(PatientChange.NO_CHEST_RISE, PatientGroup.NEWBORN))
        .containsSubsequence("mask", "head", "suction", "open the mouth", "pressure", "airway");
  }

  /** AccessPediatrics, bag-mask ventilation: neutral position, too much extension may obstruct. */
  @Test
  void anInfantsHeadStaysNeutral() {
    assertThat(of(PatientChange.NO_CHEST_RISE, PatientGroup.INFANT)).contains("neutral");
    assertThat(of(PatientChange.NO_CHEST_RISE, PatientGroup.ADULT)).contains("Tilt the head");
  }
}
