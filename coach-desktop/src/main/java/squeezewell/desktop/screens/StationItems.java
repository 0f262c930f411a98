package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.station.file.StationOrder;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;
import squeezewell.station.run.StationState;
import squeezewell.station.run.TaskState;
import squeezewell.words.Quantities;

/** What can be tapped in a running station, with the key of each and how it stands. Pure. */
final class StationItems {
  /** Letters that a practice leaves free, after the digits and but for the key of what is next. */
  static final String LETTERS = "ABDEGHIJKLOQRTUVWXY";

  private static final String KEYS = "123456789" + LETTERS;

  private StationItems() {}

  /** The items of a station, whose clock shows a time. */
  static List<StationItem> items(StationState state, long clock) {
    List<StationItem> items = new ArrayList<>();
    boolean preparing = state.phase() == StationPhase.PREPARATION;
    int place = 0;
    for (StationTask each : state.station().tasks()) {
      // One of a way that is not taken keeps its key, since the way may be chosen yet.
      boolean here = preparing == (each.phase() == StationPhase.PREPARATION);
      Optional<TaskState> found = state.task(each.id());
      if (!here && (preparing || !found.isPresent() || !leftOver(state, found.get()))) {
        continue;
      }
      char key = key(place++);
      if (found.isPresent() && offered(found.get())) {
        TaskState task = found.get();
        items.add(
            new StationItem(
                StationItem.Kind.TASK,
                task.task().id(),
                task.task().words(),
                key,
                status(task, clock),
                state(task)));
      }
    }
    if (!preparing) {
      for (StationOrder order : state.station().orders()) {
        items.add(
            new StationItem(
                StationItem.Kind.ORDER,
                order.id(),
                order.words(),
                key(place++),
                "order",
                StationItem.State.WAITS));
      }
    }
    return items;
  }

  /** What was left out of the preparation can be made good; then it stays, so that no key moves. */
  private static boolean leftOver(StationState state, TaskState task) {
    return task.doneNanos().isEmpty()
        || task.doneNanos().getAsLong() >= state.exerciseFromNanos().orElse(0);
  }

  private static char key(int place) {
    return place < KEYS.length() ? KEYS.charAt(place) : StationItem.NO_KEY;
  }

  /**
   * A task that a finding calls for is not shown before, since that would give the finding away.
   */
  static boolean offered(TaskState task) {
    return task.progress() != TaskState.Progress.NOT_NEEDED
        || task.begunNanos().isPresent()
        || task.task().ifFinding().isEmpty();
  }

  private static StationItem.State state(TaskState task) {
    return switch (task.progress()) {
      case RUNNING -> StationItem.State.RUNS;
      case LATE -> StationItem.State.LATE;
      case DONE -> StationItem.State.DONE;
      default -> StationItem.State.WAITS;
    };
  }

  private static String status(TaskState task, long clock) {
    if (task.progress() == TaskState.Progress.RUNNING && task.begunNanos().isPresent()) {
      boolean paced = task.task().kind() == TaskKind.PACED;
      long length = paced ? task.lengthNanos().orElse(0) : clock - task.begunNanos().getAsLong();
      String of =
          paced && task.task().leastNanos().isPresent()
              ? " of " + Quantities.clock(task.task().leastNanos().getAsLong())
              : "";
      return "running " + Quantities.clock(length) + of;
    }
    if (task.breathsLeftNanos() > 0) {
      return "in, breathe " + Phrases.clockLeft(task.breathsLeftNanos()) + " more";
    }
    if (task.progress() == TaskState.Progress.DUE && task.dueNanos().isPresent()) {
      return "within " + Phrases.clockLeft(Math.max(0, task.dueNanos().getAsLong() - clock));
    }
    if (task.progress() == TaskState.Progress.NOT_NEEDED) {
      return task.task().optional() ? "if it is right here" : task.word();
    }
    if (task.progress() == TaskState.Progress.OPEN) {
      return task.task().kind() == TaskKind.TIMED ? "tap to begin" : "";
    }
    return task.word();
  }
}
