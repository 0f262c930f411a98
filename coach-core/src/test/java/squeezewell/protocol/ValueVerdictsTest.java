package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.input.BadInputException;

/** Values that were wrong or out of date, each against what was published. */
class ValueVerdictsTest {
  private static final long SECOND = 1_000_000_000L;

  @Test
  @DisplayName("AHA/AAP 2025, newborn: 30 to 60 inflations a minute, read in the issuers' own text")
  void theNewbornOf2025() {
    // Joint news release of the two bodies, 23 October 2025.
    BreathPlan plan = breaths(TestPlans.edition("aha-2025"), PatientGroup.NEWBORN);
    assertThat(60 / plan.asked().high()).isEqualTo(30, within(1e-9));
    assertThat(60 / plan.asked().low()).isEqualTo(60, within(1e-9));
    assertThat(plan.rangeSource().confidence()).isEqualTo(Confidence.PRIMARY);
    assertThat(plan.interval().nanosAt(1)).isEqualTo(3 * SECOND / 2);
    assertThat(plan.intervalSource().confidence()).isEqualTo(Confidence.HOUSE);
  }

  @Test
  @DisplayName("The default for a newborn is an edition that has the newborn")
  void theDefaultHasTheNewborn() {
    Protocol first = GuidelineLibrary.editions().get(0);
    assertThat(first.find(PatientGroup.NEWBORN, PatientGroup.NEWBORN.usualSituation())).isPresent();
  }

  @ParameterizedTest
  @CsvSource({"nrp-8, 9th edition", "aha-2020, AHA 2025", "aha-2015, AHA 2025", "erc-2021, ERC"})
  @DisplayName("Editions that their issuer superseded are marked")
  void supersededEditions(String id, String by) {
    assertThat(TestPlans.edition(id).supersededBy()).contains(by);
    assertThat(TestPlans.edition("aha-2025").supersededBy()).isEmpty();
    assertThat(TestPlans.edition("erc-2025").supersededBy()).isEmpty();
  }

  /** ERC 2021, paediatric life support: 25, 20, 15 and 10 a minute by age (from memory). */
  @ParameterizedTest
  @CsvSource({
    "6 months, infant, 25",
    "1 y, child, 20",
    "7.9 y, child, 20",
    "8 y, child, 15",
    "9y, child, 15",
    "11.9 y, child, 15",
    "12 y, child, 10",
    "13y, child, 10",
    "17 y, child, 10"
  })
  @DisplayName("ERC 2021 by age: over 8 years 15 a minute, over 12 years 10")
  void ercByAge(String text, String group, double perMinute) throws BadInputException {
    Protocol edition = TestPlans.edition("erc-2021");
    Age age = Age.parse("--age", text);
    PatientGroup patient = AgeGroups.ofAge(edition, age).group();
    assertThat(patient.id()).isEqualTo(group);
    Protocol aged = edition.atAge(age.days());
    for (Situation situation :
        List.of(
            Situation.PULSE_NO_BREATHING,
            Situation.PULSE_SLOW_BREATHING,
            Situation.ARREST_ADVANCED_AIRWAY)) {
      Guidance guidance = aged.find(patient, situation).orElseThrow();
      assertThat(guidance.rhythm().steadyBreaths().orElseThrow().interval().perMinute())
          .isEqualTo(perMinute, within(1e-9));
      assertThat(aged.guidance().stream().filter(g -> g.isLike(guidance))).hasSize(1);
    }
    // A change of the patient in mid-practice stays with the age.
    Guidance start = aged.find(patient, Situation.PULSE_NO_BREATHING).orElseThrow();
    assertThat(PracticePlan.of(edition, start, 0, SECOND, 0).alternatives())
        .filteredOn(g -> g.situation() == Situation.ARREST_ADVANCED_AIRWAY)
        .singleElement()
        .satisfies(
            g ->
                assertThat(g.rhythm().steadyBreaths().orElseThrow().interval().perMinute())
                    .isEqualTo(perMinute, within(1e-9)));
  }

