package squeezewell.protocol;

import java.util.List;
import java.util.Optional;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;

/** Reads the age limits of a patient group in a protocol file. */
final class AgeBandReader {
  private static final int OLDEST = 50_000;

  private AgeBandReader() {}

  static AgeBand read(ProtocolValues values, JsonValue ages, PatientGroup group)
      throws BadInputException {
    AgeLimit from = limit(values, ages.field("from", "an object with value and unit"));
    Optional<AgeLimit> to = Optional.empty();
    if (ages.has("to")) {
      JsonValue end = ages.field("to", "");
      to = Optional.of(limit(values, end));
      ProtocolValues.ordered(end, "value", to.get().days() > from.days(), "more than from");
    }
    Optional<String> judgement =
        ages.has("judgement") ? Optional.of(ages.text("judgement", 200)) : Optional.empty();
    return new AgeBand(
        group,
        from,
        to,
        ages.text("words", 200),
        judgement,
        values.citation(ages, "source", "confidence"));
  }

  private static AgeLimit limit(ProtocolValues values, JsonValue age) throws BadInputException {
    AgeUnit unit = age.choice("unit", List.of(AgeUnit.values()), AgeUnit::id);
    long most = (long) (OLDEST / unit.days());
    return new AgeLimit(
        age.integer("value", 0, most), unit, values.citation(age, "source", "confidence"));
  }
}
