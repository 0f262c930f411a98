package squeezewell.station;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.PriorityQueue;
import java.util.Set;
import squeezewell.kit.OxygenSupply;
import squeezewell.protocol.ClinicalFinding;

/**
 * Walks through a station: time passes, inputs come, the script answers. It is deterministic, so
 * that the same inputs at the same times always lead to the same place. What falls due at the very
 * instant of an input comes before it.
 */
final class StationWalk {
  private final Station station;
  private final StationWays ways;
  private final PriorityQueue<Item> items =
      new PriorityQueue<>(
          Comparator.comparingLong(Item::clockNanos).thenComparingLong(Item::number));
  private final Map<String, Mark> marks = new HashMap<>();
  private final Map<String, Long> holding = new LinkedHashMap<>();
  private final Map<String, Long> cameFirst = new HashMap<>();
  private final Set<String> taken = new HashSet<>();
  private final Set<String> faulted = new HashSet<>();
  private final List<StationState.Line> lines = new ArrayList<>();
  private final List<StationState.Told> told = new ArrayList<>();
  private final List<StationState.Fault> faults = new ArrayList<>();
  private final List<StationState.Chosen> chosen = new ArrayList<>();
  private final List<StationState.Remark> remarks = new ArrayList<>();
  private StationPhase phase = StationPhase.PREPARATION;
  private Optional<StationState.End> end = Optional.empty();
  private OptionalLong exerciseFrom = OptionalLong.empty();
  private OptionalLong exerciseSince = OptionalLong.empty();
  private OptionalLong oxygenFrom = OptionalLong.empty();
  private long oxygenSince;
  private long now;
  private long stoppedNanos;
  private boolean stopped;
  private long stoppedAt;
  private long numbers;

  /** What falls due by itself, on the station's clock. */
  private record Item(long clockNanos, long number, Runnable action) {}

  /** What was done about a task, on the station's clock. */
  private static final class Mark {
    private long begun;
    private boolean timed;
    private boolean outOfOrder;
    private boolean late;
    private boolean cutShort;
    private OptionalLong done = OptionalLong.empty();
  }

  StationWalk(Station station, StationSetup setup) {
    this.station = station;
    this.ways = new StationWays(station, setup);
    at(station.preparationNanos(), () -> beginExercise());
    timedSteps(StationPhase.PREPARATION, 0);
    advance(0);
  }

  /** Lets time pass, up to and including an instant. */
  void advance(long toNanos) {
    while (!over()) {
      Item next = items.peek();
      if (next == null || next.clockNanos() > clockAt(Math.max(now, toNanos))) {
        break;
      }
      items.remove();
      now = Math.max(now, next.clockNanos() + stoppedNanos);
      next.action().run();
    }
    if (!over()) {
      now = Math.max(now, toNanos);
    }
  }

  /** Takes an input; false if it makes no sense now, and then it changes nothing. */
  boolean apply(StationInput input) {
    advance(input.atNanos());
    if (over()) {
      return false;
    }
    boolean sense =
        switch (input.kind()) {
          case BEGIN -> begin();
          case START -> start(input.detail());
          case DONE -> done(input.detail());
          case ORDER -> order(input.detail());
          case INJECT -> inject(input.detail());
          case CLEAR -> clearByHand(input.detail());
          case CHOOSE -> choose(input.detail());
          case REMARK -> remarks.add(new StationState.Remark(now, input.detail()));
          case STOP_CLOCK -> stopClock();
          case RUN_CLOCK -> runClock();
          case END -> endNow(StationState.End.COMMAND);
        };
    // What follows at once is part of the same moment.
    advance(now);
    return sense;
  }

  boolean over() {
    return phase == StationPhase.ENDED;
  }

  long nowNanos() {
    return now;
  }

  /** When the exercise began, session time; empty before. */
  OptionalLong exerciseSince() {
    return exerciseSince;
  }

  /** Session time at which something falls due next; empty if nothing will by itself. */
  OptionalLong nextDue() {
    return over() || stopped || items.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(items.peek().clockNanos() + stoppedNanos);
  }

  List<StationState.Line> lines() {
    return lines;
  }

  List<StationState.Told> told() {
    return told;
  }

  private long clockAt(long sessionNanos) {
    return (stopped ? stoppedAt : sessionNanos) - stoppedNanos;
  }

  private long clock() {
    return clockAt(now);
  }

  private void at(long clockNanos, Runnable action) {
    items.add(new Item(clockNanos, numbers++, action));
  }

  private boolean begin() {
    if (phase != StationPhase.PREPARATION) {
      return false;
    }
    beginExercise();
    return true;
  }

