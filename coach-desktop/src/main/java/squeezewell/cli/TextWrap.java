package squeezewell.cli;

import squeezewell.words.WrappedText;

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
    String spaced = WrappedText.oneSpaced(text);
    return String.join("\n", WrappedText.lines(indent, indent, spaced, width, String::length));
  }
}
