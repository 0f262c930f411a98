package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.Citation;
import squeezewell.protocol.LocalLabel;
import squeezewell.review.judge.Sentence;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;
import squeezewell.words.WrappedText;

/** Writes a review as plain text for a terminal, at most 80 columns wide. */
public final class ReviewText {
  private static final int COLUMNS = 80;
  private static final Wording WORDS = Sayings.WORDS;

  private ReviewText() {}

  /** The text, each line ended by a line feed. */
  public static String write(Review review) {
    List<String> lines = new ArrayList<>();
    lines.add(review.headline());
    lines.add("");
    verdict(lines, review, "", "  - ", "    ");
    lines.add("");
    Prescription asked = review.asked();
    boolean whole = review.parts().isEmpty();
    lines.add(WORDS.say("text.asked"));
    String edition = asked.local().isPresent() ? "row.edition.local" : "row.edition";
    row(lines, WORDS.say(edition), asked.protocolTitle() + ", " + asked.organisation());
    String patient = asked.patient() + (whole ? ", " + asked.situation() : "");
    row(lines, WORDS.say("row.patient"), patient);
    if (whole) {
      asked(lines, asked);
    }
    asked.local().ifPresent(label -> local(lines, label));
    lines.add("");
    found(lines, review.found());
    for (Review part : review.parts()) {
      part(lines, part, PartText.differences(review, part));
    }
    lines.add(WORDS.say(whole ? "text.done" : "text.in-all"));
    done(lines, review);
    holds(lines, review.metrics());
    lines.add("");
    lines.add(WORDS.say("text.findings"));
    for (Feedback finding : review.findings()) {
      lines.add("");
      wrap(lines, "  ", "    ", finding.severity().label() + ": " + finding.title());
      wrap(lines, "    ", "    ", finding.brief());
      for (Feedback.Paragraph why : finding.paragraphs(Sentence.Kind.WHY)) {
        wrap(lines, "    ", "      ", why.reason());
      }
    }
    lines.add("");
    if (!review.notes().isEmpty()) {
      review.notes().forEach(note -> wrap(lines, "", "  ", WORDS.say("text.note", note)));
      lines.add("");
    }
    wrap(lines, "", "  ", WORDS.say("text.rule", review.rule()));
    for (Citation source : review.sources()) {
      wrap(lines, "", "  ", WORDS.say("text.rhythm-from", source.line()));
      wrap(lines, "", "  ", WORDS.say("text.checked", source.confidence().meaning()));
    }
    wrap(lines, "", "", WORDS.say("text.caution"));
    wrap(lines, "", "", WORDS.say("text.caution.local"));
    return String.join("\n", lines) + "\n";
  }

  private static void verdict(
      List<String> lines, Review review, String first, String item, String rest) {
    wrap(lines, first, rest, review.verdict().outcome().label() + ".");
    for (String reason : review.reasons()) {
      wrap(lines, item, rest, reason);
    }
  }

  private static void found(List<String> lines, List<NotedFinding> found) {
    if (found.isEmpty()) {
      return;
    }
    lines.add(WORDS.say("text.found"));
    for (NotedFinding noted : found) {
      row(lines, WORDS.say("text.at", PartText.at(noted)), PartText.label(noted));
    }
    lines.add("");
  }

  private static void part(List<String> lines, Review part, List<String> differences) {
    wrap(lines, "", "  ", WORDS.say("text.part", PartText.span(part), PartText.situation(part)));
    if (!part.slip()) {
      asked(lines, part.asked());
      differences.forEach(difference -> wrap(lines, "  - ", "    ", difference));
      done(lines, part);
      row(lines, WORDS.say("row.rule"), PartText.verdict(part));
    }
    lines.add("");
  }

  private static void asked(List<String> lines, Prescription asked) {
    asked
        .breaths()
        .ifPresent(
            breaths ->
                row(
                    lines,
                    WORDS.say("row.interval"),
                    WORDS.say(
                        "row.interval.range",
                        Words.decimal(breaths.interval().seconds()),
                        Words.decimal(breaths.range().low()),
                        Words.decimal(breaths.range().high()))));
    if (!asked.compressions().isEmpty()) {
      row(lines, WORDS.say("row.compress"), asked.compressions());
    }
    row(lines, WORDS.say("row.squeeze"), Words.seconds(asked.inspirationNanos() / 1e9));
  }

  private static void local(List<String> lines, LocalLabel label) {
    wrap(lines, "  ", "  ", label.origin());
    label.differences().forEach(difference -> wrap(lines, "  - ", "    ", difference));
  }

  private static void done(List<String> lines, Review review) {
    Metrics metrics = review.metrics();
    boolean whole = !review.parts().isEmpty();
    boolean steady = review.asked().breaths().isPresent();
    FigureRows rows = FigureRows.ofText(review, (name, text) -> row(lines, name, text));
    rows.add("practised", "asked.practisedSeconds");
    rows.add("breaths", "breaths.count");
    if (steady) {
      rows.addAlways("rate", "rate.overallPerMinute");
      rows.addAlways("mean", "interval.meanSeconds");
    }
    if (steady || (whole && metrics.interval().count() > 0)) {
      rows.addAlways("in-range", "interval.inRangeCount interval.count interval.inRangeFraction");
      String gap = "gap.longestSeconds gap.longestAtSeconds";
      rows.add(metrics.gap().happened() ? "gap" : "gap.none", gap);
    }
    metrics
        .prompts()
        .ifPresent(prompts -> row(lines, WORDS.say("row.prompts"), Words.prompts(prompts)));
    rows.addUnprompted();
    if (!whole) {
      rows.add("usual-squeeze", "inspiration.medianSeconds");
    }
    rows.addCompressions();
    rows.add("volume", "volume.litresPerMinute");
  }

  private static void holds(List<String> lines, Metrics metrics) {
    for (PulseCheckResult check : metrics.pulseChecks()) {
      String due =
          check.dueSeconds().isPresent()
              ? WORDS.say("check.due", Quantities.clock(check.dueSeconds().getAsDouble()))
              : WORDS.say("check.not-due");
      String made =
          check.startedSeconds().isPresent()
              ? WORDS.say(
                  "check.made",
                  Quantities.clock(check.startedSeconds().getAsDouble()),
                  Words.decimal(check.lengthSeconds().getAsDouble()))
              : WORDS.say("check.not-made");
      row(lines, check.kind().words(), due + ", " + made);
    }
    for (SuctionResult suction : metrics.suctions()) {
      String text =
          WORDS.say(
              "row.suction.one",
              Quantities.clock(suction.startedSeconds()),
              Words.decimal(suction.lengthSeconds()),
              Words.decimal(suction.limitSeconds()));
      row(lines, WORDS.say("row.suction"), text);
    }
  }

  private static void row(List<String> lines, String name, String value) {
    wrap(lines, String.format("  %-18s ", name), "                     ", value);
  }

  private static void wrap(List<String> lines, String first, String rest, String text) {
    lines.addAll(WrappedText.lines(first, rest, text, COLUMNS, String::length));
  }
}
