package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.TestPlans;

/** The built-in editions against the published values, typed here by hand. */
class BuiltInEditionsTest {
  private static final long SECOND = 1_000_000_000L;

  /**
   * Adult with a pulse who does not breathe. AHA 2015, Part 5 (Adult BLS): one breath every 5 to 6
   * s (10 to 12 a minute); the target is the middle, our own choice. AHA 2020, Part 3, and AHA
   * 2025, Adult BLS: one breath every 6 s (10 a minute). ERC 2021 and 2025: 10 a minute (from
   * memory). A range of one sixth either side of a single printed value is our own choice.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2015, 5.5, 5, 6, HOUSE, SECONDARY",
    "aha-2020, 6, 5, 7, SECONDARY, HOUSE",
    "aha-2025, 6, 5, 7, SECONDARY, HOUSE",
    "erc-2021, 6, 5, 7, MEMORY, HOUSE",
    "erc-2025, 6, 5, 7, MEMORY, HOUSE"
  })
  void rescueBreathingOfAnAdultWithAPulseIsAsPublished(
      String id,
      String target,
      String low,
      String high,
      Confidence intervalConfidence,
      Confidence rangeConfidence) {
    BreathPlan plan = rhythm(id, Situation.PULSE_NO_BREATHING).steadyBreaths().orElseThrow();
    assertThat(plan.interval().nanosAt(1)).isEqualTo(TestPlans.nanos(target));
    assertThat(plan.lowNanos()).isEqualTo(TestPlans.nanos(low));
    assertThat(plan.highNanos()).isEqualTo(TestPlans.nanos(high));
    assertThat(plan.intervalSource().confidence()).isEqualTo(intervalConfidence);
    assertThat(plan.rangeSource().confidence()).isEqualTo(rangeConfidence);
    // AHA from 2005 on, ERC: each breath over about 1 s.
    assertThat(plan.inspirationNanos()).isEqualTo(SECOND);
    assertThat(rhythm(id, Situation.PULSE_NO_BREATHING).compressions()).isEmpty();
  }

  /**
   * Adult in cardiac arrest without an advanced airway. AHA 2010 summary table, unchanged since,
   * and ERC: 30 compressions to 2 breaths. AHA from 2015 on, ERC: 100 to 120 compressions a minute.
   * AHA: breaths may hold up compressions for under 10 s. A physicians' reference manual: the two
   * breaths take 3 to 4 s.
   */
  @ParameterizedTest
  @MethodSource("ids")
  void anAdultInArrestGetsThirtyCompressionsToTwoBreaths(String id) {
    Rhythm.CompressionCycle cycle =
        (Rhythm.CompressionCycle) rhythm(id, Situation.ARREST_NO_ADVANCED_AIRWAY);
    assertThat(cycle.perCycle()).isEqualTo(30);
    assertThat(cycle.breathsPerCycle()).isEqualTo(2);
    assertThat(cycle.compressing().lowPerMinute()).isEqualTo(100);
    assertThat(cycle.compressing().highPerMinute()).isEqualTo(120);
    assertThat(cycle.compressing().tempo().perMinute()).isEqualTo(110, within(1e-9));
    assertThat(cycle.pauseNanos()).isBetween(3 * SECOND, 4 * SECOND);
    assertThat(cycle.pauseLimitNanos()).isEqualTo(10 * SECOND);
    assertThat(cycle.inspirationNanos()).isEqualTo(SECOND);
  }

  /** With an advanced airway: 10 breaths a minute, one every 6 s, without a pause (AHA, ERC). */
  @ParameterizedTest
  @MethodSource("ids")
  void anAdultWithAnAdvancedAirwayGetsTenBreathsAMinuteWithoutAPause(String id) {
    Rhythm rhythm = rhythm(id, Situation.ARREST_ADVANCED_AIRWAY);
    assertThat(rhythm).isInstanceOf(Rhythm.ContinuousCompressions.class);
    assertThat(rhythm.steadyBreaths().orElseThrow().interval().perMinute())
        .isEqualTo(10, within(1e-9));
    assertThat(rhythm.compressions().orElseThrow().lowPerMinute()).isEqualTo(100);
    assertThat(rhythm.compressions().orElseThrow().highPerMinute()).isEqualTo(120);
  }

