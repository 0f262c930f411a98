package squeezewell.report;

import java.time.ZoneId;
import java.util.Locale;
import squeezewell.review.say.Review;
import squeezewell.session.SessionHeader;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationText;
import squeezewell.words.Wording;

/**
 * The sheet of a station as one page, with the review of its breaths and room for signatures. It
 * asks for nothing from outside. Every text is escaped.
 */
public final class StationHtml {
  private static final Wording WORDS = Wording.beside(StationHtml.class);

  private static final String STYLE =
      """
      .aid { border: 2px solid #10232B; border-radius: 12px; padding: 10px 16px; }
      td.at { white-space: nowrap; color: #4A5C64; width: 64px; }
      td.how { white-space: nowrap; } td.bad { font-weight: bold; }
      .signs { display: flex; gap: 24px; margin-top: 48px; }
      .cards .card { flex-basis: 84px; }
      h2 { break-after: avoid; } .signs { break-inside: avoid; }
      .signs div { flex: 1; border-top: 1px solid #10232B; padding-top: 4px; color: #4A5C64; }
      """;

  private final HtmlPage page;

  private StationHtml(StationSheet sheet) {
    page = new HtmlPage(WORDS.say("station", sheet.title()), STYLE, "");
  }

  /**
   * The page.
   *
   * @param header of the session
   * @param result what came of the station
   * @param review of the breaths in it
   * @param zone the time zone to write its date in
   */
  public static String of(SessionHeader header, StationResult result, Review review, ZoneId zone) {
    StationSheet sheet = StationSheet.of(result, review);
    return new StationHtml(sheet).page(header, sheet, result, review, zone);
  }

  private String page(
      SessionHeader header, StationSheet sheet, StationResult result, Review review, ZoneId zone) {
    page.element("div", "soft", WORDS.say("station", sheet.title()));
    page.element("h1", "", sheet.outcome());
    if (!sheet.breaths().isEmpty()) {
      page.element("p", "aid", sheet.breaths());
    }
    page.element("div", "soft", who(header, result, zone));
    page.element("div", "soft", sheet.time());
    sheet.ways().forEach(way -> page.element("div", "soft", way));
    review.notes().forEach(note -> page.element("div", "soft", WORDS.say("note", note)));
    page.element("p", "aid", StationText.PRACTICE_AID);
    if (!sheet.critical().isEmpty()) {
      page.heading(WORDS.say("station.critical"));
      entries(sheet.critical());
    }
    if (!sheet.improve().isEmpty()) {
      page.heading(WORDS.say("station.improve"));
      entries(sheet.improve());
    }
    page.block(
        "cards",
        () ->
            sheet
                .counts()
                .forEach(
                    c -> page.card(String.valueOf(c.number()), "", "span", "label", c.name())));
    page.heading(WORDS.say("station.tasks"));
    tasks(sheet);
    page.element("p", "soft", WORDS.say("station.star"));
    ventilated(sheet);
    page.heading(WORDS.say("station.story"));
    entries(sheet.story());
    page.heading(WORDS.say("station.breaths", review.headline()));
    review.findings().forEach(finding -> page.finding("", finding));
    page.add("<figure>" + ReportPicture.ribbon(review, ReportPicture.ROWS_ON_PAPER).svg());
    page.add("</figure>\n<div class=\"signs\">");
    for (String who : new String[] {"trainee", "examiner", "date"}) {
      page.add("<div>" + HtmlPage.text(WORDS.say("sign." + who)) + "</div>");
    }
    page.add("</div>\n");
    return page.end();
  }

  private static String who(SessionHeader header, StationResult result, ZoneId zone) {
    String mode = result.state().setup().mode().label().toLowerCase(Locale.ROOT);
    String trainee = header.trainee().isEmpty() ? "" : header.trainee() + ", ";
    String when = PracticeLabel.when(header, zone);
    return when + ", " + trainee + mode + ", " + header.protocol().title();
  }

  private void tasks(StationSheet sheet) {
    page.add("<table>\n");
    for (StationSheet.Row row : sheet.tasks()) {
      String length = row.length().isEmpty() ? "" : " (" + row.length() + ")";
      page.add("<tr><td class=\"at\">" + HtmlPage.text(row.at()) + "</td>");
      page.add(
          "<td>" + HtmlPage.text(row.words() + (row.critical() ? " *" : "") + length) + "</td>");
      page.add("<td class=\"how" + (row.good() ? "" : " bad") + "\">" + HtmlPage.text(row.how()));
      page.add("</td></tr>\n");
    }
    page.add("</table>\n");
  }

  private void ventilated(StationSheet sheet) {
    if (sheet.ventilated().isEmpty()) {
      return;
    }
    page.heading(WORDS.say("station.ventilated"));
    page.add("<table>\n");
    for (StationSheet.Ventilated time : sheet.ventilated()) {
      page.add("<tr><td class=\"at\">" + HtmlPage.text(time.length()) + "</td>");
      page.add("<td>" + HtmlPage.text(time.words()) + "</td></tr>\n");
    }
    page.add("</table>\n");
    page.element("p", "soft", StationSheet.VENTILATED);
  }

  private void entries(Iterable<StationSheet.Entry> entries) {
    page.add("<table>\n");
    for (StationSheet.Entry entry : entries) {
      page.add("<tr><td class=\"at\">" + entry.at() + "</td><td class=\"how\">");
      page.add(
          HtmlPage.text(entry.kind())
              + "</td><td>"
              + HtmlPage.text(entry.words())
              + "</td></tr>\n");
    }
    page.add("</table>\n");
  }
}
