package squeezewell.review.say;

import java.util.function.BiConsumer;
import squeezewell.review.measure.Compressions;

/** The compressions of a review as rows of plain text. */
public final class CompressionText {
  private CompressionText() {}

  /**
   * Says the compressions row by row.
   *
   * @param row takes the name of each row and its text
   */
  public static void add(Compressions done, BiConsumer<String, String> row) {
    StringBuilder given = new StringBuilder(Integer.toString(done.count()));
    done.ratePerMinute()
        .ifPresent(rate -> given.append(", ").append(Words.decimal(rate)).append(" a minute"));
    done.eventsPerMinute()
        .ifPresent(
            rate ->
                given.append(", with the breaths ").append(Words.decimal(rate)).append(" events"));
    done.inRangeFraction()
        .ifPresent(share -> given.append(", ").append(percent(share)).append(" in range"));
    row.accept("compressions", given.toString());
    if (done.count() == 0) {
      return;
    }
    StringBuilder pauses = new StringBuilder(Integer.toString(done.pauseCount()));
    done.longestPauseSeconds()
        .ifPresent(longest -> pauses.append(", longest ").append(Words.seconds(longest)));
    done.pauseLimitSeconds()
        .ifPresent(limit -> pauses.append(" (limit ").append(Words.seconds(limit)).append(")"));
    row.accept("pauses", pauses.toString());
    StringBuilder off = new StringBuilder(Words.seconds(done.handsOffSeconds()));
    done.fraction()
        .ifPresent(
            share -> off.append("; compressed for ").append(percent(share)).append(" of the time"));
    row.accept("hands off", off.toString());
    if (!done.cycles().isEmpty()) {
      row.accept("good cycles", done.goodCycles() + " of " + done.cycles().size());
    }
  }

  private static String percent(double share) {
    return Math.round(100 * share) + " %";
  }
}
