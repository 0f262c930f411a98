package squeezewell.station;

import static java.util.stream.Collectors.toSet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import squeezewell.input.BadInputException;
import squeezewell.input.Nearest;

/** Checks that every identifier of a station file is given once and leads somewhere. */
final class StationLinks {
  private final String source;
  private final FaultList faults;
  private final Set<String> unsure;
  private final Set<String> findings = new LinkedHashSet<>();
  private final Map<String, StationTask> tasks = new HashMap<>();
  private final Set<String> orders = new LinkedHashSet<>();
  private final Set<BranchOption> ways = new HashSet<>();

  /**
   * @param unsure tasks of which something could not be read, so that what follows from it is not
   *     told as another fault
   */
  StationLinks(String source, FaultList faults, List<String> unsure) {
    this.unsure = Set.copyOf(unsure);
    this.source = source;
    this.faults = faults;
  }

  void check(
      List<StationFinding> allFindings,
      List<StationTask> allTasks,
      List<StationOrder> allOrders,
      List<StationBranch> branches,
      List<ScriptStep> steps,
      List<CriticalFault> critical) {
    for (int i = 0; i < allFindings.size(); i++) {
      once(findings, allFindings.get(i).id(), "findings[" + i + "].id");
    }
    Set<String> taskIds = new HashSet<>();
    for (int i = 0; i < allTasks.size(); i++) {
      once(taskIds, allTasks.get(i).id(), "tasks[" + i + "].id");
      tasks.putIfAbsent(allTasks.get(i).id(), allTasks.get(i));
    }
    for (int i = 0; i < allOrders.size(); i++) {
      once(orders, allOrders.get(i).id(), "orders[" + i + "].id");
    }
    checkBranches(branches);
    for (int i = 0; i < allTasks.size(); i++) {
      checkTask(allTasks.get(i), "tasks[" + i + "]");
    }
    Set<String> stepIds = new HashSet<>();
    for (int i = 0; i < steps.size(); i++) {
      once(stepIds, steps.get(i).id(), "script[" + i + "].id");
      checkStep(steps.get(i), "script[" + i + "]");
    }
    Set<String> faultIds = new HashSet<>();
    for (int i = 0; i < critical.size(); i++) {
      once(faultIds, critical.get(i).id(), "criticalFaults[" + i + "].id");
      checkCritical(critical.get(i), "criticalFaults[" + i + "]");
    }
    checkOrder(allTasks);
  }

  private void checkBranches(List<StationBranch> branches) {
    Set<String> ids = new HashSet<>();
    for (int i = 0; i < branches.size(); i++) {
      StationBranch branch = branches.get(i);
      String place = "branches[" + i + "]";
      once(ids, branch.id(), place + ".id");
      Set<String> own = new HashSet<>();
      for (int j = 0; j < branch.ways().size(); j++) {
        StationBranch.Way way = branch.ways().get(j);
        once(own, way.id(), place + ".options[" + j + "].id");
        ways.add(new BranchOption(branch.id(), way.id()));
        findings(way.findings(), place + ".options[" + j + "].findings");
      }
    }
  }

  private void checkTask(StationTask task, String place) {
    for (String before : task.after()) {
      task(before, place + ".after");
    }
    task.limit().ifPresent(limit -> limit(limit, place + ".limit"));
    if (!task.ifFinding().isEmpty()) {
      finding(task.ifFinding(), place + ".ifFinding");
    }
    only(task.only(), place);
  }

  private void checkStep(ScriptStep step, String place) {
    switch (step.when().kind()) {
      case TIME -> {
        // A time leads nowhere.
      }
      case TASK -> task(step.when().id(), place + ".when.task");
      case STARTED -> lasting(step.when().id(), place + ".when.started");
      case ORDER -> require(orders, step.when().id(), place + ".when.order", "an order");
      case FINDING -> finding(step.when().id(), place + ".when.finding");
      case CLEARED -> finding(step.when().id(), place + ".when.cleared");
    }
    findings(step.holding(), place + ".while");
    findings(step.absent(), place + ".unless");
    findings(step.raises(), place + ".raises");
    findings(step.clears(), place + ".clears");
    only(step.only(), place);
  }

