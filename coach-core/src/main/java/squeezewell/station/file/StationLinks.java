package squeezewell.station.file;

import static java.util.stream.Collectors.toSet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.JsonValue;
import squeezewell.input.Nearest;

/** Checks that every identifier of a station file is given once and leads somewhere. */
final class StationLinks {
  private final String source;
  private final Faults faults;
  private final Identifiers findings;
  private final Identifiers taskIds;
  private final Identifiers orders;
  private final Identifiers stepIds;
  private final Map<String, StationTask> tasks = new HashMap<>();
  private final Set<BranchOption> ways = new HashSet<>();

  /** Tasks of which something could not be read. */
  private final Set<String> unsure;

  /** Identifiers of several tasks, or of one that could not be read. */
  private final Set<String> shared = new HashSet<>();

  private final Set<String> ruleIds = new HashSet<>();
  private final int branchesListed;

  /** Whether a way could not be read or shares its identifiers, so that none is known to lack. */
  private boolean aWayIsMissing;

  /**
   * @param top the whole file
   * @param unsure tasks of which something could not be read, so that what follows from it is not
   *     told as another fault
   */
  StationLinks(JsonValue top, Faults faults, Set<String> unsure) {
    this.source = top.source();
    this.findings = Identifiers.of(top, "findings");
    this.taskIds = Identifiers.of(top, "tasks");
    this.orders = Identifiers.of(top, "orders");
    this.stepIds = Identifiers.of(top, "script");
    this.faults = faults;
    this.unsure = unsure;
    this.branchesListed =
        new Faults()
            .take(() -> top.has("branches") ? top.list("branches", 0, "").size() : 0)
            .orElse(-1);
  }

  void check(
      List<StationFinding> findingList,
      List<StationBranch> branches,
      List<StationOrder> orderList,
      List<StationTask> taskList,
      List<ScriptStep> steps) {
    each("findings", findingList, (finding, place) -> {});
    shared.addAll(each("tasks", taskList, (task, place) -> tasks.putIfAbsent(task.id(), task)));
    each("orders", orderList, (order, place) -> {});
    aWayIsMissing = branches.size() != branchesListed;
    boolean aBranchIsRepeated = !each("branches", branches, this::checkBranch).isEmpty();
    aWayIsMissing |= aBranchIsRepeated;
    for (int i = 0; i < taskList.size(); i++) {
      checkTask(taskList.get(i), "tasks[" + i + "]");
    }
    each("script", steps, this::checkStep);
    checkOrder(taskList);
  }

  /** To be called after the rest, since rules lead there. */
  void check(String list, List<StationRule> rules) {
    for (int i = 0; i < rules.size(); i++) {
      String id = rules.get(i).id();
      if (!ruleIds.add(id) && !id.isEmpty()) {
        bad(list + "[" + i + "].id", id, "an identifier that nothing else of its kind has");
      }
      checkRule(rules.get(i), list + "[" + i + "]");
    }
  }

  /**
   * Checks the entries of a list, the identifier of each first.
   *
   * @return identifiers that several of them have, or one that could not be read
   */
  private <T extends StationEntry> Set<String> each(
      String list, List<T> entries, BiConsumer<T, String> check) {
    Set<String> seen = new HashSet<>();
    Set<String> repeated = new HashSet<>();
    for (int i = 0; i < entries.size(); i++) {
      String place = list + "[" + i + "]";
      String id = entries.get(i).id();
      boolean first = seen.add(id);
      // An identifier that could not be read is a fault already.
      if (!first && !id.isEmpty()) {
        bad(place + ".id", id, "an identifier that nothing else of its kind has");
      }
      if (!first || id.isEmpty()) {
        repeated.add(id);
      }
      check.accept(entries.get(i), place);
    }
    return repeated;
  }

  private void checkBranch(StationBranch branch, String place) {
    Set<String> repeated =
        each(
            place + ".options",
            branch.ways(),
            (way, at) -> {
              ways.add(new BranchOption(branch.id(), way.id()));
              findings(way.findings(), at + ".findings");
            });
    aWayIsMissing |= !repeated.isEmpty();
  }

  private void checkTask(StationTask task, String place) {
    task.after().forEach(before -> task(before, place + ".after"));
    task.limit().ifPresent(limit -> limit(limit, place + ".limit"));
    if (!task.ifFinding().isEmpty()) {
      finding(task.ifFinding(), place + ".ifFinding");
    }
    only(task.only(), place);
  }

