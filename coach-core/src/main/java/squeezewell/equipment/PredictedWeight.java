package squeezewell.equipment;

import java.math.BigDecimal;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Confidence;

/**
 * The weight that goes with an adult's height: lungs grow with height, not with fat. Men 50, women
 * 45.5, plus 0.91 kg for each cm above 152.4 cm: the ARDS Network's formula, as given by
 * Linares-Perdomo and others (standardizing predicted body weight equations, 2015) and in BMC
 * Pulmonary Medicine 2017;17. The older form of 2.3 kg an inch differs by some hundred grams.
 */
public final class PredictedWeight {
  private static final BigDecimal BASE_CENTIMETRES = new BigDecimal("152.4");
  private static final BigDecimal KILOGRAMS_PER_CENTIMETRE = new BigDecimal("0.91");

  /** The formula holds for adults only; below about 150 cm it must not be used. */
  private static final String SHORTEST = "150";

  private static final String TALLEST = "230";

  private PredictedWeight() {}

  /** Where the formula comes from. */
  public static Citation source() {
    return Cited.by("weight.predicted", 2000, Confidence.SECONDARY);
  }

  /**
   * The weight of an adult.
   *
   * @param field the option or field the height came from
   * @param centimetres as a person writes it, 150 to 230 cm
   * @return kilograms, exact
   * @throws BadInputException if the height is none, or outside what the formula is for
   */
  public static BigDecimal kilograms(String field, String centimetres, Sex sex)
      throws BadInputException {
    BigDecimal height = Amount.read(field, centimetres, SHORTEST, TALLEST, "cm");
    return sex.kilogramsAtBase()
        .add(KILOGRAMS_PER_CENTIMETRE.multiply(height.subtract(BASE_CENTIMETRES)));
  }
}
