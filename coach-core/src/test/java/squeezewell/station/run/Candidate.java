package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import squeezewell.input.BadInputException;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.SessionEvent;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;

/**
 * Does a station as it should be done, second by second, save for one planted fault: the next task
 * in turn is done at once; breaths go on meanwhile.
 */
public final class Candidate {
  public static final long SECOND = 1_000_000_000L;

  final StationRun run;
  final Facts facts = new Facts();
  private final Set<String> omitted = new HashSet<>();
  private final Map<String, Long> lengths = new HashMap<>();
  private final Map<String, String> rash = new HashMap<>();
  private boolean optionalToo;
  private boolean hasty;
  private boolean delays;
  private Consumer<StationState> each = state -> {};
  private long now;
  private long lastBreath = -1;

  Candidate(Station station, List<BranchOption> ways) {
    try {
      run =
          new StationRun(station, StationSetup.of(station, StationMode.INSTRUCTOR, ways, 1), facts);
    } catch (BadInputException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** Never does that task. */
  Candidate omitting(String taskId) {
    omitted.add(taskId);
    return this;
  }

  /** Takes so long for that task. */
  Candidate taking(String taskId, long nanos) {
    lengths.put(taskId, nanos);
    return this;
  }

  /** Does what need not be done, too. */
  Candidate doingOptional(boolean too) {
    optionalToo = too;
    return this;
  }

  /** Does that task or order as soon as the finding holds. */
  Candidate rashly(String taskId, String findingId) {
    rash.put(findingId, taskId);
    return this;
  }

  /** Ends the station as soon as all is done. */
  Candidate hastily() {
    hasty = true;
    return this;
  }

  /** Places adjuncts as late as their limits allow. */
  Candidate delayingAdjuncts() {
    delays = true;
    return this;
  }

  private boolean waits(TaskState task) {
    return delays
        && task.task().asksForBreaths()
        && task.dueNanos().isPresent()
        && task.dueNanos().getAsLong() - run.state().clockNanos() > SECOND;
  }

  /** Shows somebody where things stand, once a second, after what is done in it. */
  Candidate watchedBy(Consumer<StationState> watcher) {
    each = watcher;
    return this;
  }

  /** Goes on until all is done, or until the clock ends it. */
  StationState go() {
    while (run.state().phase() != StationPhase.ENDED) {
      StationState state = run.state();
      rash.forEach(
          (finding, task) -> {
            if (state.holds(finding) && !run.start(task, now) && !run.done(task, now)) {
              run.order(task, now);
            }
          });
      if (state.phase() == StationPhase.EXERCISE
          && state.complete()
          && (hasty || nothingComes(state))) {
        run.end(now);
        break;
      }
      if (!finishOne() && !beginOne() && state.phase() == StationPhase.PREPARATION) {
        run.begin(now);
      }
      squeezeOrCompress(run.state());
      each.accept(run.state());
      now += SECOND;
      run.advance(now);
    }
    return run.state();
  }

  /** A breath every 6, 3 or 2 s by age; without a pulse a compression in the seconds between. */
  private void squeezeOrCompress(StationState state) {
    boolean begun = false;
    for (TaskState task : state.tasks()) {
      boolean running = task.progress() == TaskState.Progress.RUNNING;
      if (running && task.task().kind() == TaskKind.TIMED) {
        return;
      }
      begun |= task.task().kind() == TaskKind.PACED && task.begunNanos().isPresent();
    }
    boolean held =
        state.holds("breathes-well")
            || state.findings().stream()
                .anyMatch(f -> f.finding().stopsBreaths() && !f.finding().hidden());
    if (!begun || held) {
      return;
    }
    PatientGroup group = state.station().group();
    long every = group == PatientGroup.ADULT ? 6 : group == PatientGroup.NEWBORN ? 2 : 3;
    boolean breath = lastBreath < 0 || now - lastBreath >= every * SECOND;
    boolean arrest =
        state.station().situation() == Situation.ARREST_NO_ADVANCED_AIRWAY
            || state.holds("no-pulse")
            || state.holds("slow-heart");
    if (breath) {
      lastBreath = now;
      facts.fact(new Fact.Squeeze(EventType.BREATH), now);
      run.recorded(StationAction.BREATH, now);
    } else if (arrest) {
      facts.fact(new Fact.Plain(EventType.COMPRESSION), now);
      run.recorded(StationAction.COMPRESSION, now);
    }
  }

  /** Something may still be called for; an experienced candidate waits for it. */
  private boolean nothingComes(StationState state) {
    return !run.nextDueNanos().isPresent() || state.phaseLeftNanos() < 5 * SECOND;
  }

  private boolean finishOne() {
    boolean busy = false;
    for (TaskState task : run.state().tasks()) {
      if (task.progress() == TaskState.Progress.RUNNING) {
        String id = task.task().id();
        long usual = Math.max(task.task().leastNanos().orElse(0), SECOND);
        if (task.lengthNanos().getAsLong() >= lengths.getOrDefault(id, usual)) {
          run.done(id, now);
        }
        busy |= task.task().kind() == TaskKind.TIMED;
      }
    }
    return busy;
  }

  private boolean beginOne() {
    for (TaskState task : run.state().tasks()) {
      boolean extra =
          optionalToo && task.task().optional() && task.progress() == TaskState.Progress.NOT_NEEDED;
      boolean todo =
          extra
              || task.progress() == TaskState.Progress.OPEN
              || task.progress() == TaskState.Progress.DUE
              || task.progress() == TaskState.Progress.LATE;
      boolean next =
          task.task().phase() == run.state().phase()
              && todo
              && !omitted.contains(task.task().id())
              && !waits(task)
              && inTurn(task.task())
              && !(task.task().kind() == TaskKind.PACED
                  && task.task().ifFinding().isEmpty()
                  && paced());
      if (next) {
        return task.task().lasts()
            ? run.start(task.task().id(), now)
            : run.done(task.task().id(), now);
      }
    }
    return false;
  }

  private boolean paced() {
    return run.state().tasks().stream()
        .anyMatch(
            t -> t.task().kind() == TaskKind.PACED && t.progress() == TaskState.Progress.RUNNING);
  }

  private boolean inTurn(StationTask task) {
    if (task.id().equals("nasal") && breathsAreTooShort("ventilate")) {
      return false;
    }
    for (String before : task.after()) {
      boolean ready =
          omitted.contains(before)
              || run.state()
                  .task(before)
                  .map(
                      t ->
                          t.begunNanos().isPresent()
                              || t.progress() == TaskState.Progress.NOT_NEEDED)
                  .orElse(true);
      if (!ready) {
        return false;
      }
    }
    return true;
  }

  /** What is placed next would end them. */
  private boolean breathsAreTooShort(String taskId) {
    return run.state()
        .task(taskId)
        .filter(t -> t.progress() == TaskState.Progress.RUNNING)
        .filter(t -> t.lengthNanos().getAsLong() < t.task().leastNanos().orElse(0))
        .isPresent();
  }

  List<SessionEvent> events() {
    return new ArrayList<>(facts.events);
  }
}