  private void checkStep(ScriptStep step, String place) {
    switch (step.when().kind()) {
      case SECONDS -> {
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

  private void checkRule(StationRule fault, String place) {
    switch (fault.kind()) {
      case NOT_DONE -> task(fault.task(), place + ".task");
      case DONE_WHILE -> {
        if (!taskIds.mayHave(fault.task())
            && !orders.mayHave(fault.task())
            && !fault.task().isEmpty()) {
          bad(place + ".task", fault.task(), "a task or an order of this file");
        }
        if (taskIds.given().contains(fault.task()) && orders.given().contains(fault.task())) {
          bad(place + ".task", fault.task(), "a name that is not both a task and an order");
        }
        finding(fault.other(), place + ".finding");
      }
      case BEFORE -> {
        task(fault.task(), place + ".task");
        task(fault.other(), place + ".other");
        if (fault.task().equals(fault.other()) && !fault.task().isEmpty()) {
          bad(place + ".other", fault.other(), "another task");
        }
      }
      case TOO_LONG -> bound(fault, place, StationTask::mostNanos, "mostSeconds");
      case TOO_SHORT -> bound(fault, place, StationTask::leastNanos, "leastSeconds");
      case BREATHS_WITHOUT -> task(fault.task(), place + ".task");
      case BREATH_WHILE -> finding(fault.other(), place + ".finding");
      case RATE, INTERRUPTION, NO_BREATH, NO_COMPRESSION -> {
        // They lead nowhere but by their limit.
      }
    }
    findings(fault.bounds().holding(), place + ".while");
    findings(fault.bounds().absent(), place + ".unless");
    fault.limit().ifPresent(limit -> limit(limit, place + ".limit"));
    only(fault.only(), place);
  }

  private void bound(
      StationRule rule, String place, Function<StationTask, OptionalLong> bound, String name) {
    boolean lasts = lasting(rule.task(), place + ".task");
    boolean ownBound = rule.bounds().nanos().isPresent();
    if (lasts && !ownBound && !bound.apply(tasks.get(rule.task())).isPresent()) {
      bad(place + ".task", rule.task(), "a task with " + name);
    }
  }

  private void limit(TimeLimit limit, String place) {
    String at = place + "." + limit.from().field();
    switch (limit.from()) {
      case EXERCISE -> {
        // The start leads nowhere.
      }
      case TASK -> task(limit.id(), at);
      case STARTED -> lasting(limit.id(), at);
      case STEP -> require(stepIds, limit.id(), at, "a step");
      case FINDING, CLEARED -> finding(limit.id(), at);
      case ORDER -> require(orders, limit.id(), at, "an order");
    }
    task(limit.otherwise(), place + ".elseFromTask");
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
    if (!tasks.containsKey(from) || shared.contains(from) || seen.contains(from)) {
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

  private void task(String id, String place) {
    require(taskIds, id, place, "a task");
  }

  /** Whether it is a task that has a length; false too where that is not known. */
  private boolean lasting(String id, String place) {
    task(id, place);
    boolean sure = isSure(id);
    boolean lasts = sure && tasks.get(id).lasts();
    if (sure && !lasts) {
      bad(place, id, "a timed or paced task");
    }
    return lasts;
  }

  private boolean isSure(String taskId) {
    return tasks.containsKey(taskId) && !unsure.contains(taskId) && !shared.contains(taskId);
  }

  private void finding(String id, String place) {
    require(findings, id, place, "a finding");
  }

  private void findings(List<String> ids, String place) {
    ids.forEach(id -> finding(id, place));
  }

  private void only(Optional<BranchOption> only, String place) {
    if (only.isPresent() && !ways.contains(only.get()) && !aWayIsMissing) {
      bad(
          place + ".only",
          only.get().branch() + ", " + only.get().option(),
          "a branch of this file and one of its ways"
              + Nearest.question(
                  only.get().words(), ways.stream().map(BranchOption::words).collect(toSet())));
    }
  }

  private void require(Identifiers known, String id, String place, String what) {
    if (!known.mayHave(id) && !id.isEmpty()) {
      bad(place, id, what + " of this file" + Nearest.question(id, known.given()));
    }
  }

  private void bad(String place, String value, String allowed) {
    faults.add(BadInputException.notAllowed(source, place, value, allowed));
  }
}
