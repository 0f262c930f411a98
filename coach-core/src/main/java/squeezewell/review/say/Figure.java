package squeezewell.review.say;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import squeezewell.words.Quantities;

/**
 * One figure: what programs call it, its unit and where it comes from. Immutable.
 *
 * @param <T> what it is a figure of: a review, or one check or suction of it
 */
public final class Figure<T> {
  private static final int PLACES = 6;

  private final String name;
  private final String unit;
  private final Function<T, ?> value;
  private final Function<T, ?> observations;
  private final boolean inJson;
  private final boolean clock;

  private Figure(
      String name,
      String unit,
      Function<T, ?> value,
      Function<T, ?> observations,
      boolean inJson,
      boolean clock) {
    this.name = name;
    this.unit = unit;
    this.value = value;
    this.observations = observations;
    this.inJson = inJson;
    this.clock = clock;
  }

  /**
   * A figure.
   *
   * @param name group and field, joined by a dot; stable, for programs
   * @param unit such as {@code s}, {@code /min} or {@code 1} for counts and shares; empty for words
   * @param value gives a whole number, a number, a word or an enum, or an optional one of these
   */
  static <T> Figure<T> of(String name, String unit, Function<T, ?> value) {
    return new Figure<>(name, unit, value, t -> Optional.empty(), true, false);
  }

  /** The same figure, which rests on so many observations. */
  Figure<T> from(Function<T, ?> count) {
    return new Figure<>(name, unit, value, count, inJson, clock);
  }

  /** The same figure, which the review as JSON does not hold, or holds in another form. */
  Figure<T> besideJson() {
    return new Figure<>(name, unit, value, observations, false, clock);
  }

  /** The same figure, which people read as a time on the clock. */
  Figure<T> asClock() {
    return new Figure<>(name, unit, value, observations, inJson, true);
  }

  /** Group and field, joined by a dot. */
  public String name() {
    return name;
  }

  /** The field alone. */
  String field() {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  boolean in(String group) {
    return name.startsWith(group + ".");
  }

  boolean inJson() {
    return inJson;
  }

  /** As a number; empty if it can't be computed or is a word. */
  public OptionalDouble number(T of) {
    Object plain = value(of);
    return plain instanceof Number number
        ? OptionalDouble.of(number.doubleValue())
        : OptionalDouble.empty();
  }

  /**
   * As people read it: a count as it is, a share in percent, any other number with at most so many
   * decimals; empty if it can't be computed.
   */
  Optional<Object> shown(T of, int decimals) {
    Object plain = value(of);
    if (!(plain instanceof Double number)) {
      return Optional.ofNullable(plain);
    }
    if (clock) {
      return Optional.of(Quantities.clock(number));
    }
    return Optional.of(
        unit.equals("1") ? Math.round(100 * number) : (Object) Quantities.upTo(number, decimals));
  }

  /** What is written of it, under a name of its own. */
  FigureValue in(T of, String ownName) {
    Object plain = value(of);
    Optional<String> text =
        plain == null
            ? Optional.empty()
            : Optional.of(plain instanceof Number number ? plain(number) : slug(plain.toString()));
    Object count = unwrapped(observations.apply(of));
    return new FigureValue(
        ownName, text, unit, count == null ? OptionalInt.empty() : OptionalInt.of((int) count));
  }

  /** A number, a word or a boolean; null if it can't be computed. */
  Object value(T of) {
    return unwrapped(value.apply(of));
  }

  private static Object unwrapped(Object given) {
    if (given instanceof Optional<?> some) {
      return unwrapped(some.orElse(null));
    }
    if (given instanceof OptionalDouble number) {
      return number.isPresent() ? (Object) number.getAsDouble() : null;
    }
    if (given instanceof OptionalInt number) {
      return number.isPresent() ? (Object) number.getAsInt() : null;
    }
    return given instanceof Enum<?> word ? slug(word.name()) : given;
  }

  /** A plain decimal of at most six places. */
  public static String plain(Number number) {
    if (number instanceof Integer) {
      return number.toString();
    }
    BigDecimal rounded =
        BigDecimal.valueOf(number.doubleValue()).setScale(PLACES, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** Lower-case letters, digits and hyphens only. */
  public static String slug(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
  }
}
