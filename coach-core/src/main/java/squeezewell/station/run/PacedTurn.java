package squeezewell.station.run;

import java.util.Optional;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;

/** Which stretch of breaths a squeeze belongs to. Pure. */
final class PacedTurn {
  private PacedTurn() {}

  /** The stretch of breaths that goes on, if one does. */
  static Optional<TaskState> running(StationState state) {
    return state.tasks().stream()
        .filter(t -> isPaced(t) && t.progress() == TaskState.Progress.RUNNING)
        .findFirst();
  }

  /** Whether it has lasted as long as it must at least. */
  static boolean isLongEnough(TaskState task) {
    return task.lengthNanos().isPresent()
        && task.lengthNanos().getAsLong() >= task.task().leastNanos().orElse(0);
  }

  /**
   * The stretch of breaths that is next in turn. Out of turn is better than not at all, but only
   * for the first: a later one waits for its own.
   */
  static Optional<StationTask> next(StationState state) {
    Optional<StationTask> inTurn =
        state.tasks().stream()
            .filter(t -> isPaced(t) && t.isToDo() && state.isInTurn(t.task()))
            .map(TaskState::task)
            .findFirst();
    boolean none = state.tasks().stream().noneMatch(t -> isPaced(t) && t.begunNanos().isPresent());
    return inTurn.isPresent() || !none
        ? inTurn
        : state.tasks().stream()
            .filter(t -> isPaced(t) && t.progress() != TaskState.Progress.NOT_NEEDED)
            .map(TaskState::task)
            .findFirst();
  }

  /** Whether something that came about calls for it, so that it need not wait for its turn. */
  static boolean wasCalledFor(Station station, StationTask task) {
    return !task.ifFinding().isEmpty()
        || task.after().stream()
            .anyMatch(id -> station.task(id).filter(t -> t.adjunct().isPresent()).isPresent());
  }

  private static boolean isPaced(TaskState task) {
    return task.task().kind() == TaskKind.PACED;
  }
}
