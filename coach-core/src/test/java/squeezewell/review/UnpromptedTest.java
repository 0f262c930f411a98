package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.Unprompted;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewText;
import squeezewell.session.EventType;

/** What is told of breaths that were not prompted. Worked by hand. */
class UnpromptedTest {
  /**
   * Breaths every 6 s with the prompts to 60 s; the prompts fall silent with the breath at 60 s (so
   * from the count at 62 s on) and come back with the one at 101 s.
   */
  private static SessionBuilder faded(double... silent) {
    return SessionBuilder.ofSeconds(160)
        .breathsEvery(6, 0, 54)
        .breaths(60.2)
        .event(60.2, EventType.PROMPTS_OFF, "level 1")
        .breaths(silent)
        .event(silent[silent.length - 1], EventType.PROMPTS_ON, "level 2")
        .breathsEvery(6, silent[silent.length - 1] + 6, silent[silent.length - 1] + 48);
  }

  @Test
  void nothingIsToldWhereEveryBreathWasPrompted() {
    Review review = SessionBuilder.ofSeconds(60).breathsEvery(6, 0, 54).review();
    assertThat(review.metrics().unprompted()).isEmpty();
    assertThat(review.silences()).isEmpty();
    assertThat(review.breaths()).noneMatch(BreathMark::unprompted);
    assertThat(ReviewText.write(review)).doesNotContain("unprompted");
  }

  @Test
  void theSilentIntervalsAloneAreMeasured() {
    // 60.2 to 66.2, 73.2, 80.4, 87.4, 94.2, 101: 6.0 7.0 7.2 7.0 6.8 6.8 = 40.8 s, mean 6.8.
    Review review = faded(66.2, 73.2, 80.4, 87.4, 94.2, 101).review();
    Unprompted done = review.metrics().unprompted().orElseThrow();
    assertThat(done.silences()).isEqualTo(1);
    assertThat(done.seconds()).isCloseTo(101 - 62, within(1e-6));
    assertThat(done.breathCount()).isEqualTo(6);
    // 66, 72, 78, 84, 90 and 96 s were asked for silently; the breath at 101 s is counted on from.
    assertThat(done.plannedCount()).isEqualTo(7);
    assertThat(done.intervalCount()).isEqualTo(6);
    assertThat(done.meanSeconds().orElseThrow()).isCloseTo(6.8, within(1e-9));
    assertThat(done.ratePerMinute().orElseThrow()).isCloseTo(60 / 6.8, within(1e-9));
    assertThat(done.inRangeCount()).isEqualTo(5);
    assertThat(done.slowCount()).isEqualTo(1);
    assertThat(done.fastCount()).isZero();
    assertThat(done.longestGapSeconds()).isCloseTo(7.2, within(1e-9));
    assertThat(done.longestGapAtSeconds()).isCloseTo(73.2, within(1e-9));
    assertThat(done.driftPercentPerMinute()).isEmpty();
    assertThat(done.highestLevel()).hasValue(2);
    assertThat(review.testIntervals()).isEmpty();
  }

  @Test
  void breathsThatWereNotPromptedAreNeitherLateNorMissedNorExtra() {
    // Far from every silent prompt at 66, 72, 78 …, and one fewer than they ask for.
    Review review = faded(66.2, 73.2, 80.4, 87.4, 94.2, 101).review();
    Metrics.Prompts prompts = review.metrics().prompts().orElseThrow();
    // Eleven prompts to 60 s, eight from 107 s to 149 s and one at 155 s.
    assertThat(prompts.given()).isEqualTo(20);
    assertThat(prompts.met()).isEqualTo(19);
    assertThat(prompts.missed()).isEqualTo(1);
    assertThat(prompts.extra()).isZero();
    assertThat(prompts.unprompted()).isEqualTo(6);
    assertThat(prompts.met() + prompts.extra() + prompts.unprompted())
        .isEqualTo(review.metrics().breathCount());
    // 18 breaths on their prompts and one 0.2 s late.
    assertThat(review.metrics().asynchrony().orElseThrow().meanSeconds().orElseThrow())
        .isCloseTo(0.2 / 19, within(1e-9));
    assertThat(review.breaths().stream().filter(BreathMark::unprompted)).hasSize(6);
    assertThat(review.breaths()).noneMatch(BreathMark::extra);
  }

