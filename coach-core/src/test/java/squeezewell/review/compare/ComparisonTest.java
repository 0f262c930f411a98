package squeezewell.review.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.stream.JsonWriter;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.protocol.ClinicalFinding;
import squeezewell.protocol.GuidelineLibrary;
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
    changed.finding(66, squeezewell.protocol.ClinicalFinding.PULSE_LOST);
    changed.finding(150, squeezewell.protocol.ClinicalFinding.PULSE_BACK);
    Review b = SessionBuilder.ofSeconds(240).breathsEvery(6, 0, 234).review();
    assertThat(new AskedOfBoth(changed.review(), b).differences())
        .contains(
            "Situation in A: pulse, not breathing. It changed 2 times: at 1:06 to \u201cno pulse,"
                + " no advanced airway\u201d; at 2:30 to \u201cpulse, not breathing\u201d.",
            "Situation in B: pulse, not breathing, throughout.");
  }

  @Test
  void aTraineeWhoSlowedDownToThePaceIsBetterInB() {
    Comparison found = Comparison.of(FAST, GOOD);
    Comparison.Row share = row(found, "interval.inRange");
    assertThat(share.a().text()).isEqualTo("0 of 39");
    assertThat(share.b().text()).isEqualTo("19 of 19");
    assertThat(share.difference()).hasValue(1);
    assertThat(share.outcome()).isEqualTo(Comparison.Outcome.BETTER);
    // Wilson (1927) for 19 of 19: from n / (n + z²) = 19 / 22.8415 to 1.
    assertThat(share.b().low().getAsDouble()).isCloseTo(0.8318, within(5e-5));
    Comparison.Row mean = row(found, "interval.mean");
    assertThat(mean.a().observations()).hasValue(39);
    assertThat(mean.difference()).hasValue(3);
    // A is 3 s off, B not at all.
    assertThat(mean.tested().get().value()).isEqualTo(-3);
    assertThat(mean.outcome()).isEqualTo(Comparison.Outcome.BETTER);
    assertThat(row(found, "interval.fastTime").a().text()).isEqualTo("117 of 117 s");
    assertThat(row(found, "interval.fastTime").b().text()).isEqualTo("0 of 114 s");
    assertThat(row(found, "rate").outcome()).isEqualTo(Comparison.Outcome.NOT_TESTED);
    assertThat(found.sentence()).startsWith("Better in B: the pace nearer to what was asked; more");
    assertThat(found.askedDifferently()).isEmpty();
  }

  @Test
  void theOtherWayRoundItIsWorseInB() {
    Comparison found = Comparison.of(GOOD, FAST);
    assertThat(row(found, "interval.inRange").outcome()).isEqualTo(Comparison.Outcome.WORSE);
    assertThat(row(found, "interval.mean").outcome()).isEqualTo(Comparison.Outcome.WORSE);
    assertThat(row(found, "prompts.extra").outcome()).isEqualTo(Comparison.Outcome.WORSE);
    assertThat(found.sentence()).startsWith("Worse in B: ");
  }

  @Test
  void aPracticeBesideItselfShowsNoDifference() {
    Comparison found = Comparison.of(GOOD, GOOD);
    assertThat(found.rows()).noneMatch(row -> row.outcome().isClear());
    assertThat(found.sentence()).isEqualTo("No clear difference between A and B.");
  }

  /** Eleven silent intervals of 3 s against eleven of 6 s. */
  @Test
  void aClearChangeOfTheRhythmWithoutPromptsHasItsWords() {
    Review fast = SessionBuilder.ofSeconds(60).test().breathsEvery(3, 1, 34).review();
    Review good = SessionBuilder.ofSeconds(70).test().breathsEvery(6, 1, 67).review();
    Comparison found = Comparison.of(fast, good);
    assertThat(row(found, "unprompted.inRange").a().text()).isEqualTo("0 of 11");
    assertThat(row(found, "unprompted.inRange").b().text()).isEqualTo("11 of 11");
    assertThat(row(found, "unprompted.inRange").outcome()).isEqualTo(Comparison.Outcome.BETTER);
    assertThat(found.sentence()).contains("more intervals in range without prompts");
    assertThat(Comparison.of(good, fast).sentence())
        .contains("fewer intervals in range without prompts");
  }

  /** Whatever is tested can turn out clear, so it needs words for both ways. */
  @Test
  void everyRowThatIsTestedHasItsWords() {
    Review first = SessionBuilder.ofSeconds(60).test().breathsEvery(3, 1, 34).review();
    Review second = squeezed(SessionBuilder.ofSeconds(240)).pulseCheck(120, 128).review();
    Review third =
        squeezed(SessionBuilder.ofSeconds(120).in(Situation.ARREST_NO_ADVANCED_AIRWAY))
            .compressions(30, 0, 0.5)
            .compressions(30, 20, 0.5)
            .suction(70, 80)
            .review();
    Set<String> codes = new TreeSet<>();
    for (Review one : List.of(first, second, third)) {
      for (Comparison.Row row : Comparison.of(one, one).rows()) {
        if (row.outcome() != Comparison.Outcome.NOT_TESTED && codes.add(row.code())) {
          assertThat(sentence(one, row, Comparison.Outcome.BETTER))
              .startsWith("Better in B: ")
              .isNotEqualTo(sentence(one, row, Comparison.Outcome.WORSE));
        }
      }
    }
    assertThat(codes).hasSize(12);
  }

  private static SessionBuilder squeezed(SessionBuilder session) {
    for (int k = 0; k < 12; k++) {
      session.squeeze(6 * k, 1, "");
    }
    return session;
  }

  private static String sentence(Review review, Comparison.Row row, Comparison.Outcome outcome) {
    Comparison.Row clear =
        new Comparison.Row(
            row.code(),
            row.label(),
            row.unit(),
            row.a(),
            row.b(),
            row.difference(),
            row.tested(),
            outcome);
    return ComparisonWords.sentence(review, review, List.of(clear));
  }

  /** 5.5 s and 6.5 s apart: the means differ without doubt, yet both are 0.5 s off. */
  @Test
  void twoMeansOnBothSidesOfWhatWasAskedAreAsFarOff() {
    Comparison found =
        Comparison.of(
            SessionBuilder.ofSeconds(120).breathsEvery(5.5, 0, 115.5).review(),
            SessionBuilder.ofSeconds(120).breathsEvery(6.5, 0, 117).review());
    Comparison.Row mean = row(found, "interval.mean");
    assertThat(mean.difference().getAsDouble()).isCloseTo(1, within(1e-9));
    assertThat(mean.outcome()).isEqualTo(Comparison.Outcome.NO_CLEAR_DIFFERENCE);
  }

  /** 2 % off against none: beyond chance, but less than the 3 % that anybody would notice. */
  @Test
  void aChangeOfThePaceTooSmallToNoticeIsNotClaimed() {
    Comparison found =
        Comparison.of(SessionBuilder.ofSeconds(120).breathsEvery(6.12, 0, 116.28).review(), GOOD);
    Comparison.Row mean = row(found, "interval.mean");
    assertThat(mean.tested().get().high()).isNegative();
    assertThat(mean.outcome()).isEqualTo(Comparison.Outcome.NO_CLEAR_DIFFERENCE);
  }

  /** Intervals of 5 and 7 s in turn against 6 s: same mean, other spread; all in range. */
  @Test
  void aMoreEvenRhythmIsToldFromAnUnevenOneOfTheSamePace() {
    double[] uneven = new double[20];
    for (int k = 1; k < uneven.length; k++) {
      uneven[k] = uneven[k - 1] + (k % 2 == 0 ? 5 : 7);
    }
    Comparison found = Comparison.of(SessionBuilder.ofSeconds(120).breaths(uneven).review(), GOOD);
    // 19 intervals, ten of 7 s: the median is 7, nine of them lie 2 s away.
    assertThat(row(found, "interval.spread").a().value().getAsDouble())
        .isCloseTo(18.0 / 19, within(1e-9));
    assertThat(row(found, "interval.spread").outcome()).isEqualTo(Comparison.Outcome.BETTER);
    assertThat(row(found, "interval.sd").outcome()).isEqualTo(Comparison.Outcome.NOT_TESTED);
    assertThat(found.sentence()).contains("more even");
  }

  @Test
  void fewBreathsGiveFiguresAndNoClaimOfMeansAndSpread() {
    Comparison found = Comparison.of(SessionBuilder.ofSeconds(30).breaths(0, 4, 9).review(), GOOD);
    assertThat(row(found, "interval.mean").outcome()).isEqualTo(Comparison.Outcome.TOO_FEW);
    assertThat(row(found, "interval.spread").outcome()).isEqualTo(Comparison.Outcome.TOO_FEW);
    assertThat(row(found, "interval.mean").a().text()).isEqualTo("4.5 s");
    assertThat(found.askedDifferently())
        .contains("Practised: 0:30 in A, 2:00 in B.")
        .anyMatch(line -> line.startsWith("A longer practice"));
  }

  @Test
  void noBreathAndOneBreathAreNoReasonToFail() {
    Comparison none = Comparison.of(NONE, NONE);
    assertThat(none.rows()).noneMatch(row -> row.code().startsWith("interval"));
    assertThat(none.sentence())
        .isEqualTo(
            "No clear difference between A and B. Still to change in both: no breath was"
                + " recorded.");
    Comparison one = Comparison.of(NONE, ONE);
    assertThat(row(one, "prompts.met").a().value()).hasValue(0);
    assertThat(one.rows()).noneMatch(row -> row.outcome().isClear());
    Comparison half = Comparison.of(ONE, GOOD);
    assertThat(row(half, "interval.inRange").a().text()).isEqualTo("–");
    assertThat(row(half, "interval.inRange").a().value()).isEmpty();
    assertThat(row(half, "interval.inRange").difference()).isEmpty();
    assertThat(row(half, "interval.inRange").outcome()).isEqualTo(Comparison.Outcome.TOO_FEW);
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
        .contains("interval.inRange", "prompts.met", "prompts.extra")
        .doesNotContain(
            "rate",
            "interval.mean",
            "interval.median",
            "interval.sd",
            "interval.spread",
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
            .finding(62, ClinicalFinding.PULSE_LOST)
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
        assertThat(back.outcome().isClear()).isEqualTo(row.outcome().isClear());
      }
      StringWriter out = new StringWriter();
      JsonWriter json = new JsonWriter(out);
      ComparisonJson.write(found, "one", one, "other", other, json);
      JsonObject read = JsonParser.parseString(out.toString()).getAsJsonObject();
      assertThat(read.getAsJsonArray("rows")).hasSize(found.rows().size());
      assertThat(out.toString()).doesNotContain("NaN");
    }
  }

  /**
   * Two practices of one and the same made-up trainee (mean 5.7 s, SD 0.6 s, 19 intervals, normal):
   * in a run of 1000 pairs 17 rows were called clear. 6 % of 200 pairs lies far above that.
   */
  @Test
  void whereNothingChangedLittleIsCalledClear() {
    Random chance = new Random(20261125);
    int claims = 0;
    for (int i = 0; i < 200; i++) {
      Comparison found = Comparison.of(normal(chance, 5.7, 0.6), normal(chance, 5.7, 0.6));
      claims += found.rows().stream().anyMatch(row -> row.outcome().isClear()) ? 1 : 0;
    }
    assertThat(claims / 200.0).isLessThan(0.06);
  }

  private static Review normal(Random chance, double mean, double deviation) {
    double[] at = new double[20];
    for (int k = 1; k < at.length; k++) {
      at[k] = at[k - 1] + Math.max(0.5, mean + deviation * chance.nextGaussian());
    }
    return SessionBuilder.ofSeconds(120)
        .breaths(Arrays.stream(at).filter(t -> t < 120).toArray())
        .review();
  }

  private static Comparison.Row row(Comparison comparison, String code) {
    List<Comparison.Row> rows = comparison.rows();
    return rows.stream().filter(r -> r.code().equals(code)).findFirst().orElseThrow();
  }
}
