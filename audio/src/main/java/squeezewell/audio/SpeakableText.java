package squeezewell.audio;

import java.text.Normalizer;
import java.util.Optional;

/**
 * What of a text can be given to a synthesiser of English: letters, digits and the marks of a
 * sentence. Markup, control characters and signs that turn the direction of writing become spaces.
 * Pure.
 */
public final class SpeakableText {
  /** The longest text that is spoken, in characters: twice the longest line of a station. */
  public static final int LONGEST = 600;

  private static final String MARKS = ".,;:?!'-/%&+";

  private SpeakableText() {}

  /**
   * The text to speak.
   *
   * @return empty if there is nothing to speak, it is too long, or it has letters that English does
   *     not have, since it would be read as nonsense
   */
  public static Optional<String> of(String text) {
    if (text.length() > LONGEST) {
      return Optional.empty();
    }
    String plain =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .replace('\u2019', '\'')
            .replace('\u2013', ',')
            .replace('\u2014', ',');
    StringBuilder spoken = new StringBuilder();
    boolean words = false;
    for (int i = 0; i < plain.length(); i += Character.charCount(plain.codePointAt(i))) {
      int c = plain.codePointAt(i);
      boolean letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
      if (!letter && Character.isLetterOrDigit(c)) {
        return Optional.empty();
      }
      if (letter || MARKS.indexOf(c) >= 0) {
        spoken.appendCodePoint(c);
      } else if (spoken.length() > 0 && spoken.charAt(spoken.length() - 1) != ' ') {
        spoken.append(' ');
      }
      words |= letter;
    }
    String result = spoken.toString().trim();
    return words && result.length() <= LONGEST ? Optional.of(result) : Optional.empty();
  }
}