  @Test
  void theNewestEditionStandsFirst() {
    assertThat(GuidelineLibrary.editions())
        .extracting(Protocol::id)
        .containsExactly("aha-2025", "erc-2025", "nrp-8", "erc-2021", "aha-2020", "aha-2015");
    assertThat(GuidelineLibrary.editions())
        .extracting(Protocol::year)
        .isSortedAccordingTo(java.util.Comparator.reverseOrder());
  }

  @ParameterizedTest
  @MethodSource("allIds")
  void everyValueSaysWhereItComesFrom(String id) {
    Protocol protocol = TestPlans.edition(id);
    assertThat(protocol.local()).isFalse();
    for (Citation citation : citations(protocol)) {
      assertThat(citation.organisation()).isNotBlank();
      assertThat(citation.title()).isNotBlank();
      assertThat(citation.section()).isNotBlank();
      assertThat(citation.year()).isBetween(2005, 2026);
      boolean ours = citation.organisation().equals("Squeezewell");
      assertThat(citation.confidence() == Confidence.HOUSE).isEqualTo(ours);
      assertThat(citation.line())
          .contains(citation.title())
          .contains(Integer.toString(citation.year()));
    }
  }

  @Test
  void whatIsFromMemoryOrOurOwnSaysSoOnItsLine() {
    for (Confidence confidence : Confidence.values()) {
      String line = new Citation("A body", "A text", 2026, "A part", confidence).line();
      assertThat(line.contains("from memory")).isEqualTo(confidence == Confidence.MEMORY);
      assertThat(line.contains("our own choice")).isEqualTo(confidence == Confidence.HOUSE);
    }
  }

  static Stream<String> ids() {
    return Stream.of("aha-2015", "aha-2020", "aha-2025", "erc-2021", "erc-2025");
  }

  static Stream<String> allIds() {
    return Stream.concat(ids(), Stream.of("nrp-8"));
  }

  private static Rhythm rhythm(String id, Situation situation) {
    return TestPlans.edition(id).find(PatientGroup.ADULT, situation).orElseThrow().rhythm();
  }

  private static Set<Citation> citations(Protocol protocol) {
    Set<Citation> found = new LinkedHashSet<>();
    for (Guidance guidance : protocol.guidance()) {
      Limits limits = guidance.limits();
      for (Limit limit :
          List.of(
              limits.pulseCheckEvery(),
              limits.pulseCheckNotice(),
              limits.pulseCheckShortest(),
              limits.pulseCheckLongest(),
              limits.suctionLongest(),
              limits.suctionNotice(),
              limits.gapLongest())) {
        found.add(limit.source());
      }
      found.addAll(citations(guidance.rhythm()));
    }
    for (AgeBand band : protocol.ages()) {
      found.add(band.source());
      found.add(band.from().source());
      band.to().ifPresent(to -> found.add(to.source()));
    }
    return found;
  }

  private static List<Citation> citations(Rhythm rhythm) {
    List<Citation> found = new ArrayList<>();
    rhythm
        .steadyBreaths()
        .ifPresent(
            b -> found.addAll(List.of(b.intervalSource(), b.rangeSource(), b.inspirationSource())));
    rhythm.compressions().ifPresent(c -> found.addAll(List.of(c.source(), c.rangeSource())));
    if (rhythm instanceof Rhythm.CompressionCycle c) {
      found.addAll(
          List.of(c.cycleSource(), c.pauseSource(), c.pauseLimitSource(), c.inspirationSource()));
    }
    return found;
  }
}
