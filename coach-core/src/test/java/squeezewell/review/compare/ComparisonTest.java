package squeezewell.review.compare;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.stream.JsonWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.SessionBuilder;
import squeezewell.review.say.Review;

class ComparisonTest {
  /** Every 3 s from 0 to 117: 39 intervals, all too short. */
  private static final Review FAST = SessionBuilder.ofSeconds(120).breathsEvery(3, 0, 117).review();

  /** Every 6 s from 0 to 114: 19 intervals, all in range. */
  private static final Review GOOD = SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 114).review();

  private static final Review NONE = SessionBuilder.ofSeconds(120).review();
  private static final Review ONE = SessionBuilder.ofSeconds(120).breaths(30).review();

  @Test
  void eachChangeOfTheSituationIsToldByItselfWithItsTime() {
    SessionBuilder changed = SessionBuilder.ofSeconds(240).breathsEvery(6, 0, 60);
    changed.finding(66, squeezewell.protocol.PatientChange.PULSE_LOST);
    changed.finding(150, squeezewell.protocol.PatientChange.PULSE_BACK);
    Review b = SessionBuilder.ofSeconds(240).breathsEvery(6, 0, 234).review();
    assertThat(new SharedPrescription(changed.review(), b).differences())
        .contains(
            "Situation in A: pulse, not breathing. It changed 2 times: at 1:06 to \u201cno pulse,"
                + " no advanced airway\u201d; at 2:30 to \u201cpulse, not breathing\u201d.",
            "Situation in B: pulse, not breathing, throughout.");
  }

  @Test
  void whatIsOutsideItsTargetInOneOfThemIsMarkedThere() {
    Comparison found = Comparison.of(FAST, GOOD);
    Comparison.Row share = row(found, "interval.inRange");
    assertThat(share.a().text()).isEqualTo("0 of 39");
    assertThat(share.b().text()).isEqualTo("19 of 19");
    assertThat(share.difference()).hasValue(1);
    assertThat(share.change()).isEqualTo("+100 points");
    assertThat(share.a().outside()).hasValue(true);
    assertThat(share.b().outside()).hasValue(false);
    assertThat(share.outside()).isEqualTo("A");
    Comparison.Row mean = row(found, "interval.mean");
    assertThat(mean.a().observations()).hasValue(39);
    assertThat(mean.difference()).hasValue(3);
    assertThat(mean.change()).isEqualTo("+3 s");
    assertThat(mean.outside()).isEqualTo("A");
    assertThat(row(found, "interval.fastTime").a().text()).isEqualTo("117 of 117 s");
    assertThat(row(found, "interval.fastTime").b().text()).isEqualTo("0 of 114 s");
    assertThat(row(found, "interval.fastTime").outside()).isEqualTo("A");
    assertThat(row(found, "interval.slowTime").outside()).isEmpty();
    // 20 a minute against 10, asked was 10 to 12.
    assertThat(row(found, "rate").change()).isEqualTo("-10");
    assertThat(found.rows()).extracting(Comparison.Row::code).doesNotContain("prompts.met");
    assertThat(found.sentence())
        .isEqualTo(
            "Outside the target in A: breaths a minute, time too fast, intervals in range, mean"
                + " interval, median interval.");
    assertThat(found.askedDifferently()).isEmpty();
  }

  @Test
  void theOtherWayRoundItIsMarkedInB() {
    Comparison found = Comparison.of(GOOD, FAST);
    assertThat(row(found, "interval.inRange").outside()).isEqualTo("B");
    assertThat(row(found, "interval.inRange").change()).isEqualTo("-100 points");
    assertThat(found.sentence()).startsWith("Outside the target in B: breaths a minute, ");
  }

  @Test
  void aRiseOfLessThanOneHasItsSignToo() {
    Review slower = SessionBuilder.ofSeconds(120).breathsEvery(6.25, 0, 118).review();
    Comparison found = Comparison.of(GOOD, slower);
    assertThat(row(found, "interval.mean").change()).isEqualTo("+0.25 s");
    Comparison back = Comparison.of(slower, GOOD);
    assertThat(row(back, "interval.mean").change()).isEqualTo("-0.25 s");
  }

  @Test
  void whatBothMissIsToldOnceAndFirst() {
    Comparison found = Comparison.of(FAST, FAST);
    assertThat(row(found, "rate").outside()).isEqualTo("A and B");
    assertThat(row(found, "rate").change()).isEqualTo("0");
    assertThat(found.sentence())
        .startsWith("Outside the target in both: breaths a minute, time too fast, ")
        .contains("Still to change in both: ")
        .doesNotContain("in A:", "in B:");
  }

  @Test
  void aPracticeBesideItselfWithinItsTargetsHasNoMark() {
    Comparison found = Comparison.of(GOOD, GOOD);
    assertThat(found.rows()).allMatch(row -> row.outside().isEmpty());
    assertThat(found.sentence()).isEqualTo("Nothing is outside its target.");
  }

  /** Too fast and long gaps first, then the range, then checks, then how prompts were followed. */
  @Test
  void whatMattersMostToAPatientStandsFirst() {
    Review checked =
        SessionBuilder.ofSeconds(240)
            .breathsEvery(6, 0, 114)
            .pulseCheck(120, 128)
            .suction(150, 170)
            .breathsEvery(6, 174, 234)
            .review();
    assertThat(Comparison.of(checked, checked).rows())
        .extracting(Comparison.Row::code)
        .containsExactly(
            "rate",
            "interval.fastTime",
            "gap.longestNet",
            "interval.slowTime",
            "interval.inRange",
            "interval.mean",
            "interval.median",
            "interval.sd",
            "checks.onTime",
            "checks.length",
            "suction.withinLimit",
            "prompts.met",
            "prompts.missed",
            "prompts.extra",
            "lateness.mean",
            "verdict");
    // Suction of 20 s, at most 15 are asked for.
    assertThat(row(Comparison.of(checked, GOOD), "suction.withinLimit").outside()).isEqualTo("A");
    assertThat(row(Comparison.of(checked, GOOD), "checks.length").a().outside()).hasValue(false);
  }

  /** A wait of 24 s in B, at most 10 are asked for. */
  @Test
  void aLongGapIsMarked() {
    Review gap =
        SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 60).breathsEvery(6, 84, 114).review();
    Comparison.Row row = row(Comparison.of(GOOD, gap), "gap.longestNet");
    assertThat(row.b().text()).isEqualTo("24 s");
    assertThat(row.outside()).isEqualTo("B");
  }

  /** Of 20 intervals 15 % are three. */
  @Test
  void fifteenOfAHundredMayLieOutside() {
    double[] three = new double[21];
    double[] four = new double[21];
    for (int k = 1; k < three.length; k++) {
      three[k] = three[k - 1] + (k <= 3 ? 4 : 6);
      four[k] = four[k - 1] + (k <= 4 ? 4 : 6);
    }
    Comparison found =
        Comparison.of(
            SessionBuilder.ofSeconds(120).breaths(three).review(),
            SessionBuilder.ofSeconds(120).breaths(four).review());
    assertThat(row(found, "interval.inRange").outside()).isEqualTo("B");
    assertThat(row(found, "interval.fastTime").outside()).isEqualTo("B");
  }

  /** Eleven silent intervals of 3 s against eleven of 6 s. */
  @Test
  void theRhythmWithoutPromptsHasARowOfItsOwn() {
    Review fast = SessionBuilder.ofSeconds(60).test().breathsEvery(3, 1, 34).review();
    Review good = SessionBuilder.ofSeconds(70).test().breathsEvery(6, 1, 67).review();
    Comparison found = Comparison.of(fast, good);
    assertThat(row(found, "unprompted.inRange").a().text()).isEqualTo("0 of 11");
    assertThat(row(found, "unprompted.inRange").b().text()).isEqualTo("11 of 11");
    assertThat(row(found, "unprompted.inRange").outside()).isEqualTo("A");
    assertThat(found.sentence()).contains("in range, unprompted");
  }

  @Test
  void fewBreathsGiveFiguresToo() {
    Comparison found = Comparison.of(SessionBuilder.ofSeconds(30).breaths(0, 4, 9).review(), GOOD);
    assertThat(row(found, "interval.mean").a().text()).isEqualTo("4.5 s");
    assertThat(found.askedDifferently())
        .contains("Practiced: 0:30 in A, 2:00 in B.")
        .anyMatch(line -> line.startsWith("A longer practice"));
  }

  @Test
  void noBreathAndOneBreathAreNoReasonToFail() {
    Comparison none = Comparison.of(NONE, NONE);
    assertThat(none.rows()).noneMatch(row -> row.code().startsWith("interval"));
    assertThat(none.sentence())
        .isEqualTo(
            "Too little to compare A and B. Still to change in both: no breath was recorded.");
    Comparison one = Comparison.of(NONE, ONE);
    assertThat(row(one, "prompts.met").a().value()).hasValue(0);
    assertThat(one.rows()).noneMatch(row -> row.code().startsWith("interval"));
    Comparison half = Comparison.of(ONE, GOOD);
    assertThat(row(half, "interval.inRange").a().text()).isEqualTo("–");
    assertThat(row(half, "interval.inRange").a().value()).isEmpty();
    assertThat(row(half, "interval.inRange").difference()).isEmpty();
    assertThat(row(half, "interval.inRange").change()).isEmpty();
    assertThat(row(half, "interval.inRange").a().outside()).isEmpty();
  }

  @Test
  void otherRhythmsAreComparedByTheirSharesOnly() {
    Review child =
        SessionBuilder.ofSeconds(120)
            .by(GuidelineLibrary.editions().get(0), PatientGroup.CHILD)
            .breathsEvery(4, 0, 116)
            .review();
    Comparison found = Comparison.of(GOOD, child);
    assertThat(found.rows())
        .extracting(Comparison.Row::code)
        .contains("interval.inRange")
        .doesNotContain(
            "prompts.met",
            "prompts.extra",
            "rate",
            "interval.mean",
            "interval.median",
            "interval.sd",
            "lateness.mean");
    assertThat(found.askedDifferently())
        .contains("Patient: adult in A, child in B.")
        .anyMatch(line -> line.startsWith("Each asked for breaths of its own"));
  }

  /** The same rhythm in another edition is the same rhythm. */
  @Test
  void anotherEditionIsNamedAndItsEqualRhythmCompared() {
    Review other =
        SessionBuilder.ofSeconds(120)
            .by(
                GuidelineLibrary.editions().stream()
                    .filter(p -> p.id().equals("aha-2020"))
                    .findFirst()
                    .orElseThrow(),
                PatientGroup.ADULT)
            .breathsEvery(6, 0, 114)
            .review();
    Review third =
        SessionBuilder.ofSeconds(120)
            .by(
                GuidelineLibrary.editions().stream()
                    .filter(p -> p.id().equals("aha-2025"))
                    .findFirst()
                    .orElseThrow(),
                PatientGroup.ADULT)
            .breathsEvery(6, 0, 114)
            .review();
    Comparison found = Comparison.of(other, third);
    assertThat(found.askedDifferently()).anyMatch(line -> line.startsWith("Asked by "));
    assertThat(row(found, "interval.mean").difference()).hasValue(0);
  }

  /** Steady breaths until the pulse is lost at 1:00; then 30 to 2, which has no steady interval. */
  @Test
  void aChangedRhythmIsComparedOverItsPartsThatAskedForTheSame() {
    Review changed =
        SessionBuilder.ofSeconds(120)
            .breathsEvery(6, 0, 60)
            .finding(62, PatientChange.PULSE_LOST)
            .compressions(30, 63, 0.545)
            .breaths(80, 82)
            .review();
    assertThat(changed.parts()).hasSize(2);
    Comparison found = Comparison.of(GOOD, changed);
    assertThat(row(found, "interval.mean").b().observations()).hasValue(10);
    assertThat(row(found, "interval.mean").b().value()).hasValue(6);
    assertThat(found.askedDifferently())
        .anyMatch(line -> line.startsWith("Situation in A: "))
        .anyMatch(line -> line.startsWith("Compressions: none asked in A, 30 compressions"));
  }

  @Test
  void compressionsAreComparedIfBothHaveThem() {
    Review cycles =
        SessionBuilder.ofSeconds(60)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY)
            .compressions(30, 0, 0.545)
            .breaths(17, 19)
            .compressions(30, 21, 0.545)
            .breaths(38, 40)
            .compressions(30, 42, 0.545)
            .review();
    Comparison found = Comparison.of(cycles, cycles);
    assertThat(row(found, "compressions.goodCycles").a().observations()).hasValue(2);
    assertThat(row(found, "compressions.rate").difference()).hasValue(0);
    assertThat(found.rows()).noneMatch(row -> row.code().equals("gap.longestNet"));
    assertThat(Comparison.of(cycles, GOOD).rows())
        .noneMatch(row -> row.code().startsWith("compressions"));
  }

  static Stream<Review> practices() {
    return Stream.of(
        FAST,
        GOOD,
        NONE,
        ONE,
        SessionBuilder.ofSeconds(120).live().breathsEvery(6, 0, 30).review(),
        SessionBuilder.ofSeconds(240)
            .breathsEvery(6, 0, 114)
            .pulseCheck(120, 128)
            .suction(150, 170)
            .breathsEvery(6, 174, 234)
            .review());
  }

  @ParameterizedTest
  @MethodSource("practices")
  void everyPairGivesTextOfEightyColumnsAndTheSameJsonTurnedRound(Review one) throws Exception {
    for (Review other : new Review[] {FAST, GOOD, NONE, ONE}) {
      Comparison found = Comparison.of(one, other);
      String text = ComparisonText.sentence(found) + ComparisonText.body(found);
      assertThat(text.split("\n", -1)).allMatch(line -> line.length() <= 80);
      Comparison turned = Comparison.of(other, one);
      for (Comparison.Row row : found.rows()) {
        Comparison.Row back = row(turned, row.code());
        assertThat(back.a()).isEqualTo(row.b());
        assertThat(back.outside().replace('A', 'x').replace('B', 'A').replace('x', 'B'))
            .isEqualTo(row.outside().equals("A and B") ? "B and A" : row.outside());
      }
      StringWriter out = new StringWriter();
      JsonWriter json = new JsonWriter(out);
      ComparisonJson.write(found, "one", one, "other", other, json);
      JsonObject read = JsonParser.parseString(out.toString()).getAsJsonObject();
      assertThat(read.getAsJsonArray("rows")).hasSize(found.rows().size());
      assertThat(out.toString()).doesNotContain("NaN");
    }
  }

  private static Comparison.Row row(Comparison comparison, String code) {
    List<Comparison.Row> rows = comparison.rows();
    return rows.stream().filter(r -> r.code().equals(code)).findFirst().orElseThrow();
  }
}
