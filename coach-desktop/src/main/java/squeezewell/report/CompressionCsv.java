package squeezewell.report;

import squeezewell.protocol.Judgement;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;

/** The compressions of a review as CSV. Every cell is a number, yes, no or empty. */
public final class CompressionCsv {
  private static final String COLUMNS = "at_s,interval_s,pause,in_range";

  private CompressionCsv() {}

  /** One row a compression, after the row of column names. */
  public static String of(Review review) {
    StringBuilder csv = new StringBuilder(COLUMNS).append("\r\n");
    for (CompressionMark mark : review.compressions()) {
      csv.append(seconds(mark.atNanos())).append(',');
      boolean known = mark.intervalNanos().isPresent();
      csv.append(known ? seconds(mark.intervalNanos().getAsLong()) : "").append(',');
      csv.append(known ? yesOrNo(mark.pause()) : "").append(',');
      csv.append(
              mark.judgement() == Judgement.UNJUDGED
                  ? ""
                  : yesOrNo(mark.judgement() == Judgement.IN_RANGE))
          .append("\r\n");
    }
    return csv.toString();
  }

  private static String yesOrNo(boolean yes) {
    return yes ? "yes" : "no";
  }

  private static String seconds(long nanos) {
    return Quantities.exactSeconds(nanos).toPlainString();
  }
}
