package squeezewell.report;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import squeezewell.protocol.Citation;
import squeezewell.protocol.LocalLabel;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.review.say.FigureRows;
import squeezewell.review.say.PartText;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.session.NotedFinding;
import squeezewell.session.SessionHeader;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/**
 * A debrief as one page. It asks for nothing from outside: no script, no font, no picture but those
 * drawn in it. Every text is escaped.
 */
public final class ReviewHtml {
  private static final Wording WORDS = Wording.beside(ReviewHtml.class);
  private static final int MOST_PARTS = 4;
  private static final int MOST_DIFFERENCES = 8;
  private static final int MOST_NOTES = 6;
  private static final int LONGEST_NOTE = 300;

  /** So many checks, or suctions, are listed; of more only those that were not as asked. */
  private static final int MOST_HOLDS = 12;

  private final SessionHeader header;
  private final Review review;
  private final HtmlPage page;

  private ReviewHtml(SessionHeader header, Review review) {
    this.header = header;
    this.review = review;
    String title = WORDS.say("debrief.title", review.headline());
    this.page = new HtmlPage(title, "", isFull() ? "full" : "");
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
    page.element("div", "soft", WORDS.say("debrief"));
    page.element("h1", "", review.headline());
    page.element("div", "soft", DebriefWords.asked(review));
    review.asked().local().ifPresent(this::local);
    page.element("div", "soft", DebriefWords.who(header, zone));
    notes();
    cards();
    found();
    page.heading(WORDS.say("ribbon"));
    page.figure(ReportPicture.ribbon(review, ReportPicture.ROWS_ON_PAPER));
    page.element("p", "word", DebriefWords.legend(review));
    ReportPicture.intervals(review, review.startNanos())
        .ifPresent(
            intervals -> {
              page.heading(WORDS.say("intervals"));
              page.figure(intervals);
            });
    findings();
    if (review.parts().isEmpty()) {
      page.heading(WORDS.say("figures"));
      page.block("two", () -> table(review, false));
    } else {
      parts();
    }
    page.block(
        "two",
        () -> {
          page.block("block", this::rule);
          page.block("block", this::source);
        });
    return page.end();
  }

  private void rule() {
    page.heading(WORDS.say("rule"));
    page.element("p", "", review.verdict().outcome().label() + ". " + review.rule());
    if (!review.reasons().isEmpty()) {
      page.element("p", "soft", String.join("; ", review.reasons()));
    }
  }

