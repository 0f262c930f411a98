package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import squeezewell.protocol.Situation;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.review.say.ReviewText;

/** 30 to 2 at 100 to 120 a minute with pauses of at most 10 s, as the adult's edition asks. */
class CompressionFindingsTest {
  @Test
  void whatWasAskedIsGood() {
    Review review = cycles(30, 0.55, 2, 5);
    assertThat(InterruptionsTest.codes(review))
        .contains("compressions-good")
        .doesNotContain("compressions-missing", "breaths-missing", "wrong-number", "too-fast");
    assertThat(finding(review, "compressions-good").text())
        .isEqualTo(
            "You compressed 109.1 times a minute; asked was 100 to 120 a minute. 4 of 4 cycles"
                + " were just as asked.");
  }

  @ParameterizedTest
  @CsvSource({
    // 60 / 0.497 s = 120.7, 60 / 0.499 s = 120.2, 60 / 0.602 s = 99.7, 60 / 0.604 s = 99.3.
    "0.497, compress-too-fast",
    "0.499, compressions-good",
    "0.5, compressions-good",
    "0.6, compressions-good",
    "0.602, compressions-good",
    "0.604, compress-too-slow"
  })
  void theProtocolsRangeIsTheLimitAsItIsReadInWholeNumbers(double step, String code) {
    assertThat(codesOfCompressions(cycles(30, step, 2, 5))).isEqualTo(code);
  }

  @ParameterizedTest
  @CsvSource({"10, compressions-good", "10.1, pause-too-long"})
  void aPauseMayLastTenSeconds(double pause, String code) {
    assertThat(codesOfCompressions(cycles(30, 0.55, 2, pause))).isEqualTo(code);
  }

  @ParameterizedTest
  @CsvSource({
    "28, wrong-number",
    "29, compressions-good",
    "31, compressions-good",
    "34, wrong-number"
  })
  void aCycleHasThirtyCompressions(int count, String code) {
    assertThat(codesOfCompressions(cycles(count, 0.55, 2, 5))).isEqualTo(code);
  }

  @Test
  void oneWrongCycleInFiveIsLetPass() {
    SessionBuilder session = arrest(120).compressions(29, 0, 0.5);
    for (int k = 1; k <= 5; k++) {
      session.breaths(20 * k - 4, 20 * k - 2).compressions(30, 20 * k, 0.5);
    }
    Review review = session.review();
    assertThat(review.metrics().compressions().get().goodCycles()).isEqualTo(4);
    assertThat(codesOfCompressions(review)).isEqualTo("compressions-good");
  }

  @Test
  void aPauseWithOneBreathLacksOneAndIsNotToldTwice() {
    Review review = cycles(30, 0.55, 1, 5);
    assertThat(codesOfCompressions(review)).isEqualTo("breaths-missing");
    assertThat(InterruptionsTest.codes(review)).doesNotContain("missed-prompts");
    assertThat(finding(review, "breaths-missing").text())
        .startsWith("4 of 4 pauses had fewer than 2 breaths.");
  }

  @ParameterizedTest
  @EnumSource(
      value = Situation.class,
      names = {"ARREST_NO_ADVANCED_AIRWAY", "ARREST_ADVANCED_AIRWAY"})
  void noneRecordedIsSaid(Situation situation) {
    Review review =
        SessionBuilder.ofSeconds(120).in(situation).breathsEvery(6, 0.2, 114.2).review();
    assertThat(InterruptionsTest.codes(review)).contains("compressions-missing");
    assertThat(ReviewText.write(review)).contains("compressions", "0\n");
  }

  @Test
  void aRhythmOfBreathsSaysNothingOfCompressions() {
    Review review = SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 114).review();
    assertThat(codesOfCompressions(review)).isEmpty();
    assertThat(ReviewText.write(review)).doesNotContain("compressions");
  }

  @Test
  void theTextHoldsWhatWasAskedAndDone() {
    assertThat(ReviewText.write(cycles(30, 0.55, 2, 5)))
        .contains("30 compressions, then 2 breaths; 100 to 120 a minute")
        .contains("150, 109.1 a minute, 100 % in range")
        .contains("4, longest 5 s (limit 10 s)")
        .contains("4 of 4");
    Review continuous =
        SessionBuilder.ofSeconds(20)
            .in(Situation.ARREST_ADVANCED_AIRWAY)
            .compressions(40, 0, 0.5)
            .review();
    assertThat(ReviewText.write(continuous)).contains("without a break; 100 to 120 a minute");
  }

  @Test
  void theJsonHoldsTheFigures() throws IOException {
    JsonObject done = json(cycles(30, 0.55, 2, 5)).getAsJsonObject("compressions");
    assertThat(done.keySet())
        .containsExactly(
            "count",
            "ratePerMinute",
            "eventsPerMinute",
            "inRangeFraction",
            "pauseCount",
            "longestPauseSeconds",
            "overLimitPauses",
            "handsOffSeconds",
            "fraction",
            "cycles",
            "goodCycles");
    assertThat(done.get("count").getAsInt()).isEqualTo(150);
    assertThat(done.get("ratePerMinute").getAsString()).isEqualTo("109.090909");
    assertThat(done.get("longestPauseSeconds").getAsString()).isEqualTo("5");
    assertThat(done.get("cycles").getAsInt()).isEqualTo(4);
    Review breathsOnly = SessionBuilder.ofSeconds(30).review();
    assertThat(json(breathsOnly).get("compressions").isJsonNull()).isTrue();
    Review continuous = SessionBuilder.ofSeconds(30).in(Situation.ARREST_ADVANCED_AIRWAY).review();
    JsonObject none = json(continuous).getAsJsonObject("compressions");
    assertThat(none.get("count").getAsInt()).isZero();
    assertThat(none.get("ratePerMinute").isJsonNull()).isTrue();
    assertThat(none.get("goodCycles").isJsonNull()).isTrue();
  }

  /** Five runs of compressions with four pauses between, and breaths in the pauses. */
  private static Review cycles(int count, double step, int breaths, double pause) {
    double run = (count - 1) * step;
    double cycle = run + pause;
    SessionBuilder session = arrest(4 * cycle + run + step);
    for (int k = 0; k < 5; k++) {
      session.compressions(count, k * cycle, step);
      for (int b = 0; b < breaths && k < 4; b++) {
        session.breaths(k * cycle + run + 1 + 2 * b);
      }
    }
    return session.review();
  }

  private static SessionBuilder arrest(double seconds) {
    return SessionBuilder.ofSeconds(seconds).in(Situation.ARREST_NO_ADVANCED_AIRWAY);
  }

  private static String codesOfCompressions(Review review) {
    return InterruptionsTest.codes(review).stream()
        .filter(c -> c.matches("compress.*|pause-too-long|wrong-number|breaths-missing"))
        .reduce((a, b) -> a + " " + b)
        .orElse("");
  }

  private static Feedback finding(Review review, String code) {
    return review.findings().stream().filter(f -> f.code().equals(code)).findFirst().orElseThrow();
  }

  private static JsonObject json(Review review) throws IOException {
    StringBuilder text = new StringBuilder();
    ReviewJson.write(review, text);
    return JsonParser.parseString(text.toString()).getAsJsonObject();
  }
}
