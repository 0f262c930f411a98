package squeezewell.station.file;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Finds what a station's author can hardly have meant: what can never happen. */
final class StationDoubts {
  private final Station station;
  private final List<StationReach> reaches;
  private final List<String> doubts = new ArrayList<>();

  private StationDoubts(Station station) {
    this.station = station;
    this.reaches = StationReach.all(station);
  }

  /** One sentence for each doubt, beginning with what it is about. */
  static List<String> of(Station station) {
    StationDoubts found = new StationDoubts(station);
    found.phases();
    station.findings().forEach(found::finding);
    station.branches().forEach(found::branch);
    station.tasks().forEach(found::task);
    station.orders().forEach(found::order);
    station.steps().forEach(found::step);
    station.faults().forEach(found::fault);
    return List.copyOf(found.doubts);
  }

  private boolean ever(Predicate<StationReach> test) {
    return reaches.stream().anyMatch(test);
  }

  private void doubt(String what, String id, String words) {
    doubts.add(what + " " + id + ": " + words);
  }

  private void phases() {
    boolean tasks = station.tasks().stream().anyMatch(t -> isOf(t, StationPhase.PREPARATION));
    boolean lines =
        station.steps().stream()
            .anyMatch(
                s ->
                    s.when().kind() == Trigger.Kind.TIME
                        && s.when().phase() == StationPhase.PREPARATION);
    if (station.preparationNanos() == 0 && (tasks || lines)) {
      doubt("phase", "preparation", "it is never reached, since it lasts 0 s, but has contents");
    }
    if (station.preparationNanos() > 0 && !tasks && !lines) {
      doubt("phase", "preparation", "nothing happens in it; preparationSeconds 0 leaves it out");
    }
    boolean todo =
        station.tasks().stream().anyMatch(t -> isOf(t, StationPhase.EXERCISE) && !t.optional());
    if (!todo) {
      doubt("phase", "exercise", "no task has to be done in it");
    }
  }

  private static boolean isOf(StationTask task, StationPhase phase) {
    return task.phase() == phase;
  }

  private void finding(StationFinding finding) {
    String id = finding.id();
    if (!ever(r -> r.comes(id))) {
      doubt("finding", id, "nothing makes it come");
    } else if (!finding.lasting() && !ever(r -> r.goes(id))) {
      doubt("finding", id, "nothing can make it go; if that is meant, add \"lasting\": true");
    } else if (finding.lasting() && ever(r -> r.goes(id))) {
      doubt("finding", id, "it is called lasting, but a step makes it go");
    }
  }

  private void branch(StationBranch branch) {
    boolean differs = false;
    for (StationBranch.Way way : branch.ways()) {
      BranchOption option = new BranchOption(branch.id(), way.id());
      Optional<BranchOption> only = Optional.of(option);
      differs |=
          !way.findings().isEmpty()
              || station.tasks().stream().anyMatch(t -> t.only().equals(only))
              || station.steps().stream().anyMatch(s -> s.only().equals(only))
              || station.faults().stream().anyMatch(f -> f.only().equals(only));
      if (way.weight() == 0) {
        doubt(
            "branch",
            branch.id(),
            "chance can never take the way " + way.id() + ", its weight is 0");
      }
    }
    if (!differs) {
      doubt("branch", branch.id(), "all its ways are alike");
    }
  }

  private void task(StationTask task) {
    String id = task.id();
    if (!task.ifFinding().isEmpty()
        && !ever(r -> r.exists(task.only()) && r.comes(task.ifFinding()))) {
      doubt("task", id, "it is never needed, since " + task.ifFinding() + " never comes");
    }
    for (String before : task.after()) {
      if (!ever(r -> r.exists(task.only()) && r.exists(before))) {
        doubt("task", id, "it is never together with " + before + ", after which it comes");
      }
      boolean laterPhase =
          task.phase() == StationPhase.PREPARATION
              && station.task(before).get().phase() == StationPhase.EXERCISE;
      if (laterPhase) {
        doubt("task", id, "it is never in order: it is prepared, but comes after " + before);
      }
    }
    if (task.leastNanos().orElse(0) > station.exerciseNanos()) {
      doubt("task", id, "it can't be long enough before the exercise ends");
    }
    task.limit().ifPresent(limit -> limit(task, limit));
  }

  private void limit(StationTask task, TimeLimit limit) {
    String id = task.id();
    if (!ever(r -> r.exists(task.only()) && r.runs(limit))) {
      doubt("task", id, "its time never begins, since " + limit.id() + " never comes");
    }
    if (limit.nanos() >= station.exerciseNanos()) {
      doubt("task", id, "its time is not up before the exercise ends");
    }
    boolean waits =
        limit.from() == TimeLimit.Anchor.TASK
            && (limit.id().equals(id) || comesAfter(limit.id(), id, new HashSet<>()));
    if (waits) {
      doubt("task", id, "its time begins with " + limit.id() + ", which comes after it");
    }
  }

  private boolean comesAfter(String later, String earlier, Set<String> seen) {
    if (!seen.add(later)) {
      return false;
    }
    List<String> before = station.task(later).get().after();
    return before.contains(earlier)
        || before.stream().anyMatch(id -> comesAfter(id, earlier, seen));
  }

  private void order(StationOrder order) {
    String id = order.id();
    boolean answered =
        station.steps().stream()
                .anyMatch(s -> s.when().kind() == Trigger.Kind.ORDER && s.when().id().equals(id))
            || station.faults().stream().anyMatch(f -> f.task().equals(id));
    if (!answered) {
      doubt("order", id, "nothing follows from it");
    }
  }

  private void step(ScriptStep step) {
    if (!ever(r -> r.isTaken(step))) {
      doubt("step", step.id(), "it can never be taken, since " + why(step));
    }
  }

  private String why(ScriptStep step) {
    Trigger when = step.when();
    String come =
        switch (when.kind()) {
          case TIME ->
              ever(r -> r.comesInTime(step))
                  ? ""
                  : "the " + when.phase().word() + " is over by then";
          case TASK, STARTED -> ever(r -> r.exists(when.id())) ? "" : when.id() + " is never there";
          case ORDER -> "";
          case FINDING -> ever(r -> r.comes(when.id())) ? "" : when.id() + " never comes";
          case CLEARED -> ever(r -> r.goes(when.id())) ? "" : "nothing makes " + when.id() + " go";
        };
    if (!come.isEmpty()) {
      return come;
    }
    for (String holding : step.holding()) {
      if (!ever(r -> r.comes(holding))) {
        return holding + " never comes";
      }
    }
    return "its conditions never hold together, or it would come after the end";
  }

  private void fault(CriticalFault fault) {
    if (!ever(r -> r.canBeCommitted(fault))) {
      doubt("critical fault", fault.id(), "it can never be committed");
    }
  }
}