  private void beginExercise() {
    if (phase != StationPhase.PREPARATION) {
      return;
    }
    phase = StationPhase.EXERCISE;
    long from = clock();
    exerciseFrom = OptionalLong.of(from);
    exerciseSince = OptionalLong.of(now);
    ways.settleWhatIsSeenAtOnce();
    anchor(TimeLimit.Anchor.EXERCISE, "");
    for (StationFinding finding : station.findings()) {
      if (finding.atStart()) {
        raise(finding.id());
      }
    }
    for (StationBranch branch : station.branches()) {
      for (StationBranch.Way way : branch.ways()) {
        if (ways.takes(new BranchOption(branch.id(), way.id()))) {
          way.findings().forEach(this::raise);
        }
      }
    }
    timedSteps(StationPhase.EXERCISE, from);
    // Last, so that what falls due with the end still comes.
    at(from + station.exerciseNanos(), () -> endNow(StationState.End.CLOCK));
  }

  private void timedSteps(StationPhase of, long from) {
    for (ScriptStep step : station.steps()) {
      Trigger when = step.when();
      boolean timed = when.kind() == Trigger.Kind.TIME && when.phase() == of;
      if (timed && ways.setup().timedSteps()) {
        at(from + when.nanos() + step.delayNanos(), () -> take(step));
      }
    }
  }

  private boolean endNow(StationState.End how) {
    for (StationTask task : station.tasks()) {
      Mark mark = marks.get(task.id());
      if (mark != null && !mark.done.isPresent()) {
        mark.done = OptionalLong.of(clock());
      }
    }
    for (StationTask task : station.tasks()) {
      if (task.critical() && needed(task) && !marks.containsKey(task.id())) {
        faults.add(new StationState.Fault(now, task.id(), "Not done: " + task.words(), true));
      }
    }
    phase = StationPhase.ENDED;
    end = Optional.of(how);
    return true;
  }

  private boolean stopClock() {
    if (stopped) {
      return false;
    }
    stopped = true;
    stoppedAt = now;
    return true;
  }

  private boolean runClock() {
    if (!stopped) {
      return false;
    }
    stoppedNanos += now - stoppedAt;
    stopped = false;
    return true;
  }

  private Optional<StationTask> open(String taskId) {
    return station
        .task(taskId)
        .filter(t -> ways.exists(t.only()))
        .filter(
            t ->
                phase == StationPhase.EXERCISE
                    || (phase == t.phase() && !t.phase().equals(StationPhase.ENDED)));
  }

  private boolean start(String taskId) {
    Optional<StationTask> task = open(taskId).filter(StationTask::lasts);
    if (!task.isPresent() || marks.containsKey(taskId)) {
      return false;
    }
    beginTask(task.get(), true);
    return true;
  }

  private boolean done(String taskId) {
    Optional<StationTask> found = open(taskId);
    if (!found.isPresent()) {
      return false;
    }
    StationTask task = found.get();
    if (!marks.containsKey(taskId)) {
      beginTask(task, false);
    }
    Mark mark = marks.get(taskId);
    if (mark.done.isPresent()) {
      return false;
    }
    finish(task, mark);
    return true;
  }

  private void finish(StationTask task, Mark mark) {
    String taskId = task.id();
    mark.done = OptionalLong.of(clock());
    if (lengthOf(task, mark) == TaskState.Length.SHORT) {
      commit(CriticalFault.Rule.TOO_SHORT, taskId);
    }
    if (task.oxygen() && !oxygenFrom.isPresent()) {
      oxygenFrom = OptionalLong.of(clock());
      oxygenSince = now;
    }
    anchor(TimeLimit.Anchor.TASK, taskId);
    trigger(Trigger.Kind.TASK, taskId);
  }

  /** There is one rhythm at a time. What a finding cuts short is not the trainee's fault. */
  private void endOtherPaced(StationTask task) {
    for (StationTask other : station.tasks()) {
      Mark mark = marks.get(other.id());
      boolean goesOn = mark != null && !mark.done.isPresent() && other.kind() == TaskKind.PACED;
      if (goesOn && task.kind() == TaskKind.PACED && !other.equals(task)) {
        mark.cutShort = !task.ifFinding().isEmpty();
        finish(other, mark);
      }
    }
  }

  private void beginTask(StationTask task, boolean timed) {
    ways.settles(task.only());
    endOtherPaced(task);
    Mark mark = new Mark();
    mark.begun = clock();
    mark.timed = timed;
    mark.outOfOrder = !before(task).isEmpty();
    OptionalLong due = due(task);
    mark.late = due.isPresent() && mark.begun > due.getAsLong();
    marks.put(task.id(), mark);
    for (CriticalFault fault : station.faults()) {
      boolean spoils =
          (fault.rule() == CriticalFault.Rule.DONE_WHILE && holding.containsKey(fault.other()))
              || (fault.rule() == CriticalFault.Rule.BEFORE && !marks.containsKey(fault.other()));
      if (spoils && fault.task().equals(task.id())) {
        commit(fault);
      }
    }
    if (timed && task.mostNanos().isPresent()) {
      at(
          mark.begun + task.mostNanos().getAsLong() + 1,
          () -> {
            if (!mark.done.isPresent()) {
              commit(CriticalFault.Rule.TOO_LONG, task.id());
            }
          });
    }
    if (task.lasts()) {
      trigger(Trigger.Kind.STARTED, task.id());
    }
  }

