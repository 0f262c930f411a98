package squeezewell.station.file;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import squeezewell.input.UnknownField;
import squeezewell.words.Wording;

/** Finds what a station's author can hardly have meant: what can never happen. */
final class StationLint {
  private static final Wording WORDS = Wording.beside(StationLint.class);

  private final Station station;
  private final List<StationReach> reaches;
  private final List<String> doubts = new ArrayList<>();

  private StationLint(Station station) {
    this.station = station;
    this.reaches = StationReach.all(station);
  }

  /** One sentence for each doubt, beginning with what it is about. */
  static List<String> of(Station station) {
    StationLint found = new StationLint(station);
    found.phases();
    station.findings().forEach(found::finding);
    station.branches().forEach(found::branch);
    station.tasks().forEach(found::task);
    station.orders().forEach(found::order);
    station.steps().forEach(found::step);
    station.rules().forEach(found::rule);
    return List.copyOf(found.doubts);
  }

  /** The sentence for a field that is from a newer version, or mistyped. */
  static String unknown(UnknownField field) {
    return WORDS.say("doubt.unknown", field.value().path(), field.question());
  }

  private boolean ever(Predicate<StationReach> test) {
    return reaches.stream().anyMatch(test);
  }

  private void doubt(String key, Object... values) {
    doubts.add(WORDS.say(key, values));
  }

  private void phases() {
    boolean tasks = station.tasks().stream().anyMatch(t -> isOf(t, StationPhase.PREPARATION));
    boolean lines =
        station.steps().stream()
            .anyMatch(
                s ->
                    s.when().kind() == Trigger.Kind.SECONDS
                        && s.when().phase() == StationPhase.PREPARATION);
    if (station.preparationNanos() == 0 && (tasks || lines)) {
      doubt("doubt.phase.unreached");
    }
    if (station.preparationNanos() > 0 && !tasks && !lines) {
      doubt("doubt.phase.empty");
    }
    boolean todo =
        station.tasks().stream().anyMatch(t -> isOf(t, StationPhase.EXERCISE) && !t.optional());
    if (!todo) {
      doubt("doubt.phase.without-tasks");
    }
  }

  private static boolean isOf(StationTask task, StationPhase phase) {
    return task.phase() == phase;
  }

  private void finding(StationFinding finding) {
    String id = finding.id();
    if (!ever(r -> r.comes(id))) {
      doubt("doubt.finding.never", id);
    } else if (!finding.lasting() && !ever(r -> r.goes(id))) {
      doubt("doubt.finding.stays", id);
    } else if (finding.lasting() && ever(r -> r.goes(id))) {
      doubt("doubt.finding.goes", id);
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
              || station.rules().stream().anyMatch(f -> f.only().equals(only));
      if (way.weight() == 0) {
        doubt("doubt.branch.weightless", branch.id(), way.id());
      }
    }
    if (!differs) {
      doubt("doubt.branch.alike", branch.id());
    }
  }

  private void task(StationTask task) {
    String id = task.id();
    if (!task.ifFinding().isEmpty()
        && !ever(r -> r.exists(task.only()) && r.comes(task.ifFinding()))) {
      doubt("doubt.task.unneeded", id, task.ifFinding());
    }
    for (String before : task.after()) {
      if (!ever(r -> r.exists(task.only()) && r.exists(before))) {
        doubt("doubt.task.never-together", id, before);
      }
      boolean laterPhase =
          task.phase() == StationPhase.PREPARATION
              && station.task(before).get().phase() == StationPhase.EXERCISE;
      if (laterPhase) {
        doubt("doubt.task.never-in-order", id, before);
      }
    }
    if (task.leastNanos().orElse(0) > station.exerciseNanos()) {
      doubt("doubt.task.too-long", id);
    }
    task.limit().ifPresent(limit -> limit(task, limit));
  }

  private void limit(StationTask task, TimeLimit limit) {
    String id = task.id();
    if (!ever(r -> r.exists(task.only()) && r.runs(limit))) {
      doubt("doubt.task.no-time", id, limit.id());
    }
    if (limit.nanos() >= station.exerciseNanos()) {
      doubt("doubt.task.time-not-up", id);
    }
    boolean waits =
        limit.from() == TimeLimit.Anchor.TASK
            && (limit.id().equals(id) || comesAfter(limit.id(), id, new HashSet<>()));
    if (waits) {
      doubt("doubt.task.time-circle", id, limit.id());
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
            || station.rules().stream().anyMatch(f -> f.task().equals(id));
    if (!answered) {
      doubt("doubt.order.idle", id);
    }
  }

  private void step(ScriptStep step) {
    if (ever(r -> r.isTaken(step))) {
      return;
    }
    Trigger when = step.when();
    boolean comes =
        switch (when.kind()) {
          case SECONDS -> ever(r -> r.comesInTime(step));
          case TASK, STARTED -> ever(r -> r.exists(when.id()));
          case ORDER -> true;
          case FINDING -> ever(r -> r.comes(when.id()));
          case CLEARED -> ever(r -> r.goes(when.id()));
        };
    Optional<String> lacking =
        step.holding().stream().filter(holding -> !ever(r -> r.comes(holding))).findFirst();
    if (!comes) {
      String cause = when.kind() == Trigger.Kind.SECONDS ? when.phase().word() : when.id();
      doubt("doubt.step." + when.kind().word(), step.id(), cause);
    } else if (lacking.isPresent()) {
      doubt("doubt.step.finding", step.id(), lacking.get());
    } else {
      doubt("doubt.step.conditions", step.id());
    }
  }

  private void rule(StationRule rule) {
    if (!ever(r -> r.canBeBroken(rule))) {
      boolean critical = rule.severity() == StationRule.Severity.CRITICAL;
      doubt(critical ? "doubt.fault.never" : "doubt.rule.never", rule.id());
    }
    if (rule.kind().readsBreaths() && rule.source().isEmpty()) {
      doubt("doubt.rule.no-source", rule.id());
    }
  }
}
