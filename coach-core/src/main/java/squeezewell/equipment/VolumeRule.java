package squeezewell.equipment;

import java.math.BigDecimal;
import squeezewell.protocol.Citation;

/**
 * How large a breath should be for each kilogram.
 *
 * @param id such as {@code adult}
 * @param label for people
 * @param lowMillilitresPerKilogram the smallest, positive
 * @param highMillilitresPerKilogram the largest, at least the smallest
 * @param lightest the lightest patient that it is for, in kilograms (our own choice)
 * @param heaviest the heaviest (our own choice)
 * @param source where it comes from
 */
public record VolumeRule(
    String id,
    String label,
    BigDecimal lowMillilitresPerKilogram,
    BigDecimal highMillilitresPerKilogram,
    BigDecimal lightest,
    BigDecimal heaviest,
    Citation source) {
  public VolumeRule {
    if (lowMillilitresPerKilogram.signum() <= 0
        || lowMillilitresPerKilogram.compareTo(highMillilitresPerKilogram) > 0) {
      throw new IllegalArgumentException("the range of a breath is upside down");
    }
  }

  @Override
  public String toString() {
    return label;
  }
}
