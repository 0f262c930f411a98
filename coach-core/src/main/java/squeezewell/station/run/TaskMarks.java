package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.station.file.Adjunct;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;
import squeezewell.station.file.TimeLimit;

/** What was done about each task so far, and how it is judged. All times on the station's clock. */
final class TaskMarks {
  private final Station station;
  private final StationWays ways;
  private final Ventilation ventilation;
  private final Map<String, Mark> marks = new HashMap<>();
  private final Map<String, Long> cameFirst = new HashMap<>();
  private OptionalLong exerciseFrom = OptionalLong.empty();
  private boolean over;

  /** What was done about one task. */
  private static final class Mark {
    private long begun;
    private boolean timed;
    private boolean outOfOrder;
    private boolean late;
    private boolean cutShort;
    private OptionalLong done = OptionalLong.empty();
  }

  TaskMarks(Station station, StationWays ways, Ventilation ventilation) {
    this.station = station;
    this.ways = ways;
    this.ventilation = ventilation;
  }

  void exerciseBegins(long clock) {
    exerciseFrom = OptionalLong.of(clock);
  }

  OptionalLong exerciseFrom() {
    return exerciseFrom;
  }

  /** A finding comes; false if it came before. */
  boolean cameFirst(String findingId, long clock) {
    return cameFirst.putIfAbsent(findingId, clock) == null;
  }

  boolean isBegun(String taskId) {
    return marks.containsKey(taskId);
  }

  boolean isDone(String taskId) {
    return isBegun(taskId) && marks.get(taskId).done.isPresent();
  }

  boolean isRunning(String taskId) {
    return isBegun(taskId) && !isDone(taskId);
  }

  /** Whether it has to be done, as things are. */
  boolean isNeeded(StationTask task) {
    return ways.exists(task.only())
        && !task.optional()
        && (task.ifFinding().isEmpty() || cameFirst.containsKey(task.ifFinding()));
  }

  void begin(StationTask task, long clock, boolean timed) {
    Mark mark = new Mark();
    mark.begun = clock;
    mark.timed = timed;
    mark.outOfOrder = !before(task).isEmpty();
    OptionalLong due = due(task);
    mark.late = due.isPresent() && mark.begun > due.getAsLong();
    marks.put(task.id(), mark);
  }

  /** What a finding cuts short is not the trainee's fault. */
  void finish(StationTask task, long clock, boolean byFinding) {
    Mark mark = marks.get(task.id());
    mark.done = OptionalLong.of(clock);
    mark.cutShort = byFinding;
    task.adjunct().ifPresent(a -> placed(task, a));
  }

  private void placed(StationTask task, Adjunct adjunct) {
    for (StationTask other : station.tasks()) {
      if (other.asksForBreaths() && isDone(other.id()) && !other.equals(task)) {
        marks.get(other.id()).cutShort |= !task.ifFinding().isEmpty();
      }
    }
    ventilation.place(adjunct);
  }

  /** The station is over; what goes on ends with it. */
  void end(long clock) {
    for (StationTask task : station.tasks()) {
      if (isRunning(task.id())) {
        marks.get(task.id()).done = OptionalLong.of(clock);
      }
    }
    over = true;
  }

  /**
   * Whether breaths go on, as far as tasks tell: from the first paced task, save while they are
   * held up, or while a paced task that a finding calls for has not been begun.
   */
  boolean breathsGoOn() {
    boolean begun = false;
    for (StationTask task : station.tasks()) {
      boolean paced = task.kind() == TaskKind.PACED;
      boolean calledFor =
          paced && !task.ifFinding().isEmpty() && isNeeded(task) && !isBegun(task.id());
      if (calledFor || (task.hold().isPresent() && isRunning(task.id()))) {
        return false;
      }
      begun |= paced && isBegun(task.id());
    }
    return begun;
  }

