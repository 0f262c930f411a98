package squeezewell.report;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.session.SessionHeader;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationText;

/**
 * The sheet of a station as one page, with the review of its breaths and room for signatures. It
 * asks for nothing from outside. Every text is escaped.
 */
public final class StationHtml {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private static final String STYLE =
      """
      .aid { border: 2px solid #14252D; border-radius: 12px; padding: 10px 16px; }
      td.at { white-space: nowrap; color: #50626A; width: 64px; }
      td.how { white-space: nowrap; } td.bad { font-weight: bold; }
      .signs { display: flex; gap: 24px; margin-top: 48px; }
      .cards .card { flex-basis: 84px; }
      h2 { break-after: avoid; } .signs { break-inside: avoid; }
      .signs div { flex: 1; border-top: 1px solid #14252D; padding-top: 4px; color: #50626A; }
      """;

  private final StringBuilder page = new StringBuilder();

  private StationHtml() {}

  /**
   * The page.
   *
   * @param header of the session
   * @param result what came of the station
   * @param review of the breaths in it
   * @param zone the time zone to write its date in
   */
  public static String of(SessionHeader header, StationResult result, Review review, ZoneId zone) {
    return new StationHtml().page(header, StationSheet.of(result, review), result, review, zone);
  }

  private String page(
      SessionHeader header, StationSheet sheet, StationResult result, Review review, ZoneId zone) {
    add("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
    add("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
    add("<meta http-equiv=\"Content-Security-Policy\"");
    add(" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n");
    add("<title>" + Html.text("Station: " + sheet.title()) + "</title>\n");
    add("<style>\n" + ReviewHtml.STYLE + STYLE + "</style>\n</head>\n<body>\n");
    element("div", "soft", "Station: " + sheet.title());
    element("h1", "", sheet.outcome());
    if (!sheet.breaths().isEmpty()) {
      element("p", "aid", sheet.breaths());
    }
    String when = WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone));
    element(
        "div",
        "soft",
        when
            + (header.trainee().isEmpty() ? "" : ", " + header.trainee())
            + ", "
            + result.state().setup().mode().label().toLowerCase(Locale.ROOT)
            + ", "
            + header.protocol().title());
    element("div", "soft", sheet.time());
    sheet.ways().forEach(way -> element("div", "soft", way));
    review.notes().forEach(note -> element("div", "soft", "Note: " + note));
    element("p", "aid", StationText.PRACTICE_AID);
    if (!sheet.critical().isEmpty()) {
      element("h2", "", "Critical faults");
      entries(sheet.critical());
    }
    add("<div class=\"cards\">\n");
    for (StationSheet.Count count : sheet.counts()) {
      add("<div class=\"card\"><b>" + count.number() + "</b>");
      add("<span class=\"label\">" + Html.text(count.name()) + "</span></div>\n");
    }
    add("</div>\n");
    element("h2", "", "Tasks");
    tasks(sheet);
    element("p", "soft", "* critical if it is missed");
    ventilated(sheet);
    element("h2", "", "Said, found and remarked");
    entries(sheet.story());
    element("h2", "", "The breaths: " + review.headline());
    for (Feedback finding : review.findings()) {
      add("<div class=\"finding\"><b>" + Html.text(finding.title() + ".") + "</b>");
      add(Html.text(finding.text()) + "</div>\n");
    }
    add(
        "<figure>"
            + ReportPicture.ribbon(review, ReportPicture.ROWS_ON_PAPER).svg()
            + "</figure>\n");
    add("<div class=\"signs\"><div>Trainee</div><div>Examiner or partner</div>");
    add("<div>Date</div></div>\n");
    add("<p class=\"caution\">" + Html.text(Caution.TEXT) + "</p>\n</body>\n</html>\n");
    return page.toString();
  }

  private void tasks(StationSheet sheet) {
    add("<table>\n");
    for (StationSheet.Row row : sheet.tasks()) {
      String length = row.length().isEmpty() ? "" : " (" + row.length() + ")";
      add("<tr><td class=\"at\">" + Html.text(row.at()) + "</td>");
      add("<td>" + Html.text(row.words() + (row.critical() ? " *" : "") + length) + "</td>");
      add("<td class=\"how" + (row.good() ? "" : " bad") + "\">" + Html.text(row.how()));
      add("</td></tr>\n");
    }
    add("</table>\n");
  }

  private void ventilated(StationSheet sheet) {
    if (sheet.ventilated().isEmpty()) {
      return;
    }
    element("h2", "", "Time of ventilation");
    add("<table>\n");
    for (StationSheet.Ventilated time : sheet.ventilated()) {
      add("<tr><td class=\"at\">" + Html.text(time.length()) + "</td>");
      add("<td>" + Html.text(time.words()) + "</td></tr>\n");
    }
    add("</table>\n");
    element("p", "soft", StationSheet.VENTILATED);
  }

  private void entries(Iterable<StationSheet.Entry> entries) {
    add("<table>\n");
    for (StationSheet.Entry entry : entries) {
      add("<tr><td class=\"at\">" + entry.at() + "</td><td class=\"how\">");
      add(Html.text(entry.kind()) + "</td><td>" + Html.text(entry.words()) + "</td></tr>\n");
    }
    add("</table>\n");
  }

  private void element(String tag, String style, String text) {
    String styled = style.isEmpty() ? "" : " class=\"" + style + "\"";
    add("<" + tag + styled + ">" + Html.text(text) + "</" + tag + ">\n");
  }

  private void add(String html) {
    page.append(html);
  }
}
