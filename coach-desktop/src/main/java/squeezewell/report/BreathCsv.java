package squeezewell.report;

import java.util.List;
import java.util.OptionalLong;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;

/**
 * The breaths of a review as CSV. Every cell is a number, yes, no or empty, so a spreadsheet has
 * nothing to take for a formula.
 */
public final class BreathCsv {
  private static final String COLUMNS =
      "at_s,end_s,inspiration_s,interval_s,in_range,prompt_at_s,lateness_s,volume_mL,prompted";

  private BreathCsv() {}

  /** One row a breath, after the row of column names. */
  public static String of(Review review) {
    StringBuilder csv = new StringBuilder(COLUMNS).append("\r\n");
    List<BreathMark> breaths = review.breaths();
    for (int i = 0; i < breaths.size(); i++) {
      BreathMark breath = breaths.get(i);
      long start = breath.startNanos();
      csv.append(seconds(OptionalLong.of(start))).append(',');
      csv.append(seconds(breath.endNanos())).append(',');
      csv.append(
              breath.endNanos().isPresent()
                  ? seconds(OptionalLong.of(breath.endNanos().getAsLong() - start))
                  : "")
          .append(',');
      csv.append(i == 0 ? "" : seconds(OptionalLong.of(start - breaths.get(i - 1).startNanos())))
          .append(',');
      csv.append(inRange(breath.judgement())).append(',');
      csv.append(
              breath.prompt().isPresent()
                  ? seconds(
                      OptionalLong.of(review.prompts().get(breath.prompt().getAsInt()).atNanos()))
                  : "")
          .append(',');
      csv.append(seconds(breath.errorNanos())).append(',');
      csv.append(
              breath.millilitres().isPresent()
                  ? Quantities.upTo(breath.millilitres().getAsDouble(), 3)
                  : "")
          .append(',');
      csv.append(breath.unprompted() ? "no" : "yes").append("\r\n");
    }
    return csv.toString();
  }

  private static String seconds(OptionalLong nanos) {
    return nanos.isPresent() ? Quantities.exactSeconds(nanos.getAsLong()).toPlainString() : "";
  }

  private static String inRange(Judgement judgement) {
    return switch (judgement) {
      case IN_RANGE -> "yes";
      case FAST, SLOW -> "no";
      case UNJUDGED -> "";
    };
  }
}