  @Test
  void driftIsToldWhenItIsLongLargeAndClear() {
    // 30 silent intervals that grow by 0.05 s each, from 5.5 s.
    SessionBuilder growing = SessionBuilder.ofSeconds(260).event(0, EventType.PROMPTS_OFF, "");
    double at = 1;
    growing.breaths(at);
    for (int k = 0; k < 30; k++) {
      at += 5.5 + 0.05 * k;
      growing.breaths(at);
    }
    double drift =
        growing.review().metrics().unprompted().orElseThrow().driftPercentPerMinute().orElseThrow();
    // 0.05 s each 6.2 s, of a median of 6.225 s: some 7.8 % a minute.
    assertThat(drift).isCloseTo(100 * 0.05 / 6.225 * 60 / 6.225, within(0.3));
    // 24 intervals of the same growth are too few.
    SessionBuilder few = SessionBuilder.ofSeconds(260).event(0, EventType.PROMPTS_OFF, "");
    at = 1;
    few.breaths(at);
    for (int k = 0; k < 24; k++) {
      at += 5.5 + 0.05 * k;
      few.breaths(at);
    }
    assertThat(few.review().metrics().unprompted().orElseThrow().driftPercentPerMinute()).isEmpty();
    // 30 even ones have none.
    assertThat(
            SessionBuilder.ofSeconds(260)
                .event(0, EventType.PROMPTS_OFF, "")
                .breathsEvery(6, 1, 181)
                .review()
                .metrics()
                .unprompted()
                .orElseThrow()
                .driftPercentPerMinute())
        .isEmpty();
  }

  @Test
  void oneWhoIsTooFastOnlyWithoutPromptsIsTold() {
    // Ten intervals of 4.2 s among forty of 6 s: the rhythm as a whole is in range.
    SessionBuilder session = SessionBuilder.ofSeconds(290).breathsEvery(6, 0, 120);
    session.event(120.1, EventType.PROMPTS_OFF, "").breathsEvery(4.2, 124.2, 124.2 + 6 * 4.2);
    session.event(124.2 + 6 * 4.2, EventType.PROMPTS_ON, "");
    session.breathsEvery(6, 155.4, 155.4 + 21 * 6);
    Review review = session.review();
    assertThat(review.findings()).extracting(Feedback::code).contains("unprompted-fast");
    assertThat(review.findings().get(0).code()).isEqualTo("unprompted-fast");
    assertThat(review.findings().get(0).text())
        .contains("7 of 7 intervals were too short, usually 4.2 s (14.3 breaths a minute)");
  }

  @Test
  void theCountInIsNoTimeWithoutPrompts() {
    Review review =
        SessionBuilder.ofSeconds(60).countIn(3).test().breathsEvery(6, 3.5, 57.5).review();
    Unprompted done = review.metrics().unprompted().orElseThrow();
    assertThat(done.seconds()).isCloseTo(60, within(1e-9));
    assertThat(done.breathCount()).isEqualTo(10);
    // Squeezes at 3, 9, … 57 s.
    assertThat(done.plannedCount()).isEqualTo(10);
  }

  @Test
  void aGapEndsWhereThePromptsComeBack() {
    SessionBuilder session = SessionBuilder.ofSeconds(160).breathsEvery(6, 0, 54).breaths(60.2);
    session
        .event(60.2, EventType.PROMPTS_OFF, "")
        .event(72, EventType.PROMPTS_AT_ONCE, "level 1, gap");
    session.breathsEvery(6, 75, 153);
    Unprompted done = session.review().metrics().unprompted().orElseThrow();
    // From 60.2 to 72 s without a prompt; the breath came 3 s after the prompt.
    assertThat(done.longestGapSeconds()).isCloseTo(11.8, within(1e-9));
    assertThat(done.breathCount()).isZero();
    assertThat(done.intervalCount()).isZero();
    assertThat(done.meanSeconds()).isEmpty();
  }
}
