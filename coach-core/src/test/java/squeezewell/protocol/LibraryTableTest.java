package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.TestPlans;

/**
 * Every rhythm of every built-in edition against the published value, typed here from the source
 * that stands beside it. A published range is the range, prompted at its middle (our own choice); a
 * single published value has a range of one sixth either side (our own choice).
 */
class LibraryTableTest {
  /**
   * edition | patients | situations | rescuers (- for any) | published interval in s | published
   * compressions a minute | cycle | squeeze in s | how the interval or the cycle was checked |
   * source.
   */
  private static final String TABLE =
      """
      aha-2015 | adult | pulse-no-breathing pulse-slow-breathing | - | 5-6 | - | - | 1 | secondary | 2015 Part 5: every 5 to 6 s, 10 to 12 a minute; each over 1 s
      aha-2020 | adult | pulse-no-breathing pulse-slow-breathing | - | 6 | - | - | 1 | secondary | 2020 Part 3: every 6 s; each over 1 s
      aha-2025 | adult | pulse-no-breathing pulse-slow-breathing | - | 6 | - | - | 1 | secondary | 2025 Adult BLS: every 6 s
      erc-2021 | adult | pulse-no-breathing pulse-slow-breathing | - | 6 | - | - | 1 | memory | rate with an advanced airway, 10 a minute
      erc-2025 | adult | pulse-no-breathing pulse-slow-breathing | - | 6 | - | - | 1 | memory | rate with an advanced airway, 10 a minute
      aha-2015 | child infant | pulse-no-breathing pulse-slow-breathing | - | 3-5 | - | - | 1 | secondary | 2015 Part 11: every 3 to 5 s, 12 to 20 a minute
      aha-2020 | child infant | pulse-no-breathing pulse-slow-breathing | - | 2-3 | - | - | 1 | secondary | 2020 Part 4: every 2 to 3 s, 20 to 30 a minute (US Pharmacist 2021;46(8):HS2)
      aha-2025 | child infant | pulse-no-breathing pulse-slow-breathing | - | 2-3 | - | - | 1 | secondary | 2025 Part 6: every 2 to 3 s, 20 to 30 a minute
      erc-2021 | infant | pulse-no-breathing pulse-slow-breathing | - | 2.4 | - | - | 1 | memory | rate with an advanced airway, 25 a minute under 1 year
      erc-2021 | child | pulse-no-breathing pulse-slow-breathing | - | 3 | - | - | 1 | memory | rate with an advanced airway, 20 a minute over 1 year
      aha-2015 | adult | arrest-no-advanced-airway | - | - | 100-120 | 30:2 | 1 | primary | AHA summary table 2010, unchanged; 100 to 120 from 2015 on
      aha-2020 | adult | arrest-no-advanced-airway | - | - | 100-120 | 30:2 | 1 | primary | the same
      aha-2025 | adult | arrest-no-advanced-airway | - | - | 100-120 | 30:2 | 1 | primary | the same
      erc-2021 | adult | arrest-no-advanced-airway | - | - | 100-120 | 30:2 | 1 | primary | the same: read in the AHA table of 2010, not in ERC 2021
      erc-2025 | adult | arrest-no-advanced-airway | - | - | 100-120 | 30:2 | 1 | memory | ERC BLS 2025
      aha-2015 | child infant | arrest-no-advanced-airway | 1 | - | 100-120 | 30:2 | 1 | secondary | AHA table; physician reference manual: lone rescuer
      aha-2015 | child infant | arrest-no-advanced-airway | 2 | - | 100-120 | 15:2 | 1 | secondary | AHA table; physician reference manual: two rescuers
      aha-2020 | child infant | arrest-no-advanced-airway | 1 | - | 100-120 | 30:2 | 1 | secondary | a summary of BLS 2020: one rescuer
      aha-2020 | child infant | arrest-no-advanced-airway | 2 | - | 100-120 | 15:2 | 1 | secondary | a summary of BLS 2020: two or more
      aha-2025 | child infant | arrest-no-advanced-airway | 1 | - | 100-120 | 30:2 | 1 | secondary | physician reference manual: lone rescuer
      aha-2025 | child infant | arrest-no-advanced-airway | 2 | - | 100-120 | 15:2 | 1 | secondary | physician reference manual: two rescuers
      erc-2021 | child infant | arrest-no-advanced-airway | - | - | 100-120 | 15:2 | 1 | secondary | ERC PLS 2021: 15:2 for every child who has left the delivery room
      erc-2025 | child infant | arrest-no-advanced-airway | - | - | 100-120 | 15:2 | 1 | memory | ERC PLS 2025
      aha-2015 | adult | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | secondary | 2015 Part 7: every 6 s, not timed to compressions
      aha-2020 | adult | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | secondary | 2020 Part 3: every 6 s
      aha-2025 | adult | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | secondary | 2025: every 6 s
      erc-2021 | adult | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | secondary | ERC ALS 2021: 10 a minute
      erc-2025 | adult | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | memory | ERC ALS 2025: 10 a minute
      aha-2015 | child infant | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | secondary | 2015 Part 12: 10 a minute (Sutton 2019 calls 10 +/- 2 the guideline)
      aha-2020 | child infant | arrest-advanced-airway | - | 2-3 | 100-120 | - | 1 | secondary | 2020 Part 4: every 2 to 3 s (US Pharmacist 2021;46(8):HS2)
      aha-2025 | child infant | arrest-advanced-airway | - | 2-3 | 100-120 | - | 1 | secondary | physician reference manual: 20 to 30 a minute
      erc-2021 | infant | arrest-advanced-airway | - | 2.4 | 100-120 | - | 1 | memory | ERC PLS 2021: under 1 year 25 a minute
      erc-2021 | child | arrest-advanced-airway | - | 3 | 100-120 | - | 1 | memory | ERC PLS 2021: over 1 year 20 a minute
      erc-2021 | child@8 | pulse-no-breathing pulse-slow-breathing | - | 4 | - | - | 1 | memory | the same: over 8 years 15 a minute
      erc-2021 | child@12 | pulse-no-breathing pulse-slow-breathing | - | 6 | - | - | 1 | memory | the same: over 12 years 10 a minute
      erc-2021 | child@8 | arrest-advanced-airway | - | 4 | 100-120 | - | 1 | memory | the same: over 8 years 15 a minute
      erc-2021 | child@12 | arrest-advanced-airway | - | 6 | 100-120 | - | 1 | memory | the same: over 12 years 10 a minute
      aha-2015 | newborn | newborn-ventilation | - | 1-1.5 | - | - | 0.5 | secondary | 2015 Part 13: 40 to 60 a minute
      aha-2025 | newborn | newborn-ventilation | - | 1-2 | - | - | 0.5 | primary | joint release of AHA and AAP, 23 October 2025: 30 to 60 inflations a minute; prompted at 40, our own choice
      aha-2020 | newborn | newborn-ventilation | - | 1-1.5 | - | - | 0.5 | secondary | 2020 Part 5: 40 to 60 a minute
      nrp-8 | newborn | newborn-ventilation | - | 1-1.5 | - | - | 0.5 | secondary | NRP 8th edition: 40 to 60 a minute
      erc-2021 | newborn | newborn-ventilation | - | 2 | - | - | 1 | secondary | NLS 2021: about 30 a minute, inflation about 1 s
      aha-2015 | newborn | arrest-no-advanced-airway | - | - | 120 | 3:1 | 0.4 | secondary | 2015 Part 13; 120 events a minute (Solevåg 2012;20:73)
      aha-2020 | newborn | arrest-no-advanced-airway | - | - | 120 | 3:1 | 0.4 | secondary | 2020 Part 5; the same
      aha-2025 | newborn | arrest-no-advanced-airway | - | - | 120 | 3:1 | 0.4 | memory | 2025 Part 5; the same
      nrp-8 | newborn | arrest-no-advanced-airway | - | - | 120 | 3:1 | 0.4 | secondary | NRP 8th edition; the same
      erc-2021 | newborn | arrest-no-advanced-airway | - | - | 120 | 3:1 | 0.4 | secondary | UK newborn FAQ: 3:1; about 15 cycles in 30 s
      erc-2025 | newborn | arrest-no-advanced-airway | - | - | 120 | 3:1 | 0.4 | memory | NLS 2025: 3:1
      """;

