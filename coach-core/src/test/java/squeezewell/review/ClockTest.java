package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.review.say.ReviewText;

/** 0:00 is the first prompt, in a test without prompts the first breath. Worked by hand. */
class ClockTest {
  @ParameterizedTest
  @ValueSource(ints = {0, 3, 10})
  @DisplayName("The count-in is before zero: nothing in the debrief depends on its length")
  void theCountInIsBeforeZero(int countIn) throws IOException {
    assertThat(told(countIn)).isEqualTo(told(0));
  }

  @Test
  @DisplayName("A finished practice of 2:00 says 2:00, and ends at 2:00")
  void aFinishedPracticeOfTwoMinutesSaysSo() {
    Review review = SessionBuilder.ofSeconds(120).countIn(3).breathsEvery(6, 3, 117).review();
    assertThat(review.startNanos()).isZero();
    assertThat(review.endNanos()).isEqualTo(SessionBuilder.nanos(120));
    assertThat(review.asked().practisedNanos()).isEqualTo(SessionBuilder.nanos(120));
    assertThat(review.breaths().get(19).startNanos()).isEqualTo(SessionBuilder.nanos(114));
    assertThat(ReviewText.write(review)).contains("2:00").doesNotContain("2:03", "0:03");
  }

  @Test
  @DisplayName("In a test without prompts 0:00 is the first breath")
  void aTestBeginsWithItsFirstBreath() {
    // Count-in of 3 s, first breath at 7.5 s, suction from 37.5 to 42.5 s.
    Review review =
        SessionBuilder.ofSeconds(150)
            .test()
            .countIn(3)
            .breathsEvery(6, 7.5, 31.5)
            .suction(37.5, 42.5)
            .breathsEvery(6, 43.5, 151.5)
            .review();
    assertThat(review.breaths().get(0).startNanos()).isZero();
    assertThat(review.startNanos()).isEqualTo(SessionBuilder.nanos(-4.5));
    assertThat(review.metrics().suctions().get(0).startedSeconds()).isEqualTo(30);
    assertThat(review.metrics().firstBreathSeconds()).hasValue(4.5);
  }

  private static String told(int countIn) throws IOException {
    SessionBuilder session = SessionBuilder.ofSeconds(300).countIn(countIn);
    session.breathsEvery(6, countIn, countIn + 60);
    session.breathsEvery(3, countIn + 63, countIn + 110);
    session.pulseCheck(countIn + 120, countIn + 128);
    session.breathsEvery(6, countIn + 129, countIn + 180);
    session.suction(countIn + 185, countIn + 195);
    session.breathsEvery(6, countIn + 220, countIn + 300);
    Review review = session.review();
    StringBuilder json = new StringBuilder();
    ReviewJson.write(review, json);
    return ReviewText.write(review) + json;
  }
}
