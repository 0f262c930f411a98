package squeezewell.station.file;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What can happen in a station at all, on one choice of ways. It errs on the side of "can": what is
 * not in here can't happen unless an examiner makes it.
 */
final class StationReach {
  private final Station station;
  private final List<BranchOption> ways;
  private final Set<String> atStart = new HashSet<>();
  private final Set<String> comes = new HashSet<>();
  private final Set<String> goes = new HashSet<>();
  private final Set<String> steps = new HashSet<>();

  StationReach(Station station, List<BranchOption> ways) {
    this.station = station;
    this.ways = List.copyOf(ways);
    for (StationFinding finding : station.findings()) {
      if (finding.atStart()) {
        atStart.add(finding.id());
      }
    }
    for (StationBranch branch : station.branches()) {
      for (StationBranch.Way way : branch.ways()) {
        if (ways.contains(new BranchOption(branch.id(), way.id()))) {
          atStart.addAll(way.findings());
        }
      }
    }
    comes.addAll(atStart);
    boolean more = true;
    while (more) {
      more = false;
      for (ScriptStep step : station.steps()) {
        if (!steps.contains(step.id()) && canBeTaken(step)) {
          steps.add(step.id());
          comes.addAll(step.raises());
          goes.addAll(step.clears());
          more = true;
        }
      }
    }
  }

  /** One for each choice of ways. */
  static List<StationReach> all(Station station) {
    List<List<BranchOption>> choices = new ArrayList<>();
    choices.add(List.of());
    for (StationBranch branch : station.branches()) {
      List<List<BranchOption>> longer = new ArrayList<>();
      for (List<BranchOption> choice : choices) {
        for (StationBranch.Way way : branch.ways()) {
          List<BranchOption> next = new ArrayList<>(choice);
          next.add(new BranchOption(branch.id(), way.id()));
          longer.add(next);
        }
      }
      choices = longer;
    }
    List<StationReach> all = new ArrayList<>();
    for (List<BranchOption> choice : choices) {
      all.add(new StationReach(station, choice));
    }
    return all;
  }

  boolean comes(String findingId) {
    return comes.contains(findingId);
  }

  boolean goes(String findingId) {
    return comes(findingId) && goes.contains(findingId);
  }

  boolean isTaken(ScriptStep step) {
    return steps.contains(step.id());
  }

  boolean exists(Optional<BranchOption> only) {
    return !only.isPresent() || ways.contains(only.get());
  }

  boolean exists(String taskId) {
    return station.task(taskId).filter(t -> exists(t.only())).isPresent();
  }

  boolean isNeeded(StationTask task) {
    return exists(task.only())
        && !task.optional()
        && (task.ifFinding().isEmpty() || comes(task.ifFinding()));
  }

  boolean runs(TimeLimit limit) {
    return switch (limit.from()) {
      case EXERCISE, ORDER -> true;
      case TASK -> exists(limit.id()) || exists(limit.otherwise());
      case STARTED -> exists(limit.id());
      case STEP -> steps.contains(limit.id());
      case FINDING -> comes(limit.id());
      case CLEARED -> goes(limit.id());
    };
  }

  boolean canBeBroken(StationRule rule) {
    Optional<StationTask> task = station.task(rule.task());
    boolean there = exists(rule.only()) && (!task.isPresent() || exists(rule.task()));
    boolean runs = rule.limit().map(this::runs).orElse(true);
    long length =
        rule.limit().isPresent()
            ? rule.limit().get().nanos()
            : rule.bounds().nanos().orElse(task.isPresent() ? task.get().mostNanos().orElse(0) : 0);
    return there
        && runs
        && comes.containsAll(rule.bounds().holding())
        && rule.bounds().absent().stream().allMatch(id -> !atStart.contains(id) || goes(id))
        && switch (rule.kind()) {
          case NOT_DONE -> isNeeded(task.get()) && length < station.exerciseNanos();
          case DONE_WHILE, BREATH_WHILE -> comes(rule.other());
          case BEFORE -> exists(rule.other());
          case TOO_LONG, RATE, INTERRUPTION, NO_BREATH, NO_COMPRESSION ->
              length < station.exerciseNanos();
          case TOO_SHORT, BREATHS_WITHOUT -> true;
        };
  }

  private boolean canBeTaken(ScriptStep step) {
    if (!exists(step.only()) || !comes.containsAll(step.holding())) {
      return false;
    }
    for (String absent : step.absent()) {
      if (atStart.contains(absent) && !goes.contains(absent)) {
        return false;
      }
    }
    Trigger when = step.when();
    return switch (when.kind()) {
      case SECONDS -> comesInTime(step);
      case TASK, STARTED -> exists(when.id()) && step.delayNanos() < station.exerciseNanos();
      case ORDER -> step.delayNanos() < station.exerciseNanos();
      case FINDING -> comes(when.id());
      case CLEARED -> goes(when.id());
    };
  }

  /** Whether the time of a timed step comes before its phase is over. */
  boolean comesInTime(ScriptStep step) {
    return step.when().nanos() + step.delayNanos() < length(step.when().phase());
  }

  private long length(StationPhase phase) {
    return phase == StationPhase.PREPARATION ? station.preparationNanos() : station.exerciseNanos();
  }
}
