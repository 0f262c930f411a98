package squeezewell.desktop.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import squeezewell.kit.Pressure;
import squeezewell.kit.PressureUnit;
import squeezewell.report.Words;
import squeezewell.station.StationOrder;
import squeezewell.station.StationPhase;
import squeezewell.station.StationState;
import squeezewell.station.StationTask;
import squeezewell.station.TaskKind;
import squeezewell.station.TaskState;

/**
 * What the screen of a running station says at one instant. Pure.
 *
 * @param phase the phase, and whose turn it is
 * @param left what is left of the phase, as a clock
 * @param leftUrgent whether it is nearly over
 * @param bar the one time that presses most
 * @param barFill how much of it is used up, 0 to 1
 * @param barUrgent whether it is nearly or wholly used up
 * @param examiner what the examiner said last; empty if nothing yet
 * @param examinerWhen when that was, and how to take it
 * @param next what is expected next; empty if nothing is
 * @param items what can be tapped, in order
 * @param oxygen what is left of the oxygen, in words; empty before it flows
 * @param oxygenUrgent whether it is nearly used up
 */
record StationRunView(
    String phase,
    String left,
    boolean leftUrgent,
    String bar,
    double barFill,
    boolean barUrgent,
    String examiner,
    String examinerWhen,
    Optional<Item> next,
    List<Item> items,
    String oxygen,
    boolean oxygenUrgent) {
  /** The key of what is expected next. */
  static final char NEXT_KEY = 'N';

  /** Letters that a practice leaves free, after the digits and but for the key of what is next. */
  static final String LETTERS = "ABDEGHIJKLOQRTUVWXY";

  private static final String KEYS = "123456789" + LETTERS;
  private static final char NO_KEY = '\0';
  private static final long SECOND = 1_000_000_000L;

  /** So long before its end a time presses (our own choice). */
  private static final long NOTICE_NANOS = 5 * SECOND;

  /** A task that must begin within this time is what is expected next (our own choice). */
  private static final long NEXT_NOTICE_NANOS = 10 * SECOND;

  /** A task's time is shown on the bar so long before it runs out (our own choice). */
  private static final long LIMIT_NOTICE_NANOS = 60 * SECOND;

  /** So long before the end of a phase its clock is marked (our own choice). */
  private static final long PHASE_NOTICE_NANOS = 30 * SECOND;

  /** So long before its end oxygen is warned of (our own choice). */
  private static final long OXYGEN_NOTICE_NANOS = 120 * SECOND;

  StationRunView {
    items = List.copyOf(items);
  }

  /** What tapping an item does. */
  enum Kind {
    TASK,
    ORDER,
    BEGIN
  }

  /**
   * Something to tap.
   *
   * @param kind what tapping does
   * @param id identifier of the task or order; empty for the beginning
   * @param words what it is
   * @param key the key that taps it; 0 if it has none
   * @param status how it stands, in words; never by colour alone
   * @param on whether it runs or presses
   * @param done whether it is done
   */
  record Item(
      Kind kind, String id, String words, char key, String status, boolean on, boolean done) {
    /** The key as written on a button; empty if it has none. */
    String keyName() {
      return key == NO_KEY ? "" : String.valueOf(key);
    }
  }

  /** The view of a station at an instant of session time. */
  static StationRunView of(StationState state, long nowNanos) {
    long passed = state.clockStopped() ? 0 : Math.max(0, nowNanos - state.nowNanos());
    long clock = state.clockNanos() + passed;
    long phaseLeft = Math.max(0, state.phaseLeftNanos() - passed);
    List<Item> items = items(state, clock);
    Bar bar = bar(state, clock, phaseLeft, nowNanos);
    StationState.Line line =
        state.lines().isEmpty() ? null : state.lines().get(state.lines().size() - 1);
    Optional<StationState.Holding> brought = brought(state, line == null ? 0 : line.atNanos());
    long oxygen = oxygenLeft(state, nowNanos);
    return new StationRunView(
        state.phase().label() + ", " + who(state),
        Phrases.clockLeft(phaseLeft),
        state.phase() == StationPhase.EXERCISE && phaseLeft <= PHASE_NOTICE_NANOS,
        bar.text(),
        bar.fill(),
        bar.urgent(),
        brought.map(f -> f.finding().words() + ".").orElse(line == null ? "" : line.words()),
        brought
            .map(f -> "Found, at " + Words.clock(f.sinceNanos()))
            .orElse(line == null ? "" : "Examiner, at " + Words.clock(line.atNanos())),
        next(state, items, clock),
        items,
        oxygenWords(state, oxygen),
        state.oxygen().isPresent() && oxygen <= OXYGEN_NOTICE_NANOS);
  }

  /**
   * The last finding that came after the examiner's last words, where a person makes findings come:
   * the script has no words for it then. What holds from the start is left to be found.
   */
  private static Optional<StationState.Holding> brought(StationState state, long saidNanos) {
    if (!state.setup().mode().hasExaminer()) {
      return Optional.empty();
    }
    return state.findings().stream()
        .filter(f -> f.sinceNanos() > saidNanos)
        .filter(f -> !f.finding().hidden() && !f.finding().atStart())
        .filter(
            f ->
                state.station().branches().stream()
                    .flatMap(b -> b.ways().stream())
                    .noneMatch(w -> w.findings().contains(f.finding().id())))
        .reduce((first, later) -> later);
  }

  private static String who(StationState state) {
    return switch (state.setup().mode()) {
      case ALONE -> "alone";
      case PARTNER -> "your partner taps";
      case INSTRUCTOR -> "led by an instructor";
    };
  }

  /** What a first press of Finish says. */
  static String finishWarning(StationState state) {
    long open =
        state.tasks().stream()
            .filter(t -> t.progress() != TaskState.Progress.DONE)
            .filter(t -> t.progress() != TaskState.Progress.NOT_NEEDED)
            .count();
    if (open == 0) {
      return breathsLeft(state)
          .map(t -> t + ". Finish again ends the station.")
          .orElse("The station is not over. Finish again ends it.");
    }
    return Phrases.counted((int) open, "task") + " not done. Finish again ends the station.";
  }

  /** For how long breaths still have to be given with an adjunct that is in; empty if no longer. */
  static Optional<String> breathsLeft(StationState state) {
    return state.tasks().stream()
        .filter(t -> t.breathsLeftNanos() > 0)
        .findFirst()
        .map(
            t ->
                "Breathe on: "
                    + Phrases.clockLeft(t.breathsLeftNanos())
                    + " more with the "
                    + t.task().adjunct().get().label());
  }

  /** What is next, with a word that says whether it goes on already. */
  static String lead(Item item) {
    return item.kind() == Kind.BEGIN
        ? item.words()
        : (isRunning(item) ? "Now: " : "Next: ") + item.words();
  }

  /** Whether it has been begun and is not done. */
  static boolean isRunning(Item item) {
    return item.on() && item.status().startsWith("running");
  }

  /** The item of a key. */
  Optional<Item> item(char key) {
    return key == NEXT_KEY
        ? next
        : items.stream().filter(i -> i.key() == key && key != NO_KEY).findFirst();
  }

  private static List<Item> items(StationState state, long clock) {
    List<Item> items = new ArrayList<>();
    boolean preparing = state.phase() == StationPhase.PREPARATION;
    int place = 0;
    for (StationTask each : state.station().tasks()) {
      // One of a way that is not taken keeps its key, since the way may be chosen yet.
      boolean here = preparing == (each.phase() == StationPhase.PREPARATION);
      Optional<TaskState> found = state.task(each.id());
      if (!here && (preparing || !found.isPresent() || !leftOver(state, found.get()))) {
        continue;
      }
      char key = key(place++);
      if (found.isPresent() && offered(found.get())) {
        TaskState task = found.get();
        items.add(
            new Item(
                Kind.TASK,
                task.task().id(),
                task.task().words(),
                key,
                status(task, clock),
                task.progress() == TaskState.Progress.RUNNING
                    || task.progress() == TaskState.Progress.LATE,
                task.progress() == TaskState.Progress.DONE));
      }
    }
    if (!preparing) {
      for (StationOrder order : state.station().orders()) {
        items.add(
            new Item(Kind.ORDER, order.id(), order.words(), key(place++), "order", false, false));
      }
    }
    return items;
  }

  /** What was left out of the preparation can be made good; then it stays, so that no key moves. */
  private static boolean leftOver(StationState state, TaskState task) {
    return task.doneNanos().isEmpty()
        || task.doneNanos().getAsLong() >= state.exerciseFromNanos().orElse(0);
  }

  private static char key(int place) {
    return place < KEYS.length() ? KEYS.charAt(place) : NO_KEY;
  }

  /**
   * A task that a finding calls for is not shown before, since that would give the finding away.
   */
  private static boolean offered(TaskState task) {
    return task.progress() != TaskState.Progress.NOT_NEEDED
        || task.begunNanos().isPresent()
        || task.task().ifFinding().isEmpty();
  }

  private static String status(TaskState task, long clock) {
    if (task.progress() == TaskState.Progress.RUNNING && task.begunNanos().isPresent()) {
      boolean paced = task.task().kind() == TaskKind.PACED;
      long length = paced ? task.lengthNanos().orElse(0) : clock - task.begunNanos().getAsLong();
      String of =
          paced && task.task().leastNanos().isPresent()
              ? " of " + Words.clock(task.task().leastNanos().getAsLong())
              : "";
      return "running " + Words.clock(length) + of;
    }
    if (task.breathsLeftNanos() > 0) {
      return "in, breathe " + Phrases.clockLeft(task.breathsLeftNanos()) + " more";
    }
    if (task.progress() == TaskState.Progress.DUE && task.dueNanos().isPresent()) {
      return "within " + Phrases.clockLeft(Math.max(0, task.dueNanos().getAsLong() - clock));
    }
    if (task.progress() == TaskState.Progress.NOT_NEEDED) {
      return task.task().optional() ? "if it is right here" : task.word();
    }
    if (task.progress() == TaskState.Progress.OPEN) {
      return task.task().kind() == TaskKind.TIMED ? "tap to begin" : "";
    }
    return task.word();
  }

  private static Optional<Item> next(StationState state, List<Item> items, long clock) {
    for (TaskState task : state.tasks()) {
      if (task.progress() == TaskState.Progress.RUNNING && task.task().kind() == TaskKind.TIMED) {
        return find(items, task.task());
      }
    }
    boolean preparing = state.phase() == StationPhase.PREPARATION;
    Optional<TaskState> expected = expected(state, t -> presses(t, clock));
    if (!expected.isPresent()) {
      expected = expected(state, t -> true);
    }
    if (expected.isPresent()) {
      return find(items, expected.get().task());
    }
    return preparing
        ? Optional.of(
            new Item(Kind.BEGIN, "", "Begin the exercise", NEXT_KEY, "all is ready", false, false))
        : Optional.empty();
  }

  /** The first task to be done, in the station's order, whose turn it is. */
  private static Optional<TaskState> expected(StationState state, Predicate<TaskState> which) {
    boolean preparing = state.phase() == StationPhase.PREPARATION;
    return state.tasks().stream()
        .filter(
            t ->
                t.progress() == TaskState.Progress.OPEN
                    || t.progress() == TaskState.Progress.DUE
                    || t.progress() == TaskState.Progress.LATE)
        .filter(t -> !preparing || t.task().phase() == StationPhase.PREPARATION)
        .filter(t -> !t.task().optional() && state.isInTurn(t.task()))
        .filter(which)
        .findFirst();
  }

  /** What is late or nearly so comes before what has no time. */
  private static boolean presses(TaskState task, long clock) {
    return task.progress() == TaskState.Progress.LATE
        || (task.progress() == TaskState.Progress.DUE
            && task.dueNanos().orElse(Long.MAX_VALUE) - clock <= NEXT_NOTICE_NANOS);
  }

  private static Optional<Item> find(List<Item> items, StationTask task) {
    return items.stream().filter(i -> i.id().equals(task.id())).findFirst();
  }

  private record Bar(String text, double fill, boolean urgent) {}

  private static Bar bar(StationState state, long clock, long phaseLeft, long nowNanos) {
    if (state.phase() == StationPhase.ENDED) {
      return new Bar("The station is over", 1, false);
    }
    if (state.clockStopped()) {
      return new Bar("The clock is stopped", 0, true);
    }
    for (TaskState task : state.tasks()) {
      if (task.progress() == TaskState.Progress.RUNNING && task.task().kind() == TaskKind.TIMED) {
        return running(task, clock);
      }
    }
    long oxygen = oxygenLeft(state, nowNanos);
    if (state.oxygen().isPresent() && oxygen <= OXYGEN_NOTICE_NANOS) {
      return new Bar(
          oxygen <= 0
              ? "Oxygen: the reserve is reached"
              : "Oxygen for " + Words.clock(oxygen) + " more",
          1 - (double) Math.max(0, oxygen) / OXYGEN_NOTICE_NANOS,
          true);
    }
    return limit(state, clock)
        .orElseGet(
            () ->
                new Bar(
                    state.phase().label() + " ends in " + Phrases.clockLeft(phaseLeft),
                    used(state, phaseLeft),
                    phaseLeft <= NOTICE_NANOS));
  }

  private static double used(StationState state, long phaseLeft) {
    long whole =
        state.phase() == StationPhase.PREPARATION
            ? state.station().preparationNanos()
            : state.station().exerciseNanos();
    return whole == 0 ? 0 : 1 - (double) phaseLeft / whole;
  }

  /** The time of a task that is going on, against the most and the least it may take. */
  private static Bar running(TaskState task, long clock) {
    long since = clock - task.begunNanos().orElse(clock);
    String words = name(task) + ": " + since / SECOND + " s";
    if (task.task().mostNanos().isPresent()) {
      long most = task.task().mostNanos().getAsLong();
      String range =
          task.task().leastNanos().isPresent()
              ? Phrases.seconds(task.task().leastNanos().getAsLong()) + " to "
              : "at most ";
      return since >= most
          ? new Bar(name(task) + " over " + Phrases.seconds(most) + " s: end it", 1, true)
          : new Bar(
              words + ", " + range + Phrases.seconds(most) + " s",
              (double) since / most,
              most - since <= Math.min(NOTICE_NANOS, most / 3));
    }
    return new Bar(words, 0, false);
  }

  private static String name(TaskState task) {
    return task.task()
        .hold()
        .map(h -> Phrases.capital(h.word().replace('-', ' ').toLowerCase(Locale.ROOT)))
        .orElse(task.task().words());
  }

  /** The task whose time runs out first, or the first that is late. */
  private static Optional<Bar> limit(StationState state, long clock) {
    TaskState first = null;
    for (TaskState task : state.tasks()) {
      boolean presses =
          task.dueNanos().isPresent()
              && (task.progress() == TaskState.Progress.DUE
                  || task.progress() == TaskState.Progress.LATE);
      boolean sooner =
          presses && (first == null || task.dueNanos().getAsLong() < first.dueNanos().getAsLong());
      if (sooner && offered(task)) {
        first = task;
      }
    }
    if (first == null || first.dueNanos().getAsLong() - clock > LIMIT_NOTICE_NANOS) {
      return Optional.empty();
    }
    long left = first.dueNanos().getAsLong() - clock;
    return Optional.of(
        left <= 0
            ? new Bar("Late: " + first.task().words(), 1, true)
            : new Bar(
                Phrases.clockLeft(left) + " left to begin: " + first.task().words(),
                0,
                left <= NOTICE_NANOS));
  }

  private static long oxygenLeft(StationState state, long nowNanos) {
    long passed = state.clockStopped() ? 0 : Math.max(0, nowNanos - state.nowNanos());
    return state.oxygen().map(o -> o.leftNanos() - passed).orElse(0L);
  }

  /** Gauges are marked in either unit. */
  private static String gauge(Pressure pressure) {
    return pressure.in(PressureUnit.PSI, 0).toPlainString()
        + " psi ("
        + pressure.in(PressureUnit.BAR, 0).toPlainString()
        + " bar)";
  }

  private static String oxygenWords(StationState state, long left) {
    if (!state.oxygen().isPresent()) {
      return "";
    }
    return left <= 0
        ? "Oxygen: reserve reached"
        : "Oxygen " + gauge(state.oxygen().get().gauge()) + ", " + Words.clock(left) + " left";
  }
}
