package squeezewell.equipment;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Citation;

/**
 * The lengths in which oral airways are made.
 *
 * @param shortestMillimetres the shortest, positive
 * @param longestMillimetres the longest
 * @param stepMillimetres from one to the next, positive
 * @param source where they come from
 */
public record OralAirways(
    int shortestMillimetres, int longestMillimetres, int stepMillimetres, Citation source) {
  public OralAirways {
    Objects.requireNonNull(source, "source");
    if (shortestMillimetres <= 0
        || stepMillimetres <= 0
        || longestMillimetres < shortestMillimetres
        || (longestMillimetres - shortestMillimetres) % stepMillimetres != 0) {
      throw new IllegalArgumentException("the lengths of oral airways do not fit");
    }
  }

  /** All lengths in millimetres, shortest first. */
  public List<Integer> millimetres() {
    List<Integer> all = new ArrayList<>();
    for (int each = shortestMillimetres; each <= longestMillimetres; each += stepMillimetres) {
      all.add(each);
    }
    return List.copyOf(all);
  }

  /**
   * The length that comes nearest to a measured one; two where it lies halfway between them. Too
   * small and too large both block, so neither side is preferred.
   *
   * @param field the option or field the measurement came from
   * @param measured millimetres, as a person writes it; half a step beyond either end is allowed
   * @throws BadInputException if it is none, or no airway comes near it
   */
  public List<Integer> nearest(String field, String measured) throws BadInputException {
    BigDecimal half =
        BigDecimal.valueOf(stepMillimetres).divide(BigDecimal.valueOf(2), 1, RoundingMode.DOWN);
    String least = BigDecimal.valueOf(shortestMillimetres).subtract(half).toBigInteger().toString();
    String most = BigDecimal.valueOf(longestMillimetres).add(half).toBigInteger().toString();
    BigDecimal length = Amount.read(field, measured, least, most, "mm");
    List<Integer> best = new ArrayList<>();
    for (int each : millimetres()) {
      int order = best.isEmpty() ? -1 : away(each, length).compareTo(away(best.get(0), length));
      if (order < 0) {
        best.clear();
      }
      if (order <= 0) {
        best.add(each);
      }
    }
    return List.copyOf(best);
  }

  private static BigDecimal away(int millimetres, BigDecimal length) {
    return length.subtract(BigDecimal.valueOf(millimetres)).abs();
  }
}
