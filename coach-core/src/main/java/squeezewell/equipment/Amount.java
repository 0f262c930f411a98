package squeezewell.equipment;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.input.BadInputException;

/** Reads amounts as people write them. */
public final class Amount {
  /** Plain digits only: neither exponents nor words such as NaN mean anything on a gauge. */
  private static final Pattern NUMBER = Pattern.compile("[0-9]{1,9}(\\.[0-9]{1,6})?");

  private Amount() {}

  /**
   * A number within limits, both included, with or without its unit behind it.
   *
   * @param source the option or field it came from
   * @param text what a person wrote
   * @param least smallest number allowed, not negative
   * @param most largest number allowed
   * @param unit the unit it is in, such as {@code L/min}; empty for a plain number
   * @throws BadInputException if it is not such a number
   */
  public static BigDecimal read(String source, String text, String least, String most, String unit)
      throws BadInputException {
    String bare = text.trim();
    boolean withUnit =
        !unit.isEmpty() && bare.toLowerCase(Locale.ROOT).endsWith(unit.toLowerCase(Locale.ROOT));
    if (withUnit) {
      bare = bare.substring(0, bare.length() - unit.length()).trim();
    }
    Optional<BigDecimal> number = number(bare);
    if (!number.isPresent()
        || number.get().compareTo(new BigDecimal(least)) < 0
        || number.get().compareTo(new BigDecimal(most)) > 0) {
      String allowed = "a number from " + least + " to " + most;
      throw wrong(source, text, unit.isEmpty() ? allowed : allowed + " " + unit);
    }
    return number.get();
  }

  /** A number written with plain digits; empty if it is anything else. */
  static Optional<BigDecimal> number(String text) {
    Matcher matcher = NUMBER.matcher(text);
    return matcher.matches() ? Optional.of(new BigDecimal(text)) : Optional.empty();
  }

  static BadInputException wrong(String source, String text, String allowed) {
    return text.trim().isEmpty()
        ? BadInputException.missing(source, "", allowed)
        : BadInputException.notAllowed(source, "", text, allowed);
  }
}
