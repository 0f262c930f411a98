package squeezewell.equipment;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Confidence;
import squeezewell.words.Wording;

/**
 * How much oxygen a cylinder gives for a fall of its pressure. All three published rules are
 * straight lines through nothing at 0: a factor in litres for each psi (United States), the
 * contents at a full pressure in proportion (United Kingdom), and water volume times pressure (the
 * gas law of an ideal gas, in bar).
 *
 * @param id the size, such as {@code E}; {@code own} for one that is no published size
 * @param label what it is, for people
 * @param litresPerPascal how much it gives
 * @param rule the rule for the minutes, in one line
 * @param fullestLitres the most that such a cylinder holds, where that is known
 * @param source where its figures come from
 */
public record Cylinder(
    String id,
    String label,
    Fraction litresPerPascal,
    String rule,
    Optional<BigDecimal> fullestLitres,
    Citation source) {
  private static final Wording WORDS = Cited.WORDS;

  private static final String LEAST_SIZE = "0.01";

  /** So far above the fullest cylinder of its size a reading is doubted: our own choice. */
  private static final BigDecimal DOUBTED = new BigDecimal("1.1");

  private static final Citation GAS_LAW = Cited.by("gas-law", 1662, Confidence.SECONDARY);
  private static final Citation OWN_SIZE = Cited.by("own-size", 2026, Confidence.HOUSE);

  /** A size with a published factor; the fullest is the largest contents that are published. */
  static Cylinder byFactor(
      String id, String label, BigDecimal litresPerPsi, BigDecimal fullestLitres, Citation source) {
    return new Cylinder(
        id,
        label,
        Fraction.of(litresPerPsi).over(PressureUnit.PSI.pascals()),
        WORDS.say("rule.factor", plain(litresPerPsi)),
        Optional.of(fullestLitres),
        source);
  }

  /** A size with published contents at a full pressure. */
  static Cylinder byContents(
      String id, String label, BigDecimal litres, Pressure full, Citation source) {
    return new Cylinder(
        id,
        label,
        Fraction.of(litres).over(full.pascals()),
        WORDS.say("rule.contents", plain(full.in(PressureUnit.BAR, 1)) + " bar", plain(litres)),
        Optional.of(litres),
        source);
  }

  /**
   * A cylinder with its own factor.
   *
   * @param text litres for each psi, as a person writes it, 0.01 to 100
   */
  public static Cylinder ofFactor(String source, String text) throws BadInputException {
    BigDecimal factor = Amount.read(source, text, LEAST_SIZE, "100", "L/psi");
    return new Cylinder(
        "own",
        WORDS.say("cylinder.factor", plain(factor)),
        Fraction.of(factor).over(PressureUnit.PSI.pascals()),
        WORDS.say("rule.factor", plain(factor)),
        Optional.empty(),
        OWN_SIZE);
  }

  /**
   * A cylinder of a water volume, the volume stamped on it.
   *
   * @param text litres, as a person writes it, 0.01 to 1000
   */
  public static Cylinder ofWaterVolume(String source, String text) throws BadInputException {
    BigDecimal litres = Amount.read(source, text, LEAST_SIZE, "1000", "L");
    return new Cylinder(
        "own",
        WORDS.say("cylinder.water", plain(litres)),
        Fraction.of(litres).over(PressureUnit.BAR.pascals()),
        WORDS.say("rule.water", plain(litres)),
        Optional.empty(),
        GAS_LAW);
  }

  /**
   * A cylinder of known contents when full.
   *
   * @param text litres of gas when full, as a person writes it, 0.01 to 100 000
   * @param full gauge pressure when full, as a person writes it, with its unit, above 0
   */
  public static Cylinder ofContents(String source, String text, String fullSource, String full)
      throws BadInputException {
    BigDecimal litres = Amount.read(source, text, LEAST_SIZE, "100000", "L");
    Pressure pressure = Pressure.read(fullSource, full);
    if (pressure.pascals().compareTo(PressureUnit.BAR.pascals()) < 0) {
      throw BadInputException.notAllowed(fullSource, "", full, "a pressure of at least 1 bar");
    }
    return new Cylinder(
        "own",
        WORDS.say("cylinder.contents", plain(litres)),
        Fraction.of(litres).over(pressure.pascals()),
        WORDS.say("rule.contents", full.trim(), plain(litres)),
        Optional.of(litres),
        OWN_SIZE);
  }

  /** Whether a person means this size: its name, or one of two names such as H or K. */
  boolean isNamed(String word) {
    String small = word.trim().toLowerCase(Locale.ROOT);
    String own = id.toLowerCase(Locale.ROOT);
    return own.equals(small) || Arrays.asList(own.split("/", -1)).contains(small);
  }

  /** Litres at a pressure. */
  Fraction litres(Fraction pascals) {
    return pascals.times(litresPerPascal);
  }

  /** The fall of pressure that gives so many litres. */
  Fraction pascals(Fraction litres) {
    return litres.over(litresPerPascal);
  }

  /** Whether a pressure means clearly more gas than such a cylinder holds. */
  boolean cannotHold(Pressure gauge) {
    return fullestLitres.isPresent()
        && litres(gauge.pascals()).compareTo(Fraction.of(fullestLitres.get().multiply(DOUBTED)))
            > 0;
  }

  private static String plain(BigDecimal number) {
    BigDecimal bare = number.stripTrailingZeros();
    return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
  }

  @Override
  public String toString() {
    return label;
  }
}
