package squeezewell.report;

import java.util.List;
import java.util.OptionalInt;
import squeezewell.review.say.FigureValue;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Review;

/**
 * The figures of a review as CSV by RFC 4180: one row a figure, for the whole and, if the rhythm
 * changed, for each part. After a row with the caution every cell is a number, a word of letters,
 * digits, dots and hyphens, or empty, so a spreadsheet has nothing to take for a formula; what a
 * person typed is left out.
 */
public final class MetricCsv {
  private static final String COLUMNS = "part,name,value,unit,observations";
  private static final String CAUTION = "whole,caution,\"" + Caution.TEXT + "\",,";

  private MetricCsv() {}

  /** The table; its rows are ended by CR and LF. */
  public static String of(Review review) {
    StringBuilder csv = new StringBuilder(COLUMNS).append("\r\n").append(CAUTION).append("\r\n");
    rows(csv, "whole", Figures.of(review));
    List<Review> parts = review.parts();
    for (int i = 0; i < parts.size(); i++) {
      rows(csv, Integer.toString(i + 1), Figures.of(parts.get(i)));
    }
    return csv.toString();
  }

  private static void rows(StringBuilder csv, String part, List<FigureValue> metrics) {
    for (FigureValue metric : metrics) {
      OptionalInt observations = metric.observations();
      csv.append(part).append(',').append(metric.name()).append(',');
      csv.append(metric.value().orElse("")).append(',').append(metric.unit()).append(',');
      csv.append(observations.isPresent() ? Integer.toString(observations.getAsInt()) : "");
      csv.append("\r\n");
    }
  }
}
