package squeezewell.report;

import squeezewell.review.compare.Comparison;
import squeezewell.review.compare.ComparisonText;
import squeezewell.review.say.Review;

/**
 * A comparison as one page: two ribbons at one scale, then the figures side by side. It asks for
 * nothing from outside, and every text is escaped.
 */
public final class ComparisonHtml {
  private static final String STYLE =
      """
      table.pair th { width: 34%; } table.pair td { width: 22%; } td.clear { font-weight: bold; }
      @media print { table.pair { font-size: 11px; } }
      """;

  private final StringBuilder page = new StringBuilder();

  private ComparisonHtml() {}

  /**
   * The page.
   *
   * @param labelA what names A for people
   * @param labelB what names B for people
   */
  public static String of(Comparison comparison, String labelA, Review a, String labelB, Review b) {
    return new ComparisonHtml().page(comparison, labelA, a, labelB, b);
  }

  private String page(Comparison comparison, String labelA, Review a, String labelB, Review b) {
    add("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
    add("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
    add("<meta http-equiv=\"Content-Security-Policy\"");
    add(" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n");
    add("<title>Two practices side by side</title>\n<style>\n");
    add(ReviewHtml.STYLE + STYLE + "</style>\n</head>\n<body>\n");
    element("div", "soft", "Two practices side by side");
    element("h1", "", comparison.sentence());
    practice("A", labelA, a);
    practice("B", labelB, b);
    element(
        "p",
        "word",
        "Above: prompts, hollow if missed. Below: breaths, as long as the squeeze; a tip upwards"
            + " came too soon, a tip downwards too late. Both at one scale, two minutes a row.");
    if (!comparison.askedDifferently().isEmpty()) {
      element("h2", "", "Not asked alike");
      list(comparison.askedDifferently());
    }
    element("h2", "", "Figures");
    add("<table class=\"pair\">\n<tr><th></th><td>A</td><td>B</td><td></td></tr>\n");
    comparison.rows().forEach(this::row);
    add("</table>\n");
    element("h2", "", "The rules");
    list(comparison.rules());
    element("p", "caution", Caution.TEXT);
    add("</body>\n</html>\n");
    return page.toString();
  }

  private void practice(String letter, String label, Review review) {
    element("h2", "", letter + ": " + label);
    review.notes().forEach(note -> element("div", "soft", "Note: " + note));
    add(
        "<figure>\n"
            + ReportPicture.ribbon(review, ReportPicture.ROWS_ON_PAPER).svg()
            + "</figure>\n");
  }

  private void row(Comparison.Row row) {
    boolean share = row.code().equals("interval.inRange");
    add("<tr><th>" + Html.text(row.label() + (share ? " (95 % interval)" : "")) + "</th>");
    for (Comparison.Side side : new Comparison.Side[] {row.a(), row.b()}) {
      String likely = share ? " (" + ComparisonText.share(side) + ")" : "";
      add("<td>" + Html.text(side.text() + likely) + "</td>");
    }
    add("<td" + (row.outcome().isClear() ? " class=\"clear\"" : "") + ">");
    add(Html.text(row.outcome().label()) + "</td></tr>\n");
  }

  private void list(Iterable<String> lines) {
    add("<ul>\n");
    lines.forEach(line -> element("li", "", line));
    add("</ul>\n");
  }

  private void element(String tag, String kind, String text) {
    add("<" + tag + (kind.isEmpty() ? "" : " class=\"" + kind + "\"") + ">");
    add(Html.text(text) + "</" + tag + ">\n");
  }

  private void add(String html) {
    page.append(html);
  }
}
