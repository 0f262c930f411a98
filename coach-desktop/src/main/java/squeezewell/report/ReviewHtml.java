package squeezewell.report;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import squeezewell.protocol.Citation;
import squeezewell.protocol.LocalLabel;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.say.Asked;
import squeezewell.review.say.CompressionText;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Review;
import squeezewell.review.say.UnpromptedText;
import squeezewell.session.NotedFinding;
import squeezewell.session.SessionHeader;
import squeezewell.words.Quantities;

/**
 * A debrief as one page. It asks for nothing from outside: no script, no font, no picture but those
 * drawn in it. Every text is escaped.
 */
public final class ReviewHtml {
  static final String STYLE =
      """
      body { background: #FAF7EF; color: #14252D; margin: 0 auto; max-width: 760px;
        padding: 24px; font: 15px/1.5 "DejaVu Sans", Verdana, sans-serif;
        font-variant-numeric: tabular-nums; }
      h1 { font-size: 30px; line-height: 1.2; margin: 4px 0 8px; }
      h2 { font-size: 17px; margin: 28px 0 8px; }
      h3 { font-size: 15px; margin: 18px 0 4px; }
      .soft, .label { color: #50626A; }
      .cards { display: flex; flex-wrap: wrap; gap: 12px; margin: 20px 0; }
      .card, .finding, figure { background: #FFFFFF; border: 1px solid #DDD8C8;
        border-radius: 12px; padding: 12px 16px; margin: 0 0 12px; }
      .card { flex: 1 1 130px; margin: 0; }
      .card b { display: block; font-size: 23px; }
      .finding b { display: block; }
      .word { color: #50626A; font-size: 13px; }
      table { border-collapse: collapse; width: 100%; }
      td, th { text-align: left; padding: 4px 12px 4px 0; border-bottom: 1px solid #DDD8C8;
        vertical-align: top; font-weight: normal; }
      th { color: #50626A; width: 40%; } ul { margin: 4px 0; padding-left: 20px; }
      svg { width: 100%; height: auto; display: block; }
      svg text { font-size: 11px; }
      .caution { margin-top: 32px; padding-top: 12px; border-top: 1px solid #DDD8C8; }
      .some { display: inline-block; min-width: 17em; padding-right: 12px; }
      @page { margin: 10mm; }
      @media print { body { max-width: none; padding: 0; background: none;
          font-size: 10.5px; line-height: 1.3; }
        h1 { font-size: 20px; margin: 2px 0 4px; } h2 { font-size: 13px; margin: 9px 0 4px; }
        h3 { font-size: 10.5px; margin: 5px 0 1px; }
        h2, h3 { break-after: avoid; }
        .cards { margin: 6px 0; gap: 8px; } .card { flex: 1 1 120px; padding: 5px 12px; }
        .card b { font-size: 17px; }
        .finding { padding: 4px 10px; margin: 0 0 5px; } td, th { padding: 1px 10px 1px 0; }
        figure { padding: 5px 12px; margin-bottom: 4px; } figure svg { width: 80%; }
        .word, .card .label { font-size: 9.5px; } p { margin: 3px 0; }
        .caution { margin-top: 6px; padding-top: 5px; }
        .two { columns: 2; column-gap: 18px; }
        .some { min-width: 0; }
        .part { font-size: 9.5px; } .part table, .part tbody { display: block; }
        .part tr, .part th, .part td { display: inline; border: 0; padding: 0; }
        .part .some { display: inline; padding-right: 9px; }
        .block { break-inside: avoid; } .block .soft { font-size: 9.5px; }
        .block h2 { margin-top: 0; padding-top: 3px; } .block p { margin: 2px 0; }
        .part th::after { content: ": "; } .part tr + tr::before { content: " · "; }
        .card, .finding, figure, tr, .caution { break-inside: avoid; }
        .full { font-size: 9px; line-height: 1.24; } .full h1 { font-size: 17px; }
        .full h2 { font-size: 11px; margin: 5px 0 2px; } .full h3 { font-size: 9px; margin: 3px 0 0; }
        .full figure svg { width: 70%; } .full th { width: 7em; } .full .part th { width: auto; }
        .full .finding { padding: 2px 8px; margin: 0 0 3px; }
        .full .word, .full .part, .full .card .label, .full .block .soft { font-size: 8.5px; }
        .full .card { padding: 2px 10px; } .full .card b { font-size: 14px; } }
      """;

  private static final int MOST_PARTS = 4;
  private static final int MOST_DIFFERENCES = 8;
  private static final int MOST_NOTES = 6;
  private static final int LONGEST_NOTE = 300;

  /** So many checks, or suctions, are listed; of more only those that were not as asked. */
  private static final int MOST_HOLDS = 12;

  private final SessionHeader header;
  private final Review review;
  private final StringBuilder page = new StringBuilder();

  private ReviewHtml(SessionHeader header, Review review) {
    this.header = header;
    this.review = review;
  }

  /**
   * The page.
   *
   * @param header of the session that was reviewed
   * @param review its review
   * @param zone the time zone to write its date in
   */
  public static String of(SessionHeader header, Review review, ZoneId zone) {
    return new ReviewHtml(header, review).page(zone);
  }

