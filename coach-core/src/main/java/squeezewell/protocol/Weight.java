package squeezewell.protocol;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.input.BadInputException;

/**
 * How heavy a patient is.
 *
 * @param number how many, 0.2 to 400 kg's worth
 * @param pounds whether in pounds; else in kilograms
 */
public record Weight(double number, boolean pounds) {
  /** The international pound, exact by its definition of 1959. */
  private static final double KILOGRAMS_PER_POUND = 0.45359237;

  private static final double LIGHTEST_KILOGRAMS = 0.2;
  private static final double HEAVIEST_KILOGRAMS = 400;
  private static final Pattern TEXT = Pattern.compile("(\\d{1,4}(?:\\.\\d{1,4})?) ?(kg|lbs?)");

  /**
   * Reads what a person wrote, such as {@code 12kg}, {@code 3.5 kg} or {@code 26lb}.
   *
   * @param source what the text was given for, for the message
   * @throws BadInputException if it is no weight from 0.2 to 400 kg
   */
  public static Weight parse(String source, String text) throws BadInputException {
    Matcher matcher = TEXT.matcher(text.trim().toLowerCase(Locale.ROOT));
    if (matcher.matches()) {
      Weight weight =
          new Weight(Double.parseDouble(matcher.group(1)), !matcher.group(2).equals("kg"));
      if (weight.possible()) {
        return weight;
      }
    }
    throw BadInputException.notAllowed(
        source, "", text, "a weight with its unit, such as 12kg or 26lb, from 0.2 to 400 kg");
  }

  /** In kilograms. */
  public double kilograms() {
    return pounds ? number * KILOGRAMS_PER_POUND : number;
  }

  /** Whether it lies within 0.2 and 400 kg. */
  boolean possible() {
    return kilograms() >= LIGHTEST_KILOGRAMS && kilograms() <= HEAVIEST_KILOGRAMS;
  }

  /** Such as {@code 12 kg} or {@code 26 lb (11.8 kg)}. */
  String words() {
    return pounds && possible()
        ? Texts.plain(number)
            + " lb ("
            + BigDecimal.valueOf(kilograms()).setScale(1, RoundingMode.HALF_UP).toPlainString()
            + " kg)"
        : Texts.plain(number) + (pounds ? " lb" : " kg");
  }
}
