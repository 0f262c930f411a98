package squeezewell.report;

/** Text from a person or a file, made harmless without changing what it says. */
public final class PlainText {
  /** Stands for a sign that can't be seen. */
  private static final int REPLACEMENT = 0xFFFD;

  private PlainText() {}

  /**
   * The text with every sign replaced that can't be seen, breaks a line, turns the direction of
   * writing or is no character at all: control and format signs, line and paragraph separators,
   * halves of a surrogate pair, non-characters. What is left is valid in XML 1.0 and in UTF-8.
   */
  public static String of(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().forEach(c -> out.appendCodePoint(isHidden(c) ? REPLACEMENT : c));
    return out.toString();
  }

  static boolean isHidden(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          true;
      default -> (c & 0xFFFE) == 0xFFFE || (c >= 0xFDD0 && c <= 0xFDEF);
    };
  }
}
