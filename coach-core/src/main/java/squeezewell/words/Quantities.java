package squeezewell.words;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;

/** Numbers, times and lists as people read them. Always with a decimal point. Pure. */
public final class Quantities {
  private static final long NANOS_PER_SECOND = 1_000_000_000L;

  private Quantities() {}

  /** A number with so many decimals; halves are rounded away from zero. */
  public static String decimals(double number, int decimals) {
    return BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
  }

  /** A number with at most so many decimals and no needless zeros. */
  public static String upTo(double number, int decimals) {
    return plain(BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_UP))
        .toPlainString();
  }

  /**
   * A number with at most so many decimals, beside a limit that is printed in the same way: {@code
   * just under 5} where a number below 5 would else be printed as the limit itself, {@code just
   * over 5} above it.
   */
  public static String beside(double number, double limit, int decimals) {
    String shown = upTo(number, decimals);
    if (number == limit || !shown.equals(upTo(limit, decimals))) {
      return shown;
    }
    return (number < limit ? "just under " : "just over ") + shown;
  }

  /** Exact seconds without needless zeros, such as {@code 6 s} or {@code 2.5 s}. */
  public static String seconds(long nanos) {
    return exactSeconds(nanos).toPlainString() + " s";
  }

  /** Exact seconds as a number; never in exponent form. */
  public static BigDecimal exactSeconds(long nanos) {
    return plain(BigDecimal.valueOf(nanos, 9));
  }

  /**
   * Minutes and seconds, such as {@code 5:00}. What is not a whole second yet is left off, as on a
   * clock that runs, so that a screen and the debrief of it agree; before zero {@code -0:02}.
   */
  public static String clock(long nanos) {
    long seconds = Math.abs(nanos / NANOS_PER_SECOND);
    String sign = nanos <= -NANOS_PER_SECOND ? "-" : "";
    return String.format(Locale.ROOT, "%s%d:%02d", sign, seconds / 60, seconds % 60);
  }

  /** The same of seconds. */
  public static String clock(double seconds) {
    return clock(Math.round(seconds * NANOS_PER_SECOND));
  }

  /** The same with tenths: {@code 1:02.3}. */
  public static String tenthsClock(long nanos) {
    long tenths = nanos / (NANOS_PER_SECOND / 10);
    String sign = tenths < 0 ? "-" : "";
    return sign + clock(Math.abs(nanos)) + "." + Math.abs(tenths % 10);
  }

  /** Such as {@code 1 breath} or {@code 2 breaths}. */
  public static String count(long number, String noun) {
    return number + " " + noun + (number == 1 ? "" : "s");
  }

  /** Such as {@code a}, {@code a and b} or {@code a, b and c}. */
  public static String list(List<String> items) {
    int last = items.size() - 1;
    return last < 1
        ? String.join("", items)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }

  /**
   * The letters that stand for a place, as a spreadsheet counts its columns: A to Z, then AA.
   *
   * @param place from 0
   */
  public static String letters(int place) {
    String last = String.valueOf((char) ('A' + place % 26));
    return place < 26 ? last : letters(place / 26 - 1) + last;
  }

  private static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }
}