  private String page(ZoneId zone) {
    add("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
    add("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
    add("<meta http-equiv=\"Content-Security-Policy\"");
    add(" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n");
    add("<title>" + Html.text("Debrief: " + review.headline()) + "</title>\n");
    add(
        "<style>\n"
            + STYLE
            + "</style>\n</head>\n<body"
            + (isFull() ? " class=\"full\"" : "")
            + ">\n");
    element("div", "soft", "Debrief");
    element("h1", "", review.headline());
    element("div", "soft", DebriefWords.asked(review));
    review.asked().local().ifPresent(this::local);
    element("div", "soft", DebriefWords.who(header, zone));
    notes();
    cards();
    found();
    figure(
        "What was asked, what was done",
        ReportPicture.ribbon(review, ReportPicture.ROWS_ON_PAPER).svg());
    element("p", "word", DebriefWords.legend(review));
    figure(
        "Seconds between breaths",
        ReportPicture.intervals(review, review.startNanos()).map(ReportPicture::svg).orElse(""));
    findings();
    if (review.parts().isEmpty()) {
      element("h2", "", "Figures");
      add("<div class=\"two\">\n");
      table(review, false);
      add("</div>\n");
    } else {
      parts();
    }
    add("<div class=\"two\">\n<div class=\"block\">\n");
    element("h2", "", "The rule");
    element("p", "", review.verdict().outcome().label() + ". " + review.rule());
    if (!review.reasons().isEmpty()) {
      element("p", "soft", String.join("; ", review.reasons()));
    }
    add("</div>\n<div class=\"block\">\n");
    source();
    add("</div>\n</div>\n");
    add("<p class=\"caution\">" + Html.text(Caution.TEXT) + "</p>\n</body>\n</html>\n");
    return page.toString();
  }

  private void notes() {
    List<String> notes = review.notes();
    for (int i = 0; i < Math.min(MOST_NOTES, notes.size()); i++) {
      element("div", "", "Note: " + DebriefWords.shortened(notes.get(i), LONGEST_NOTE));
    }
    if (notes.size() > MOST_NOTES) {
      int left = notes.size() - MOST_NOTES;
      element("div", "", "Note: " + left + " more notes are not printed here.");
    }
  }

  /** Whether so much is told that it is printed smaller, so that two sheets hold it. */
  private boolean isFull() {
    int differences = review.asked().local().map(l -> l.differences().size()).orElse(0);
    return review.parts().size() > MOST_PARTS
        || differences > MOST_DIFFERENCES
        || review.notes().size() >= MOST_NOTES;
  }

  /** A service's own protocol is never taken for a guideline. */
  private void local(LocalLabel label) {
    add("<div class=\"finding\">");
    element("div", "", label.origin());
    if (!label.differences().isEmpty()) {
      add("<ul>\n");
      label.differences().forEach(difference -> element("li", "", difference));
      add("</ul>\n");
    }
    add("</div>\n");
  }

  private void cards() {
    add("<div class=\"cards\">\n");
    for (DebriefWords.Card card : DebriefWords.cards(review)) {
      add("<div class=\"card\"><b>" + Html.text(card.value()) + "</b>" + Html.text(card.name()));
      add("<div class=\"word\">" + Html.text(card.note()) + "</div></div>\n");
    }
    add("</div>\n");
  }

  private void found() {
    if (review.found().isEmpty()) {
      return;
    }
    element("h2", "", "What was found");
    add("<table>\n");
    for (int i = 0; i < review.found().size(); i++) {
      NotedFinding noted = review.found().get(i);
      String advice = noted.undone() ? "" : ". " + noted.after().advice(noted.finding());
      row((i + 1) + ", at " + PartText.at(noted), PartText.label(noted) + advice);
    }
    add("</table>\n");
  }

  private void figure(String title, String svg) {
    if (!svg.isEmpty()) {
      element("h2", "", title);
      add("<figure>\n" + svg + "</figure>\n");
    }
  }

  private void findings() {
    element("h2", "", "What to take from it");
    add("<div class=\"two\">\n");
    for (Feedback finding : review.findings()) {
      add("<div class=\"finding\"><span class=\"word\">");
      add(Html.text(finding.severity().label()) + "</span><b>" + Html.text(finding.title()));
      add("</b>" + Html.text(finding.text()) + "</div>\n");
    }
    add("</div>\n");
  }

  private void parts() {
    element("h2", "", "Part by part");
    add("<div class=\"two\">\n");
    for (Review part : review.parts()) {
      add("<div class=\"part\">\n");
      element("h3", "", PartText.span(part) + ": " + PartText.situation(part));
      if (!part.slip()) {
        PartText.differences(review, part).forEach(line -> element("div", "soft", line));
        table(part, true);
      }
      add("</div>\n");
    }
    add("</div>\n");
    element("h2", "", "In all");
    add("<div class=\"part\">\n");
    table(review, false);
    add("</div>\n");
  }

  /** The figures of the whole, or of a part, whose checks stand in the whole. */
  private void table(Review one, boolean part) {
    Metrics metrics = one.metrics();
    Metrics.Prompts prompts = metrics.prompts();
    add("<table>\n");
    if (part) {
      row("asked", DebriefWords.rhythm(one.asked()));
      row("practised", Quantities.clock(one.asked().practisedNanos()));
    }
    row("breaths", Integer.toString(metrics.breathCount()));
    if (metrics.interval().meanSeconds().isPresent()) {
      row("mean interval", number(metrics.interval().meanSeconds(), 2, " s"));
      row("median interval", number(metrics.interval().medianSeconds(), 2, " s"));
      row("spread of the intervals (SD)", number(metrics.interval().sdSeconds(), 2, " s"));
    }
    if (metrics.interval().count() > 0) {
      row(
          "in range",
          metrics.interval().inRangeCount() + " of " + metrics.interval().count() + " intervals");
    }
    row(
        "prompts",
        prompts.given()
            + " given, "
            + prompts.met()
            + " met, "
            + prompts.missed()
            + " missed"
            + (prompts.forgiven() > 0 ? ", " + prompts.forgiven() + " excused" : ""));
    row("extra breaths", Integer.toString(prompts.extra()));
    UnpromptedText.add(review, this::row);
    row("breath after prompt, mean", number(metrics.asynchrony().meanSeconds(), 2, " s"));
    row("squeeze, mean", number(metrics.inspiration().meanSeconds(), 2, " s"));
    metrics.compressions().ifPresent(done -> CompressionText.add(done, this::row));
    if (part) {
      row("by the rule", PartText.verdict(one));
    } else {
      holds(metrics);
    }
    add("</table>\n");
  }

  private void holds(Metrics metrics) {
    List<String> checks = new ArrayList<>();
    boolean many = metrics.pulseChecks().size() > MOST_HOLDS;
    int asAsked = 0;
    for (PulseCheckResult check : metrics.pulseChecks()) {
      if (many && isAsAsked(check)) {
        asAsked++;
        continue;
      }
      checks.add(
          "due "
              + clock(check.dueSeconds())
              + ", made "
              + clock(check.startedSeconds())
              + ", for "
              + number(check.lengthSeconds(), 1, " s"));
    }
    if (many) {
      cut(checks, asAsked + " when due and of the length asked for");
    }
    some(
        metrics.pulseChecks().stream().map(c -> c.kind().words()).distinct().count() == 1
            ? metrics.pulseChecks().get(0).kind().words() + "s"
            : "checks",
        checks);
    List<String> suctions = new ArrayList<>();
    for (SuctionResult suction : metrics.suctions()) {
      suctions.add(
          "at "
              + clock(OptionalDouble.of(suction.startedSeconds()))
              + ", for "
              + Quantities.upTo(suction.lengthSeconds(), 1)
              + " s");
    }
    if (suctions.size() > MOST_HOLDS) {
      long within = metrics.suctions().stream().filter(SuctionResult::withinLimit).count();
      cut(suctions, within + " of " + suctions.size() + " within the limit");
    }
    some("suction", suctions);
  }

  private static boolean isAsAsked(PulseCheckResult check) {
    return check.outcome() == PulseCheckResult.Outcome.ON_TIME
        && check.lengthOutcome() == PulseCheckResult.LengthOutcome.RIGHT;
  }

  /** The page is for two sheets of paper: what it leaves out it says, and where that stands. */
  private static void cut(List<String> values, String inShort) {
    int left = values.size() - MOST_HOLDS;
    if (left > 0) {
      values.subList(MOST_HOLDS, values.size()).clear();
      values.add("and " + left + " more, not listed here");
    }
    values.add(0, inShort + ".");
  }

  /** Several values of one name, side by side where there is room. */
  private void some(String name, List<String> values) {
    if (!values.isEmpty()) {
      add("<tr><th>" + Html.text(name) + "</th><td>");
      values.forEach(value -> element("span", "some", value));
      add("</td></tr>\n");
    }
  }

  private void row(String name, String value) {
    add("<tr><th>" + Html.text(name) + "</th><td>" + Html.text(value) + "</td></tr>\n");
  }

  private void source() {
    Asked asked = review.asked();
    element("h2", "", DebriefWords.protocolHeading(asked));
    element("p", "", DebriefWords.protocol(asked));
    for (Citation source : review.sources()) {
      element("p", "soft", source.document() + " — " + source.confidence().meaning());
    }
  }

  private static String clock(OptionalDouble seconds) {
    return seconds.isPresent()
        ? Quantities.clock(Math.round(seconds.getAsDouble() * 1e9))
        : DebriefWords.UNKNOWN;
  }

  private static String number(OptionalDouble value, int decimals, String unit) {
    return value.isPresent()
        ? Quantities.upTo(value.getAsDouble(), decimals) + unit
        : DebriefWords.UNKNOWN;
  }

  private void element(String tag, String kind, String text) {
    add("<" + tag + (kind.isEmpty() ? "" : " class=\"" + kind + "\"") + ">");
    add(Html.text(text) + "</" + tag + ">\n");
  }

  private void add(String html) {
    page.append(html);
  }
}
