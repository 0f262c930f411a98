package squeezewell.protocol;

import java.util.List;
import java.util.Optional;
import squeezewell.input.JsonValue;

/** Reads the age limits of a patient group in a protocol file. */
final class AgeBandReader {
  private static final int OLDEST = 50_000;

  private AgeBandReader() {}

  /** Empty if there was a fault. */
  static Optional<AgeBand> read(
      ProtocolValues values, JsonValue ages, Optional<PatientGroup> group) {
    Optional<String> words = values.faults().take(() -> ages.text("words", 200));
    Optional<String> judgement = Optional.empty();
    if (has(values, ages, "judgement")) {
      judgement = values.faults().take(() -> ages.text("judgement", 200));
    }
    Optional<AgeLimit> from = limit(values, ages, "from");
    Optional<AgeLimit> to = Optional.empty();
    if (has(values, ages, "to")) {
      to = limit(values, ages, "to");
      if (!to.isPresent()) {
        return Optional.empty();
      }
      if (from.isPresent() && to.get().days() <= from.get().days()) {
        values
            .faults()
            .take(() -> ages.field("to", ""))
            .ifPresent(end -> values.require(end, "value", false, "more than from"));
        return Optional.empty();
      }
    }
    Optional<Citation> source = values.citation(ages, "source", "confidence");
    return group.isPresent() && words.isPresent() && from.isPresent() && source.isPresent()
        ? Optional.of(
            new AgeBand(group.get(), from.get(), to, words.get(), judgement, source.get()))
        : Optional.empty();
  }

  private static boolean has(ProtocolValues values, JsonValue ages, String name) {
    return values.faults().take(() -> ages.has(name)).orElse(false);
  }

  static Optional<AgeLimit> limit(ProtocolValues values, JsonValue ages, String name) {
    Optional<JsonValue> age =
        values.faults().take(() -> ages.field(name, "an object with value and unit"));
    if (!age.isPresent()) {
      return Optional.empty();
    }
    Optional<AgeUnit> unit =
        values
            .faults()
            .take(() -> age.get().choice("unit", List.of(AgeUnit.values()), AgeUnit::id));
    long most = unit.map(u -> (long) (OLDEST / u.days())).orElse((long) OLDEST);
    Optional<Long> value = values.faults().take(() -> age.get().integer("value", 0, most));
    Optional<Citation> source = values.citation(age.get(), "source", "confidence");
    return unit.isPresent() && value.isPresent() && source.isPresent()
        ? Optional.of(new AgeLimit(value.get(), unit.get(), source.get()))
        : Optional.empty();
  }
}
