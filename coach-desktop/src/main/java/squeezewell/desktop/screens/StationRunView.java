package squeezewell.desktop.screens;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import squeezewell.equipment.Pressure;
import squeezewell.equipment.PressureUnit;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;
import squeezewell.station.run.StationState;
import squeezewell.station.run.TaskState;
import squeezewell.words.Quantities;

/**
 * What the screen of a running station says at one instant. Pure.
 *
 * @param phase the phase, and whose turn it is
 * @param left what is left of the phase, as a clock
 * @param leftUrgent whether it is nearly over
 * @param bar the one time that presses most
 * @param examiner what the examiner said last; empty if nothing yet
 * @param examinerWhen when that was, and how to take it
 * @param next what is expected next; empty if nothing is
 * @param items what can be tapped, in order
 * @param oxygen what is left of the oxygen, in words; empty before it flows
 * @param oxygenUrgent whether it is nearly used up
 */
record StationRunView(
    String phase,
    String left,
    boolean leftUrgent,
    BarLine bar,
    String examiner,
    String examinerWhen,
    Optional<StationItem> next,
    List<StationItem> items,
    String oxygen,
    boolean oxygenUrgent) {
  /** The key of what is expected next. */
  static final char NEXT_KEY = 'N';

  private static final long SECOND = 1_000_000_000L;

  /** A task that must begin within this time is what is expected next (our own choice). */
  private static final long NEXT_NOTICE_NANOS = 10 * SECOND;

  /** So long before the end of a phase its clock is marked (our own choice). */
  private static final long PHASE_NOTICE_NANOS = 30 * SECOND;

  StationRunView {
    items = List.copyOf(items);
  }

  /** The view of a station at an instant of session time. */
  static StationRunView of(StationState state, long nowNanos) {
    long passed = state.clockStopped() ? 0 : Math.max(0, nowNanos - state.nowNanos());
    long clock = state.clockNanos() + passed;
    long phaseLeft = Math.max(0, state.phaseLeftNanos() - passed);
    List<StationItem> items = StationItems.items(state, clock);
    Optional<StationState.Line> line = state.lines().stream().reduce((first, later) -> later);
    Optional<StationState.Holding> brought =
        brought(state, line.map(StationState.Line::atNanos).orElse(0L));
    return new StationRunView(
        state.phase().label() + ", " + who(state),
        Phrases.clockLeft(phaseLeft),
        state.phase() == StationPhase.EXERCISE && phaseLeft <= PHASE_NOTICE_NANOS,
        StationBar.of(state, clock, phaseLeft, nowNanos),
        brought
            .map(f -> f.finding().words() + ".")
            .orElse(line.map(StationState.Line::words).orElse("")),
        brought
            .map(f -> "Found, at " + Quantities.clock(f.sinceNanos()))
            .orElse(line.map(l -> "Examiner, at " + Quantities.clock(l.atNanos())).orElse("")),
        next(state, items, clock),
        items,
        oxygenWords(state, StationBar.oxygenLeft(state, nowNanos)),
        StationBar.oxygenPresses(state, nowNanos));
  }

  /**
   * The last finding that came after the examiner's last words, where a person makes findings come:
   * the script has no words for it then. What holds from the start is left to be found.
   */
  private static Optional<StationState.Holding> brought(StationState state, long saidNanos) {
    if (!state.setup().mode().hasExaminer()) {
      return Optional.empty();
    }
    return state.findings().stream()
        .filter(f -> f.sinceNanos() > saidNanos)
        .filter(f -> !f.finding().hidden() && !f.finding().atStart())
        .filter(
            f ->
                state.station().branches().stream()
                    .flatMap(b -> b.ways().stream())
                    .noneMatch(w -> w.findings().contains(f.finding().id())))
        .reduce((first, later) -> later);
  }

  private static String who(StationState state) {
    return switch (state.setup().mode()) {
      case ALONE -> "alone";
      case PARTNER -> "your partner taps";
      case INSTRUCTOR -> "led by an instructor";
    };
  }

  /** For how long breaths still have to be given with an adjunct that is in; empty if no longer. */
  static Optional<String> breathsLeft(StationState state) {
    return state.tasks().stream()
        .filter(t -> t.breathsLeftNanos() > 0)
        .findFirst()
        .map(
            t ->
                "Breathe on: "
                    + Phrases.clockLeft(t.breathsLeftNanos())
                    + " more with the "
                    + t.task().adjunct().get().label());
  }

  /** The item of a key. */
  Optional<StationItem> item(char key) {
    return key == NEXT_KEY
        ? next
        : items.stream().filter(i -> i.key() == key && key != StationItem.NO_KEY).findFirst();
  }

  private static Optional<StationItem> next(
      StationState state, List<StationItem> items, long clock) {
    for (TaskState task : state.tasks()) {
      if (task.progress() == TaskState.Progress.RUNNING && task.task().kind() == TaskKind.TIMED) {
        return find(items, task.task());
      }
    }
    boolean preparing = state.phase() == StationPhase.PREPARATION;
    Optional<TaskState> expected = expected(state, t -> isCalledFor(state, t));
    if (!expected.isPresent()) {
      expected = expected(state, t -> presses(t, clock));
    }
    if (!expected.isPresent()) {
      expected = expected(state, t -> true);
    }
    if (expected.isPresent()) {
      return find(items, expected.get().task());
    }
    return preparing ? Optional.of(StationItem.toBegin(NEXT_KEY)) : Optional.empty();
  }

  /**
   * The first task to be done, in the station's order, whose turn it is. Once the exercise has
   * begun, the patient comes before the kit: what should have been prepared is asked for only if it
   * is critical.
   */
  private static Optional<TaskState> expected(StationState state, Predicate<TaskState> which) {
    boolean preparing = state.phase() == StationPhase.PREPARATION;
    return state.tasks().stream()
        .filter(
            t ->
                t.progress() == TaskState.Progress.OPEN
                    || t.progress() == TaskState.Progress.DUE
                    || t.progress() == TaskState.Progress.LATE)
        .filter(t -> !preparing || t.task().phase() == StationPhase.PREPARATION)
        .filter(t -> !t.task().optional() && state.isInTurn(t.task()))
        .filter(t -> preparing || isOfExercise(t) || t.task().critical())
        .filter(which)
        .findFirst();
  }

  private static boolean isOfExercise(TaskState task) {
    return task.task().phase() == StationPhase.EXERCISE;
  }

  private static boolean isCalledFor(StationState state, TaskState task) {
    return !task.task().ifFinding().isEmpty() && state.holds(task.task().ifFinding());
  }

  /** What is late or nearly so comes before what has no time. */
  private static boolean presses(TaskState task, long clock) {
    return task.progress() == TaskState.Progress.LATE
        || (task.progress() == TaskState.Progress.DUE
            && task.dueNanos().orElse(Long.MAX_VALUE) - clock <= NEXT_NOTICE_NANOS);
  }

  private static Optional<StationItem> find(List<StationItem> items, StationTask task) {
    return items.stream().filter(i -> i.id().equals(task.id())).findFirst();
  }

  /** Gauges are marked in either unit. */
  private static String gauge(Pressure pressure) {
    return pressure.in(PressureUnit.PSI, 0).toPlainString()
        + " psi ("
        + pressure.in(PressureUnit.BAR, 0).toPlainString()
        + " bar)";
  }

  private static String oxygenWords(StationState state, long left) {
    if (!state.oxygen().isPresent()) {
      return "";
    }
    return left <= 0
        ? "Oxygen: reserve reached"
        : "Oxygen " + gauge(state.oxygen().get().gauge()) + ", " + Quantities.clock(left) + " left";
  }
}
