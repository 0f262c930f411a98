package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.protocol.PatientChange;
import squeezewell.session.Fact;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.ScriptStep;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationFinding;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;
import squeezewell.station.file.TimeLimit;
import squeezewell.station.file.Trigger;

/**
 * Walks through a station: time passes, inputs come, the script answers. It is deterministic, so
 * that the same inputs at the same times always lead to the same place. What falls due at the very
 * instant of an input comes before it.
 */
final class StationEngine {
  private final Station station;
  private final StationWays ways;
  private final StationTime time = new StationTime();
  private final Ventilation ventilation;
  private final TaskMarks tasks;
  private final BreathLog log;
  private final RuleWatch rules;
  private final Map<String, Long> holding = new LinkedHashMap<>();
  private final Set<String> taken = new HashSet<>();
  private final List<ScriptStep> toCome = new ArrayList<>();
  private final List<StationState.Line> lines = new ArrayList<>();
  private final List<StationState.Told> told = new ArrayList<>();
  private final List<StationState.Chosen> chosen = new ArrayList<>();
  private final List<StationState.Remark> remarks = new ArrayList<>();
  private final List<StationState.Changed> changed = new ArrayList<>();
  private final List<StationState.Brought> brought = new ArrayList<>();
  private StationPhase phase = StationPhase.PREPARATION;
  private Optional<StationState.End> end = Optional.empty();
  private OptionalLong exerciseSince = OptionalLong.empty();
  private Optional<OxygenFlow> oxygen = Optional.empty();

  StationEngine(Station station, StationSetup setup) {
    this.station = station;
    this.ways = new StationWays(station, setup);
    this.ventilation = new Ventilation(station);
    this.tasks = new TaskMarks(station, ways, ventilation);
    this.log = new BreathLog(station, tasks);
    this.rules = new RuleWatch(station, ways, tasks, log, time);
    at(station.preparationNanos(), this::beginExercise);
    timedSteps(StationPhase.PREPARATION, 0);
    advance(0);
  }

  /** Lets time pass, up to and including an instant. */
  void advance(long toNanos) {
    time.advance(toNanos, this::over);
  }

  /** Takes an input; false if it makes no sense now, and then it changes nothing. */
  boolean apply(StationInput input) {
    advance(input.atNanos());
    if (over() && input.action() != StationAction.MARK) {
      return false;
    }
    settleBreaths();
    boolean sense =
        switch (input.action()) {
          case BEGIN -> begin();
          case START -> start(input.words());
          case DONE -> done(input.words());
          case ORDER -> order(input.words());
          case INJECT -> inject(input.words());
          case CLEAR -> clearByHand(input.words());
          case CHOOSE -> choose(input.words());
          case REMARK -> remarks.add(new StationState.Remark(time.now(), input.words()));
          case BREATH, COMPRESSION -> breath(input);
          case BREATH_END -> log.breathEnd(breathClock(input.atNanos()));
          case STOP_CLOCK -> time.stop();
          case RUN_CLOCK -> time.run();
          case END -> endNow(StationState.End.COMMAND);
          case RETRACT -> log.retract();
          case MARK -> mark(Fact.MarkChange.parse(input.words()), input.atNanos());
          // Whoever runs the station walks again without what was a slip.
          case UNDO -> false;
        };
    // What follows at once is part of the same moment.
    advance(time.now());
    return sense;
  }

  boolean over() {
    return phase == StationPhase.ENDED;
  }

  long nowNanos() {
    return time.now();
  }

  /** When the exercise began, session time; empty before. */
  OptionalLong exerciseSince() {
    return exerciseSince;
  }

  /** Session time at which something falls due next; empty if nothing will by itself. */
  OptionalLong nextDue() {
    return over() ? OptionalLong.empty() : time.nextDue();
  }

  List<StationState.Line> lines() {
    return lines;
  }

  List<StationState.Told> told() {
    return told;
  }

