package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientGroup;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewText;

/**
 * What is said first of a fault of the breaths, from lists of intervals written by hand. AHA 2025,
 * adult with a pulse: one breath every 6 s, in range from 5 to 7 s.
 */
class BreathVerdictsTest {
  private static final double FIRST = 0.1;

  private static List<Double> times(double from, double... intervals) {
    List<Double> at = new ArrayList<>(List.of(from));
    for (double interval : intervals) {
      at.add(at.get(at.size() - 1) + interval);
    }
    return at;
  }

  /** The same intervals again and again. */
  private static double[] again(int times, double... intervals) {
    double[] all = new double[times * intervals.length];
    for (int i = 0; i < all.length; i++) {
      all[i] = intervals[i % intervals.length];
    }
    return all;
  }

  private static double[] joined(double[]... parts) {
    return Arrays.stream(parts).flatMapToDouble(Arrays::stream).toArray();
  }

  private static SessionBuilder adult(List<Double> at) {
    SessionBuilder session =
        SessionBuilder.ofSeconds(at.get(at.size() - 1) + 2)
            .by(TestPlans.edition("aha-2025"), PatientGroup.ADULT);
    at.forEach(start -> session.squeeze(start, 1, ""));
    return session;
  }

  private static Review review(double... intervals) {
    return adult(times(FIRST, intervals)).review();
  }

  private static String first(Review review) {
    return codes(review).get(0);
  }

  private static List<String> codes(Review review) {
    return review.findings().stream().map(Feedback::code).collect(Collectors.toList());
  }

  @ParameterizedTest(name = "{0} s and {1} s in turns: uneven")
  @CsvSource({
    "4, 8",
    "8, 4",
    "3, 9",
    "4.5, 7.5",
    "4.9, 7.1",
    "4, 7",
    "7, 4",
    "4, 6",
    "3.9, 6.1",
    "5, 7.5",
    "5.5, 8"
  })
  void inTurnsIsUneven(double one, double other) {
    Review review = review(again(20, one, other));
    assertThat(first(review)).isEqualTo("rhythm-uneven");
    assertThat(codes(review))
        .doesNotContain("too-fast", "too-slow", "a-little-fast", "a-little-slow", "own-tempo");
  }

  @ParameterizedTest(name = "Breaths in one go, {0} s apart, then {1} s: double breaths")
  @CsvSource({"1.2, 4.8", "1.2, 10.8", "2, 10", "2.5, 9.5", "0.8, 5.2", "1.5, 4.5", "1.2, 3.8"})
  void twoThenAPauseAreDoubleBreaths(double inside, double pause) {
    Review review = review(again(15, inside, pause));
    assertThat(first(review)).isEqualTo("double-breaths");
    assertThat(codes(review))
        .doesNotContain("too-fast", "missed-prompts", "late-breath", "no-long-gap", "prompts-met");
    assertThat(review.findings().get(0).text()).startsWith("15 times two breaths");
  }

  @Test
  @DisplayName("Two breaths 1.2 s apart, then 4.8 s: the rate by the minute is 20")
  void rateOfDoubleBreathsIsByTheMinute() {
    // 31 breaths in 92.1 s.
    assertThat(review(again(15, 1.2, 4.8)).findings().get(0).text())
        .contains("20.2 breaths a minute")
        .doesNotContain("50");
  }

  @Test
  @DisplayName("Three breaths, then a pause, all along: stacked too")
  void threeInOneGoAreStacked() {
    assertThat(first(review(again(9, 1.2, 1.2, 9.6)))).isEqualTo("double-breaths");
  }

  @Test
  @DisplayName("Every fifth breath doubled, the others in range: double breaths, not a little fast")
  void pairsThatPutItOutOfRangeAreToldFirst() {
    Review review = review(again(4, 6, 6, 6, 6, 1.2, 4.8));
    assertThat(first(review)).isEqualTo("double-breaths");
    assertThat(codes(review)).doesNotContain("a-little-fast");
  }

