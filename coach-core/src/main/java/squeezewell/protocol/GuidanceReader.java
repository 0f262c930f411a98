package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.input.JsonValue;

/** Reads what a protocol file asks for in one situation: a rhythm and its time limits. */
final class GuidanceReader {
  private final ProtocolValues values;
  private final Optional<JsonValue> usual;
  private final Map<ProtocolValue, BigDecimal> numbers = new EnumMap<>(ProtocolValue.class);
  private final Map<ProtocolValue, Citation> sources = new EnumMap<>(ProtocolValue.class);
  private final Map<ProtocolValue, JsonValue> places = new EnumMap<>(ProtocolValue.class);

  private GuidanceReader(ProtocolValues values, Optional<JsonValue> usual) {
    this.values = values;
    this.usual = usual;
  }

  /** Checks the limits of a patient by themselves. */
  static void checkLimits(ProtocolValues values, JsonValue limits) {
    GuidanceReader reader = new GuidanceReader(values, Optional.of(limits));
    reader.limits(Optional.empty());
    reader.checkRules();
  }

  /**
   * Reads an entry.
   *
   * @param usual the patient's limits, which hold where the entry does not name its own; empty if
   *     the patient has none, which is a fault told elsewhere
   * @return empty if there was a fault
   */
  static Optional<GuidanceValues> read(
      ProtocolValues values,
      JsonValue entry,
      Optional<JsonValue> usual,
      Optional<RhythmKind> kind) {
    return new GuidanceReader(values, usual).read(entry, kind);
  }

  private Optional<GuidanceValues> read(JsonValue entry, Optional<RhythmKind> kind) {
    if (!kind.isPresent()) {
      entry.allow(ProtocolValue.rhythmObjects());
    }
    for (ProtocolValue value : kind.map(ProtocolValue::of).orElse(List.of())) {
      if (!value.isLimit()) {
        values.object(entry, value).ifPresent(object -> add(object, value));
      }
    }
    boolean hasOwn = values.faults().take(() -> entry.has("limits")).orElse(false);
    limits(
        hasOwn
            ? values.faults().take(() -> entry.field("limits", "an object of limits"))
            : Optional.empty());
    checkRules();
    GuidanceValues read = new GuidanceValues(numbers, sources);
    return kind.isPresent() && read.isWhole(kind.get()) ? Optional.of(read) : Optional.empty();
  }

  private void limits(Optional<JsonValue> own) {
    for (ProtocolValue value : ProtocolValue.values()) {
      if (value.isLimit()) {
        boolean isOwn =
            own.isPresent()
                && values.faults().take(() -> own.get().has(value.object())).orElse(false);
        Optional<JsonValue> owner = isOwn ? own : usual;
        owner
            .flatMap(limits -> values.object(limits, value))
            .ifPresent(object -> add(object, value));
      }
    }
  }

  private void add(JsonValue object, ProtocolValue value) {
    places.put(value, object);
    boolean given =
        !value.isOptional() || values.faults().take(() -> object.has(value.field())).orElse(false);
    Optional<BigDecimal> number =
        given ? values.number(object, value) : Optional.of(BigDecimal.ZERO);
    number.ifPresent(found -> numbers.put(value, found));
    if (value.sourceOf() == value) {
      values.citation(object, value).ifPresent(citation -> sources.put(value, citation));
    }
  }

  private void checkRules() {
    for (ValueRule rule : ValueRule.values()) {
      ProtocolValue judged = rule.judged();
      if (rule.isBroken(numbers)) {
        values.require(places.get(judged), judged.field(), false, rule.allowed());
      }
    }
  }
}
