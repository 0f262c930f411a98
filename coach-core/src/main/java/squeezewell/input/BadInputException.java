package squeezewell.input;

import java.util.Objects;

/**
 * Something a person wrote or handed over can't be used. The message always names where it came
 * from, the place in it, what stands there and what is allowed.
 */
public final class BadInputException extends Exception {
  private static final long serialVersionUID = 1L;
  private static final int LONGEST_QUOTED_VALUE = 60;
  private static final int LONGEST_PLACE = 200;
  private static final int LONGEST_TEXT = 2_000;

  private final String source;
  private final String place;

  private BadInputException(String source, String place, String text) {
    super(text);
    this.source = source;
    this.place = place;
  }

  /**
   * A value that is not allowed.
   *
   * @param source the file or option it came from, not null
   * @param place the field, line or column, not null; empty when the whole source is meant
   * @param value what stands there, not null; long values are shortened in the message
   * @param allowed what would be accepted, not null
   */
  public static BadInputException notAllowed(
      String source, String place, String value, String allowed) {
    return new BadInputException(
        source,
        place,
        prefix(source, place)
            + " is "
            + printable(value, LONGEST_QUOTED_VALUE)
            + "; allowed: "
            + printable(allowed, LONGEST_TEXT));
  }

  /** A field that must be there and is not. */
  public static BadInputException missing(String source, String place, String allowed) {
    return new BadInputException(
        source,
        place,
        prefix(source, place) + " is missing; allowed: " + printable(allowed, LONGEST_TEXT));
  }

  /** Any other fault; {@code text} says what is wrong and what is allowed. */
  public static BadInputException fault(String source, String place, String text) {
    return new BadInputException(
        source, place, prefix(source, place) + ": " + printable(text, LONGEST_TEXT));
  }

  /** The file or option at fault. */
  public String source() {
    return source;
  }

  /** The field, line or column at fault; empty when the whole source is meant. */
  public String place() {
    return place;
  }

  private static String prefix(String source, String place) {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(place, "place");
    String from = printable(source, LONGEST_TEXT);
    return place.isEmpty() ? from : from + ": " + printable(place, LONGEST_PLACE);
  }

  /** Control characters in a hostile file must not reach a terminal, nor may it flood one. */
  private static String printable(String text, int most) {
    StringBuilder out = new StringBuilder();
    text.codePoints()
        .limit(most)
        .forEach(
            c -> {
              int type = Character.getType(c);
              boolean hidden =
                  type == Character.CONTROL
                      || type == Character.FORMAT
                      || type == Character.LINE_SEPARATOR
                      || type == Character.PARAGRAPH_SEPARATOR
                      || type == Character.SURROGATE;
              out.appendCodePoint(hidden ? '\uFFFD' : c);
            });
    return text.codePointCount(0, text.length()) > most
        ? out.append('…').toString()
        : out.toString();
  }
}