  /** The tasks that must come first and have not been begun. */
  private List<String> before(StationTask task) {
    List<String> missing = new ArrayList<>();
    for (String id : task.after()) {
      Optional<StationTask> earlier = station.task(id);
      earlier.ifPresent(t -> ways.settles(t.only()));
      boolean counts = earlier.filter(this::isNeeded).isPresent();
      if (counts && !isBegun(id)) {
        missing.add(id);
      }
    }
    return missing;
  }

  private OptionalLong due(StationTask task) {
    if (!task.limit().isPresent()) {
      return task.phase() == StationPhase.PREPARATION ? exerciseFrom : OptionalLong.empty();
    }
    TimeLimit limit = task.limit().get();
    OptionalLong from =
        switch (limit.from()) {
          case EXERCISE -> exerciseFrom;
          case TASK -> isBegun(limit.id()) ? marks.get(limit.id()).done : OptionalLong.empty();
          case FINDING ->
              cameFirst.containsKey(limit.id())
                  ? OptionalLong.of(cameFirst.get(limit.id()))
                  : OptionalLong.empty();
        };
    return from.isPresent() ? OptionalLong.of(from.getAsLong() + limit.nanos()) : from;
  }

  /** How long it took; for what is breathed, for how long breaths went on in it or with it. */
  private long length(StationTask task, Mark mark, long clock) {
    if (task.adjunct().isPresent()) {
      return ventilation.nanosWith(task.adjunct().get(), mark.done.orElse(clock));
    }
    long to = mark.done.orElse(clock);
    return task.kind() == TaskKind.PACED ? ventilation.nanos(mark.begun, to) : to - mark.begun;
  }

  TaskState.Length judge(StationTask task) {
    Mark mark = marks.get(task.id());
    if (!mark.done.isPresent() || !(mark.timed || task.asksForBreaths())) {
      return TaskState.Length.NOT_JUDGED;
    }
    long length = length(task, mark, mark.done.getAsLong());
    if (task.leastNanos().isPresent() && length < task.leastNanos().getAsLong()) {
      if (mark.cutShort) {
        return TaskState.Length.CUT_SHORT;
      }
      boolean stillGrows = task.asksForBreaths() && !over;
      return stillGrows ? TaskState.Length.NOT_JUDGED : TaskState.Length.TOO_SHORT;
    }
    boolean tooLong = task.mostNanos().isPresent() && length > task.mostNanos().getAsLong();
    return tooLong ? TaskState.Length.TOO_LONG : TaskState.Length.GOOD;
  }

  /** Whether nothing has to be done about it any more. */
  boolean isComplete(StationTask task) {
    if (!isBegun(task.id())) {
      return !isNeeded(task);
    }
    boolean more = task.asksForBreaths() && judge(task) == TaskState.Length.NOT_JUDGED;
    return isDone(task.id()) && !more;
  }

  TaskState state(StationTask task, long clock) {
    OptionalLong due = due(task);
    if (!isBegun(task.id())) {
      return untouched(task, due, due.isPresent() && clock > due.getAsLong());
    }
    Mark mark = marks.get(task.id());
    boolean measured = mark.timed || task.asksForBreaths();
    return new TaskState(
        task,
        mark.done.isPresent() ? TaskState.Progress.DONE : TaskState.Progress.RUNNING,
        judge(task),
        mark.outOfOrder,
        mark.late,
        OptionalLong.of(mark.begun),
        mark.done,
        due,
        measured ? OptionalLong.of(length(task, mark, clock)) : OptionalLong.empty());
  }

  private TaskState untouched(StationTask task, OptionalLong due, boolean late) {
    TaskState.Progress progress;
    if (!isNeeded(task)) {
      progress = TaskState.Progress.NOT_NEEDED;
    } else if (over) {
      progress = TaskState.Progress.MISSED;
    } else if (late) {
      progress = TaskState.Progress.LATE;
    } else {
      progress = due.isPresent() ? TaskState.Progress.DUE : TaskState.Progress.OPEN;
    }
    return new TaskState(
        task,
        progress,
        TaskState.Length.NOT_JUDGED,
        false,
        late && isNeeded(task),
        OptionalLong.empty(),
        OptionalLong.empty(),
        due,
        OptionalLong.empty());
  }
}
