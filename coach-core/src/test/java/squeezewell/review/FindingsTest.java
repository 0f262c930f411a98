package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.review.judge.Severity;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;

/** What is told, in which order and with which numbers, worked by hand. */
class FindingsTest {
  @Test
  void breathsThatRushAfterThePulseCheckAreToldAsSuch() {
    // 0 .. 114 every 6 s: 19 intervals; check 118 to 126; 126 .. 186 every 3 s: 20 intervals;
    // 192 .. 234 every 6 s: 8 intervals; 27 of 47 in range.
    Review review =
        SessionBuilder.ofSeconds(240)
            .breathsEvery(6, 0, 114)
            .pulseCheck(118, 126)
            .breathsEvery(3, 126, 186)
            .breathsEvery(6, 192, 234)
            .review();
    assertThat(review.headline()).isEqualTo("Too fast after the pulse check");
    assertThat(review.findings().get(0).text())
        .contains(
            "27 of 47 intervals were in range (5 to 7 s)",
            "20 of 47 intervals were too short, usually 3 s (20 breaths a minute)");
  }

  @Test
  void aFaultComesBeforeAdviceAndAdviceBeforePraise() {
    // A gap of 20 s (fault), an early check (advice), the rest as asked.
    Review review =
        SessionBuilder.ofSeconds(150)
            .breathsEvery(6, 0, 60)
            .breathsEvery(6, 80, 98)
            .pulseCheck(100, 108)
            .breathsEvery(6, 108, 144)
            .review();
    List<String> codes = InterruptionsTest.codes(review);
    assertThat(codes.get(0)).isEqualTo("long-gap");
    assertThat(codes.indexOf("pulse-check-early")).isGreaterThan(0);
    assertThat(review.findings())
        .isSortedAccordingTo((a, b) -> a.severity().compareTo(b.severity()));
    assertThat(review.findings().get(0).text()).contains("was 20 s, from 1:00; at most 10 s");
  }

  @Test
  void aFirstBreathAtTheStartIsNoLateStart() {
    Review late = SessionBuilder.ofSeconds(120).breathsEvery(6, 18, 114).review();
    assertThat(late.headline()).isEqualTo("A late start");
    Review paused = SessionBuilder.ofSeconds(120).breaths(0).breathsEvery(6, 18, 114).review();
    assertThat(paused.headline()).isEqualTo("A long time without a breath");
    Review stopped = SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 60).review();
    assertThat(stopped.headline()).isEqualTo("No breaths towards the end");
  }

  @Test
  void anOverlongCheckIsToldOnceAndNotAsAGapToo() {
    // Check 120 to 145: 25 s, 15 s over its limit; 114 to 145 is 31 s, without it 6 s.
    Review review =
        SessionBuilder.ofSeconds(180)
            .breathsEvery(6, 0, 114)
            .pulseCheck(120, 145)
            .breathsEvery(6, 145, 175)
            .review();
    assertThat(review.metrics().gap().longestSeconds()).isEqualTo(6);
    assertThat(InterruptionsTest.codes(review))
        .startsWith("pulse-check-long")
        .doesNotContain("long-gap");
    assertThat(review.findings().get(0).text()).contains("lasted 25 s; asked was 5 to 10 s");
  }

  @Test
  void oneMissedPromptIsAdvice() {
    // 19 of 20 prompts met at once; the one at 60 answered by nothing: a gap of 12 s, over 10 s.
    Review review =
        SessionBuilder.ofSeconds(120).breathsEvery(6, 0, 54).breathsEvery(6, 66, 114).review();
    assertThat(InterruptionsTest.codes(review)).startsWith("long-gap", "missed-prompts");
    assertThat(review.findings().get(1).severity()).isEqualTo(Severity.ADVICE);
  }

  /**
   * A third of the breaths each 1, 3 and 5 s after the prompts, 6 s apart but for two steps: they
   * lock to no prompt, yet the tempo is the one that was asked for and must not be called another.
   */
  @Test
  void aTempoThatIsTheOneAskedForIsNotCalledOnesOwn() {
    SessionBuilder builder = SessionBuilder.ofSeconds(300);
    for (int k = 0; k < 48; k++) {
      builder.squeeze(6 * k + 1 + 2 * (k / 16), 1, "");
    }
    Review review = builder.review();
    assertThat(review.metrics().prompts()).isEmpty();
    assertThat(review.metrics().asynchrony()).isEmpty();
    assertThat(review.findings()).extracting(Feedback::code).doesNotContain("own-tempo");
  }
}
