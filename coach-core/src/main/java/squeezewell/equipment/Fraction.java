package squeezewell.equipment;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/** An exact number: a psi is no finite decimal of a bar, and a minute must not be lost to that. */
record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {
  static final Fraction ZERO = new Fraction(BigInteger.ZERO, BigInteger.ONE);

  Fraction {
    if (denominator.signum() <= 0) {
      throw new IllegalArgumentException("the denominator is not positive");
    }
    BigInteger divisor = numerator.gcd(denominator);
    numerator = numerator.divide(divisor);
    denominator = denominator.divide(divisor);
  }

  static Fraction of(BigDecimal number) {
    return number.scale() > 0
        ? new Fraction(number.unscaledValue(), BigInteger.TEN.pow(number.scale()))
        : new Fraction(number.toBigIntegerExact(), BigInteger.ONE);
  }

  static Fraction of(long number) {
    return new Fraction(BigInteger.valueOf(number), BigInteger.ONE);
  }

  Fraction plus(Fraction other) {
    return new Fraction(
        numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
        denominator.multiply(other.denominator));
  }

  Fraction minus(Fraction other) {
    return plus(new Fraction(other.numerator.negate(), other.denominator));
  }

  Fraction times(Fraction other) {
    return new Fraction(
        numerator.multiply(other.numerator), denominator.multiply(other.denominator));
  }

  /** Divided by a positive number. */
  Fraction over(Fraction other) {
    return new Fraction(
        numerator.multiply(other.denominator), denominator.multiply(other.numerator));
  }

  Fraction orZero() {
    return numerator.signum() < 0 ? ZERO : this;
  }

  /** As a decimal number without needless zeros. */
  BigDecimal decimal(int decimals, RoundingMode rounding) {
    BigDecimal exact =
        new BigDecimal(numerator)
            .divide(new BigDecimal(denominator), decimals, rounding)
            .stripTrailingZeros();
    return exact.scale() < 0 ? exact.setScale(0) : exact;
  }

  @Override
  public int compareTo(Fraction other) {
    return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
  }
}
