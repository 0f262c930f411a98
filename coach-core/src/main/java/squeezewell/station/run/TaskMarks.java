package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.session.Fact;
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
  private final Map<String, Mark> marks = new LinkedHashMap<>();
  private final Map<String, Long> instants = new HashMap<>();
  private OptionalLong exerciseFrom = OptionalLong.empty();
  private boolean over;

  /** What was done about one task. */
  private static final class Mark {
    private long begun;
    private boolean timed;
    private List<String> mustHave = List.of();
    private boolean calledLate;
    private boolean improper;
    private boolean cutShort;
    private boolean endedByClosing;
    private Set<String> holding = Set.of();
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

  /** Something happens from which times may count; only the first time does. */
  void instant(TimeLimit.Anchor anchor, String id, long clock) {
    instants.putIfAbsent(key(anchor, id), clock);
  }

  /** When something first happened; empty if it has not. */
  private OptionalLong instant(TimeLimit.Anchor anchor, String id) {
    Long at = instants.get(key(anchor, id));
    return at == null ? OptionalLong.empty() : OptionalLong.of(at);
  }

  /** When a time begins to count; empty if it has not yet. */
  OptionalLong start(TimeLimit limit) {
    if (limit.from() == TimeLimit.Anchor.EXERCISE) {
      return exerciseFrom;
    }
    OptionalLong otherwise = OptionalLong.empty();
    if (!limit.otherwise().isEmpty()) {
      otherwise = instant(TimeLimit.Anchor.TASK, limit.otherwise());
    }
    boolean inTime =
        isBegun(limit.id())
            && (!otherwise.isPresent()
                || marks.get(limit.id()).begun <= otherwise.getAsLong() + limit.nanos());
    return !limit.otherwise().isEmpty() && !inTime ? otherwise : instant(limit.from(), limit.id());
  }

  /** Whether a finding has come by a time. */
  boolean hasCome(String findingId, long byClock) {
    OptionalLong at = instant(TimeLimit.Anchor.FINDING, findingId);
    return at.isPresent() && at.getAsLong() <= byClock;
  }

  /** When a task was begun; empty if it was not. */
  OptionalLong begun(String taskId) {
    return isBegun(taskId) ? OptionalLong.of(marks.get(taskId).begun) : OptionalLong.empty();
  }

  /** What held when a task was begun. */
  Set<String> holding(String taskId) {
    return marks.get(taskId).holding;
  }

  /** How long a task with a beginning that was marked went on; empty if that is not known. */
  OptionalLong wholeLength(String taskId, long clock) {
    Mark mark = marks.get(taskId);
    return mark == null || !mark.timed
        ? OptionalLong.empty()
        : OptionalLong.of(mark.done.orElse(clock) - mark.begun);
  }

  /** Whether the trainee ended a task, rather than a finding or the end of the station. */
  boolean isEndedByTrainee(String taskId) {
    return isDone(taskId) && !marks.get(taskId).cutShort && !marks.get(taskId).endedByClosing;
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
        && (task.ifFinding().isEmpty() || hasCome(task.ifFinding(), Long.MAX_VALUE));
  }

  /**
   * A task is begun.
   *
   * @param holding identifiers of the findings that hold
   */
  void begin(StationTask task, long clock, boolean timed, Set<String> holding) {
    Mark mark = new Mark();
    mark.begun = clock;
    mark.timed = timed;
    mark.holding = Set.copyOf(holding);
    mark.mustHave = before(task);
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
        marks.get(task.id()).endedByClosing = true;
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

  /**
   * The examiner changes a mark; false if the task has none that it could be.
   *
   * @param log tells what held at the time to which a mark is dated back
   */
  boolean change(Fact.MarkChange change, BreathLog log) {
    Mark mark = marks.get(change.task());
    boolean words = change.change() == Fact.MarkChange.Change.REMARK;
    if (mark == null) {
      return words && station.task(change.task()).isPresent();
    }
    switch (change.change()) {
      case WITHDRAWN -> withdraw(change.task());
      case EARLIER -> {
        long by = Math.min(change.earlierNanos(), mark.begun - earliest(change.task()));
        withdraw(change.task());
        mark.begun -= by;
        mark.done = mark.done.isPresent() ? OptionalLong.of(mark.done.getAsLong() - by) : mark.done;
        mark.holding = log.holding(mark.begun);
        marks.put(change.task(), mark);
        boolean lasts = station.task(change.task()).get().lasts();
        if (lasts) {
          instant(TimeLimit.Anchor.STARTED, change.task(), mark.begun);
        }
        mark.done.ifPresent(at -> instant(TimeLimit.Anchor.TASK, change.task(), at));
      }
      case LATE -> mark.calledLate = !mark.calledLate;
      case IMPROPER -> mark.improper = !mark.improper;
      case REMARK -> {
        // The words are kept beside the marks.
      }
    }
    return true;
  }

  private long earliest(String taskId) {
    boolean prepared = station.task(taskId).get().phase() == StationPhase.PREPARATION;
    return prepared ? 0 : exerciseFrom.orElse(0);
  }

  private void withdraw(String taskId) {
    marks.remove(taskId);
    instants.remove(key(TimeLimit.Anchor.TASK, taskId));
    instants.remove(key(TimeLimit.Anchor.STARTED, taskId));
  }

  private static String key(TimeLimit.Anchor anchor, String id) {
    return anchor.word() + " " + id;
  }

  /** Whether it was begun before what had to come first then. */
  private boolean isOutOfOrder(String taskId) {
    return marks.get(taskId).mustHave.stream().anyMatch(first -> isBegunBefore(taskId, first));
  }

  /** Whether it was begun after its time. */
  private boolean isLate(StationTask task) {
    Mark mark = marks.get(task.id());
    OptionalLong due = due(task);
    return mark.calledLate || (due.isPresent() && mark.begun > due.getAsLong());
  }

  /** The tasks that must come first, as things are. */
  private List<String> before(StationTask task) {
    List<String> needed = new ArrayList<>();
    for (String id : task.after()) {
      Optional<StationTask> earlier = station.task(id);
      earlier.ifPresent(t -> ways.settles(t.only()));
      boolean counts = earlier.filter(this::isNeeded).isPresent();
      if (counts) {
        needed.add(id);
      }
    }
    return needed;
  }

  private OptionalLong due(StationTask task) {
    if (!task.limit().isPresent()) {
      return task.phase() == StationPhase.PREPARATION ? exerciseFrom : OptionalLong.empty();
    }
    TimeLimit limit = task.limit().get();
    OptionalLong from = start(limit);
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

  /** Whether one was begun before another; by the order of the marks at the same instant. */
  boolean isBegunBefore(String taskId, String otherId) {
    if (!isBegun(taskId) || !isBegun(otherId)) {
      return isBegun(taskId);
    }
    long by = marks.get(taskId).begun - marks.get(otherId).begun;
    List<String> order = new ArrayList<>(marks.keySet());
    return by < 0 || (by == 0 && order.indexOf(taskId) < order.indexOf(otherId));
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
        isOutOfOrder(task.id()),
        isLate(task),
        mark.improper,
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
        false,
        OptionalLong.empty(),
        OptionalLong.empty(),
        due,
        OptionalLong.empty());
  }
}