  private void notes() {
    List<String> notes = review.notes();
    for (int i = 0; i < Math.min(MOST_NOTES, notes.size()); i++) {
      String note = DebriefWords.shortened(notes.get(i), LONGEST_NOTE);
      page.element("div", "", WORDS.say("note", note));
    }
    if (notes.size() > MOST_NOTES) {
      page.element("div", "", WORDS.say("notes.left", notes.size() - MOST_NOTES));
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
    page.add("<div class=\"finding\">");
    page.element("div", "", label.origin());
    page.list(label.differences());
    page.add("</div>\n");
  }

  private void cards() {
    page.block(
        "cards",
        () ->
            DebriefWords.cards(review)
                .forEach(card -> page.card(card.value(), card.name(), "div", "word", card.note())));
  }

  private void found() {
    if (review.found().isEmpty()) {
      return;
    }
    page.heading(WORDS.say("found"));
    page.add("<table>\n");
    for (int i = 0; i < review.found().size(); i++) {
      NotedFinding noted = review.found().get(i);
      String advice = noted.undone() ? "" : ". " + noted.after().advice(noted.finding());
      row(WORDS.say("found.at", i + 1, PartText.at(noted)), PartText.label(noted) + advice);
    }
    page.add("</table>\n");
  }

  private void findings() {
    page.heading(WORDS.say("findings"));
    page.block("two", () -> review.findings().forEach(f -> page.finding(f.severity().label(), f)));
  }

  private void parts() {
    page.heading(WORDS.say("parts"));
    page.block("two", () -> review.parts().forEach(part -> page.block("part", () -> part(part))));
    page.heading(WORDS.say("whole"));
    page.block("part", () -> table(review, false));
  }

  private void part(Review part) {
    page.element("h3", "", PartText.span(part) + ": " + PartText.situation(part));
    if (!part.slip()) {
      PartText.differences(review, part).forEach(line -> page.element("div", "soft", line));
      table(part, true);
    }
  }

  /** The figures of the whole, or of a part, whose checks stand in the whole. */
  private void table(Review one, boolean part) {
    Metrics metrics = one.metrics();
    FigureRows rows = new FigureRows(one, WORDS, 2, this::row);
    page.add("<table>\n");
    if (part) {
      row(WORDS.say("row.asked"), DebriefWords.rhythm(one.asked()));
      rows.add("practised", "asked.practisedSeconds");
    }
    rows.add("breaths", "breaths.count");
    rows.add("mean", "interval.meanSeconds");
    rows.add("median", "interval.medianSeconds");
    if (metrics.interval().count() > 0) {
      rows.addAlways("spread", "interval.sdSeconds");
    }
    rows.add("in-range", "interval.inRangeCount interval.count interval.inRangeFraction");
    rows.add("prompts", "prompts.given", "prompts.met", "prompts.missed", "prompts.forgiven");
    rows.add("extra", "prompts.extra");
    rows.addUnprompted();
    if (metrics.asynchrony().isPresent()) {
      rows.addAlways("asynchrony", "asynchrony.meanSeconds");
    }
    rows.addAlways("squeeze", "inspiration.meanSeconds");
    rows.addCompressions();
    if (part) {
      row(WORDS.say("row.rule"), PartText.verdict(one));
    } else {
      checks(metrics.pulseChecks());
      suctions(metrics.suctions());
    }
    page.add("</table>\n");
  }

  private void checks(List<PulseCheckResult> all) {
    boolean many = all.size() > MOST_HOLDS;
    List<String> told =
        all.stream()
            .filter(check -> !(many && isAsAsked(check)))
            .map(
                check ->
                    WORDS.say(
                        "check",
                        clock(check.dueSeconds()),
                        clock(check.startedSeconds()),
                        DebriefWords.seconds(check.lengthSeconds(), 1)))
            .collect(Collectors.toCollection(ArrayList::new));
    if (many) {
      cut(told, WORDS.say("checks.as-asked", all.size() - told.size()));
    }
    boolean oneKind = all.stream().map(c -> c.kind().words()).distinct().count() == 1;
    some(oneKind ? all.get(0).kind().words() + "s" : WORDS.say("checks"), told);
  }

  private void suctions(List<SuctionResult> all) {
    List<String> told =
        all.stream()
            .map(
                suction ->
                    WORDS.say(
                        "suction.one",
                        clock(OptionalDouble.of(suction.startedSeconds())),
                        Quantities.upTo(suction.lengthSeconds(), 1)))
            .collect(Collectors.toCollection(ArrayList::new));
    if (all.size() > MOST_HOLDS) {
      long within = all.stream().filter(SuctionResult::withinLimit).count();
      cut(told, WORDS.say("suctions.within", within, all.size()));
    }
    some(WORDS.say("suction"), told);
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
      values.add(WORDS.say("holds.left", left));
    }
    values.add(0, inShort);
  }

  /** Several values of one name, side by side where there is room. */
  private void some(String name, List<String> values) {
    if (!values.isEmpty()) {
      page.add("<tr><th>" + HtmlPage.text(name) + "</th><td>");
      values.forEach(value -> page.element("span", "some", value));
      page.add("</td></tr>\n");
    }
  }

  private void row(String name, String value) {
    page.add("<tr><th>" + HtmlPage.text(name) + "</th><td>" + HtmlPage.text(value));
    page.add("</td></tr>\n");
  }

  private void source() {
    Prescription asked = review.asked();
    page.heading(DebriefWords.protocolHeading(asked));
    page.element("p", "", DebriefWords.protocol(asked));
    for (Citation source : review.sources()) {
      page.element("p", "soft", source.document() + " — " + source.confidence().meaning());
    }
  }

  private static String clock(OptionalDouble seconds) {
    return seconds.isPresent() ? Quantities.clock(seconds.getAsDouble()) : DebriefWords.UNKNOWN;
  }
}
