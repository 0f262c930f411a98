package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.List;
import squeezewell.words.Wording;
import squeezewell.words.WrappedText;

/** Writes a comparison as plain text for a terminal, at most 80 columns wide. */
public final class ComparisonText {
  private static final int COLUMNS = 80;
  private static final int LABEL = 25;
  private static final int VALUE = 16;
  private static final int CHANGE = 13;
  private static final Wording WORDS = Comparison.WORDS;

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
      lines.add(WORDS.say("asked-differently"));
      comparison.askedDifferently().forEach(line -> wrap(lines, "  - ", line));
      lines.add("");
    }
    lines.add(
        row(
            "",
            WORDS.say("head.a"),
            WORDS.say("head.b"),
            WORDS.say("head.difference"),
            WORDS.say("head.outside")));
    for (Comparison.Row row : comparison.rows()) {
      lines.add(row(row.label(), row.a().text(), row.b().text(), row.change(), row.outside()));
    }
    lines.add("");
    comparison.targets().forEach(line -> wrap(lines, "  - ", line));
    return String.join("\n", lines) + "\n";
  }

  private static String row(String label, String a, String b, String change, String outside) {
    StringBuilder line = new StringBuilder("  ").append(label);
    pad(line, LABEL).append(' ').append(a);
    pad(line, LABEL + VALUE).append(' ').append(b);
    pad(line, LABEL + 2 * VALUE).append(' ').append(change);
    pad(line, LABEL + 2 * VALUE + CHANGE).append(' ').append(outside);
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
