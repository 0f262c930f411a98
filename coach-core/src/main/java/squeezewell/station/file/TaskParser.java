package squeezewell.station.file;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;

/** Reads the tasks of a station file, and checks what each of them says of itself. */
final class TaskParser {
  private final FaultList faults;
  private final StationFields fields;
  private final List<String> unsure = new ArrayList<>();

  TaskParser(FaultList faults, StationFields fields) {
    this.faults = faults;
    this.fields = fields;
  }

  /**
   * What kind of task it is, which decides what else it may say.
   *
   * @param kind empty if that could not be read, so that nothing follows from it
   */
  private record Shape(
      StationPhase phase,
      Optional<TaskKind> kind,
      OptionalLong least,
      OptionalLong most,
      Optional<TaskHold> hold,
      Optional<Adjunct> adjunct) {
    private boolean is(TaskKind wanted) {
      return kind.isPresent() && kind.get() == wanted;
    }

    /** What is wrong with it, one sentence each. */
    List<String> contradictions() {
      List<String> found = new ArrayList<>();
      boolean places = adjunct.isPresent() && adjunct.get() != Adjunct.NONE;
      boolean hasLength = (least.isPresent() && !places) || most.isPresent() || hold.isPresent();
      if (is(TaskKind.TAP) && hasLength) {
        found.add(
            "leastSeconds, mostSeconds and holds are only for a task of the kind timed or paced;"
                + " leastSeconds also for one that places an adjunct");
      }
      if ((is(TaskKind.TIMED) || is(TaskKind.PACED)) && adjunct.isPresent()) {
        found.add("adjunct is only for a task of the kind tap");
      }
      if (is(TaskKind.PACED) && hold.isPresent()) {
        found.add("holds is only for a task of the kind timed");
      }
      if (is(TaskKind.PACED) && phase == StationPhase.PREPARATION) {
        found.add("a paced task belongs to the exercise, not to the preparation");
      }
      if (least.isPresent() && most.isPresent() && least.getAsLong() > most.getAsLong()) {
        found.add("leastSeconds must not be more than mostSeconds");
      }
      return found;
    }
  }

  /** The tasks of which something that others rely on could not be read, so far. */
  List<String> unsure() {
    return unsure;
  }

  /** Reads a task; what of it can't be read is a fault, and counts as left out. */
  StationTask read(JsonValue value) {
    StationPhase phase = fields.phase(value);
    int faultsBefore = faults.all().size();
    Shape shape = shape(value, phase);
    for (String words : shape.contradictions()) {
      faults.add(BadInputException.fault(value.source(), value.path(), words));
    }
    String id = faults.take(() -> StationFields.id(value), "");
    if (faults.all().size() > faultsBefore) {
      unsure.add(id);
    }
    return new StationTask(
        id,
        fields.words(value, "words"),
        fields.words(value, "doneWhen"),
        phase,
        shape.kind().orElse(TaskKind.TAP),
        fields.ids(value, "after"),
        fields.limit(value),
        fields.flag(value, "critical"),
        fields.flag(value, "optional"),
        fields.reference(value, "ifFinding"),
        fields.only(value),
        shape.least(),
        shape.most(),
        shape.hold(),
        fields.flag(value, "oxygen"),
        shape.adjunct());
  }

  private Shape shape(JsonValue value, StationPhase phase) {
    return new Shape(
        phase,
        faults.take(() -> kind(value), Optional.empty()),
        fields.optionalSeconds(value, "leastSeconds"),
        fields.optionalSeconds(value, "mostSeconds"),
        fields.choice(value, "holds", List.of(TaskHold.values()), TaskHold::word),
        fields.choice(value, "adjunct", List.of(Adjunct.values()), Adjunct::word));
  }

  private static Optional<TaskKind> kind(JsonValue value) throws BadInputException {
    return Optional.of(
        value.has("kind")
            ? value.choice("kind", List.of(TaskKind.values()), TaskKind::word)
            : TaskKind.TAP);
  }
}
