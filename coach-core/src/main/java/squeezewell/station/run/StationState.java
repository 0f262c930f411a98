package squeezewell.station.run;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.equipment.Pressure;
import squeezewell.input.FileWord;
import squeezewell.protocol.PatientChange;
import squeezewell.session.Fact;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationFinding;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationRule;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;

/**
 * A station at one moment, for screens. Immutable. "The station's clock" stands while an instructor
 * stops it; session time never does.
 *
 * @param station the station
 * @param setup what was settled before, with the ways as they are by now
 * @param openBranches identifiers of branches whose way may still be chosen by who leads it
 * @param phase where it is
 * @param nowNanos session time
 * @param clockNanos the station's clock, from the start of the preparation
 * @param clockStopped whether the instructor has stopped the clock
 * @param exerciseFromNanos when the exercise began, on the station's clock; empty before
 * @param phaseLeftNanos what is left of the phase; 0 once ended
 * @param tasks the tasks of the ways taken, in the station's order
 * @param ventilation for how long breaths went on, with each adjunct in each mode
 * @param lines what the examiner has said, in order
 * @param chosen ways that were chosen on the spot, in order
 * @param findings what holds now, in the order in which it came
 * @param told what the live practice was told, in order
 * @param faults rules broken so far, in order of time
 * @param remarks remarks so far, in order
 * @param changed marks that the examiner changed, in order
 * @param brought findings that a person made come or go, in order
 * @param oxygen what is left of the oxygen, once it is connected
 * @param breathsUnrecorded whether breaths were to be given and none was recorded, so that rules
 *     about them judge nothing
 * @param complete whether nothing that is needed is left to do and nothing more is on its way
 * @param end how it ended; empty while it goes on
 */
public record StationState(
    Station station,
    StationSetup setup,
    List<String> openBranches,
    StationPhase phase,
    long nowNanos,
    long clockNanos,
    boolean clockStopped,
    OptionalLong exerciseFromNanos,
    long phaseLeftNanos,
    List<TaskState> tasks,
    List<VentilationTime> ventilation,
    List<Line> lines,
    List<Chosen> chosen,
    List<Holding> findings,
    List<Told> told,
    List<Fault> faults,
    List<Remark> remarks,
    List<Changed> changed,
    List<Brought> brought,
    Optional<OxygenLeft> oxygen,
    boolean breathsUnrecorded,
    boolean complete,
    Optional<End> end) {
  public StationState {
    Objects.requireNonNull(station, "station");
    Objects.requireNonNull(setup, "setup");
    Objects.requireNonNull(phase, "phase");
    openBranches = List.copyOf(openBranches);
    tasks = List.copyOf(tasks);
    ventilation = List.copyOf(ventilation);
    lines = List.copyOf(lines);
    chosen = List.copyOf(chosen);
    findings = List.copyOf(findings);
    told = List.copyOf(told);
    faults = List.copyOf(faults);
    remarks = List.copyOf(remarks);
    changed = List.copyOf(changed);
    brought = List.copyOf(brought);
  }

  /** How a station ended. */
  public enum End implements FileWord {
    CLOCK,
    COMMAND
  }

  /**
   * Something that the examiner said.
   *
   * @param atNanos when, session time
   * @param step identifier of the step of the script
   * @param words the words
   */
  public record Line(long atNanos, String step, String words) {}

  /**
   * A way that was chosen on the spot.
   *
   * @param atNanos when, session time
   * @param branch where
   * @param way which
   */
  public record Chosen(long atNanos, StationBranch branch, StationBranch.Way way) {}

  /**
   * A finding that holds.
   *
   * @param finding the finding
   * @param sinceNanos since when, session time
   */
  public record Holding(StationFinding finding, long sinceNanos) {}

  /**
   * Something that the live practice was told.
   *
   * @param atNanos when, session time
   * @param finding what
   * @param takenBack whether it was taken back as a slip
   */
  public record Told(long atNanos, PatientChange finding, boolean takenBack) {}

  /**
   * A rule that was broken, or a critical task that was missed.
   *
   * @param atNanos when, session time
   * @param id identifier of the fault, or of the task that was missed
   * @param words what it is
   * @param missed whether it is a critical task that was missed
   * @param severity how much it counts
   * @param source the public rule that it follows; empty if none is named
   */
  public record Fault(
      long atNanos,
      String id,
      String words,
      boolean missed,
      StationRule.Severity severity,
      String source) {}

  /**
   * A remark.
   *
   * @param atNanos when, session time
   * @param words the words
   */
  public record Remark(long atNanos, String words) {}

  /**
   * A mark of a task that the examiner changed.
   *
   * @param atNanos when, session time
   * @param change what was changed and why
   */
  public record Changed(long atNanos, Fact.MarkChange change) {}

  /**
   * A finding that a person made come or go.
   *
   * @param atNanos when, session time
   * @param words what was found
   * @param comes whether it came; else it went
   */
  public record Brought(long atNanos, String words, boolean comes) {}

  /**
   * What is left of the oxygen.
   *
   * @param sinceNanos since when it flows, session time
   * @param gauge what the cylinder's gauge would show
   * @param leftNanos how long it lasts until the reserve is reached
   */
  public record OxygenLeft(long sinceNanos, Pressure gauge, long leftNanos) {}

  /** The task of that identifier. */
  public Optional<TaskState> task(String id) {
    return tasks.stream().filter(t -> t.task().id().equals(id)).findFirst();
  }

  /**
   * Whether it is a task's turn: all that must come first has been begun or is not needed. What
   * ends a stretch of breaths, since the next stretch is given with what it places, waits for its
   * end.
   */
  public boolean isInTurn(StationTask task) {
    boolean handsOver =
        task.adjunct().isPresent()
            && station.tasks().stream()
                .anyMatch(t -> t.kind() == TaskKind.PACED && t.after().contains(task.id()));
    return task.after().stream()
        .map(this::task)
        .flatMap(before -> before.map(Stream::of).orElseGet(Stream::empty))
        .allMatch(
            before ->
                before.progress() == TaskState.Progress.NOT_NEEDED
                    || (before.begunNanos().isPresent() && !(handsOver && before.isTooShort())));
  }

  /** The critical faults so far. */
  public List<Fault> critical() {
    return faults(StationRule.Severity.CRITICAL);
  }

  /** The broken rules of a severity, in order of time. */
  public List<Fault> faults(StationRule.Severity severity) {
    return faults.stream()
        .filter(fault -> fault.severity() == severity)
        .collect(Collectors.toList());
  }

  /** Whether a finding holds now. */
  public boolean holds(String findingId) {
    return findings.stream().anyMatch(f -> f.finding().id().equals(findingId));
  }
}
