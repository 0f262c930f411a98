package squeezewell.equipment;

import java.math.BigDecimal;
import squeezewell.input.BadInputException;

/** A flow of gas in litres a minute, from 0.01 to 200 (our own limits). Immutable. */
public final class Flow {
  private static final BigDecimal LEAST = new BigDecimal("0.01");
  private static final BigDecimal MOST = new BigDecimal("200");
  private static final int MOST_DECIMALS = 6;

  private final BigDecimal litresPerMinute;

  private Flow(BigDecimal litresPerMinute) {
    this.litresPerMinute = litresPerMinute;
  }

  /**
   * A flow.
   *
   * @param source the option or field it came from, for the message
   * @throws BadInputException if it is none, or out of range: without a flow no time can be told
   */
  public static Flow of(String source, BigDecimal litresPerMinute) throws BadInputException {
    if (litresPerMinute.compareTo(LEAST) < 0
        || litresPerMinute.compareTo(MOST) > 0
        || litresPerMinute.stripTrailingZeros().scale() > MOST_DECIMALS) {
      throw BadInputException.notAllowed(
          source,
          "",
          litresPerMinute + " L/min",
          "a number from " + LEAST + " to " + MOST + " L/min");
    }
    return new Flow(litresPerMinute);
  }

  /** A flow as a person writes it, such as {@code 15} or {@code 0.5 L/min}. */
  public static Flow read(String source, String text) throws BadInputException {
    return of(
        source, Amount.read(source, text, LEAST.toPlainString(), MOST.toPlainString(), "L/min"));
  }

  public BigDecimal litresPerMinute() {
    return litresPerMinute;
  }

  Fraction exact() {
    return Fraction.of(litresPerMinute);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Flow flow && litresPerMinute.compareTo(flow.litresPerMinute) == 0;
  }

  @Override
  public int hashCode() {
    return litresPerMinute.stripTrailingZeros().hashCode();
  }

  @Override
  public String toString() {
    return litresPerMinute.stripTrailingZeros().toPlainString() + " L/min";
  }
}
