package squeezewell.equipment;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.input.BadInputException;

/** A gauge pressure, that is, above that of the air; exact, from 0 to 50 MPa. */
public record Pressure(Fraction pascals) implements Comparable<Pressure> {
  /** Above every cylinder in use, so that a wrong unit is noticed: our own choice. */
  private static final Fraction HIGHEST = Fraction.of(50_000_000);

  private static final int MOST_DECIMALS = 9;
  private static final Pattern WRITTEN = Pattern.compile("([^a-zA-Z]*?)\\s*([a-zA-Z]*)");

  /**
   * A pressure in a unit.
   *
   * @param source the option or field it came from, for the message
   * @param value not negative, at most nine decimals
   * @throws BadInputException if it is negative or above 50 MPa
   */
  public static Pressure of(String source, BigDecimal value, PressureUnit unit)
      throws BadInputException {
    // Compared as decimals first: a fraction of 1e999999999 would fill the memory.
    boolean sane =
        value.signum() >= 0
            && value.compareTo(BigDecimal.valueOf(50_000_000)) <= 0
            && value.stripTrailingZeros().scale() <= MOST_DECIMALS;
    if (sane) {
      Fraction pascals = Fraction.of(value).times(unit.pascals());
      if (pascals.compareTo(HIGHEST) <= 0) {
        return new Pressure(pascals);
      }
    }
    throw BadInputException.notAllowed(source, "", value + " " + unit.word(), range(unit));
  }

  /**
   * A pressure as a person writes it, such as {@code 1200psi} or {@code 137 bar}.
   *
   * @throws BadInputException if it is not a number with a unit, or out of range
   */
  public static Pressure read(String source, String text) throws BadInputException {
    Matcher written = WRITTEN.matcher(text.trim());
    if (written.matches()) {
      Optional<BigDecimal> number = Amount.number(written.group(1));
      Optional<PressureUnit> unit = PressureUnit.of(written.group(2));
      if (number.isPresent() && unit.isPresent()) {
        return of(source, number.get(), unit.get());
      }
    }
    throw Amount.wrong(
        source, text, "a number with its unit (psi, bar, kPa or MPa), such as 1200psi or 137bar");
  }

  /** A pressure from a field whose unit stands beside it. */
  public static Pressure read(String source, String text, PressureUnit unit)
      throws BadInputException {
    Optional<BigDecimal> number = Amount.number(text.trim());
    if (!number.isPresent()) {
      throw Amount.wrong(source, text, range(unit));
    }
    return of(source, number.get(), unit);
  }

  private static String range(PressureUnit unit) {
    BigDecimal most = HIGHEST.over(unit.pascals()).decimal(0, RoundingMode.DOWN);
    return "a number from 0 to " + most.toPlainString() + " " + unit.word();
  }

  /**
   * In a unit, rounded to the nearest.
   *
   * @param decimals how many decimals at most
   */
  public BigDecimal in(PressureUnit unit, int decimals) {
    return pascals.over(unit.pascals()).decimal(decimals, RoundingMode.HALF_UP);
  }

  @Override
  public int compareTo(Pressure other) {
    return pascals.compareTo(other.pascals);
  }

  @Override
  public String toString() {
    return in(PressureUnit.KPA, 3).toPlainString() + " kPa";
  }
}
