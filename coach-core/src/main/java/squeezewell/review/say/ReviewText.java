package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import squeezewell.protocol.Citation;
import squeezewell.protocol.LocalLabel;
import squeezewell.review.judge.Sentence;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.measure.SuctionResult;
import squeezewell.session.NotedFinding;
import squeezewell.words.Quantities;
import squeezewell.words.WrappedText;

/** Writes a review as plain text for a terminal, at most 80 columns wide. */
public final class ReviewText {
  private static final int COLUMNS = 80;
  private static final String NONE = "not enough breaths";

  private ReviewText() {}

  /** The text, each line ended by a line feed. */
  public static String write(Review review) {
    List<String> lines = new ArrayList<>();
    lines.add(review.headline());
    lines.add("");
    verdict(lines, review, "", "  - ", "    ");
    lines.add("");
    lines.add("Asked");
    row(
        lines,
        review.asked().local().isPresent() ? "local protocol" : "guideline",
        review.asked().protocolTitle() + ", " + review.asked().organisation());
    if (review.parts().isEmpty()) {
      row(lines, "patient", review.asked().patient() + ", " + review.asked().situation());
      asked(lines, review.asked());
    } else {
      row(lines, "patient", review.asked().patient());
    }
    review.asked().local().ifPresent(label -> local(lines, label));
    lines.add("");
    found(lines, review.found());
    for (Review part : review.parts()) {
      part(lines, part, PartText.differences(review, part));
    }
    lines.add(review.parts().isEmpty() ? "Done" : "In all");
    done(lines, review);
    holds(lines, review.metrics());
    lines.add("");
    lines.add("What to take from it");
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
      review.notes().forEach(note -> wrap(lines, "Note: ", "  ", note));
      lines.add("");
    }
    wrap(lines, "Rule: ", "  ", review.rule());
    for (Citation source : review.sources()) {
      wrap(lines, "Rhythm from: ", "  ", source.line() + ".");
      wrap(lines, "How that was checked: ", "  ", source.confidence().meaning() + ".");
    }
    wrap(lines, "", "", "A training aid for practice on manikins. Not a medical device.");
    wrap(lines, "", "", "Follow your local protocols and medical direction.");
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
    lines.add("Found");
    for (NotedFinding noted : found) {
      row(lines, "at " + PartText.at(noted), PartText.label(noted));
    }
    lines.add("");
  }

  private static void part(List<String> lines, Review part, List<String> differences) {
    wrap(lines, "", "  ", "From " + PartText.span(part) + ": " + PartText.situation(part));
    if (!part.slip()) {
      asked(lines, part.asked());
      differences.forEach(difference -> wrap(lines, "  - ", "    ", difference));
      done(lines, part);
      row(lines, "by the rule", PartText.verdict(part));
    }
    lines.add("");
  }

  private static void asked(List<String> lines, Prescription asked) {
    if (asked.intervalSeconds().isPresent()) {
      row(
          lines,
          "one breath every",
          Words.seconds(asked.intervalSeconds().getAsDouble())
              + " (in range: "
              + Words.decimal(asked.breaths().get().range().low())
              + " to "
              + Words.seconds(asked.breaths().get().range().high())
              + ")");
    }
    if (!asked.compressions().isEmpty()) {
      row(lines, "compressions asked", asked.compressions());
    }
    row(lines, "squeeze for", Words.seconds(asked.inspirationNanos() / 1e9));
  }

  private static void local(List<String> lines, LocalLabel label) {
    wrap(lines, "  ", "  ", label.origin());
    label.differences().forEach(difference -> wrap(lines, "  - ", "    ", difference));
  }

  private static void done(List<String> lines, Review review) {
    Metrics metrics = review.metrics();
    boolean whole = !review.parts().isEmpty();
    row(lines, "practised", Quantities.clock(review.asked().practisedNanos()));
    row(lines, "breaths", Integer.toString(metrics.breathCount()));
    if (review.asked().intervalSeconds().isPresent()) {
      row(lines, "breaths a minute", number(metrics.rate().overallPerMinute(), ""));
      row(lines, "mean interval", number(metrics.interval().meanSeconds(), " s"));
    }
    if (review.asked().intervalSeconds().isPresent() || (whole && metrics.interval().count() > 0)) {
      row(lines, "in range", inRange(metrics.interval()));
      row(lines, "longest gap", longestGap(metrics.gap()));
    }
    metrics.prompts().ifPresent(prompts -> row(lines, "prompts", Words.prompts(prompts)));
    UnpromptedText.add(review, (name, t) -> row(lines, name, t));
    if (metrics.inspiration().count() > 0 && !whole) {
      row(lines, "usual squeeze", number(metrics.inspiration().medianSeconds(), " s"));
    }
    metrics.compressions().ifPresent(c -> CompressionText.add(c, (name, t) -> row(lines, name, t)));
    if (metrics.volume().litresPerMinute().isPresent()) {
      row(lines, "volume a minute", number(metrics.volume().litresPerMinute(), " L"));
    }
  }

  private static String inRange(Metrics.Interval interval) {
    return interval.count() == 0
        ? NONE
        : interval.inRangeCount() + " of " + interval.count() + " intervals";
  }

  private static String longestGap(Metrics.Gap gap) {
    if (!gap.happened()) {
      return "the breaths never began";
    }
    return Words.seconds(gap.longestSeconds())
        + ", from "
        + Quantities.clock(gap.longestAtSeconds())
        + " (end of a squeeze to the start of the next; checks, suction and pauses left out)";
  }

  private static void holds(List<String> lines, Metrics metrics) {
    for (PulseCheckResult check : metrics.pulseChecks()) {
      row(lines, check.kind().words(), pulseCheck(check));
    }
    for (SuctionResult suction : metrics.suctions()) {
      row(
          lines,
          "suction",
          "at "
              + Quantities.clock(suction.startedSeconds())
              + ", "
              + Words.seconds(suction.lengthSeconds())
              + " (limit "
              + Words.seconds(suction.limitSeconds())
              + ")");
    }
  }

  private static String pulseCheck(PulseCheckResult check) {
    String due =
        check.dueSeconds().isPresent()
            ? "due " + Quantities.clock(check.dueSeconds().getAsDouble())
            : "not due";
    String made =
        check.startedSeconds().isPresent()
            ? "made "
                + Quantities.clock(check.startedSeconds().getAsDouble())
                + ", "
                + Words.seconds(check.lengthSeconds().getAsDouble())
            : "not made";
    return due + ", " + made;
  }

  private static String number(OptionalDouble value, String unit) {
    return value.isPresent() ? Words.decimal(value.getAsDouble()) + unit : NONE;
  }

  private static void row(List<String> lines, String name, String value) {
    StringBuilder label = new StringBuilder("  ").append(name);
    while (label.length() < 20) {
      label.append(' ');
    }
    wrap(lines, label.append(' ').toString(), "                     ", value);
  }

  private static void wrap(List<String> lines, String first, String rest, String text) {
    lines.addAll(WrappedText.lines(first, rest, text, COLUMNS, String::length));
  }
}
