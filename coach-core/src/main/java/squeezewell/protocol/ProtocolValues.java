package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;

/** Reads single values of a protocol file with their units, ranges and citations. */
final class ProtocolValues {
  private static final BigDecimal NANOS_PER_SECOND = BigDecimal.valueOf(1_000_000_000L);

  private final Map<String, JsonValue> sources = new HashMap<>();

  /** For a file with that top object. */
  ProtocolValues(JsonValue top) throws BadInputException {
    JsonValue table = top.field("sources", "an object of named sources");
    for (String name : table.names()) {
      sources.put(name, table.field(name, "an object with organisation, title, year, section"));
    }
  }

  Limit limit(JsonValue limits, String name, String least, String most) throws BadInputException {
    JsonValue value = limits.field(name, "an object with value, unit, source and confidence");
    return new Limit(seconds(value, "value", least, most), citation(value, "source", "confidence"));
  }

  Citation citation(JsonValue value, String sourceField, String confidenceField)
      throws BadInputException {
    String allowed = "the name of an entry under \"sources\"";
    JsonValue name = value.field(sourceField, allowed);
    JsonValue source = sources.get(value.text(sourceField, 60));
    if (source == null) {
      throw name.wrong(allowed);
    }
    return new Citation(
        source.text("organisation", 120),
        source.text("title", 300),
        (int) source.integer("year", 1950, 2100),
        source.text("section", 300),
        value.choice(confidenceField, List.of(Confidence.values()), Confidence::id));
  }

  static long seconds(JsonValue value, String field, String least, String most)
      throws BadInputException {
    unit(value, "s");
    BigDecimal seconds = value.number(field, new BigDecimal(least), new BigDecimal(most), "s");
    decimals(value, field, seconds, 3);
    return seconds.multiply(NANOS_PER_SECOND).longValueExact();
  }

  static BigDecimal perMinute(JsonValue value, String field) throws BadInputException {
    BigDecimal rate = value.number(field, BigDecimal.valueOf(30), BigDecimal.valueOf(240), "/min");
    decimals(value, field, rate, 3);
    return rate;
  }

  static void decimals(JsonValue value, String field, BigDecimal number, int most)
      throws BadInputException {
    if (number.stripTrailingZeros().scale() > most) {
      throw value.field(field, "").wrong("a number with at most " + most + " decimals");
    }
  }

  static void unit(JsonValue value, String unit) throws BadInputException {
    value.choice("unit", List.of(unit), u -> u);
  }

  static void ordered(JsonValue value, String field, boolean ok, String allowed)
      throws BadInputException {
    if (!ok) {
      throw value.field(field, allowed).wrong(allowed);
    }
  }
}
