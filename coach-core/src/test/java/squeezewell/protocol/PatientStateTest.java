package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.protocol.PatientChange.ADVANCED_AIRWAY;
import static squeezewell.protocol.PatientChange.BREATHING_BACK;
import static squeezewell.protocol.PatientChange.BREATHING_SLOW;
import static squeezewell.protocol.PatientChange.BREATHING_STOPPED;
import static squeezewell.protocol.PatientChange.GAG;
import static squeezewell.protocol.PatientChange.HEART_RATE_LOW;
import static squeezewell.protocol.PatientChange.HEART_RATE_UP;
import static squeezewell.protocol.PatientChange.NO_CHEST_RISE;
import static squeezewell.protocol.PatientChange.PULSE_BACK;
import static squeezewell.protocol.PatientChange.PULSE_LOST;
import static squeezewell.protocol.PatientChange.VOMIT;
import static squeezewell.protocol.PatientGroup.ADULT;
import static squeezewell.protocol.PatientGroup.CHILD;
import static squeezewell.protocol.PatientGroup.INFANT;
import static squeezewell.protocol.PatientGroup.NEWBORN;
import static squeezewell.protocol.Situation.ARREST_ADVANCED_AIRWAY;
import static squeezewell.protocol.Situation.ARREST_NO_ADVANCED_AIRWAY;
import static squeezewell.protocol.Situation.NEWBORN_VENTILATION;
import static squeezewell.protocol.Situation.PULSE_NO_BREATHING;
import static squeezewell.protocol.Situation.PULSE_SLOW_BREATHING;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Which finding leads where. The steps are those of the AHA basic life support algorithms for
 * health-care providers, adult and pediatric, of 2020 (pulse, no normal breathing: rescue breaths;
 * no pulse: compressions; child or infant under 60 a minute with poor perfusion: compressions;
 * breathing normally: monitor), and of the newborn resuscitation algorithm of 2020 (under 60 a
 * minute after effective ventilation: compressions 3:1; from 60 on: ventilation alone). From
 * memory, not read again for this test.
 */
class PatientStateTest {
  static Stream<Arguments> steps() {
    return Stream.of(
        step(ADULT, PULSE_NO_BREATHING, PULSE_LOST, ARREST_NO_ADVANCED_AIRWAY),
        step(ADULT, PULSE_SLOW_BREATHING, PULSE_LOST, ARREST_NO_ADVANCED_AIRWAY),
        step(ADULT, PULSE_SLOW_BREATHING, BREATHING_STOPPED, PULSE_NO_BREATHING),
        step(ADULT, PULSE_NO_BREATHING, BREATHING_SLOW, PULSE_SLOW_BREATHING),
        step(ADULT, PULSE_NO_BREATHING, BREATHING_BACK, null),
        step(ADULT, PULSE_NO_BREATHING, ADVANCED_AIRWAY, PULSE_NO_BREATHING),
        step(ADULT, ARREST_NO_ADVANCED_AIRWAY, PULSE_BACK, PULSE_NO_BREATHING),
        step(ADULT, ARREST_NO_ADVANCED_AIRWAY, BREATHING_BACK, null),
        step(ADULT, ARREST_NO_ADVANCED_AIRWAY, ADVANCED_AIRWAY, ARREST_ADVANCED_AIRWAY),
        step(ADULT, ARREST_ADVANCED_AIRWAY, PULSE_BACK, PULSE_NO_BREATHING),
        // An adult with a slow heart but a pulse is not compressed.
        step(ADULT, PULSE_NO_BREATHING, HEART_RATE_LOW, PULSE_NO_BREATHING),
        step(CHILD, PULSE_NO_BREATHING, HEART_RATE_LOW, ARREST_NO_ADVANCED_AIRWAY),
        step(INFANT, PULSE_NO_BREATHING, HEART_RATE_LOW, ARREST_NO_ADVANCED_AIRWAY),
        step(INFANT, ARREST_NO_ADVANCED_AIRWAY, HEART_RATE_UP, PULSE_NO_BREATHING),
        step(NEWBORN, NEWBORN_VENTILATION, HEART_RATE_LOW, ARREST_NO_ADVANCED_AIRWAY),
        // A newborn's heart rate decides, not whether a pulse is felt.
        step(NEWBORN, NEWBORN_VENTILATION, PULSE_LOST, NEWBORN_VENTILATION),
        step(NEWBORN, ARREST_NO_ADVANCED_AIRWAY, HEART_RATE_UP, NEWBORN_VENTILATION),
        step(NEWBORN, NEWBORN_VENTILATION, BREATHING_BACK, null),
        step(ADULT, PULSE_NO_BREATHING, VOMIT, PULSE_NO_BREATHING),
        step(ADULT, ARREST_NO_ADVANCED_AIRWAY, NO_CHEST_RISE, ARREST_NO_ADVANCED_AIRWAY),
        step(CHILD, PULSE_NO_BREATHING, GAG, PULSE_NO_BREATHING));
  }

