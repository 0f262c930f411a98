package squeezewell.review.judge;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import squeezewell.review.SessionBuilder;
import squeezewell.review.say.Review;

/** The stated rule on sequences worked by hand: 6 s asked, 5 to 7 s in range, 15 %, 8 %, 10 s. */
class RhythmRuleTest {
  @Test
  void twoMinutesAtTheAskedIntervalAreHeld() {
    assertThat(review(SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 120)).reasons()).isEmpty();
    assertThat(outcome(SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 120)))
        .isEqualTo(Verdict.Outcome.HELD);
  }

  @Test
  void aMeanTenPercentOffIsNotHeld() {
    // 5.4 / 6 = 0.90, although every interval is in range.
    assertThat(review(SessionBuilder.ofSeconds(125).breathsEvery(5.4, 0, 124.2)).reasons())
        .containsExactly("mean interval 5.4 s");
  }

  @Test
  void oneBreathThatMayNotHaveBeenRecordedLeavesItUndecided() {
    SessionBuilder one = SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 54);
    assertThat(outcome(one.breathsEvery(6, 66, 120))).isEqualTo(Verdict.Outcome.UNDECIDED);
    SessionBuilder two = SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 54).breaths(66);
    assertThat(outcome(two.breathsEvery(6, 78, 120))).isEqualTo(Verdict.Outcome.NOT_HELD);
  }

  @Test
  void lessThanTwoMinutesAreTooShort() {
    assertThat(outcome(SessionBuilder.ofSeconds(110).breathsEvery(5.5, 0, 110)))
        .isEqualTo(Verdict.Outcome.TOO_SHORT);
  }

  /** The rule says at least 2 minutes: 120 s is, 119.999 s and 119.5 s are not. */
  @Test
  void twoMinutesMeanTwoMinutes() {
    assertThat(outcome(SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 114)))
        .isEqualTo(Verdict.Outcome.HELD);
    for (double seconds : new double[] {119.999, 119.4}) {
      Review shorter = review(SessionBuilder.ofSeconds(seconds).breathsEvery(6, 0, 114));
      assertThat(shorter.verdict().outcome()).isEqualTo(Verdict.Outcome.TOO_SHORT);
      assertThat(shorter.reasons()).containsExactly("practiced for 1:59; the rule needs 2:00");
    }
  }

  @Test
  void theRightMeanOfWrongIntervalsIsNotHeld() {
    // 4.9 and 7.1 in turn: mean 6.0, all 20 out of range.
    SessionBuilder session = SessionBuilder.ofSeconds(120);
    for (int k = 0; k < 10; k++) {
      session.breaths(12 * k, 12 * k + 4.9);
    }
    assertThat(review(session.breaths(120)).reasons())
        .containsExactly("20 of 20 intervals out of range");
  }

  @Test
  void stoppingBeforeTheEndIsNotHeld() {
    assertThat(review(SessionBuilder.ofSeconds(180).breathsEvery(6, 0, 120)).reasons())
        .containsExactly("over 10 s from the last breath to the end");
  }

  private static Review review(SessionBuilder session) {
    return session.review();
  }

  private static Verdict.Outcome outcome(SessionBuilder session) {
    return session.review().verdict().outcome();
  }
}
