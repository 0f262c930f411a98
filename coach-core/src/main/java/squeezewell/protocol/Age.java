package squeezewell.protocol;

import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.input.BadInputException;

/**
 * How old a patient is.
 *
 * @param number how many, 0 to 120 years' worth
 * @param unit of what
 */
public record Age(double number, AgeUnit unit) {
  private static final double OLDEST_YEARS = 120;
  private static final Pattern TEXT =
      Pattern.compile("(\\d{1,5}(?:\\.\\d{1,4})?) ?(d|days?|mo|months?|y|yr|years?)");

  public Age {
    Objects.requireNonNull(unit, "unit");
  }

  /**
   * Reads what a person wrote, such as {@code 3days}, {@code 14 months} or {@code 9y}. A lone m is
   * not taken: it could be minutes or months.
   *
   * @param source what the text was given for, for the message
   * @throws BadInputException if it is no age from 0 to 120 years
   */
  public static Age parse(String source, String text) throws BadInputException {
    Matcher matcher = TEXT.matcher(text.trim().toLowerCase(Locale.ROOT));
    if (matcher.matches()) {
      Age age = new Age(Double.parseDouble(matcher.group(1)), unit(matcher.group(2)));
      if (age.possible()) {
        return age;
      }
    }
    throw BadInputException.notAllowed(
        source, "", text, "an age with its unit, such as 3days, 14months or 9y, to 120 years");
  }

  private static AgeUnit unit(String word) {
    switch (word.charAt(0)) {
      case 'd':
        return AgeUnit.DAYS;
      case 'm':
        return AgeUnit.MONTHS;
      default:
        return AgeUnit.YEARS;
    }
  }

  /** In days. */
  public double days() {
    return number * unit.days();
  }

  /** Whether it lies within 0 and 120 years. */
  boolean possible() {
    return days() >= 0 && days() <= OLDEST_YEARS * AgeUnit.YEARS.days();
  }

  /** Such as {@code 14 months}. */
  String words() {
    return Texts.plain(number) + " " + unit.word(number);
  }
}
