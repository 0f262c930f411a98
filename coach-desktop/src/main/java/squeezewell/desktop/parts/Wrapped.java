package squeezewell.desktop.parts;

import java.awt.FontMetrics;
import java.util.ArrayList;
import java.util.List;

/** Breaks a drawn text into lines. */
final class Wrapped {
  private Wrapped() {}

  /** The lines of a text, none wider than the room unless it is a single word. */
  static List<String> lines(String text, FontMetrics metrics, int room) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      String longer = line.length() == 0 ? word : line + " " + word;
      if (line.length() > 0 && metrics.stringWidth(longer) > room) {
        lines.add(line.toString());
        line = new StringBuilder(word);
      } else {
        line = new StringBuilder(longer);
      }
    }
    lines.add(line.toString());
    return lines;
  }
}
