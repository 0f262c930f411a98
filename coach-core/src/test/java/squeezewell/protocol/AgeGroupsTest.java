package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.input.BadInputException;

class AgeGroupsTest {
  /**
   * AHA pediatric BLS: infant under 1 year, the newly born left out; child from 1 year to the start
   * of puberty; adult from puberty on. AHA 2015, Part 13: newborn through the first stay in
   * hospital, in principle to 28 days. ERC 2021: children to 18 years who do not look adult;
   * newborn at birth. From 8 to 14 (AHA) and 14 to 18 years (ERC) a person has to judge: our own
   * choice.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2020, 0, DAYS, NEWBORN",
    "aha-2020, 27, DAYS, NEWBORN",
    "aha-2020, 28, DAYS, INFANT",
    "aha-2020, 1, MONTHS, INFANT",
    "aha-2020, 11.9, MONTHS, INFANT",
    "aha-2020, 12, MONTHS, CHILD",
    "aha-2020, 1, YEARS, CHILD",
    "aha-2020, 5, YEARS, CHILD",
    "aha-2020, 13.9, YEARS, CHILD",
    "aha-2020, 14, YEARS, ADULT",
    "aha-2020, 120, YEARS, ADULT",
    "aha-2015, 5, YEARS, CHILD",
    "aha-2025, 0.5, YEARS, INFANT",
    "erc-2021, 0, DAYS, NEWBORN",
    "erc-2021, 3, DAYS, INFANT",
    "erc-2021, 364, DAYS, INFANT",
    "erc-2021, 16, YEARS, CHILD",
    "erc-2021, 18, YEARS, ADULT",
    "erc-2025, 17, YEARS, CHILD",
    "nrp-8, 2, DAYS, NEWBORN"
  })
  void anAgePicksItsGroup(String id, double age, AgeUnit unit, PatientGroup group)
      throws Exception {
    assertThat(AgeGroups.ofAge(TestPlans.edition(id), age, unit).group()).isEqualTo(group);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "aha-2020 | 5 | YEARS | 5 years: child, 1 year to the start of puberty (AHA 2020)",
        "aha-2015 | 1 | YEARS | 1 year: child, 1 year to the start of puberty (AHA 2015)",
        "aha-2020 | 10 | YEARS | 10 years: child, 1 year to the start of puberty; signs of puberty"
            + " decide between child and adult (AHA 2020)",
        "aha-2020 | 40 | YEARS | 40 years: adult, from puberty on (AHA 2020)",
        "aha-2020 | 6 | MONTHS | 6 months: infant, under 1 year, the newly born left out (AHA 2020)",
        "erc-2021 | 0 | DAYS | 0 days: newborn, the newly born, before leaving the delivery room;"
            + " newborn only right after birth, infant after it (ERC 2021)"
      })
  void theReasonIsOneSentence(String id, double age, AgeUnit unit, String reason) throws Exception {
    assertThat(AgeGroups.ofAge(TestPlans.edition(id), age, unit).reason()).isEqualTo(reason);
  }

  @ParameterizedTest
  @CsvSource({
    "-1, YEARS",
    "200, YEARS",
    "NaN, YEARS",
    "Infinity, DAYS",
    "-0.001, DAYS",
    "1e308, MONTHS",
    "1e300, YEARS",
    "-Infinity, YEARS",
    "120.01, YEARS",
    "44000, DAYS"
  })
  void anImpossibleAgeIsRefused(double age, AgeUnit unit) {
    assertThatThrownBy(() -> AgeGroups.ofAge(TestPlans.edition("aha-2020"), age, unit))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("age is ")
        .hasMessageContaining("an age from 0 to 120 years");
  }

  @Test
  void anAgeThatAnEditionDoesNotCoverIsRefusedWithWhatItCovers() {
    assertThatThrownBy(() -> AgeGroups.ofAge(TestPlans.edition("nrp-8"), 5, AgeUnit.YEARS))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("age is 5 years")
        .hasMessageContaining("newborn, from birth");
    Protocol bare =
        TestPlans.protocol(TestPlans.guidance(TestPlans.steady("6", "1"), TestPlans.usualLimits()));
    assertThatThrownBy(() -> AgeGroups.ofAge(bare, 5, AgeUnit.YEARS))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("a-protocol gives no age limits");
  }

  /**
   * Worked by hand from Advanced Paediatric Life Support, 5th edition: 3 months 5.5 kg, 6 months 7
   * kg, 1 year 10 kg, 3 years 14 kg, 5 years 18 kg, 6 years 25 kg, 8 years 31 kg, 12 years 43 kg.
   */
  @ParameterizedTest
  @CsvSource({
    "5.5, INFANT, 3 months",
    "7, INFANT, 6 months",
    "9.9, INFANT, 11 months",
    "10, CHILD, 1 year",
    "14, CHILD, 3 years",
    "18, CHILD, 5 years",
    "22, CHILD, 5 years",
    "25, CHILD, 6 years",
    "31, CHILD, 8 years",
    "43, CHILD, 12 years",
    "3, INFANT, 0 months"
  })
  void aWeightPicksTheGroupOfItsUsualAge(double kilograms, PatientGroup group, String age)
      throws Exception {
    AgeGroups.Match match = AgeGroups.ofWeight(TestPlans.edition("aha-2020"), kilograms);
    assertThat(match.group()).isEqualTo(group);
    assertThat(match.reason()).contains(" kg, a usual weight at " + age + ": ");
  }

  @ParameterizedTest
  @CsvSource({"aha-2020", "erc-2021"})
  void aHeavyPersonIsAnAdultByOurOwnChoice(String id) throws Exception {
    AgeGroups.Match match = AgeGroups.ofWeight(TestPlans.edition(id), 90);
    assertThat(match.group()).isEqualTo(PatientGroup.ADULT);
    assertThat(match.reason()).startsWith("90 kg, from 50 kg, our own choice: adult");
  }

  @ParameterizedTest
  @CsvSource({"-1", "0", "0.1", "401", "NaN", "Infinity", "1e308"})
  void anImpossibleWeightIsRefused(double kilograms) {
    assertThatThrownBy(() -> AgeGroups.ofWeight(TestPlans.edition("aha-2020"), kilograms))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("a weight from 0.2 to 400 kg");
  }

  @Test
  void aWeightNeverPicksANewborn() {
    assertThatThrownBy(() -> AgeGroups.ofWeight(TestPlans.edition("nrp-8"), 3))
        .isInstanceOf(BadInputException.class)
        .hasMessageContaining("nrp-8");
  }
}
