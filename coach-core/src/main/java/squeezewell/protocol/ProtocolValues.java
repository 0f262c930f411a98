package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.JsonValue;

/** Reads single values of a protocol file with their units, ranges and citations. */
final class ProtocolValues {
  private static final String SOURCE = "the name of an entry under \"sources\"";

  private final Faults faults;
  private final boolean hasSources;
  private final Map<String, JsonValue> sources = new HashMap<>();
  private final Map<String, Optional<Citation>> documents = new HashMap<>();

  /** For a file with that top object. */
  ProtocolValues(JsonValue top, Faults faults) {
    this.faults = faults;
    Optional<JsonValue> table =
        faults.take(() -> top.field("sources", "an object of named sources"));
    this.hasSources =
        table.isPresent()
            && faults
                .take(
                    () -> {
                      String allowed = "an object with organisation, title, year, section";
                      for (String name : table.get().names()) {
                        JsonValue source = table.get().field(name, allowed);
                        source.allow(List.of("organisation", "title", "year", "section"));
                        sources.put(name, source);
                      }
                      return true;
                    })
                .isPresent();
  }

  /** Where faults go. */
  Faults faults() {
    return faults;
  }

  /** The object that holds a value, in an entry that should have it. */
  Optional<JsonValue> object(JsonValue entry, ProtocolValue value) {
    return faults.take(() -> entry.field(value.object(), allowedObject(value)));
  }

  /** The number of a value, from the object that holds it. */
  Optional<BigDecimal> number(JsonValue object, ProtocolValue value) {
    if (!value.unit().isEmpty()) {
      faults.take(() -> object.choice("unit", List.of(value.unit()), u -> u));
    }
    return faults.take(
        () -> {
          if (value.decimals() == 0) {
            return BigDecimal.valueOf(
                object.integer(value.field(), value.least().longValue(), value.most().longValue()));
          }
          BigDecimal number =
              object.number(value.field(), value.least(), value.most(), value.unit());
          if (value.hasMoreDecimals(number)) {
            throw object
                .field(value.field(), "")
                .wrong("a number with at most " + value.decimals() + " decimals");
          }
          return number;
        });
  }

  /** Where a value comes from, from the object that holds it. */
  Optional<Citation> citation(JsonValue object, ProtocolValue value) {
    return citation(object, value.sourceField(), value.confidenceField());
  }

  Optional<Citation> citation(JsonValue value, String sourceField, String confidenceField) {
    Optional<Citation> document = document(value, sourceField);
    Optional<Confidence> confidence =
        faults.take(
            () -> value.choice(confidenceField, List.of(Confidence.values()), Confidence::id));
    return document.isPresent() && confidence.isPresent()
        ? Optional.of(document.get().as(confidence.get()))
        : Optional.empty();
  }

  /** Each source is read once, so that a fault in it is told once. */
  private Optional<Citation> document(JsonValue value, String sourceField) {
    Optional<String> name =
        faults.take(
            () -> {
              JsonValue named = value.field(sourceField, SOURCE);
              String text = value.text(sourceField, 60);
              if (hasSources && !sources.containsKey(text)) {
                throw named.wrong(SOURCE);
              }
              return text;
            });
    if (!name.isPresent() || !hasSources) {
      return Optional.empty();
    }
    if (!documents.containsKey(name.get())) {
      documents.put(name.get(), document(sources.get(name.get())));
    }
    return documents.get(name.get());
  }

  private Optional<Citation> document(JsonValue source) {
    Optional<String> organisation = faults.take(() -> source.text("organisation", 120));
    Optional<String> title = faults.take(() -> source.text("title", 300));
    Optional<Long> year = faults.take(() -> source.integer("year", 1950, 2100));
    Optional<String> section = faults.take(() -> source.text("section", 300));
    return organisation.isPresent() && title.isPresent() && year.isPresent() && section.isPresent()
        ? Optional.of(
            new Citation(
                organisation.get(),
                title.get(),
                year.get().intValue(),
                section.get(),
                Confidence.PRIMARY))
        : Optional.empty();
  }

  private static String allowedObject(ProtocolValue value) {
    switch (value.object()) {
      case "breathInterval":
      case "compressionRate":
        return "an object with target, low, high, unit, sources and confidences";
      case "cycle":
        return "an object with compressions, breaths, source and confidence";
      default:
        return "an object with value, unit, source and confidence";
    }
  }

  /** Keeps a fault at a field, unless all is well. */
  void require(JsonValue value, String field, boolean ok, String allowed) {
    if (!ok) {
      faults.take(
          () -> {
            throw value.field(field, allowed).wrong(allowed);
          });
    }
  }

  /** Keeps a fault. */
  void add(BadInputException fault) {
    faults.add(fault);
  }
}