  /** One combination and what was published for it. */
  record Row(
      String edition,
      String patient,
      String situation,
      int rescuers,
      String interval,
      String compressions,
      String cycle,
      String squeeze,
      String checked,
      String source) {
    String key() {
      return edition + " " + patient + " " + situation + " " + rescuers;
    }
  }

  static Stream<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (String line : TABLE.trim().split("\n", -1)) {
      String[] cell = line.split(" \\| ", -1);
      assertThat(cell).as(line).hasSize(10);
      int rescuers = cell[3].equals("-") ? 0 : Integer.parseInt(cell[3]);
      for (String patient : cell[1].split(" ", -1)) {
        for (String situation : cell[2].split(" ", -1)) {
          rows.add(
              new Row(
                  cell[0], patient, situation, rescuers, cell[4], cell[5], cell[6], cell[7],
                  cell[8], cell[9]));
        }
      }
    }
    return rows.stream();
  }

  @Test
  void theTableHasEveryCombinationOfTheFilesOnceAndNoOther() {
    List<String> files = new ArrayList<>();
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance g : edition.guidance()) {
        files.add(edition.id() + " " + patient(g) + " " + g.situation().id() + " " + g.rescuers());
      }
    }
    assertThat(rows().map(Row::key)).containsExactlyInAnyOrderElementsOf(files);
    assertThat(new HashSet<>(files)).hasSameSizeAs(files);
  }

  @ParameterizedTest
  @MethodSource("rows")
  void aRhythmIsAsPublished(Row row) {
    Guidance guidance = guidance(row);
    Rhythm rhythm = guidance.rhythm();
    assertThat(row.source()).isNotBlank();
    assertThat(rhythm.steadyBreaths().isPresent()).isEqualTo(!row.interval().equals("-"));
    assertThat(rhythm.compressions().isPresent()).isEqualTo(!row.compressions().equals("-"));
    assertThat(rhythm instanceof Rhythm.CompressionCycle).isEqualTo(!row.cycle().equals("-"));
    rhythm.steadyBreaths().ifPresent(b -> requireBreaths(row, b));
    rhythm.compressions().ifPresent(c -> requireCompressions(row, c));
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      assertThat(cycle.perCycle() + ":" + cycle.breathsPerCycle()).isEqualTo(row.cycle());
      assertThat(cycle.cycleSource().confidence().id()).isEqualTo(row.checked());
      assertThat(cycle.inspirationNanos()).isEqualTo(TestPlans.nanos(row.squeeze()));
      boolean newborn = row.cycle().equals("3:1");
      // Physicians' reference manual: two breaths take 3 to 4 s, AHA: under 10 s. Newborn: one of
      // 120 events a minute; its limit is our own choice.
      assertThat(cycle.pauseNanos()).isEqualTo(TestPlans.nanos(newborn ? "0.5" : "4"));
      assertThat(cycle.pauseLimitNanos()).isEqualTo(TestPlans.nanos(newborn ? "1" : "10"));
      // A limit on the time without a breath must leave room for the compressions.
      assertThat(guidance.limits().gapLongest().seconds()).isGreaterThan(cycle.cycle().seconds());
    }
  }

  private static void requireBreaths(Row row, BreathPlan plan) {
    String[] ends = row.interval().split("-", -1);
    boolean range = ends.length == 2;
    BigDecimal low = new BigDecimal(ends[0]);
    BigDecimal high = new BigDecimal(ends[ends.length - 1]);
    // The newborn's was published as a rate, 40 to 60 a minute: its middle is 50, one every 1.2 s.
    boolean rate = row.interval().equals("1-1.5");
    BigDecimal middle = rate ? new BigDecimal("1.2") : low.add(high).divide(BigDecimal.valueOf(2));
    assertThat(plan.interval().nanosAt(1)).isEqualTo(TestPlans.nanos(middle.toPlainString()));
    assertThat(plan.lowNanos()).isEqualTo(range ? nanos(low) : nanos(sixths(middle, 5)));
    assertThat(plan.highNanos()).isEqualTo(range ? nanos(high) : nanos(sixths(middle, 7)));
    assertThat(plan.inspirationNanos()).isEqualTo(TestPlans.nanos(row.squeeze()));
    Citation published = range ? plan.rangeSource() : plan.intervalSource();
    Citation ours = range ? plan.intervalSource() : plan.rangeSource();
    assertThat(published.confidence().id()).isEqualTo(row.checked());
    assertThat(ours.confidence()).isEqualTo(Confidence.HOUSE);
  }

  private static void requireCompressions(Row row, CompressionPlan plan) {
    if (row.compressions().equals("120")) {
      assertThat(plan.tempo().perMinute()).isEqualTo(120, within(1e-9));
      assertThat(plan.rangeSource().confidence()).isEqualTo(Confidence.HOUSE);
      return;
    }
    assertThat(row.compressions()).isEqualTo("100-120");
    assertThat(plan.lowPerMinute()).isEqualTo(100);
    assertThat(plan.highPerMinute()).isEqualTo(120);
    assertThat(plan.tempo().perMinute()).isEqualTo(110, within(1e-9));
    assertThat(plan.source().confidence()).isEqualTo(Confidence.HOUSE);
  }

  /**
   * Values that could be found in no source and in no text that reports one: they must stand in no
   * file. The rates by age and for the newborn of ERC 2025; a check of the circulation every
   * minute.
   */
  @Test
  void valuesThatCouldNotBeConfirmedStandInNoFile() {
    assertThat(
            rhythms(
                "erc-2025", Set.of(PatientGroup.CHILD, PatientGroup.INFANT, PatientGroup.NEWBORN)))
        .isNotEmpty()
        .allMatch(r -> !r.steadyBreaths().isPresent());
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance g : edition.guidance()) {
        boolean newborn = g.patient() == PatientGroup.NEWBORN;
        assertThat(g.limits().pulseCheckEvery().seconds() < 120).isEqualTo(newborn);
      }
    }
  }

  private static List<Rhythm> rhythms(String id, Set<PatientGroup> groups) {
    List<Rhythm> found = new ArrayList<>();
    for (Guidance g : TestPlans.edition(id).guidance()) {
      if (groups.contains(g.patient())) {
        found.add(g.rhythm());
      }
    }
    return found;
  }

  /** A group, with the age in years from which the values hold where they change within it. */
  private static String patient(Guidance g) {
    return g.patient().id() + g.fromAge().map(a -> "@" + a.value()).orElse("");
  }

  private static Guidance guidance(Row row) {
    return TestPlans.edition(row.edition()).guidance().stream()
        .filter(g -> patient(g).equals(row.patient()))
        .filter(g -> g.situation().id().equals(row.situation()))
        .filter(g -> g.rescuers() == row.rescuers())
        .findFirst()
        .orElseThrow();
  }

  private static BigDecimal sixths(BigDecimal middle, int sixths) {
    return middle
        .multiply(BigDecimal.valueOf(sixths))
        .divide(BigDecimal.valueOf(6), 3, RoundingMode.HALF_UP);
  }

  private static long nanos(BigDecimal seconds) {
    return TestPlans.nanos(seconds.toPlainString());
  }
}
