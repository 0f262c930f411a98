package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;

class ProtocolFindTest {
  /**
   * AHA: a lone rescuer gives a child 30:2, two or more 15:2; an adult gets 30:2 by any number. ERC
   * 2021: 15:2 for a child by any number of trained rescuers.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2020, CHILD, 1, 30",
    "aha-2020, CHILD, 2, 15",
    "aha-2020, INFANT, 1, 30",
    "aha-2020, INFANT, 4, 15",
    "aha-2020, ADULT, 1, 30",
    "aha-2020, ADULT, 2, 30",
    "erc-2021, CHILD, 1, 15",
    "erc-2021, CHILD, 2, 15",
    "nrp-8, NEWBORN, 2, 3"
  })
  void theNumberOfRescuersPicksTheCycle(
      String id, PatientGroup patient, int rescuers, int compressions) {
    Rhythm rhythm =
        TestPlans.edition(id)
            .find(patient, Situation.ARREST_NO_ADVANCED_AIRWAY, rescuers)
            .orElseThrow()
            .rhythm();
    assertThat(((Rhythm.CompressionCycle) rhythm).perCycle()).isEqualTo(compressions);
  }

  @Test
  void whatAnEditionDoesNotCoverIsNotFound() {
    Protocol nrp = TestPlans.edition("nrp-8");
    assertThat(nrp.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2)).isEmpty();
    assertThat(nrp.find(PatientGroup.NEWBORN, Situation.PULSE_NO_BREATHING, 1)).isEmpty();
  }

  @Test
  void nobodyFindsNothing() {
    Protocol edition = TestPlans.edition("aha-2020");
    assertThatThrownBy(() -> edition.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aListForTwoRescuersOnlyIsNotGivenToOne() {
    Guidance two =
        new Guidance(
            PatientGroup.CHILD,
            Situation.ARREST_NO_ADVANCED_AIRWAY,
            2,
            TestPlans.cycle("110", 15, 2, "4", "1"),
            TestPlans.usualLimits());
    Protocol protocol = TestPlans.protocol(two);
    assertThat(protocol.find(two.patient(), two.situation(), 1)).isEmpty();
    assertThat(protocol.find(two.patient(), two.situation(), 3)).contains(two);
  }
}
