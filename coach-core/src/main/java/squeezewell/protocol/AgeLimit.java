package squeezewell.protocol;

import java.util.Objects;

/**
 * An age at which an age group begins or ends.
 *
 * @param value how many, not negative
 * @param unit of what
 * @param source where it comes from
 */
public record AgeLimit(long value, AgeUnit unit, Citation source) {
  public AgeLimit {
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(source, "source");
    if (value < 0) {
      throw new IllegalArgumentException("an age can't be " + value);
    }
  }

  /** For people, such as "8 years". */
  public String words() {
    return value + " " + unit.word((double) value);
  }

  /** In days. */
  public double days() {
    return value * unit.days();
  }
}
