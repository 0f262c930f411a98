package squeezewell.review.judge;

import java.util.OptionalDouble;

/**
 * A number in a sentence.
 *
 * @param value in the unit that the sentence names; nanoseconds for a clock
 * @param form how it is printed
 * @param limit where the value lies beside a limit, the limit: a value that is none must not be
 *     printed as the limit itself
 */
public record Quantity(double value, Form form, OptionalDouble limit) {
  /** How a number is printed. */
  public enum Form {
    /** At most one decimal. */
    TENTHS,
    /** At most two decimals. */
    HUNDREDTHS,
    /** Minutes and seconds. */
    CLOCK
  }

  /** A tenth of a second is more than 3 % of a shorter interval than about this. */
  private static final double SHORT_SECONDS = 3.5;

  static Quantity tenths(double value) {
    return new Quantity(value, Form.TENTHS, OptionalDouble.empty());
  }

  static Quantity tenths(double value, double limit) {
    return new Quantity(value, Form.TENTHS, OptionalDouble.of(limit));
  }

  static Quantity hundredths(double value) {
    return new Quantity(value, Form.HUNDREDTHS, OptionalDouble.empty());
  }

  static Quantity hundredths(double value, double limit) {
    return new Quantity(value, Form.HUNDREDTHS, OptionalDouble.of(limit));
  }

  /**
   * Seconds to a tenth, or to a hundredth where the interval asked for is so short that a tenth of
   * a second of it can be heard.
   */
  static Quantity interval(double seconds, double askedSeconds) {
    return askedSeconds < SHORT_SECONDS ? hundredths(seconds) : tenths(seconds);
  }

  static Quantity clock(long nanos) {
    return new Quantity(nanos, Form.CLOCK, OptionalDouble.empty());
  }

  static Quantity clockSeconds(double seconds) {
    return clock(Math.round(seconds * 1e9));
  }
}
