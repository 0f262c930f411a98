package squeezewell.cli;

import squeezewell.report.Caution;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.review.say.ReviewText;

/** Prints a review. */
final class Debrief {
  private Debrief() {}

  static void print(CliContext around, Review review, boolean json) {
    if (json) {
      around.printJson(writer -> ReviewJson.write(review, writer));
      return;
    }
    around.print(ReviewText.write(review) + Caution.LINE_3);
  }
}
