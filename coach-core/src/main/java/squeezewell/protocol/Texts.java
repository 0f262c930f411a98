package squeezewell.protocol;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/** The limits of the texts of a protocol: one table for files and for edits; and plain numbers. */
final class Texts {
  static final int LONGEST_ID = 40;
  static final int LONGEST_TITLE = 80;
  static final int LONGEST_ORGANISATION = 120;
  static final int LONGEST_APPROVER = 120;
  static final int LONGEST_NOTE = 300;
  static final int FIRST_YEAR = 1950;
  static final int LAST_YEAR = 2100;

  static final String ALLOWED_ID = "lower-case letters, digits and single hyphens";
  static final String ALLOWED_DAY =
      "a day such as 2026-01-31, from " + FIRST_YEAR + " to " + LAST_YEAR;

  private Texts() {}

  static boolean isId(String text) {
    return text.length() <= LONGEST_ID && text.matches("[a-z0-9]+(-[a-z0-9]+)*");
  }

  /** The day of a text such as 2026-01-31, or empty if it is none. */
  static Optional<LocalDate> day(String text) {
    if (!text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
      return Optional.empty();
    }
    try {
      LocalDate day = LocalDate.parse(text);
      return day.getYear() >= FIRST_YEAR && day.getYear() <= LAST_YEAR
          ? Optional.of(day)
          : Optional.empty();
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /** Whether no half of a character stands alone, since such a text can't be written to a file. */
  static boolean isWhole(String text) {
    return text.codePoints().noneMatch(c -> Character.getType(c) == Character.SURROGATE);
  }

  /** Without spaces at its ends; unlike {@link String#trim} it leaves control characters. */
  static String trimmed(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && text.charAt(from) == ' ') {
      from++;
    }
    while (to > from && text.charAt(to - 1) == ' ') {
      to--;
    }
    return text.substring(from, to);
  }

  /** A number without needless zeros. */
  static String plain(double number) {
    if (Double.isNaN(number) || Double.isInfinite(number)) {
      return Double.toString(number);
    }
    BigDecimal exact = BigDecimal.valueOf(number).stripTrailingZeros();
    return exact.scale() > 30 ? Double.toString(number) : exact.toPlainString();
  }
}