  private void checkCritical(CriticalFault fault, String place) {
    switch (fault.rule()) {
      case NOT_DONE -> task(fault.task(), place + ".task");
      case DONE_WHILE -> {
        if (!tasks.containsKey(fault.task()) && !orders.contains(fault.task())) {
          bad(place + ".task", fault.task(), "a task or an order of this file");
        }
        if (tasks.containsKey(fault.task()) && orders.contains(fault.task())) {
          bad(place + ".task", fault.task(), "a name that is not both a task and an order");
        }
        finding(fault.other(), place + ".finding");
      }
      case BEFORE -> {
        task(fault.task(), place + ".task");
        task(fault.other(), place + ".other");
        if (fault.task().equals(fault.other())) {
          bad(place + ".other", fault.other(), "another task");
        }
      }
      case TOO_LONG -> {
        lasting(fault.task(), place + ".task");
        if (isSure(fault.task()) && !tasks.get(fault.task()).mostNanos().isPresent()) {
          bad(place + ".task", fault.task(), "a task with mostSeconds");
        }
      }
      case TOO_SHORT -> {
        lasting(fault.task(), place + ".task");
        if (isSure(fault.task()) && !tasks.get(fault.task()).leastNanos().isPresent()) {
          bad(place + ".task", fault.task(), "a task with leastSeconds");
        }
      }
    }
    fault.limit().ifPresent(limit -> limit(limit, place + ".limit"));
    only(fault.only(), place);
  }

  private void limit(TimeLimit limit, String place) {
    if (limit.from() == TimeLimit.Anchor.TASK) {
      task(limit.id(), place + ".fromTask");
    } else if (limit.from() == TimeLimit.Anchor.FINDING) {
      finding(limit.id(), place + ".fromFinding");
    }
  }

  /** A task that must come after itself can't be done in order. */
  private void checkOrder(List<StationTask> all) {
    Set<String> told = new HashSet<>();
    for (int i = 0; i < all.size(); i++) {
      List<String> circle = circle(all.get(i).id(), all.get(i).id(), new ArrayList<>());
      if (!circle.isEmpty() && told.addAll(circle)) {
        faults.add(
            BadInputException.fault(
                source,
                "tasks[" + i + "].after",
                "a task comes after itself: "
                    + String.join(" after ", circle)
                    + "; allowed: an order without a circle"));
      }
    }
  }

  /** The tasks from one back to the goal, each after the next; empty if there is no such way. */
  private List<String> circle(String from, String goal, List<String> seen) {
    if (!tasks.containsKey(from) || seen.contains(from)) {
      return List.of();
    }
    seen.add(from);
    for (String before : tasks.get(from).after()) {
      if (before.equals(goal)) {
        return List.of(from, goal);
      }
      List<String> rest = circle(before, goal, seen);
      if (!rest.isEmpty()) {
        List<String> whole = new ArrayList<>();
        whole.add(from);
        whole.addAll(rest);
        return whole;
      }
    }
    return List.of();
  }

  private void once(Set<String> seen, String id, String place) {
    // An identifier that could not be read is a fault already.
    if (!seen.add(id) && !id.isEmpty()) {
      bad(place, id, "an identifier that nothing else of its kind has");
    }
  }

  private void task(String id, String place) {
    require(tasks.keySet(), id, place, "a task");
  }

  private void lasting(String id, String place) {
    task(id, place);
    if (isSure(id) && !tasks.get(id).lasts()) {
      bad(place, id, "a timed or paced task");
    }
  }

  private boolean isSure(String taskId) {
    return tasks.containsKey(taskId) && !unsure.contains(taskId);
  }

  private void finding(String id, String place) {
    require(findings, id, place, "a finding");
  }

  private void findings(List<String> ids, String place) {
    ids.forEach(id -> finding(id, place));
  }

  private void only(Optional<BranchOption> only, String place) {
    if (only.isPresent() && !ways.contains(only.get())) {
      bad(
          place + ".only",
          only.get().branch() + ", " + only.get().option(),
          "a branch of this file and one of its ways"
              + Nearest.question(
                  only.get().words(), ways.stream().map(BranchOption::words).collect(toSet())));
    }
  }

  private void require(Set<String> known, String id, String place, String what) {
    if (!known.contains(id) && !id.isEmpty()) {
      bad(place, id, what + " of this file" + Nearest.question(id, known));
    }
  }

  private void bad(String place, String value, String allowed) {
    faults.add(BadInputException.notAllowed(source, place, value, allowed));
  }
}