  /** The tasks that must come first and have not been begun. */
  private List<String> before(StationTask task) {
    List<String> missing = new ArrayList<>();
    for (String id : task.after()) {
      Optional<StationTask> earlier = station.task(id);
      earlier.ifPresent(t -> ways.settles(t.only()));
      boolean counts = earlier.filter(this::needed).isPresent();
      if (counts && !marks.containsKey(id)) {
        missing.add(id);
      }
    }
    return missing;
  }

  private boolean order(String orderId) {
    if (phase != StationPhase.EXERCISE || !station.order(orderId).isPresent()) {
      return false;
    }
    for (CriticalFault fault : station.faults()) {
      if (fault.rule() == CriticalFault.Rule.DONE_WHILE
          && fault.task().equals(orderId)
          && holding.containsKey(fault.other())) {
        commit(fault);
      }
    }
    trigger(Trigger.Kind.ORDER, orderId);
    return true;
  }

  private boolean inject(String word) {
    if (phase != StationPhase.EXERCISE || !isLed()) {
      return false;
    }
    if (station.finding(word).isPresent()) {
      return raise(word);
    }
    Optional<ClinicalFinding> clinical =
        ClinicalFinding.of(word).filter(f -> f.concerns(station.group()));
    clinical.ifPresent(f -> told.add(new StationState.Told(now, f, false)));
    return clinical.isPresent();
  }

  private boolean clearByHand(String findingId) {
    return phase == StationPhase.EXERCISE && isLed() && clear(findingId);
  }

  private boolean choose(String words) {
    Optional<StationState.Chosen> way = isLed() ? ways.choose(words, now) : Optional.empty();
    way.ifPresent(chosen::add);
    return way.isPresent();
  }

  private boolean isLed() {
    return ways.setup().mode().hasExaminer();
  }

  private boolean raise(String findingId) {
    if (holding.containsKey(findingId)) {
      return false;
    }
    holding.put(findingId, now);
    if (!cameFirst.containsKey(findingId)) {
      cameFirst.put(findingId, clock());
      anchor(TimeLimit.Anchor.FINDING, findingId);
    }
    trigger(Trigger.Kind.FINDING, findingId);
    return true;
  }

  private boolean clear(String findingId) {
    if (holding.remove(findingId) == null) {
      return false;
    }
    trigger(Trigger.Kind.CLEARED, findingId);
    return true;
  }

  private void trigger(Trigger.Kind kind, String id) {
    for (ScriptStep step : station.steps()) {
      boolean sets = step.when().kind() == kind && step.when().id().equals(id);
      if (sets) {
        at(clock() + step.delayNanos(), () -> take(step));
      }
    }
  }

  /** Takes a step if its conditions hold. Only orders, which people give, can take one again. */
  private void take(ScriptStep step) {
    boolean again = step.when().kind() == Trigger.Kind.ORDER;
    boolean ready =
        ways.settles(step.only())
            && holding.keySet().containsAll(step.holding())
            && step.absent().stream().noneMatch(holding::containsKey);
    if (!ready || (!taken.add(step.id()) && !again)) {
      return;
    }
    if (!step.says().isEmpty()) {
      lines.add(new StationState.Line(now, step.id(), step.says()));
    }
    step.tells().ifPresent(f -> told.add(new StationState.Told(now, f, false)));
    step.clears().forEach(this::clear);
    step.raises().forEach(this::raise);
  }

  /** Starts the times that count from something that has just happened. */
  private void anchor(TimeLimit.Anchor anchor, String id) {
    for (CriticalFault fault : station.faults()) {
      if (fault.limit().isPresent() && fault.limit().get().from() == anchor) {
        TimeLimit limit = fault.limit().get();
        if (limit.id().equals(id)) {
          at(clock() + limit.nanos() + 1, () -> timeIsUp(fault));
        }
      }
    }
  }

  private void timeIsUp(CriticalFault fault) {
    boolean needed = station.task(fault.task()).filter(this::needed).isPresent();
    if (needed && !marks.containsKey(fault.task())) {
      commit(fault);
    }
  }

  private void commit(CriticalFault.Rule rule, String taskId) {
    for (CriticalFault fault : station.faults()) {
      if (fault.rule() == rule && fault.task().equals(taskId)) {
        commit(fault);
      }
    }
  }

