package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.List;
import squeezewell.words.WrappedText;

/** Writes a comparison as plain text for a terminal, at most 80 columns wide. */
public final class ComparisonText {
  private static final int COLUMNS = 80;
  private static final int LABEL = 25;
  private static final int VALUE = 18;

  private ComparisonText() {}

  /** The sentence at the top, each line ended by a line feed. */
  public static String sentence(Comparison comparison) {
    List<String> lines = new ArrayList<>();
    wrap(lines, "", comparison.sentence());
    return String.join("\n", lines) + "\n";
  }

  /** All but the sentence, each line ended by a line feed. */
  public static String body(Comparison comparison) {
    List<String> lines = new ArrayList<>();
    if (!comparison.askedDifferently().isEmpty()) {
      lines.add("Not asked alike");
      comparison.askedDifferently().forEach(line -> wrap(lines, "  - ", line));
      lines.add("");
    }
    lines.add(row("", "A", "B", ""));
    for (Comparison.Row row : comparison.rows()) {
      lines.add(row(row.label(), row.a().text(), row.b().text(), row.outcome().label()));
      if (row.code().equals("interval.inRange")) {
        lines.add(row("  likely share (95 %)", share(row.a()), share(row.b()), ""));
      }
    }
    lines.add("");
    comparison.rules().forEach(rule -> wrap(lines, "Rule: ", rule));
    return String.join("\n", lines) + "\n";
  }

  /** From where to where the true share lies in 95 of 100 cases, for people; a dash if unknown. */
  public static String share(Comparison.Side side) {
    return side.low().isPresent()
        ? Math.round(100 * side.low().getAsDouble())
            + " to "
            + Math.round(100 * side.high().getAsDouble())
            + " %"
        : "–";
  }

  private static String row(String label, String a, String b, String outcome) {
    StringBuilder line = new StringBuilder("  ").append(label);
    pad(line, LABEL).append(' ').append(a);
    pad(line, LABEL + VALUE).append(' ').append(b);
    pad(line, LABEL + 2 * VALUE);
    if (!outcome.isEmpty()) {
      line.append(outcome);
    }
    int end = line.length();
    while (end > 0 && line.charAt(end - 1) == ' ') {
      end--;
    }
    return line.substring(0, end);
  }

  private static StringBuilder pad(StringBuilder line, int length) {
    while (line.length() < length) {
      line.append(' ');
    }
    return line;
  }

  private static void wrap(List<String> lines, String first, String text) {
    StringBuilder rest = new StringBuilder();
    pad(rest, first.length());
    lines.addAll(WrappedText.lines(first, rest.toString(), text, COLUMNS, String::length));
  }
}