  @Test
  @DisplayName("A child of no known age has the values of the whole group")
  void withoutAnAge() {
    assertThat(breaths(TestPlans.edition("erc-2021"), PatientGroup.CHILD).interval().nanosAt(1))
        .isEqualTo(3 * SECOND);
  }

  @ParameterizedTest
  @ValueSource(strings = {"aha-2015", "aha-2020", "aha-2025", "erc-2021"})
  @DisplayName("30:2 was read in a table of 2010, and is labelled so")
  void whereThirtyToTwoWasRead(String id) {
    Rhythm.CompressionCycle cycle =
        (Rhythm.CompressionCycle)
            TestPlans.edition(id)
                .find(PatientGroup.ADULT, Situation.ARREST_NO_ADVANCED_AIRWAY)
                .orElseThrow()
                .rhythm();
    assertThat(cycle.cycleSource().year()).isEqualTo(2010);
    assertThat(cycle.cycleSource().confidence()).isEqualTo(Confidence.PRIMARY);
    if (cycle.pauseLimitSource().confidence() == Confidence.PRIMARY) {
      assertThat(cycle.pauseLimitSource().year()).isEqualTo(2010);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"aha-2015", "aha-2020", "aha-2025"})
  @DisplayName("An adult's check of at least 5 s, every 2 minutes, is course text")
  void theAdultsCheckIsCourseText(String id) {
    Limits limits =
        TestPlans.edition(id)
            .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
            .orElseThrow()
            .limits();
    assertThat(limits.pulseCheckShortest().source().section()).contains("course texts");
    assertThat(limits.pulseCheckEvery().source().section()).contains("course texts");
  }

  @Test
  @DisplayName("AHA 2015: 5 to 6 s is 10 to 12 a minute, not a wall for each breath")
  void theRateOf2015() {
    BreathPlan plan = breaths(TestPlans.edition("aha-2015"), PatientGroup.ADULT);
    assertThat(plan.asked()).isEqualTo(new Range(5, 6));
    assertThat(plan.judgeSeconds(4.5)).isEqualTo(Judgement.IN_RANGE);
    assertThat(plan.judgeSeconds(6.5)).isEqualTo(Judgement.IN_RANGE);
    assertThat(plan.judgeSeconds(4.499)).isEqualTo(Judgement.FAST);
    assertThat(plan.judgeSeconds(6.501)).isEqualTo(Judgement.SLOW);
    assertThat(plan.keepsMean(4.99)).isFalse();
    assertThat(plan.keepsMean(6)).isTrue();
    assertThat(plan.keepsMean(6.01)).isFalse();
  }

  @Test
  @DisplayName("A local protocol of one breath every 5 s is shown as that, not as its range")
  void aLocalInterval() {
    BreathPlan published = breaths(TestPlans.edition("aha-2020"), PatientGroup.CHILD);
    assertThat(published.rangeIsPublished()).isTrue();
    Citation own = published.rangeSource();
    BreathPlan local =
        new BreathPlan(
            new Tempo(5 * SECOND, 1),
            4 * SECOND,
            6 * SECOND,
            SECOND,
            own,
            own,
            published.inspirationSource());
    assertThat(local.rangeIsPublished()).isFalse();
  }

  @Test
  @DisplayName("Common practice says so and names no source")
  void commonPractice() {
    Limits limits =
        TestPlans.edition("aha-2025")
            .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
            .orElseThrow()
            .limits();
    assertThat(limits.suctionLongest().source().line()).contains("common practice, no source");
  }

  private static BreathPlan breaths(Protocol protocol, PatientGroup patient) {
    return protocol
        .find(patient, patient.usualSituation())
        .orElseThrow()
        .rhythm()
        .steadyBreaths()
        .orElseThrow();
  }
}
