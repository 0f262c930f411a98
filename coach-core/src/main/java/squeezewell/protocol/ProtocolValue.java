package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import squeezewell.words.Wording;

/**
 * The numbers that a protocol sets for a patient in a situation, each with its place in a file, its
 * unit and its range. This is the one table of ranges: files and edits are both checked against it.
 */
public enum ProtocolValue {
  BREATH_INTERVAL("breathInterval", "target", "s", "0.5", "60", 3),
  BREATH_LOW("breathInterval", "low", "s", "0.5", "60", 3),
  BREATH_HIGH("breathInterval", "high", "s", "0.5", "60", 3),
  BREATH_TOLERANCE("breathInterval", "tolerance", "s", "0", "10", 3),
  COMPRESSION_RATE("compressionRate", "target", "/min", "30", "240", 3),
  COMPRESSION_LOW("compressionRate", "low", "/min", "30", "240", 3),
  COMPRESSION_HIGH("compressionRate", "high", "/min", "30", "240", 3),
  CYCLE_COMPRESSIONS("cycle", "compressions", "", "1", "100", 0),
  CYCLE_BREATHS("cycle", "breaths", "", "1", "10", 0),
  PAUSE("pause", "value", "s", "0.1", "30", 3),
  PAUSE_LIMIT("pauseLimit", "value", "s", "0.1", "60", 3),
  INSPIRATION("inspiration", "value", "s", "0.1", "5", 3),
  PULSE_CHECK_EVERY("pulseCheckEvery", "value", "s", "10", "3600", 3),
  PULSE_CHECK_NOTICE("pulseCheckNotice", "value", "s", "1", "60", 3),
  PULSE_CHECK_SHORTEST("pulseCheckShortest", "value", "s", "1", "60", 3),
  PULSE_CHECK_LONGEST("pulseCheckLongest", "value", "s", "1", "60", 3),
  SUCTION_LONGEST("suctionLongest", "value", "s", "1", "60", 3),
  SUCTION_NOTICE("suctionNotice", "value", "s", "0.5", "30", 3),
  GAP_LONGEST("gapLongest", "value", "s", "1", "120", 3);

  private static final Wording WORDS = Wording.beside(ProtocolValue.class);
  private static final int LONGEST_TYPED = 12;

  private final String object;
  private final String field;
  private final String unit;
  private final BigDecimal least;
  private final BigDecimal most;
  private final int decimals;

  ProtocolValue(String object, String field, String unit, String least, String most, int decimals) {
    this.object = object;
    this.field = field;
    this.unit = unit;
    this.least = new BigDecimal(least);
    this.most = new BigDecimal(most);
    this.decimals = decimals;
  }

  /** The name shown to people, in lower case. */
  public String label() {
    return WORDS.say("value." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  /** The unit as files write it: {@code s}, {@code /min}, or empty for a count. */
  public String unit() {
    return unit;
  }

  /** The smallest that is allowed, in the unit. */
  public BigDecimal least() {
    return least;
  }

  /** The largest that is allowed, in the unit. */
  public BigDecimal most() {
    return most;
  }

  /** How many decimals are allowed. */
  public int decimals() {
    return decimals;
  }

  /** Whether it is one of the time limits rather than part of the rhythm. */
  public boolean isLimit() {
    return compareTo(PULSE_CHECK_EVERY) >= 0;
  }

  /** Whether a file may leave it out, which means 0. */
  boolean isOptional() {
    return this == BREATH_TOLERANCE;
  }

  /** The range with its unit, such as {@code 0.5 to 60 s}. */
  public String range() {
    return least.toPlainString() + " to " + most.toPlainString() + spacedUnit();
  }

  /** A number of this kind with its unit, such as {@code 6 s} or {@code 110 /min}. */
  public String words(BigDecimal number) {
    return plain(number).toPlainString() + spacedUnit();
  }

  /** The number that a person typed, or empty if it is none or not allowed. */
  public Optional<BigDecimal> typed(String text) {
    String digits = Texts.trimmed(text);
    if (digits.length() > LONGEST_TYPED || !digits.matches("[0-9]+([.][0-9]+)?")) {
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(digits);
    return allows(number) ? Optional.of(number) : Optional.empty();
  }

  /** What a person may type, in one clause. */
  public String allowedTyped() {
    return decimals == 0
        ? "a whole number from " + range()
        : "a number from " + range() + ", with a point and at most " + decimals + " decimals";
  }

  boolean allows(BigDecimal number) {
    return number.compareTo(least) >= 0 && number.compareTo(most) <= 0 && !hasMoreDecimals(number);
  }

  boolean hasMoreDecimals(BigDecimal number) {
    return number.stripTrailingZeros().scale() > decimals;
  }

  /** The object of a file that holds it. */
  public String object() {
    return object;
  }

  /** The field of that object. */
  String field() {
    return field;
  }

  /** The value whose citation is this one's too: a range has one source for both its ends. */
  ProtocolValue sourceOf() {
    switch (this) {
      case BREATH_HIGH:
        return BREATH_LOW;
      case BREATH_TOLERANCE:
        return BREATH_INTERVAL;
      case COMPRESSION_HIGH:
        return COMPRESSION_LOW;
      case CYCLE_BREATHS:
        return CYCLE_COMPRESSIONS;
      default:
        return this;
    }
  }

  /** The field of the object that names its source. */
  String sourceField() {
    return isRange() ? "rangeSource" : "source";
  }

  /** The field of the object that says how it was checked. */
  String confidenceField() {
    return isRange() ? "rangeConfidence" : "confidence";
  }

  private boolean isRange() {
    return sourceOf() == BREATH_LOW || sourceOf() == COMPRESSION_LOW;
  }

  /** The values that a rhythm of that kind has, limits included, in the order of a screen. */
  static List<ProtocolValue> of(RhythmKind kind) {
    List<ProtocolValue> values = new ArrayList<>();
    for (ProtocolValue value : values()) {
      if (value.isIn(kind)) {
        values.add(value);
      }
    }
    return values;
  }

  /** Whether a file has an object of that name among its limits. */
  static boolean isLimitObject(String name) {
    return Arrays.stream(values()).anyMatch(v -> v.isLimit() && v.object.equals(name));
  }

  /** The objects of a file that a rhythm may have, of whatever kind. */
  static Set<String> rhythmObjects() {
    return Arrays.stream(values())
        .filter(v -> !v.isLimit())
        .map(ProtocolValue::object)
        .collect(Collectors.toSet());
  }

  /** The kinds of rhythm that have an object, as files write them, such as {@code a or b}. */
  static String kindsWith(String object) {
    return Arrays.stream(RhythmKind.values())
        .filter(kind -> of(kind).stream().anyMatch(v -> v.object.equals(object)))
        .map(RhythmKind::id)
        .collect(Collectors.joining(" or "));
  }

  private boolean isIn(RhythmKind kind) {
    switch (object) {
      case "breathInterval":
        return kind != RhythmKind.COMPRESSION_CYCLE;
      case "compressionRate":
        return kind != RhythmKind.STEADY_BREATHS;
      case "cycle":
      case "pause":
      case "pauseLimit":
        return kind == RhythmKind.COMPRESSION_CYCLE;
      default:
        return true;
    }
  }

  /** Without trailing zeros, and never in exponent form. */
  static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }

  private String spacedUnit() {
    return unit.isEmpty() ? "" : " " + unit;
  }
}
