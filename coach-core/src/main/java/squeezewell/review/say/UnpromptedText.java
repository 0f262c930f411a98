package squeezewell.review.say;

import java.util.function.BiConsumer;
import squeezewell.cue.CueFader;
import squeezewell.review.measure.Unprompted;
import squeezewell.words.Quantities;

/** The rows of a table about the rhythm without prompts. */
public final class UnpromptedText {
  private static final String NONE = "not enough breaths";

  private UnpromptedText() {}

  /**
   * Adds the rows.
   *
   * @param row takes a name of at most 17 characters and what stands beside it
   */
  public static void add(Review review, BiConsumer<String, String> row) {
    review.metrics().unprompted().ifPresent(done -> add(done, row));
    review.test().ifPresent(test -> row.accept("two-minute test", VerdictText.test(test)));
  }

  private static void add(Unprompted done, BiConsumer<String, String> row) {
    row.accept(
        "without prompts",
        Quantities.clock(done.seconds())
            + (done.silences() == 1 ? "" : ", " + done.silences() + " times")
            + "; "
            + Words.count(done.breathCount(), "breath")
            + ", asked for "
            + done.plannedCount());
    row.accept(
        "mean, unprompted",
        done.meanSeconds().isPresent()
            ? Words.decimal(done.meanSeconds().getAsDouble())
                + " s ("
                + Words.decimal(done.ratePerMinute().orElse(0))
                + " a minute)"
            : NONE);
    row.accept(
        "range, unprompted",
        done.intervalCount() == 0
            ? NONE
            : done.inRangeCount() + " of " + done.intervalCount() + " intervals");
    row.accept("gap, unprompted", Words.seconds(done.longestGapSeconds()));
    if (done.driftPercentPerMinute().isPresent()) {
      double drift = done.driftPercentPerMinute().getAsDouble();
      row.accept(
          "drift, unprompted",
          (drift > 0 ? "slowing by " : "speeding up by ")
              + Words.decimal(Math.abs(drift))
              + " % a minute");
    }
    if (done.highestLevel().isPresent()) {
      row.accept("highest level", done.highestLevel().getAsInt() + " of " + CueFader.HIGHEST);
    }
  }
}
