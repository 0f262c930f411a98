package squeezewell.equipment;

import java.math.BigDecimal;
import java.math.RoundingMode;
import squeezewell.input.BadInputException;
import squeezewell.words.Wording;

/**
 * How large a breath should be. The rise of the chest decides; a number helps to see how little of
 * a bag that is.
 *
 * @param rule millilitres for each kilogram
 * @param kilograms the weight, predicted for an adult
 */
public record VolumeTarget(VolumeRule rule, BigDecimal kilograms) {
  private static final Wording WORDS = Wording.beside(VolumeTarget.class);

  private static final String SMALLEST_BAG = "50";
  private static final String LARGEST_BAG = "5000";

  /** Shares of a bag that people can picture, each with its words; our own choice. */
  private static final double[] SHARES = {
    1.0 / 10, 1.0 / 6, 1.0 / 5, 1.0 / 4, 1.0 / 3, 1.0 / 2, 2.0 / 3, 3.0 / 4, 1
  };

  /**
   * For a weight that a person gives.
   *
   * @param field the option or field the weight came from
   * @param kilograms as a person writes it, within the bounds of the rule
   */
  public static VolumeTarget ofWeight(VolumeRule rule, String field, String kilograms)
      throws BadInputException {
    return new VolumeTarget(
        rule,
        Amount.read(
            field,
            kilograms,
            rule.lightest().toPlainString(),
            rule.heaviest().toPlainString(),
            "kg"));
  }

  /** The smallest breath in millilitres, exact. */
  public BigDecimal lowMillilitres() {
    return rule.lowMillilitresPerKilogram().multiply(kilograms);
  }

  /** The largest breath in millilitres, exact. */
  public BigDecimal highMillilitres() {
    return rule.highMillilitresPerKilogram().multiply(kilograms);
  }

  /**
   * How much of a bag such a breath is, by the middle of its range.
   *
   * @param field the option or field the size came from
   * @param millilitres size of the bag, as a person writes it, 50 to 5000 mL
   * @return such as "about a third of the bag"
   */
  public String shareOfBag(String field, String millilitres) throws BadInputException {
    BigDecimal bag = Amount.read(field, millilitres, SMALLEST_BAG, LARGEST_BAG, "mL");
    BigDecimal middle = lowMillilitres().add(highMillilitres()).divide(BigDecimal.valueOf(2));
    return shareOfBag(middle, bag);
  }

  /** How much of a bag a breath is, to the nearest share that people can picture. */
  static String shareOfBag(BigDecimal breath, BigDecimal bag) {
    double share = breath.divide(bag, 9, RoundingMode.HALF_UP).doubleValue();
    if (share > 1) {
      return WORDS.say("share.more");
    }
    if (share < 0.08) {
      return WORDS.say("share.less");
    }
    int best = 0;
    for (int i = 1; i < SHARES.length; i++) {
      if (Math.abs(share - SHARES[i]) < Math.abs(share - SHARES[best])) {
        best = i;
      }
    }
    return WORDS.say("share." + best);
  }
}
