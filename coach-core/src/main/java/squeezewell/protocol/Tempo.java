package squeezewell.protocol;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;

/**
 * A steady rate as an exact fraction: one event every {@code numerator / denominator} nanoseconds.
 * The instant of event k is computed from k, never by adding periods, so it is the same after a day
 * as at the start.
 *
 * @param numerator nanoseconds, positive
 * @param denominator positive; the fraction is in lowest terms
 */
public record Tempo(long numerator, long denominator) {
  private static final long NANOS_PER_SECOND = 1_000_000_000L;
  private static final long NANOS_PER_MINUTE = 60 * NANOS_PER_SECOND;

  public Tempo {
    if (numerator <= 0 || denominator <= 0) {
      throw new IllegalArgumentException(
          "a tempo needs two positive numbers, not " + numerator + "/" + denominator);
    }
    long divisor = BigInteger.valueOf(numerator).gcd(BigInteger.valueOf(denominator)).longValue();
    numerator /= divisor;
    denominator /= divisor;
  }

  /**
   * One event every so many seconds.
   *
   * @param seconds positive, at most nine decimals
   * @throws ArithmeticException if there are more decimals or the value is too large
   */
  public static Tempo everySeconds(BigDecimal seconds) {
    return new Tempo(seconds.multiply(BigDecimal.valueOf(NANOS_PER_SECOND)).longValueExact(), 1);
  }

  /**
   * So many events a minute.
   *
   * @param perMinute positive, at most three decimals
   * @throws ArithmeticException if there are more decimals or the value is too large
   */
  public static Tempo perMinute(BigDecimal perMinute) {
    long thousandths = perMinute.multiply(BigDecimal.valueOf(1_000)).longValueExact();
    return new Tempo(NANOS_PER_MINUTE * 1_000, thousandths);
  }

  /**
   * The tempo of a cycle of {@code events} events at this tempo followed by a pause.
   *
   * @param events how many, positive
   * @param pauseNanos length of the pause in nanoseconds, not negative
   */
  public Tempo cycleOf(int events, long pauseNanos) {
    return new Tempo(
        Math.addExact(
            Math.multiplyExact(numerator, events), Math.multiplyExact(pauseNanos, denominator)),
        denominator);
  }

  /**
   * The instant of event {@code k}, rounded to the nearest nanosecond; event 0 is at 0.
   *
   * @throws ArithmeticException if the instant does not fit (centuries)
   */
  public long nanosAt(long k) {
    long whole = Math.multiplyExact(k, numerator / denominator);
    long part = Math.multiplyExact(k, numerator % denominator);
    long left = Math.floorMod(part, denominator);
    long rounded = left >= denominator - left ? 1 : 0;
    return Math.addExact(whole, Math.floorDiv(part, denominator) + rounded);
  }

  /**
   * The smallest k with {@code nanosAt(k) >= nanos}.
   *
   * @throws ArithmeticException if an instant near it does not fit (centuries)
   */
  public long firstAtOrAfter(long nanos) {
    // The estimate is off by a step or so at most; exact arithmetic puts it right.
    long k = (long) Math.floor((double) nanos / numerator * denominator);
    while (nanosAt(k - 1) >= nanos) {
      k--;
    }
    while (nanosAt(k) < nanos) {
      k++;
    }
    return k;
  }

  /** The period in seconds, for display. */
  public double seconds() {
    return (double) numerator / denominator / NANOS_PER_SECOND;
  }

  /** Events a minute, rounded once: a tempo made from 110 a minute gives 110. */
  public double perMinute() {
    return BigDecimal.valueOf(NANOS_PER_MINUTE)
        .multiply(BigDecimal.valueOf(denominator))
        .divide(BigDecimal.valueOf(numerator), MathContext.DECIMAL128)
        .doubleValue();
  }
}