  private static Arguments step(
      PatientGroup patient, Situation from, PatientChange finding, Situation to) {
    return Arguments.of(patient, from, finding, to);
  }

  @ParameterizedTest
  @MethodSource("steps")
  void aFindingLeadsWhereTheAlgorithmLeads(
      PatientGroup patient, Situation from, PatientChange finding, Situation to) {
    PatientState state = PatientState.of(patient, from).after(finding);
    assertThat(state.watching()).isEqualTo(to == null);
    if (to == null) {
      assertThat(state.situations()).isEmpty();
    } else {
      assertThat(state.situations().get(0)).isEqualTo(to);
    }
  }

  @Test
  void anAdvancedAirwayIsRememberedUntilTheChestHasToBeCompressed() {
    PatientState state = PatientState.of(ADULT, PULSE_NO_BREATHING);
    assertThat(state.after(ADVANCED_AIRWAY).after(PULSE_LOST).situations())
        .first()
        .isEqualTo(ARREST_ADVANCED_AIRWAY);
  }

  @Test
  void theNewbornProgrammeHasNoRhythmOfItsOwnWithATubeSoItsCycleFollows() {
    PatientState state =
        PatientState.of(NEWBORN, NEWBORN_VENTILATION).after(ADVANCED_AIRWAY).after(HEART_RATE_LOW);
    assertThat(state.situations())
        .isEqualTo(List.of(ARREST_ADVANCED_AIRWAY, ARREST_NO_ADVANCED_AIRWAY));
  }

  @Test
  void whatEachSituationDescribesLeadsBackToIt() {
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance guidance : edition.guidance()) {
        PatientState state = PatientState.of(guidance.patient(), guidance.situation());
        assertThat(state.situations()).first().isEqualTo(guidance.situation());
      }
    }
  }

  /**
   * Gasps are no breathing, and a child under 60 a minute is compressed however it breathes slowly
   * (AHA BLS and PALS 2020, from memory): only a pulse, or a faster heart, ends compressions.
   */
  @ParameterizedTest
  @EnumSource(PatientGroup.class)
  void slowBreathingNeverEndsCompressions(PatientGroup patient) {
    PatientState still = PatientState.of(patient, ARREST_NO_ADVANCED_AIRWAY).after(BREATHING_SLOW);
    assertThat(still.arrest()).isTrue();
    assertThat(PatientState.of(CHILD, PULSE_NO_BREATHING).after(HEART_RATE_LOW))
        .extracting(s -> s.after(BREATHING_SLOW).arrest())
        .isEqualTo(true);
  }

  /** Breaths go on once the heart is fast enough (AHA PALS 2020, from memory). */
  @Test
  void aChildWhoseHeartRateRosePast60IsGivenBreathsWhateverWasKnownOfBreathingBefore() {
    PatientState child =
        PatientState.of(CHILD, PULSE_NO_BREATHING)
            .after(BREATHING_BACK)
            .after(HEART_RATE_LOW)
            .after(HEART_RATE_UP);
    assertThat(child.situations()).isEqualTo(List.of(PULSE_NO_BREATHING));
  }

  /** A pulse was there all along: only its rate ends compressions (AHA PALS 2020, from memory). */
  @Test
  void aPulseIsNoNewsWhileAChildIsCompressedForASlowHeart() {
    for (Situation start : List.of(PULSE_NO_BREATHING, ARREST_NO_ADVANCED_AIRWAY)) {
      PatientState slow = PatientState.of(CHILD, start).after(HEART_RATE_LOW);
      assertThat(slow.possible()).doesNotContain(PULSE_BACK).contains(HEART_RATE_UP);
      assertThat(slow.after(PULSE_BACK).arrest()).isTrue();
      assertThat(slow.after(PULSE_LOST).after(PULSE_BACK).arrest()).isFalse();
    }
  }

  @Test
  void everyWordIsFoundAgainAndNoOther() {
    for (PatientChange finding : PatientChange.values()) {
      assertThat(PatientChange.of(finding.word())).contains(finding);
    }
    assertThat(PatientChange.of("Pulse lost")).isEmpty();
    assertThat(PatientChange.of("")).isEmpty();
  }
}