  private void commit(CriticalFault fault) {
    if (ways.settles(fault.only()) && faulted.add(fault.id())) {
      faults.add(new StationState.Fault(now, fault.id(), fault.words(), false));
    }
  }

  private boolean needed(StationTask task) {
    return ways.exists(task.only())
        && !task.optional()
        && (task.ifFinding().isEmpty() || cameFirst.containsKey(task.ifFinding()));
  }

  private OptionalLong due(StationTask task) {
    if (!task.limit().isPresent()) {
      return task.phase() == StationPhase.PREPARATION ? exerciseFrom : OptionalLong.empty();
    }
    TimeLimit limit = task.limit().get();
    OptionalLong from =
        switch (limit.from()) {
          case EXERCISE -> exerciseFrom;
          case TASK ->
              marks.containsKey(limit.id()) ? marks.get(limit.id()).done : OptionalLong.empty();
          case FINDING ->
              cameFirst.containsKey(limit.id())
                  ? OptionalLong.of(cameFirst.get(limit.id()))
                  : OptionalLong.empty();
        };
    return from.isPresent() ? OptionalLong.of(from.getAsLong() + limit.nanos()) : from;
  }

  private static TaskState.Length lengthOf(StationTask task, Mark mark) {
    if (!mark.timed || !mark.done.isPresent()) {
      return TaskState.Length.NOT_JUDGED;
    }
    long length = mark.done.getAsLong() - mark.begun;
    if (task.leastNanos().isPresent() && length < task.leastNanos().getAsLong()) {
      return mark.cutShort ? TaskState.Length.NOT_JUDGED : TaskState.Length.SHORT;
    }
    boolean tooLong = task.mostNanos().isPresent() && length > task.mostNanos().getAsLong();
    return tooLong ? TaskState.Length.LONG : TaskState.Length.GOOD;
  }

  private TaskState state(StationTask task) {
    OptionalLong due = due(task);
    Mark mark = marks.get(task.id());
    if (mark == null) {
      boolean late = due.isPresent() && clock() > due.getAsLong();
      TaskState.Progress progress;
      if (!needed(task)) {
        progress = TaskState.Progress.NOT_NEEDED;
      } else if (over()) {
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
          late && needed(task),
          OptionalLong.empty(),
          OptionalLong.empty(),
          due,
          OptionalLong.empty());
    }
    OptionalLong length = OptionalLong.empty();
    if (mark.timed) {
      length = OptionalLong.of(mark.done.orElse(clock()) - mark.begun);
    }
    return new TaskState(
        task,
        mark.done.isPresent() ? TaskState.Progress.DONE : TaskState.Progress.RUNNING,
        lengthOf(task, mark),
        mark.outOfOrder,
        mark.late,
        OptionalLong.of(mark.begun),
        mark.done,
        due,
        length);
  }

  /** Where things stand, with what was really said and told. */
  StationState state(List<StationState.Line> said, List<StationState.Told> reallyTold) {
    List<TaskState> tasks = new ArrayList<>();
    boolean complete = true;
    for (StationTask task : station.tasks()) {
      if (ways.exists(task.only())) {
        TaskState state = state(task);
        tasks.add(state);
        complete &=
            state.progress() == TaskState.Progress.DONE
                || state.progress() == TaskState.Progress.NOT_NEEDED;
      }
    }
    List<StationState.Holding> holds = new ArrayList<>();
    holding.forEach(
        (id, since) -> holds.add(new StationState.Holding(station.finding(id).get(), since)));
    return new StationState(
        station,
        ways.setup(),
        openBranches(),
        phase,
        now,
        clock(),
        stopped,
        exerciseFrom,
        phaseLeft(),
        tasks,
        said,
        chosen,
        holds,
        reallyTold,
        faults,
        remarks,
        oxygen(),
        complete,
        end);
  }

  private List<String> openBranches() {
    List<String> open = new ArrayList<>();
    for (StationBranch branch : station.branches()) {
      if (!over() && isLed() && ways.isOpen(branch.id())) {
        open.add(branch.id());
      }
    }
    return open;
  }

  private long phaseLeft() {
    return switch (phase) {
      case PREPARATION -> station.preparationNanos() - clock();
      case EXERCISE -> exerciseFrom.getAsLong() + station.exerciseNanos() - clock();
      case ENDED -> 0;
    };
  }

  private Optional<StationState.OxygenLeft> oxygen() {
    if (!oxygenFrom.isPresent() || !station.oxygen().isPresent()) {
      return Optional.empty();
    }
    StationOxygen oxygen = station.oxygen().get();
    OxygenSupply left = oxygen.supply().after(oxygen.flow(), clock() - oxygenFrom.getAsLong());
    return Optional.of(
        new StationState.OxygenLeft(
            oxygenSince, left.gauge(), left.nanosUntilReserve(oxygen.flow())));
  }
}
