package squeezewell.equipment;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;

/**
 * A unit that gauges of gas cylinders show. One bar is 100 kPa. One psi is one pound-force, which
 * is 4.4482216152605 N, on a square inch of 0.0254 m by 0.0254 m: National Institute of Standards
 * and Technology, Special Publication 811 (2008), appendix B (from memory); the product,
 * 6894.757293168 Pa, was seen in a reference that prints it.
 */
public enum PressureUnit {
  PSI("psi", new BigDecimal("4.4482216152605"), new BigDecimal("0.00064516")),
  BAR("bar", new BigDecimal("100000"), BigDecimal.ONE),
  KPA("kPa", new BigDecimal("1000"), BigDecimal.ONE),
  MPA("MPa", new BigDecimal("1000000"), BigDecimal.ONE);

  private final String word;
  private final BigDecimal newtons;
  private final BigDecimal squareMetres;

  PressureUnit(String word, BigDecimal newtons, BigDecimal squareMetres) {
    this.word = word;
    this.newtons = newtons;
    this.squareMetres = squareMetres;
  }

  /** How it is written. */
  public String word() {
    return word;
  }

  /** The unit of that name, in capital or small letters; empty if there is none. */
  static Optional<PressureUnit> of(String word) {
    String small = word.toLowerCase(Locale.ROOT);
    for (PressureUnit unit : values()) {
      if (unit.word.toLowerCase(Locale.ROOT).equals(small)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  Fraction pascals() {
    return Fraction.of(newtons).over(Fraction.of(squareMetres));
  }

  @Override
  public String toString() {
    return word;
  }
}
