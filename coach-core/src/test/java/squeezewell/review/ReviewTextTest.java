package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ReviewTextTest {
  @Test
  void noLineIsWiderThanATerminal() {
    for (String fault : new String[] {"sound", "fast", "pauses", "late-check", "short-squeeze"}) {
      Review review = Reviewer.review(new VirtualTrainee(fault, 3).session());
      assertThat(ReviewText.write(review).lines()).allMatch(line -> line.length() <= 80);
    }
  }

  @Test
  void theTextBeginsWithTheHeadlineAndHoldsTheFindings() {
    Review review = Reviewer.review(new VirtualTrainee("fast", 1).session());
    String text = ReviewText.write(review);
    assertThat(text).startsWith("Too fast\n");
    review.findings().forEach(f -> assertThat(text).contains(f.title()));
    assertThat(text)
        .contains("one breath every", "6 s (in range: 5 to 7 s)")
        .contains("Not a medical device.")
        .contains("Follow your local protocols and medical direction.")
        .contains("American Heart Association", "(2025)")
        .contains(review.asked().source().confidence().meaning());
  }

  @Test
  void aSessionWithoutBreathsIsTold() {
    assertThat(ReviewText.write(SessionBuilder.ofSeconds(130).review()))
        .startsWith("No breath was recorded\n")
        .contains("not enough breaths");
  }
}
