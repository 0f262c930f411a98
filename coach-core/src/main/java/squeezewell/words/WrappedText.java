package squeezewell.words;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;

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
    lines.addAll(lines(first, indent.toString(), oneSpaced(text), COLUMNS, String::length));
  }

  /** A text with every run of white space as one space, and none at its ends. */
  public static String oneSpaced(String text) {
    return text.trim().replaceAll("\\s+", " ");
  }

  /** The lines of a text that begin with nothing else. */
  public static List<String> lines(String text, int room, ToIntFunction<String> length) {
    return lines("", "", text, room, length);
  }

  /**
   * The lines of a text, broken at single spaces; a word longer than the room stands alone.
   *
   * @param first what the first line begins with
   * @param rest what the others begin with
   * @param room how long a line may be
   * @param length how long a line is, in the unit of the room
   */
  public static List<String> lines(
      String first, String rest, String text, int room, ToIntFunction<String> length) {
    List<String> lines = new ArrayList<>();
    String line = null;
    for (String word : text.split(" ", -1)) {
      String longer = line == null ? first + word : line + " " + word;
      if (line != null && length.applyAsInt(longer) > room) {
        lines.add(line);
        longer = rest + word;
      }
      line = longer;
    }
    lines.add(line);
    return lines;
  }

  /** All lines, each ended by a line feed. */
  @Override
  public String toString() {
    return String.join("\n", lines) + "\n";
  }
}
