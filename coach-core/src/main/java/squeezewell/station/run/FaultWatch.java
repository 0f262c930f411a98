package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import squeezewell.station.file.CriticalFault;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TimeLimit;
import squeezewell.words.Wording;

/** Watches a running station for critical faults; each is committed once. */
final class FaultWatch {
  private static final Wording WORDS = Wording.beside(FaultWatch.class);

  private final Station station;
  private final StationWays ways;
  private final TaskMarks tasks;
  private final StationTime time;
  private final Set<String> committed = new HashSet<>();
  private final List<StationState.Fault> faults = new ArrayList<>();

  FaultWatch(Station station, StationWays ways, TaskMarks tasks, StationTime time) {
    this.station = station;
    this.ways = ways;
    this.tasks = tasks;
    this.time = time;
  }

  /** Those so far, in order. */
  List<StationState.Fault> faults() {
    return faults;
  }

  /**
   * A task was begun.
   *
   * @param holding identifiers of the findings that hold
   */
  void begun(StationTask task, Set<String> holding) {
    for (CriticalFault fault : of(task.id())) {
      boolean spoils =
          (fault.rule() == CriticalFault.Rule.DONE_WHILE && holding.contains(fault.other()))
              || (fault.rule() == CriticalFault.Rule.BEFORE && !tasks.isBegun(fault.other()));
      if (spoils) {
        commit(fault);
      }
    }
  }

  /**
   * Something was ordered.
   *
   * @param holding identifiers of the findings that hold
   */
  void ordered(String orderId, Set<String> holding) {
    for (CriticalFault fault : of(orderId)) {
      if (fault.rule() == CriticalFault.Rule.DONE_WHILE && holding.contains(fault.other())) {
        commit(fault);
      }
    }
  }

  /** A task was too short or has become too long. */
  void lasted(StationTask task, CriticalFault.Rule how) {
    of(task.id()).stream().filter(fault -> fault.rule() == how).forEach(this::commit);
  }

  /** The faults whose time counts from something that happens now. */
  List<CriticalFault> timedFrom(TimeLimit.Anchor anchor, String id) {
    List<CriticalFault> timed = new ArrayList<>();
    for (CriticalFault fault : station.faults()) {
      boolean counts =
          fault
              .limit()
              .filter(limit -> limit.from() == anchor && limit.id().equals(id))
              .isPresent();
      if (counts) {
        timed.add(fault);
      }
    }
    return timed;
  }

  /** The time of a fault is up. */
  void timeIsUp(CriticalFault fault) {
    boolean needed = station.task(fault.task()).filter(tasks::isNeeded).isPresent();
    if (needed && !tasks.isBegun(fault.task())) {
      commit(fault);
    }
  }

  /** The station is over: what is critical and was never begun is a fault by itself. */
  void ended() {
    for (StationTask task : station.tasks()) {
      if (task.critical() && tasks.isNeeded(task) && !tasks.isBegun(task.id())) {
        faults.add(
            new StationState.Fault(
                time.now(), task.id(), WORDS.say("task.missed", task.words()), true));
      }
    }
  }

  private List<CriticalFault> of(String id) {
    List<CriticalFault> found = new ArrayList<>();
    for (CriticalFault fault : station.faults()) {
      if (fault.task().equals(id)) {
        found.add(fault);
      }
    }
    return found;
  }

  private void commit(CriticalFault fault) {
    if (ways.settles(fault.only()) && committed.add(fault.id())) {
      faults.add(new StationState.Fault(time.now(), fault.id(), fault.words(), false));
    }
  }
}
