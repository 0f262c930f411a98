package squeezewell.report;

import squeezewell.review.compare.Comparison;
import squeezewell.review.say.Review;
import squeezewell.words.Wording;

/**
 * A comparison as one page: two ribbons at one scale, then the figures side by side. It asks for
 * nothing from outside, and every text is escaped.
 */
public final class ComparisonHtml {
  private static final Wording WORDS = Wording.beside(ComparisonHtml.class);

  private static final String STYLE =
      """
      table.pair th { width: 30%; } table.pair td { width: 18%; } td.clear { font-weight: bold; }
      @media print { table.pair { font-size: 11px; } }
      """;

  private final HtmlPage page = new HtmlPage(WORDS.say("comparison"), STYLE, "");

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
    page.element("div", "soft", WORDS.say("comparison"));
    page.element("h1", "", comparison.sentence());
    practice("A", labelA, a);
    practice("B", labelB, b);
    page.element("p", "word", WORDS.say("comparison.legend"));
    if (!comparison.askedDifferently().isEmpty()) {
      page.heading(WORDS.say("comparison.asked"));
      page.list(comparison.askedDifferently());
    }
    page.heading(WORDS.say("figures"));
    page.add("<table class=\"pair\">\n<tr><th></th><td>A</td><td>B</td><td>");
    page.add(HtmlPage.text(WORDS.say("comparison.change")) + "</td><td>");
    page.add(HtmlPage.text(WORDS.say("comparison.outside")) + "</td></tr>\n");
    comparison.rows().forEach(this::row);
    page.add("</table>\n");
    page.heading(WORDS.say("comparison.marked"));
    page.list(comparison.targets());
    return page.end();
  }

  private void practice(String letter, String label, Review review) {
    page.heading(letter + ": " + label);
    review.notes().forEach(note -> page.element("div", "soft", WORDS.say("note", note)));
    page.figure(ReportPicture.ribbon(review, ReportPicture.ROWS_ON_PAPER));
  }

  private void row(Comparison.Row row) {
    page.add("<tr><th>" + HtmlPage.text(row.label()) + "</th>");
    for (Comparison.Side side : new Comparison.Side[] {row.a(), row.b()}) {
      page.element("td", side.isOutside() ? "clear" : "", side.text());
    }
    page.element("td", "", row.change());
    page.element("td", row.outside().isEmpty() ? "" : "clear", row.outside());
    page.add("</tr>\n");
  }
}
