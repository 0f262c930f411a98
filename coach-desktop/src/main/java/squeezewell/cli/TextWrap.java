package squeezewell.cli;

/** Breaks text into lines. */
final class TextWrap {
  private TextWrap() {}

  /**
   * Breaks at spaces. A word that is longer than a line stands alone on a longer one.
   *
   * @param text one paragraph
   * @param width longest line in characters, the indent included
   * @param indent what each line begins with
   * @return the lines, without a line feed at the end
   */
  static String wrap(String text, int width, String indent) {
    StringBuilder out = new StringBuilder();
    StringBuilder line = new StringBuilder(indent);
    for (String word : text.trim().split("\\s+", -1)) {
      boolean first = line.length() == indent.length();
      if (!first && line.length() + 1 + word.length() > width) {
        out.append(line).append('\n');
        line = new StringBuilder(indent);
        first = true;
      }
      line.append(first ? "" : " ").append(word);
    }
    return out.append(line).toString();
  }
}
