package squeezewell.equipment;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import squeezewell.input.BadInputException;
import squeezewell.protocol.AgeUnit;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Confidence;

/**
 * Published rules for a child's weight from the age in completed months or years. They differ by up
 * to 7 kg at 5 to 6 years; a child that can be weighed or measured should be.
 */
public enum ChildWeight {
  /** Three formulas: 0 to 12 months, 1 to 5 years, 6 to 12 years. */
  APLS_5(12, 2011, Confidence.SECONDARY),
  /** One formula from 1 to 10 years; much too light for many of today's children. */
  APLS_4(10, 2005, Confidence.PRIMARY),
  /** One formula from 1 to 13 years. */
  LUSCOMBE_OWENS(13, 2007, Confidence.PRIMARY);

  private static final int MONTHS_IN_A_YEAR = 12;

  private final int oldest;
  private final int year;
  private final Confidence confidence;

  ChildWeight(int oldest, int year, Confidence confidence) {
    this.oldest = oldest;
    this.year = year;
    this.confidence = confidence;
  }

  /** Where the rule comes from. */
  public Citation source() {
    return Cited.by(key(), year, confidence);
  }

  private String key() {
    return "weight." + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  @Override
  public String toString() {
    return Cited.WORDS.say(key());
  }

  /**
   * An estimate and how it was made.
   *
   * @param kilograms the weight
   * @param formula with the numbers put in, such as {@code 3 x 8 + 7}
   */
  public record Estimate(BigDecimal kilograms, String formula) {}

  /**
   * The weight at an age.
   *
   * @param field the option or field the age came from
   * @param age a whole number, as a person writes it
   * @param unit months or years
   * @throws BadInputException if it is none, or the rule does not cover it
   */
  public Estimate estimate(String field, String age, AgeUnit unit) throws BadInputException {
    // A number has at most nine digits.
    Optional<Estimate> found =
        Amount.number(age.trim())
            .filter(number -> number.stripTrailingZeros().scale() <= 0)
            .flatMap(number -> estimate(number.longValue(), unit));
    if (found.isPresent()) {
      return found.get();
    }
    String covered = "1 to " + oldest + " whole years, by " + this;
    throw Amount.wrong(
        field,
        age.trim().isEmpty() ? age : age.trim() + " " + unit.id(),
        this == APLS_5 ? "0 to 12 whole months, or " + covered : covered);
  }

  private Optional<Estimate> estimate(long age, AgeUnit unit) {
    switch (unit) {
      case MONTHS:
        return age > MONTHS_IN_A_YEAR && age % MONTHS_IN_A_YEAR == 0
            ? ofYears(age / MONTHS_IN_A_YEAR)
            : ofMonths(age);
      case YEARS:
        return ofYears(age);
      default:
        return Optional.empty();
    }
  }

  private Optional<Estimate> ofMonths(long months) {
    BigDecimal kilograms = BigDecimal.valueOf(months * 5 + 40, 1);
    return Optional.of(new Estimate(kilograms, "0.5 x " + months + " + 4"))
        .filter(estimate -> this == APLS_5 && months <= MONTHS_IN_A_YEAR);
  }

  private Optional<Estimate> ofYears(long years) {
    if (years < 1 || years > oldest) {
      return Optional.empty();
    }
    if (this == APLS_4) {
      return sum(2 * (years + 4), "2 x (" + years + " + 4)");
    }
    return this == APLS_5 && years < 6
        ? sum(2 * years + 8, "2 x " + years + " + 8")
        : sum(3 * years + 7, "3 x " + years + " + 7");
  }

  private static Optional<Estimate> sum(long kilograms, String formula) {
    return Optional.of(new Estimate(BigDecimal.valueOf(kilograms), formula));
  }
}
