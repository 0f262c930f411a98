package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Verdict;
import squeezewell.review.measure.IntervalPoint;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewText;
import squeezewell.session.EventType;

/** Whole sessions at the edges of what can happen. */
class ReviewerTest {
  @Test
  void aSessionWithoutBreathsSaysSo() {
    Review review = SessionBuilder.ofSeconds(60).review();
    assertThat(review.headline()).isEqualTo("No breath was recorded");
    assertThat(review.metrics().prompts()).contains(new Metrics.Prompts(10, 0, 10, 0, 0));
    assertThat(review.metrics().asynchrony().orElseThrow().meanSeconds()).isEmpty();
    assertThat(review.metrics().inspiration().meanSeconds()).isEmpty();
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.TOO_SHORT);
  }

  @Test
  void aSingleBreathIsTooLittleToJudgeTheRhythm() {
    Review review = SessionBuilder.ofSeconds(10).breaths(4).review();
    assertThat(InterruptionsTest.codes(review)).contains("too-few-breaths");
    assertThat(review.breaths().get(0).judgement()).isEqualTo(Judgement.UNJUDGED);
  }

  @Test
  void aBreathJustBeforeTheFirstPromptMeetsIt() {
    // Count-in of 3 s, after which the clock begins: prompts at 0, 6, 12, in the session at 3, 9,
    // 15. Breaths at 2.8 (meets the first), 9.1, 15.
    Review review = SessionBuilder.ofSeconds(15).countIn(3).breaths(2.8, 9.1, 15).review();
    assertThat(review.startNanos()).isZero();
    assertThat(review.breaths().get(0).startNanos()).isEqualTo(SessionBuilder.nanos(-0.2));
    assertThat(review.metrics().prompts()).contains(new Metrics.Prompts(3, 3, 0, 0, 0));
    assertThat(review.metrics().firstBreathSeconds().getAsDouble()).isEqualTo(-0.2);
    assertThat(review.breaths().get(0).errorNanos()).hasValue(SessionBuilder.nanos(-0.2));
    // 2.8 to 9.1, from the end of the count-in: 6.1 s; 9.1 to 15: 5.9 s
    assertThat(review.metrics().gap().longestSeconds()).isEqualTo(6.1);
  }

  @Test
  void aBreathLongBeforeTheFirstPromptIsExtra() {
    Review review = SessionBuilder.ofSeconds(15).countIn(10).breaths(2, 10, 16).review();
    assertThat(review.metrics().breathCount()).isEqualTo(3);
    assertThat(review.metrics().prompts().orElseThrow().extra()).isEqualTo(1);
    assertThat(review.breaths().get(0).met()).isFalse();
  }

  @Test
  void aRetractedBreathWasNeverThere() {
    // The fourth event is the breath at 8; the fifth takes it back.
    Review review =
        SessionBuilder.ofSeconds(24)
            .breaths(0, 6)
            .breaths(8)
            .event(8.5, EventType.RETRACT, "3")
            .breaths(12, 18)
            .review();
    assertThat(review.metrics().breathCount()).isEqualTo(4);
    assertThat(review.metrics().interval().inRangeCount()).isEqualTo(3);
  }

  @Test
  void aSessionKilledInTheMiddleIsReviewedUpToItsLastEvent() {
    // 300 s planned, no finish; the last event is the breath at 60, so prompts 0 .. 54 count.
    Review review = SessionBuilder.ofSeconds(300).live().breathsEvery(6, 0, 60).review();
    assertThat(review.endNanos()).isEqualTo(SessionBuilder.nanos(60));
    assertThat(review.metrics().prompts().orElseThrow().given()).isEqualTo(10);
    assertThat(review.metrics().prompts().orElseThrow().missed()).isZero();
    assertThat(review.metrics().pulseChecks()).isEmpty();
    assertThat(InterruptionsTest.codes(review)).doesNotContain("long-gap", "pulse-check-missed");
    assertThat(review.notes()).anyMatch(n -> n.contains("record stops in the middle"));
  }

  @Test
  void aSessionEndedByCommandIsReviewedUpToThere() {
    Review review =
        SessionBuilder.ofSeconds(300)
            .live()
            .breathsEvery(6, 0, 60)
            .event(64, EventType.FINISH, "")
            .review();
    assertThat(review.endNanos()).isEqualTo(SessionBuilder.nanos(64));
    assertThat(review.notes()).containsExactly("The practice was ended early: 1:04 of 5:00.");
  }

  /**
   * 60 s with a squeeze of 0.5 s each 6 s from 0 to 60 s, and two more from 70 s on, as in a list
   * that is reviewed for its first minute only. The prompts stand at 0 to 54 s, so the breath at 60
   * s is extra. 11 breaths in 60 s are 11 a minute; all ten intervals last 6 s; the longest wait is
   * 6 - 0.5 = 5.5 s.
   */
  @Test
  void breathsAfterTheEndCountForNothing() {
    SessionBuilder session = SessionBuilder.ofSeconds(60);
    for (int k = 0; k <= 10; k++) {
      session.squeeze(6 * k, 0.5, "");
    }
    Review review = session.squeeze(70, 3, "").squeeze(90, 3, "").review();
    Metrics metrics = review.metrics();
    assertThat(metrics.breathCount()).isEqualTo(11);
    assertThat(metrics.prompts()).contains(new Metrics.Prompts(10, 10, 0, 1, 0));
    assertThat(metrics.rate().countPerMinute()).hasValue(11);
    assertThat(metrics.interval().count()).isEqualTo(10);
    assertThat(metrics.interval().inRangeCount()).isEqualTo(10);
    assertThat(metrics.gap().longestSeconds()).isEqualTo(5.5);
    assertThat(metrics.inspiration().count()).isEqualTo(11);
    assertThat(review.breaths()).hasSize(11);
    assertThat(review.notes())
        .containsExactly("2 breaths came after the end of the practice and are left out.");
  }

  @Test
  void compressionsWithPausesHaveNoIntervalsToJudge() {
    Review review =
        SessionBuilder.ofSeconds(120)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY)
            .breathsEvery(6, 0, 114)
            .review();
    assertThat(review.intervals()).isEmpty();
    assertThat(review.rollingRate()).isEmpty();
    assertThat(review.metrics().interval().meanSeconds()).isEmpty();
    assertThat(review.metrics().rate().overallPerMinute()).isEmpty();
    assertThat(review.metrics().asynchrony()).isEmpty();
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_JUDGED);
    assertThat(InterruptionsTest.codes(review)).doesNotContain("too-fast", "too-slow", "long-gap");
    assertThat(review.metrics().prompts()).isEmpty();
    assertThat(review.metrics().breathCount()).isEqualTo(20);
    assertThat(ReviewText.write(review)).contains("no pulse, no advanced airway");
  }

  @Test
  void compressionsWithoutABreakHaveIntervals() {
    Review review =
        SessionBuilder.ofSeconds(120)
            .in(Situation.ARREST_ADVANCED_AIRWAY)
            .breathsEvery(6, 0.2, 114.2)
            .review();
    assertThat(review.metrics().interval().inRangeCount()).isEqualTo(19);
  }

  @Test
  void everyIntervalCarriesItsJudgement() {
    Review review =
        SessionBuilder.ofSeconds(60).breaths(0, 4.9, 9.9, 16.9, 24, 37).pulseCheck(30, 36).review();
    assertThat(review.intervals())
        .extracting(IntervalPoint::judgement)
        .containsExactly(
            Judgement.FAST, Judgement.IN_RANGE, Judgement.IN_RANGE, Judgement.SLOW, Judgement.SLOW);
    assertThat(review.intervals())
        .extracting(IntervalPoint::valid)
        .containsExactly(true, true, true, true, false);
    assertThat(review.breaths().get(5).judgement()).isEqualTo(Judgement.UNJUDGED);
  }

  @Test
  void theSameSessionGivesTheSameReview() {
    SessionBuilder session =
        SessionBuilder.ofSeconds(200).breathsEvery(5.7, 0.3, 114.3).pulseCheck(118, 125);
    assertThat(session.review()).isEqualTo(session.review());
  }
}
