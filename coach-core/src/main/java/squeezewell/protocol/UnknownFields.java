package squeezewell.protocol;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.JsonValue;
import squeezewell.input.Nearest;

/**
 * Fields of a protocol file that this version does not know, or that have no meaning where they
 * stand. They are allowed, since a newer version may add some; but one that was misspelt or put in
 * the wrong place would otherwise be passed over in silence.
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
      rhythm(rhythm);
    }
  }

  private void rhythm(JsonValue rhythm) throws BadInputException {
    Optional<RhythmKind> kind = kind(rhythm);
    Set<String> objects = kind.isPresent() ? objects(kind.get()) : objects(false);
    Set<String> known = new TreeSet<>(objects);
    known.addAll(List.of("situation", "rescuers", "kind", "limits"));
    for (String name : rhythm.names()) {
      if (objects(false).contains(name) && !known.contains(name)) {
        misplaced(rhythm, name, known, "in the kind " + kind.get().id(), kindsWith(name));
        known.add(name);
      }
    }
    look(rhythm, known);
    values(rhythm, objects);
    limits(rhythm);
  }

  /** Empty if it names none, which is a fault told elsewhere. */
  private static Optional<RhythmKind> kind(JsonValue rhythm) throws BadInputException {
    for (RhythmKind kind : RhythmKind.values()) {
      if (rhythm.has("kind") && rhythm.field("kind", "").isText(kind.id())) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  private static String kindsWith(String object) {
    List<String> kinds = new ArrayList<>();
    for (RhythmKind kind : RhythmKind.values()) {
      if (objects(kind).contains(object)) {
        kinds.add(kind.id());
      }
    }
    return "the kind " + String.join(" or ", kinds);
  }

  private void limits(JsonValue owner) throws BadInputException {
    if (owner.has("limits")) {
      JsonValue limits = owner.field("limits", "");
      look(limits, objects(true));
      values(limits, objects(true));
    }
  }

  private void values(JsonValue owner, Set<String> objects) throws BadInputException {
    for (String object : objects) {
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

  private static Set<String> objects(RhythmKind kind) {
    Set<String> names = new TreeSet<>();
    for (ProtocolValue value : ProtocolValue.of(kind)) {
      if (!value.isLimit()) {
        names.add(value.object());
      }
    }
    return names;
  }

  /**
   * Where a field that means nothing in this place has its meaning; empty if it has none anywhere.
   */
  private static String rightPlace(String name) {
    if (objects(true).contains(name)) {
      return "limits." + name;
    }
    if (objects(false).contains(name)) {
      return name + " of one of the rhythms";
    }
    return "";
  }

  private void misplaced(
      JsonValue owner, String name, Set<String> known, String where, String meant)
      throws BadInputException {
    if (notes.size() < Faults.MOST) {
      String value = owner.has(name) ? owner.field(name, "").describe() : "null";
      notes.add(
          BadInputException.notAllowed(
                  owner.source(),
                  place(owner, name),
                  value,
                  where
                      + " "
                      + String.join(", ", known)
                      + "; it is left out; did you mean "
                      + meant
                      + "?")
              .getMessage());
    }
  }

  private static String place(JsonValue owner, String name) {
    return owner.path().isEmpty() ? name : owner.path() + "." + name;
  }

  private void look(JsonValue object, Set<String> known) throws BadInputException {
    for (String name : object.names()) {
      if (known.contains(name)) {
        continue;
      }
      String right = rightPlace(name);
      if (!right.isEmpty()) {
        misplaced(object, name, new TreeSet<>(known), "here", right);
      } else if (notes.size() < Faults.MOST) {
        notes.add(
            BadInputException.fault(
                    object.source(),
                    place(object, name),
                    "this version does not know the field and leaves it out"
                        + Nearest.question(name, new TreeSet<>(known)))
                .getMessage());
      }
    }
  }
}
