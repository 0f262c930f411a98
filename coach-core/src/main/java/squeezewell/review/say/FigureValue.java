package squeezewell.review.say;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is written of one figure.
 *
 * @param name group and field of the review as JSON, joined by a dot; stable, for programs
 * @param value a plain decimal number, or a word where {@code unit} is empty; empty if it can't be
 *     computed
 * @param unit such as {@code s}, {@code /min} or {@code 1} for counts and shares; empty for a word
 * @param observations how many observations the value rests on; empty where that makes no sense
 */
public record FigureValue(
    String name, Optional<String> value, String unit, OptionalInt observations) {
  public FigureValue {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(observations, "observations");
  }

  /** Whether the value is a number. */
  public boolean isNumber() {
    return !unit.isEmpty();
  }
}
