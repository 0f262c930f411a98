package squeezewell.protocol;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.JsonValue;

/**
 * Fields of a protocol file that this version does not know. They are allowed, since a newer
 * version may add some; but one that was misspelt would otherwise be passed over in silence.
 */
final class UnknownFields {
  private static final Set<String> TOP =
      Set.of(
          "format",
          "version",
          "id",
          "title",
          "organisation",
          "year",
          "local",
          "basedOn",
          "approval",
          "sources",
          "patients");
  private static final Set<String> APPROVAL = Set.of("by", "on", "note");
  private static final Set<String> PATIENT = Set.of("group", "ages", "limits", "rhythms");
  private static final Set<String> AGES =
      Set.of("words", "judgement", "from", "to", "source", "confidence");
  private static final Set<String> AGE = Set.of("value", "unit", "source", "confidence");
  private static final Set<String> SOURCE = Set.of("organisation", "title", "year", "section");

  private final List<String> notes = new ArrayList<>();

  private UnknownFields() {}

  /** One sentence each, at most {@link Faults#MOST}; none about what is not an object or a list. */
  static List<String> of(JsonValue top) {
    UnknownFields found = new UnknownFields();
    try {
      found.look(top, TOP);
      if (top.has("approval")) {
        found.look(top.field("approval", ""), APPROVAL);
      }
      for (JsonValue patient : top.list("patients", 0, "")) {
        found.patient(patient);
      }
      if (top.has("sources")) {
        JsonValue sources = top.field("sources", "");
        for (String name : sources.names()) {
          found.look(sources.field(name, ""), SOURCE);
        }
      }
    } catch (BadInputException e) {
      // That is a fault, and told as one.
      return found.notes;
    }
    return found.notes;
  }

  private void patient(JsonValue patient) throws BadInputException {
    look(patient, PATIENT);
    if (patient.has("ages")) {
      JsonValue ages = patient.field("ages", "");
      look(ages, AGES);
      for (String end : List.of("from", "to")) {
        if (ages.has(end)) {
          look(ages.field(end, ""), AGE);
        }
      }
    }
    limits(patient);
    for (JsonValue rhythm : patient.list("rhythms", 0, "")) {
      Set<String> known = objects(false);
      known.add("situation");
      known.add("rescuers");
      known.add("kind");
      known.add("limits");
      look(rhythm, known);
      values(rhythm, false);
      limits(rhythm);
    }
  }

  private void limits(JsonValue owner) throws BadInputException {
    if (owner.has("limits")) {
      JsonValue limits = owner.field("limits", "");
      look(limits, objects(true));
      values(limits, true);
    }
  }

  private void values(JsonValue owner, boolean limits) throws BadInputException {
    for (String object : objects(limits)) {
      if (owner.has(object)) {
        look(owner.field(object, ""), fields(object));
      }
    }
  }

  private static Set<String> fields(String object) {
    Set<String> names = new HashSet<>(Set.of("source", "confidence"));
    for (ProtocolValue value : ProtocolValue.values()) {
      if (value.object().equals(object)) {
        names.add(value.field());
        if (!value.unit().isEmpty()) {
          names.add("unit");
        }
        if (value.isRange()) {
          names.add("rangeSource");
          names.add("rangeConfidence");
        }
      }
    }
    return names;
  }

  private static Set<String> objects(boolean limits) {
    Set<String> names = new TreeSet<>();
    for (ProtocolValue value : ProtocolValue.values()) {
      if (value.isLimit() == limits) {
        names.add(value.object());
      }
    }
    return names;
  }

  private void look(JsonValue object, Set<String> known) throws BadInputException {
    for (String name : object.names()) {
      if (!known.contains(name) && notes.size() < Faults.MOST) {
        String place = object.path().isEmpty() ? name : object.path() + "." + name;
        notes.add(
            BadInputException.fault(
                    object.source(),
                    place,
                    "this version does not know the field and leaves it out")
                .getMessage());
      }
    }
  }
}
