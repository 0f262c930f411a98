package squeezewell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.measure.CompressionMark;
import squeezewell.review.say.FigureValue;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;

/**
 * A review as CSV by RFC 4180, its rows ended by CR and LF. Every cell but the caution is a number,
 * a word of letters, digits, dots and hyphens, or empty, so a spreadsheet has nothing to take for a
 * formula; what a person typed is left out.
 */
public final class ReviewCsv {
  private ReviewCsv() {}

  /** One row a figure, for the whole and, if the rhythm changed, for each part. */
  public static String figures(Review review) {
    List<String> rows = new ArrayList<>();
    rows.add("part,name,value,unit,observations");
    rows.add("whole,caution,\"" + Caution.TEXT + "\",,");
    figures(rows, "whole", review);
    List<Review> parts = review.parts();
    for (int i = 0; i < parts.size(); i++) {
      figures(rows, Integer.toString(i + 1), parts.get(i));
    }
    return table(rows);
  }

  private static void figures(List<String> rows, String part, Review review) {
    for (FigureValue figure : Figures.of(review)) {
      String observations =
          figure.observations().isPresent()
              ? Integer.toString(figure.observations().getAsInt())
              : "";
      rows.add(
          String.join(
              ",", part, figure.name(), figure.value().orElse(""), figure.unit(), observations));
    }
  }

  /** One row a breath. */
  public static String breaths(Review review) {
    List<String> rows = new ArrayList<>();
    rows.add(
        "at_s,end_s,inspiration_s,interval_s,in_range,prompt_at_s,lateness_s,volume_mL,prompted");
    OptionalLong before = OptionalLong.empty();
    for (BreathMark breath : review.breaths()) {
      long start = breath.startNanos();
      rows.add(
          String.join(
              ",",
              seconds(start),
              seconds(breath.endNanos()),
              breath.endNanos().isPresent() ? seconds(breath.endNanos().getAsLong() - start) : "",
              before.isPresent() ? seconds(start - before.getAsLong()) : "",
              inRange(breath.judgement()),
              breath.prompt().isPresent()
                  ? seconds(review.prompts().get(breath.prompt().getAsInt()).atNanos())
                  : "",
              seconds(breath.errorNanos()),
              breath.millilitres().isPresent()
                  ? Quantities.upTo(breath.millilitres().getAsDouble(), 3)
                  : "",
              yesOrNo(!breath.unprompted())));
      before = OptionalLong.of(start);
    }
    return table(rows);
  }

  /** One row a compression. */
  public static String compressions(Review review) {
    List<String> rows = new ArrayList<>();
    rows.add("at_s,interval_s,pause,in_range");
    for (CompressionMark mark : review.compressions()) {
      rows.add(
          String.join(
              ",",
              seconds(mark.atNanos()),
              seconds(mark.intervalNanos()),
              mark.intervalNanos().isPresent() ? yesOrNo(mark.pause()) : "",
              inRange(mark.judgement())));
    }
    return table(rows);
  }

  private static String table(List<String> rows) {
    return String.join("\r\n", rows) + "\r\n";
  }

  private static String inRange(Judgement judgement) {
    return judgement == Judgement.UNJUDGED ? "" : yesOrNo(judgement == Judgement.IN_RANGE);
  }

  private static String yesOrNo(boolean yes) {
    return yes ? "yes" : "no";
  }

  private static String seconds(OptionalLong nanos) {
    return nanos.isPresent() ? seconds(nanos.getAsLong()) : "";
  }

  private static String seconds(long nanos) {
    return Quantities.exactSeconds(nanos).toPlainString();
  }
}