  @ParameterizedTest(name = "Mean 6 s, SD 2 s, seed {0}: uneven")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void spreadOutIsUneven(long seed) {
    Random chance = new Random(seed);
    double[] intervals = new double[41];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = Math.max(1.5, 6 + 2 * chance.nextGaussian());
    }
    assertThat(first(review(intervals))).isEqualTo("rhythm-uneven");
  }

  @ParameterizedTest(name = "{0} s throughout, none in range: a little off all along")
  @CsvSource({
    "4.999, a-little-fast", "4.95, a-little-fast", "4.9, a-little-fast",
    "7.001, a-little-slow", "7.05, a-little-slow", "7.15, a-little-slow"
  })
  void aLittleOffAllAlong(double interval, String code) {
    Review review = review(again(55, interval));
    assertThat(first(review)).isEqualTo(code);
    assertThat(codes(review)).doesNotContain("own-tempo", "missed-prompts", "extra-breaths");
    assertThat(review.metrics().interval().inRangeCount()).isZero();
  }

  @Test
  @DisplayName("4.999 s throughout: 12 a minute, and 5 s is not printed beside \"none in range\"")
  void anIntervalOutOfRangeIsNotPrintedAsItsEnd() {
    assertThat(review(again(55, 4.999)).findings().get(0).text())
        .contains("just under 5 s apart", "12 a minute", "0 of 55");
  }

  @ParameterizedTest(name = "{0} intervals of 2 s in a good practice: {1} too fast")
  @CsvSource({"4, 0:08", "5, 0:10", "10, 0:20", "20, 0:40"})
  void timeTooFastIsTheSumOfFastIntervals(int fast, String told) {
    Review review = review(joined(again(12, 6), again(fast, 2), again(12, 6)));
    assertThat(first(review)).isIn("fast-burst", "pulse-check-missed");
    assertThat(
            review.findings().stream()
                .filter(f -> f.code().equals("fast-burst"))
                .map(Feedback::text)
                .collect(Collectors.joining()))
        .contains("Over 12 breaths a minute for " + told)
        .doesNotContain("13");
  }

  @ParameterizedTest(name = "{0} s throughout: prompts are left out, no by-product is praised")
  @ValueSource(doubles = {1.5, 2, 3, 4})
  void fastThroughoutHasNoFigureOfPrompts(double interval) {
    Review review = review(again(60, interval));
    assertThat(first(review)).isEqualTo("too-fast");
    assertThat(review.metrics().prompts()).isEqualTo(Optional.empty());
    assertThat(review.metrics().asynchrony()).isEqualTo(Optional.empty());
    assertThat(codes(review)).doesNotContain("no-long-gap", "prompts-met", "own-tempo");
  }

  @ParameterizedTest(name = "20 breaths {0} s late, {1} s late after a check: all are answers")
  @CsvSource({"0.3, 3", "0.3, 2.6", "0.3, 3.3", "0.6, 3", "-0.05, 2.4", "1, 3.5"})
  void everyStretchHasALagOfItsOwn(double before, double after) {
    Random chance = new Random(7);
    List<Double> at = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      at.add(FIRST + 6 * i + before + 0.05 * chance.nextGaussian());
    }
    for (int i = 0; i < 20; i++) {
      at.add(127 + 6 * i + after + 0.05 * chance.nextGaussian());
    }
    Review review = adult(at).pulseCheck(120, 127).review();
    Metrics.Prompts prompts = review.metrics().prompts().get();
    assertThat(prompts.met()).isGreaterThanOrEqualTo(39);
    assertThat(prompts.missed()).isLessThanOrEqualTo(1);
    assertThat(prompts.met() + prompts.extra()).isEqualTo(40);
    assertThat(codes(review)).contains("rhythm-even").doesNotContain("own-tempo");
  }

  @ParameterizedTest(name = "Fast and noisy, with short intervals among long: too fast, seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void aFastRhythmWithAFewPairsIsTooFast(long seed) {
    Random chance = new Random(seed);
    double[] intervals = new double[38];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = Math.max(1.1, 3.2 + 0.7 * chance.nextGaussian());
    }
    assertThat(first(review(intervals))).isEqualTo("too-fast");
  }

  @ParameterizedTest(name = "From {0} s to {1} s bit by bit: {2}")
  @CsvSource({
    "7, 3.5, sped-up",
    "7, 4, sped-up",
    "6.5, 4, sped-up",
    "5.2, 8, slowed-down",
    "5.5, 9, slowed-down"
  })
  void aDriftIsNoBurst(double from, double to, String code) {
    double[] intervals = new double[18];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = from + (to - from) * i / (intervals.length - 1);
    }
    Review review = review(intervals);
    assertThat(first(review)).isEqualTo(code);
    assertThat(codes(review)).doesNotContain("fast-burst");
  }

  @Test
  @DisplayName("A step from 6 s to 4.6 s, a little noisy, is no uneven rhythm")
  void aStepToAnotherTempoIsNotUneven() {
    double[] intervals = joined(again(6, 6.3, 5.7), again(6, 4.7, 4.5));
    assertThat(codes(review(intervals))).doesNotContain("rhythm-uneven");
  }

  @Test
  @DisplayName("4, 4 and 10 s again and again (mean 6): uneven, not too fast")
  void quickBreathsMadeUpForByWaitsAreUneven() {
    Review review = review(again(6, 4, 4, 10));
    assertThat(first(review)).isEqualTo("rhythm-uneven");
    assertThat(codes(review)).doesNotContain("too-fast");
    Review clusters = review(again(4, 2, 2, 2, 2, 22));
    assertThat(codes(clusters)).startsWith("rhythm-uneven", "long-gap").doesNotContain("too-fast");
  }

  @Test
  @DisplayName("Half a minute at 20 a minute, then slow: the fast half is told first")
  void aLongBurstIsToldBeforeAnUnevenRhythm() {
    Review review = review(joined(again(10, 3), again(10, 10)));
    assertThat(codes(review)).startsWith("fast-burst", "rhythm-uneven");
    assertThat(review.findings().get(0).text()).contains("Over 12 breaths a minute for 0:30");
  }

  @Test
  @DisplayName("Slow by the mean, nothing too fast: too slow, not uneven")
  void offOnOneSideIsNotUneven() {
    Review review = review(again(4, 6.2, 9, 6.8, 8.6));
    assertThat(first(review)).isEqualTo("too-slow");
    assertThat(codes(review)).doesNotContain("rhythm-uneven");
    // Where a side has none it is not told as "0 too late".
    Review soon = review(again(10, 4, 6));
    assertThat(first(soon)).isEqualTo("rhythm-uneven");
    assertThat(soon.findings().get(0).text())
        .contains("10 came too soon, the others in time")
        .doesNotContain("0 too late");
  }

  @Test
  @DisplayName("Two doubled breaths that put the rhythm out of range are named, not uneven")
  void twoDoubledBreathsAreNamed() {
    Review review =
        review(joined(again(5, 6), new double[] {1.2, 4.8}, again(5, 6), new double[] {1.2, 4.8}));
    assertThat(first(review)).isEqualTo("double-breaths");
    assertThat(codes(review)).doesNotContain("rhythm-uneven");
  }

  @Test
  @DisplayName("One gap has one length on the page: from the end of a squeeze to the next start")
  void oneDefinitionOfAGap() {
    // Squeezes of 1 s, one wait of 24 s from start to start: 23 s without a breath.
    Review review = review(joined(again(9, 6), new double[] {24}, again(9, 6)));
    assertThat(first(review)).isEqualTo("long-gap");
    assertThat(review.metrics().gap().longestSeconds()).isEqualTo(23, within(1e-6));
    String page = ReviewText.write(review);
    assertThat(page).contains("23 s").doesNotContain("24 s").doesNotContain("22 s");
    assertThat(page.split("end of a squeeze to the", -1)).hasSize(2);
    // A wait that is long by the rule alone has the same length in its finding.
    Review late = review(joined(again(9, 6), new double[] {10.6}, again(9, 6)));
    assertThat(ReviewText.write(late)).contains("9.6 s").doesNotContain("10.6 s");
  }

  @Test
  @DisplayName("A child at an adult's rhythm is too slow, and no breath is missing at the end")
  void aSlowRhythmEndsInNoGap() {
    List<Double> at = times(FIRST, again(17, 6));
    SessionBuilder session =
        SessionBuilder.ofSeconds(at.get(at.size() - 1) + 7)
            .by(TestPlans.edition("aha-2025"), PatientGroup.CHILD);
    at.forEach(start -> session.squeeze(start, 1, ""));
    Review review = session.review();
    assertThat(first(review)).isEqualTo("too-slow");
    assertThat(codes(review)).doesNotContain("long-gap");
  }

  @Test
  @DisplayName("Squeezes of 0.4 s and 1.8 s in turns are of different lengths, not too long")
  void squeezesInTurnsAreUneven() {
    SessionBuilder session =
        SessionBuilder.ofSeconds(114).by(TestPlans.edition("aha-2025"), PatientGroup.ADULT);
    for (int k = 0; k < 19; k++) {
      session.squeeze(6 * k, k % 2 == 0 ? 1.8 : 0.4, "");
    }
    Review review = session.review();
    assertThat(first(review)).isEqualTo("squeezes-uneven");
    assertThat(codes(review)).doesNotContain("long-squeeze", "short-squeeze");
  }

  @Test
  @DisplayName("A check of 22 s is told as that, not as breaths that did not get their time")
  void aLongCheckIsNoUnevenBreathing() {
    List<Double> at = times(FIRST, again(19, 6));
    at.addAll(times(143, again(15, 6)));
    Review review = adult(at).pulseCheck(120, 142).review();
    assertThat(first(review)).isEqualTo("pulse-check-long");
    assertThat(codes(review)).doesNotContain("rhythm-not-held");
  }

  @ParameterizedTest(name = "{0} s all along, every interval in range, is no fault of the breaths")
  @ValueSource(doubles = {5.6, 6, 6.4})
  void whatIsInRangeIsNoFault(double interval) {
    assertThat(codes(review(again(17, interval)))).contains("rhythm-even");
  }

  @Test
  @DisplayName("20 intervals of 6 s, then 13 of 9 s: often too slow, not all along")
  void halfInRangeIsNotAllAlong() {
    Review review = review(joined(again(20, 6), again(13, 9)));
    assertThat(review.headline()).isEqualTo("Often too slow");
    assertThat(review(again(20, 7.2)).headline()).isNotEqualTo("Often too slow");
  }
}
