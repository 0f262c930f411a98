package squeezewell.equipment;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Confidence;
import squeezewell.words.Wording;

/**
 * How much oxygen a cylinder gives for a fall of its pressure. All three published rules are
 * straight lines through nothing at 0: a factor in litres for each psi (United States), the
 * contents at a full pressure in proportion (United Kingdom), and water volume times pressure (the
 * gas law of an ideal gas, in bar). Immutable.
 */
public final class Cylinder {
  private static final Wording WORDS = Wording.beside(Cylinder.class);

  private static final String LEAST_SIZE = "0.01";
  private static final String MOST_FACTOR = "100";
  private static final String MOST_WATER = "1000";
  private static final String MOST_CONTENTS = "100000";

  /** So far above the fullest cylinder of its size a reading is doubted: our own choice. */
  private static final BigDecimal DOUBTED = new BigDecimal("1.1");

  private static final Citation GAS_LAW =
      new Citation(
          "Gas law",
          "Boyle's law for an ideal gas",
          1662,
          "litres of gas are water volume times pressure in bar; real oxygen at 137 bar is about 5"
              + " to 7 % more (from memory)",
          Confidence.SECONDARY);

  private static final Citation OWN_SIZE =
      new Citation(
          "You",
          "The cylinder's own figures, as you gave them",
          2026,
          "not checked by this program",
          Confidence.HOUSE);

  private final String id;
  private final String label;
  private final Fraction litresPerPascal;
  private final String rule;
  private final Optional<BigDecimal> fullestLitres;
  private final Citation source;

  private Cylinder(
      String id,
      String label,
      Fraction litresPerPascal,
      String rule,
      Optional<BigDecimal> fullestLitres,
      Citation source) {
    this.id = Objects.requireNonNull(id, "id");
    this.label = Objects.requireNonNull(label, "label");
    this.litresPerPascal = litresPerPascal;
    this.rule = rule;
    this.fullestLitres = fullestLitres;
    this.source = Objects.requireNonNull(source, "source");
  }

  /** A size with a published factor; the fullest is the largest contents that are published. */
  static Cylinder byFactor(
      String id, String label, BigDecimal litresPerPsi, BigDecimal fullestLitres, Citation source) {
    return new Cylinder(
        id,
        label,
        Fraction.of(litresPerPsi).over(PressureUnit.PSI.pascals()),
        factorRule(litresPerPsi),
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
        proportionRule(litres, plain(full.in(PressureUnit.BAR, 1)) + " bar"),
        Optional.of(litres),
        source);
  }

  /**
   * A cylinder with its own factor.
   *
   * @param text litres for each psi, as a person writes it, 0.01 to 100
   */
  public static Cylinder ofFactor(String source, String text) throws BadInputException {
    BigDecimal factor = Amount.read(source, text, LEAST_SIZE, MOST_FACTOR, "L/psi");
    return new Cylinder(
        "own",
        WORDS.say("cylinder.factor", plain(factor)),
        Fraction.of(factor).over(PressureUnit.PSI.pascals()),
        factorRule(factor),
        Optional.empty(),
        OWN_SIZE);
  }

  /**
   * A cylinder of a water volume, the volume stamped on it.
   *
   * @param text litres, as a person writes it, 0.01 to 1000
   */
  public static Cylinder ofWaterVolume(String source, String text) throws BadInputException {
    BigDecimal litres = Amount.read(source, text, LEAST_SIZE, MOST_WATER, "L");
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
    BigDecimal litres = Amount.read(source, text, LEAST_SIZE, MOST_CONTENTS, "L");
    Pressure pressure = Pressure.read(fullSource, full);
    if (pressure.pascals().compareTo(PressureUnit.BAR.pascals()) < 0) {
      throw BadInputException.notAllowed(fullSource, "", full, "a pressure of at least 1 bar");
    }
    return new Cylinder(
        "own",
        WORDS.say("cylinder.contents", plain(litres)),
        Fraction.of(litres).over(pressure.pascals()),
        proportionRule(litres, full.trim()),
        Optional.of(litres),
        OWN_SIZE);
  }

  /** The size, such as {@code E}; {@code own} for one that is no published size. */
  public String id() {
    return id;
  }

  /** What it is, for people. */
  public String label() {
    return label;
  }

  /** The rule for the minutes, in one line. */
  public String rule() {
    return rule;
  }

  /** Where its figures come from. */
  public Citation source() {
    return source;
  }

  /** Whether a person means this size: its name, or one of two names such as H or K. */
  boolean isNamed(String word) {
    String small = word.trim().toLowerCase(Locale.ROOT);
    String own = id.toLowerCase(Locale.ROOT);
    for (String name : own.split("/", -1)) {
      if (name.equals(small)) {
        return true;
      }
    }
    return own.equals(small);
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

  private static String factorRule(BigDecimal factor) {
    return WORDS.say("rule.factor", plain(factor));
  }

  private static String proportionRule(BigDecimal litres, String full) {
    return WORDS.say("rule.contents", full, plain(litres));
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
