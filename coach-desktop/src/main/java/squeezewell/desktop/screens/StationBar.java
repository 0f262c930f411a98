package squeezewell.desktop.screens;

import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.TaskKind;
import squeezewell.station.run.StationState;
import squeezewell.station.run.TaskState;
import squeezewell.words.Quantities;

/** Picks the one time of a running station that presses most. Pure. */
final class StationBar {
  private static final long SECOND = 1_000_000_000L;

  /** So long before its end a time presses (our own choice). */
  private static final long NOTICE_NANOS = 5 * SECOND;

  /** A task's time is shown on the bar so long before it runs out (our own choice). */
  private static final long LIMIT_NOTICE_NANOS = 60 * SECOND;

  /** So long before its end oxygen is warned of (our own choice). */
  private static final long OXYGEN_NOTICE_NANOS = 120 * SECOND;

  private StationBar() {}

  /**
   * The bar of a station.
   *
   * @param clock what the station's clock shows
   * @param phaseLeft what is left of the phase
   * @param nowNanos session time
   */
  static BarLine of(StationState state, long clock, long phaseLeft, long nowNanos) {
    if (state.phase() == StationPhase.ENDED) {
      return new BarLine("The station is over", 1, false);
    }
    if (state.clockStopped()) {
      return new BarLine("The clock is stopped", 0, true);
    }
    for (TaskState task : state.tasks()) {
      if (task.progress() == TaskState.Progress.RUNNING && task.task().kind() == TaskKind.TIMED) {
        return running(task, clock);
      }
    }
    long oxygen = oxygenLeft(state, nowNanos);
    if (oxygenPresses(state, nowNanos)) {
      return new BarLine(
          oxygen <= 0
              ? "Oxygen: the reserve is reached"
              : "Oxygen for " + Quantities.clock(oxygen) + " more",
          1 - (double) Math.max(0, oxygen) / OXYGEN_NOTICE_NANOS,
          true);
    }
    return limit(state, clock)
        .orElseGet(
            () ->
                new BarLine(
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
  private static BarLine running(TaskState task, long clock) {
    long since = clock - task.begunNanos().orElse(clock);
    String words = name(task) + ": " + since / SECOND + " s";
    if (task.task().mostNanos().isPresent()) {
      long most = task.task().mostNanos().getAsLong();
      String range =
          task.task().leastNanos().isPresent()
              ? Phrases.seconds(task.task().leastNanos().getAsLong()) + " to "
              : "at most ";
      return since >= most
          ? new BarLine(name(task) + " over " + Phrases.seconds(most) + " s: end it", 1, true)
          : new BarLine(
              words + ", " + range + Phrases.seconds(most) + " s",
              (double) since / most,
              most - since <= Math.min(NOTICE_NANOS, most / 3));
    }
    return new BarLine(words, 0, false);
  }

  private static String name(TaskState task) {
    return task.task()
        .hold()
        .map(h -> Phrases.capital(h.word().replace('-', ' ').toLowerCase(Locale.ROOT)))
        .orElse(task.task().words());
  }

  /** The task whose time runs out first, or the first that is late. */
  private static Optional<BarLine> limit(StationState state, long clock) {
    return state.tasks().stream()
        .filter(
            t -> t.progress() == TaskState.Progress.DUE || t.progress() == TaskState.Progress.LATE)
        .filter(t -> t.dueNanos().isPresent() && StationItems.offered(t))
        .min(Comparator.comparingLong(t -> t.dueNanos().getAsLong()))
        .filter(first -> first.dueNanos().getAsLong() - clock <= LIMIT_NOTICE_NANOS)
        .map(first -> limit(first, first.dueNanos().getAsLong() - clock));
  }

  private static BarLine limit(TaskState task, long left) {
    return left <= 0
        ? new BarLine("Late: " + task.task().words(), 1, true)
        : new BarLine(
            Phrases.clockLeft(left) + " left to begin: " + task.task().words(),
            0,
            left <= NOTICE_NANOS);
  }

  /** What is left of the oxygen at an instant of session time; 0 before it flows. */
  static long oxygenLeft(StationState state, long nowNanos) {
    long passed = state.clockStopped() ? 0 : Math.max(0, nowNanos - state.nowNanos());
    return state.oxygen().map(o -> o.leftNanos() - passed).orElse(0L);
  }

  /** Whether the oxygen is nearly used up. */
  static boolean oxygenPresses(StationState state, long nowNanos) {
    return state.oxygen().isPresent() && oxygenLeft(state, nowNanos) <= OXYGEN_NOTICE_NANOS;
  }
}
