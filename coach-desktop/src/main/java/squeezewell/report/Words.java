package squeezewell.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers and times as people read them. Always with a decimal point, whatever the locale. */
public final class Words {
  private Words() {}

  /** Seconds without needless zeros, such as {@code 6 s} or {@code 2.5 s}. */
  public static String seconds(long nanos) {
    return plain(nanos) + " s";
  }

  /** Exact seconds as a number; never in exponent form. */
  public static BigDecimal exactSeconds(long nanos) {
    BigDecimal seconds = BigDecimal.valueOf(nanos, 9).stripTrailingZeros();
    return seconds.scale() < 0 ? seconds.setScale(0) : seconds;
  }

  /** A number with so many decimals. */
  public static String decimals(double number, int decimals) {
    return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /** A number with at most so many decimals and no needless zeros. */
  public static String upTo(double number, int decimals) {
    BigDecimal rounded =
        BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
    return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
  }

  /** Minutes and seconds, such as {@code 5:00}; whole seconds, rounded down. */
  public static String clock(long nanos) {
    long seconds = nanos / 1_000_000_000L;
    return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
  }

  private static String plain(long nanos) {
    return exactSeconds(nanos).toPlainString();
  }
}
