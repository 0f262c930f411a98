package squeezewell.words;

import java.util.ArrayList;
import java.util.List;

/** A text for a terminal that grows line by line, wrapped between words at 80 columns. */
public final class WrappedText {
  private static final int COLUMNS = 80;

  private final List<String> lines = new ArrayList<>();

  /** An empty line. */
  public void gap() {
    lines.add("");
  }

  /**
   * A paragraph.
   *
   * @param first what stands before its first line; the others are indented as far
   * @param text its words; runs of white space count as one space
   */
  public void add(String first, String text) {
    StringBuilder indent = new StringBuilder();
    for (int i = 0; i < first.length(); i++) {
      indent.append(' ');
    }
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.trim().split("\\s+", -1)) {
      if (!empty && line.length() + 1 + word.length() > COLUMNS) {
        lines.add(line.toString());
        line = new StringBuilder(indent);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
  }

  /** All lines, each ended by a line feed. */
  @Override
  public String toString() {
    return String.join("\n", lines) + "\n";
  }
}