  /** The script goes on from what was marked: what was said and came about did so. */
  private boolean mark(Optional<Fact.MarkChange> change, long atNanos) {
    boolean sense = change.filter(c -> isLed() && tasks.change(c, log)).isPresent();
    if (sense) {
      changed.add(new StationState.Changed(atNanos, change.get()));
    }
    return sense;
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
    long from = time.clock();
    tasks.exerciseBegins(from);
    exerciseSince = OptionalLong.of(time.now());
    ways.settleWhatIsSeenAtOnce();
    log.patient(from, ventilation.patient());
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
      boolean timed = when.kind() == Trigger.Kind.SECONDS && when.phase() == of;
      if (timed && ways.setup().timedSteps()) {
        later(step, from + when.nanos());
      }
    }
  }

  private boolean endNow(StationState.End how) {
    tasks.end(time.clock());
    phase = StationPhase.ENDED;
    end = Optional.of(how);
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
    if (!task.isPresent() || tasks.isBegun(taskId)) {
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
    if (!tasks.isBegun(taskId)) {
      beginTask(task, false);
    }
    if (tasks.isDone(taskId)) {
      return false;
    }
    finish(task, false);
    return true;
  }

  private void finish(StationTask task, boolean byFinding) {
    String taskId = task.id();
    tasks.finish(task, time.clock(), byFinding);
    if (task.oxygen() && !oxygen.isPresent()) {
      oxygen = station.oxygen().map(o -> new OxygenFlow(o, time.clock(), time.now()));
    }
    anchor(TimeLimit.Anchor.TASK, taskId);
    trigger(Trigger.Kind.TASK, taskId);
  }

  /** There is one rhythm at a time. What a finding cuts short is not the trainee's fault. */
  private void endOtherPaced(StationTask task) {
    for (StationTask other : station.tasks()) {
      boolean goesOn = tasks.isRunning(other.id()) && other.kind() == TaskKind.PACED;
      if (goesOn && task.kind() == TaskKind.PACED && !other.equals(task)) {
        finish(other, !task.ifFinding().isEmpty());
      }
    }
  }

  private void beginTask(StationTask task, boolean timed) {
    ways.settles(task.only());
    endOtherPaced(task);
    tasks.begin(task, time.clock(), timed, holding.keySet());
    anchor(TimeLimit.Anchor.STARTED, task.id());
    if (task.lasts()) {
      trigger(Trigger.Kind.STARTED, task.id());
    }
  }

  private boolean order(String orderId) {
    if (phase != StationPhase.EXERCISE || !station.order(orderId).isPresent()) {
      return false;
    }
    anchor(TimeLimit.Anchor.ORDER, orderId);
    rules.ordered(orderId, time.clock(), holding.keySet());
    trigger(Trigger.Kind.ORDER, orderId);
    return true;
  }

  private boolean inject(String word) {
    if (phase != StationPhase.EXERCISE || !isLed()) {
      return false;
    }
    Optional<StationFinding> finding = station.finding(word);
    if (finding.isPresent()) {
      return raise(word) && bring(finding.get().words(), true);
    }
    Optional<PatientChange> clinical =
        PatientChange.of(word).filter(f -> f.concerns(station.group()));
    clinical.ifPresent(this::tell);
    return clinical.isPresent() && bring(clinical.get().label(), true);
  }

  private boolean bring(String words, boolean comes) {
    return brought.add(new StationState.Brought(time.now(), words, comes));
  }

  private boolean clearByHand(String findingId) {
    return phase == StationPhase.EXERCISE
        && isLed()
        && clear(findingId)
        && bring(station.finding(findingId).get().words(), false);
  }

  private boolean choose(String words) {
    Optional<StationState.Chosen> way = isLed() ? ways.choose(words, time.now()) : Optional.empty();
    way.ifPresent(chosen::add);
    return way.isPresent();
  }

  private boolean breath(StationInput input) {
    boolean counts = phase == StationPhase.EXERCISE;
    if (counts) {
      long clock = breathClock(input.atNanos());
      ventilation.breath(clock);
      log.given(clock, input.action() == StationAction.BREATH, holding.keySet());
    }
    return counts;
  }

  private long breathClock(long atNanos) {
    return time.clockAt(Math.min(atNanos, time.now()));
  }

  private boolean isLed() {
    return ways.setup().mode().hasExaminer();
  }

  private boolean raise(String findingId) {
    if (holding.containsKey(findingId)) {
      return false;
    }
    holding.put(findingId, time.now());
    anchor(TimeLimit.Anchor.FINDING, findingId);
    log.raised(findingId, time.clock());
    trigger(Trigger.Kind.FINDING, findingId);
    return true;
  }

  private boolean clear(String findingId) {
    if (holding.remove(findingId) == null) {
      return false;
    }
    anchor(TimeLimit.Anchor.CLEARED, findingId);
    log.cleared(findingId, time.clock());
    trigger(Trigger.Kind.CLEARED, findingId);
    return true;
  }

  private void tell(PatientChange finding) {
    told.add(new StationState.Told(time.now(), finding, false));
    ventilation.find(finding);
    log.patient(time.clock(), ventilation.patient());
  }

  /** Lets something be done at a time on the station's clock. */
  private void at(long clockNanos, Runnable action) {
    time.at(
        clockNanos,
        () -> {
          settleBreaths();
          action.run();
        });
  }

  /** Counts the breaths' time under what held until now; so it comes before whatever changes. */
  private void settleBreaths() {
    boolean stopped =
        holding.keySet().stream().anyMatch(id -> station.finding(id).get().stopsBreaths());
    boolean exercise = phase == StationPhase.EXERCISE;
    ventilation.settle(time.clock(), exercise && !stopped && tasks.breathsGoOn());
  }

  private void trigger(Trigger.Kind kind, String id) {
    for (ScriptStep step : station.steps()) {
      boolean sets = step.when().kind() == kind && step.when().id().equals(id);
      if (sets) {
        later(step, time.clock());
      }
    }
  }

  private void later(ScriptStep step, long fromClockNanos) {
    toCome.add(step);
    at(
        fromClockNanos + step.delayNanos(),
        () -> {
          toCome.remove(step);
          take(step);
        });
  }

  /** Whether something is on its way that changes what has to be done, as things are now. */
  private boolean moreComes() {
    return toCome.stream()
        .filter(s -> !s.raises().isEmpty() || s.tells().isPresent())
        .anyMatch(s -> ways.exists(s.only()) && !taken.contains(s.id()) && holds(s));
  }

  private boolean holds(ScriptStep step) {
    return holding.keySet().containsAll(step.holding())
        && step.absent().stream().noneMatch(holding::containsKey);
  }

  /** Takes a step if its conditions hold. Only orders, which people give, can take one again. */
  private void take(ScriptStep step) {
    boolean again = step.when().kind() == Trigger.Kind.ORDER;
    boolean ready = ways.settles(step.only()) && holds(step);
    if (!ready || (!taken.add(step.id()) && !again)) {
      return;
    }
    anchor(TimeLimit.Anchor.STEP, step.id());
    if (!step.says().isEmpty()) {
      lines.add(new StationState.Line(time.now(), step.id(), step.says()));
    }
    step.tells().ifPresent(this::tell);
    step.clears().forEach(this::clear);
    step.raises().forEach(this::raise);
  }

  /** Starts the times that count from something that has just happened. */
  private void anchor(TimeLimit.Anchor anchor, String id) {
    tasks.instant(anchor, id, time.clock());
  }

  /** Where things stand, with what was really said and told. */
  StationState state(List<StationState.Line> said, List<StationState.Told> toldOf) {
    settleBreaths();
    List<TaskState> states = new ArrayList<>();
    // What a clock that ran out left behind can't come any more.
    boolean complete = end.filter(StationState.End.CLOCK::equals).isPresent() || !moreComes();
    for (StationTask task : station.tasks()) {
      if (ways.exists(task.only())) {
        states.add(tasks.state(task, time.clock()));
        complete &= tasks.isComplete(task);
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
        time.now(),
        time.clock(),
        time.isStopped(),
        tasks.exerciseFrom(),
        phaseLeft(),
        states,
        ventilation.all(),
        said,
        chosen,
        holds,
        toldOf,
        rules.faults(time.clock(), over()),
        remarks,
        changed,
        brought,
        oxygen.map(flow -> flow.leftAt(time.clock())),
        log.isUnrecorded(),
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
      case PREPARATION -> station.preparationNanos() - time.clock();
      case EXERCISE -> tasks.exerciseFrom().getAsLong() + station.exerciseNanos() - time.clock();
      case ENDED -> 0;
    };
  }
}
