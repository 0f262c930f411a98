package squeezewell.equipment;

import java.math.BigDecimal;
import java.math.BigInteger;
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
  APLS_5("Advanced Paediatric Life Support, 5th edition"),
  /** One formula from 1 to 10 years; much too light for many of today's children. */
  APLS_4("Advanced Paediatric Life Support, 4th edition"),
  /** One formula from 1 to 13 years. */
  LUSCOMBE_OWENS("Luscombe and Owens");

  private static final int MONTHS_IN_A_YEAR = 12;

  private final String label;

  ChildWeight(String label) {
    this.label = label;
  }

  /** Where the rule comes from. */
  public Citation source() {
    switch (this) {
      case APLS_5:
        return new Citation(
            "Advanced Paediatric Life Support",
            "The practical approach, 5th edition",
            2011,
            "0.5 x months + 4, 2 x years + 8, 3 x years + 7; as reported in BMJ Innovations 2015",
            Confidence.SECONDARY);
      case APLS_4:
        return new Citation(
            "Advanced Paediatric Life Support",
            "The practical approach, 4th edition",
            2005,
            "2 x (years + 4); 18.8 % too light on average in 17 244 children (Arch Dis Child"
                + " 2007;92:412)",
            Confidence.PRIMARY);
      default:
        return new Citation(
            "Archives of Disease in Childhood",
            "Weight estimation in resuscitation (2007;92:412)",
            2007,
            "3 x years + 7, good from 1 to 13 years (Emerg Med J 2011;28:590)",
            Confidence.PRIMARY);
    }
  }

  @Override
  public String toString() {
    return label;
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
    Optional<BigDecimal> number = Amount.number(age.trim());
    if (number.isPresent() && number.get().stripTrailingZeros().scale() <= 0) {
      // At most nine digits were allowed.
      Optional<Estimate> found = estimate(number.get().longValue(), unit);
      if (found.isPresent()) {
        return found.get();
      }
    }
    throw Amount.wrong(field, age.trim().isEmpty() ? age : age.trim() + " " + unit.id(), covered());
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
    return this == APLS_5 && months <= MONTHS_IN_A_YEAR
        ? Optional.of(
            new Estimate(
                new BigDecimal(BigInteger.valueOf(months * 5 + 40), 1), "0.5 x " + months + " + 4"))
        : Optional.empty();
  }

  private Optional<Estimate> ofYears(long years) {
    if (years < 1 || years > oldest()) {
      return Optional.empty();
    }
    if (this == APLS_4) {
      return sum(2 * (years + 4), "2 x (" + years + " + 4)");
    }
    return this == APLS_5 && years < 6
        ? sum(2 * years + 8, "2 x " + years + " + 8")
        : sum(3 * years + 7, "3 x " + years + " + 7");
  }

  private long oldest() {
    return this == APLS_5 ? 12 : this == APLS_4 ? 10 : 13;
  }

  private String covered() {
    return (this == APLS_5 ? "0 to 12 whole months, or " : "")
        + "1 to "
        + oldest()
        + " whole years, by "
        + label;
  }

  private static Optional<Estimate> sum(long kilograms, String formula) {
    return Optional.of(new Estimate(BigDecimal.valueOf(kilograms), formula));
  }
}
