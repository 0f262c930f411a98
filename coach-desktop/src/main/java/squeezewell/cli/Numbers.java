package squeezewell.cli;

import java.math.BigInteger;
import squeezewell.input.BadInputException;

/** Numbers that a person wrote as an option. */
final class Numbers {
  private Numbers() {}

  /** A whole number within limits, both included. */
  static long whole(String option, String text, long least, long most) throws BadInputException {
    if (text.matches("-?\\d{1,19}")) {
      BigInteger number = new BigInteger(text);
      if (number.compareTo(BigInteger.valueOf(least)) >= 0
          && number.compareTo(BigInteger.valueOf(most)) <= 0) {
        return number.longValueExact();
      }
    }
    throw BadInputException.notAllowed(
        option, "", text, "a whole number from " + least + " to " + most);
  }
}
