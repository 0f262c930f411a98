package squeezewell.equipment;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
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
    if (shortestMillimetres <= 0
        || stepMillimetres <= 0
        || longestMillimetres < shortestMillimetres
        || (longestMillimetres - shortestMillimetres) % stepMillimetres != 0) {
      throw new IllegalArgumentException("the lengths of oral airways do not fit");
    }
  }

  /** All lengths in millimetres, shortest first. */
  public List<Integer> millimetres() {
    return IntStream.rangeClosed(0, (longestMillimetres - shortestMillimetres) / stepMillimetres)
        .mapToObj(i -> shortestMillimetres + i * stepMillimetres)
        .collect(Collectors.toList());
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
    int least = (2 * shortestMillimetres - stepMillimetres) / 2;
    int most = (2 * longestMillimetres + stepMillimetres) / 2;
    BigDecimal length =
        Amount.read(field, measured, Integer.toString(least), Integer.toString(most), "mm");
    BigDecimal nearest =
        millimetres().stream().map(each -> away(each, length)).min(BigDecimal::compareTo).get();
    return millimetres().stream()
        .filter(each -> away(each, length).compareTo(nearest) == 0)
        .collect(Collectors.toList());
  }

  private static BigDecimal away(int millimetres, BigDecimal length) {
    return length.subtract(BigDecimal.valueOf(millimetres)).abs();
  }
}
