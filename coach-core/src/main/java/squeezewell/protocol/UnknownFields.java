package squeezewell.protocol;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
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
    } catch (BadInputException e) {
      // That is a fault, and told as one.
      return found.notes;
    }
    return found.notes;
  }

  private void patient(JsonValue patient) throws BadInputException {
    look(patient, PATIENT);
    if (patient.has("limits")) {
      look(patient.field("limits", ""), objects(true));
    }
    for (JsonValue rhythm : patient.list("rhythms", 0, "")) {
      Set<String> known = objects(false);
      known.add("situation");
      known.add("rescuers");
      known.add("kind");
      known.add("limits");
      look(rhythm, known);
      if (rhythm.has("limits")) {
        look(rhythm.field("limits", ""), objects(true));
      }
    }
  }

  private static Set<String> objects(boolean limits) {
    Set<String> names = new HashSet<>();
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
