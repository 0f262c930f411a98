package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;

/**
 * Runs a station in half seconds, at random, and keeps account of what it did wrong by itself. What
 * is in turn is done in any order, what is nearly due first.
 */
final class RandomTrainee {
  /** What it may do wrong, counted by itself. */
  enum Wrong {
    OVER_VENTILATED,
    INTERRUPTED,
    NEVER_CHECKED,
    SQUEEZED_INTO_IT,
    OTHER
  }

  private static final long HALF = 500_000_000L;
  private static final Set<String> CHECKS =
      Set.of("pulse", "recheck", "recheck-1", "recheck-2", "count", "look");
  private static final Set<String> FULL_MOUTH = Set.of("vomit", "gagging", "fluid", "fluid-again");

  private final Station station;
  private final Random random;
  private final StationRun run;
  private final Set<Wrong> meant = new HashSet<>();
  private final Set<String> omitted = new HashSet<>();
  private final Set<Wrong> did = new HashSet<>();
  private final Map<String, Integer> seenSince = new HashMap<>();
  private final double interval;
  private int half;
  private int busyUntil;
  private String running = "";
  private boolean breathing;
  private int lastBreath = -1;
  private int sinceCare;
  private int fastFor;
  private int cycle;
  private int gapFrom = Integer.MAX_VALUE;
  private int gapHalves;

  RandomTrainee(Station station, long seed) throws Exception {
    this.station = station;
    random = new Random(seed * 31 + station.id().hashCode());
    run =
        new StationRun(
            station,
            StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), seed),
            StationOutput.none());
    // A third does all right, a third one thing wrong, a third up to everything.
    double badness = random.nextDouble() * 0.9;
    int third = random.nextInt(3);
    Wrong one = Wrong.values()[random.nextInt(Wrong.values().length)];
    for (Wrong wrong : Wrong.values()) {
      if (third == 1 ? wrong == one : third == 2 && random.nextDouble() < badness) {
        meant.add(wrong);
      }
    }
    if (meant.contains(Wrong.OTHER)) {
      for (StationTask task : station.tasks()) {
        if (task.kind() != TaskKind.PACED && random.nextDouble() < badness / 3) {
          omitted.add(task.id());
          did.add(Wrong.OTHER);
        }
      }
    }
    if (meant.contains(Wrong.NEVER_CHECKED)) {
      omitted.addAll(CHECKS);
    }
    gapHalves = 70 + random.nextInt(80);
    interval = interval();
  }

  /** In half seconds. Sound ones are those of the guidelines: 10 to 12, 20 to 30, 40 to 60. */
  private double interval() {
    boolean fast = meant.contains(Wrong.OVER_VENTILATED);
    return switch (station.group()) {
      case ADULT -> fast ? 4 + random.nextInt(3) : 10 + random.nextInt(3);
      case CHILD, INFANT -> fast ? 1 + random.nextInt(2) : 4 + random.nextInt(3);
      case NEWBORN -> fast ? 1 : 2 + random.nextInt(2);
    };
  }

  StationState go() {
    while (run.state().phase() != StationPhase.ENDED) {
      long now = half * HALF;
      boolean due = run.nextDueNanos().orElse(Long.MAX_VALUE) <= now;
      if (due || half % 4 == 0) {
        run.advance(now);
      }
      StationState state = run.state();
      if (state.phase() != StationPhase.ENDED) {
        step(state, now);
      }
      half++;
    }
    boolean checked =
        run.state().tasks().stream()
            .anyMatch(t -> CHECKS.contains(t.task().id()) && t.begunNanos().isPresent());
    if (!checked) {
      did.add(Wrong.NEVER_CHECKED);
    }
    return run.state();
  }

  Set<Wrong> did() {
    return did;
  }

  private void step(StationState state, long now) {
    state.findings().forEach(f -> seenSince.putIfAbsent(f.finding().id() + f.sinceNanos(), half));
    if (half >= busyUntil && !running.isEmpty()) {
      run.act(StationAction.DONE, running, now);
      running = "";
      busyUntil = half + 1;
    } else if (half >= busyUntil && !act(state, now) && state.phase() == StationPhase.PREPARATION) {
      run.act(StationAction.BEGIN, "", now);
    }
    if (breathing && running.isEmpty()) {
      breathe(run.state(), now);
    }
  }

  private boolean act(StationState state, long now) {
    List<TaskState> open = new ArrayList<>();
    TaskState first = null;
    for (TaskState task : state.tasks()) {
      if (isNext(state, task)) {
        open.add(task);
        boolean sooner = first == null || due(task) < due(first);
        first = sooner ? task : first;
      }
    }
    if (open.isEmpty()) {
      return false;
    }
    boolean nearlyDue = due(first) - now < 32 * HALF;
    StationTask task = (nearlyDue ? first : open.get(random.nextInt(open.size()))).task();
    if (task.kind() == TaskKind.PACED) {
      breathing = true;
      gapFrom =
          meant.contains(Wrong.INTERRUPTED) ? half + 40 + random.nextInt(200) : Integer.MAX_VALUE;
    } else if (task.kind() == TaskKind.TIMED) {
      long most = task.mostNanos().orElse(20 * HALF) / HALF;
      long least = task.leastNanos().orElse(4 * HALF) / HALF;
      busyUntil = half + (int) (least + random.nextInt((int) (most - least)));
      running = task.id();
      run.act(StationAction.START, running, now);
    } else {
      busyUntil = half + 2 + random.nextInt(3);
      run.act(StationAction.DONE, task.id(), now);
    }
    return true;
  }

  private static long due(TaskState task) {
    return task.dueNanos().orElse(Long.MAX_VALUE / 2);
  }

  private boolean isNext(StationState state, TaskState each) {
    StationTask task = each.task();
    boolean breathsBegin = task.kind() == TaskKind.PACED && breathing;
    boolean early =
        task.hold().isPresent()
            && CHECKS.contains(task.id())
            && due(each) - half * HALF > 40 * HALF
            && task.ifFinding().isEmpty();
    boolean inGap = half >= gapFrom && half < gapFrom + gapHalves && task.lasts();
    return task.phase() == state.phase()
        && each.isToDo()
        && !omitted.contains(task.id())
        && !breathsBegin
        && !early
        && !inGap
        && (state.isInTurn(task) || task.after().stream().anyMatch(omitted::contains));
  }

  private void breathe(StationState state, long now) {
    boolean full = state.findings().stream().anyMatch(f -> FULL_MOUTH.contains(f.finding().id()));
    boolean seen =
        state.findings().stream()
            .anyMatch(f -> f.finding().stopsBreaths() && !f.finding().hidden());
    if (state.holds("breathes-well")) {
      sinceCare = 0;
      return;
    }
    boolean inGap = half >= gapFrom && half < gapFrom + gapHalves;
    boolean waits = seen && !(full && meant.contains(Wrong.SQUEEZED_INTO_IT));
    if (inGap || waits) {
      sinceCare++;
      fastFor = 0;
      lastBreath = -1;
    } else {
      give(state, now);
    }
    // A squeeze of no length: its end is not told, so the gap counts from its start.
    if (sinceCare > 62) {
      did.add(Wrong.INTERRUPTED);
    }
  }

  private void give(StationState state, long now) {
    boolean tube = state.holds("tube-in");
    boolean arrest =
        station.situation() == Situation.ARREST_NO_ADVANCED_AIRWAY
            || state.holds("no-pulse")
            || state.holds("slow-heart");
    boolean fast = meant.contains(Wrong.OVER_VENTILATED);
    boolean inTurns = arrest && !tube && !fast;
    boolean breath;
    if (inTurns) {
      int compressions =
          station.group() == PatientGroup.ADULT
              ? 30
              : station.group() == PatientGroup.NEWBORN ? 3 : 15;
      int breaths = station.group() == PatientGroup.NEWBORN ? 1 : 3;
      int place = cycle++ % (compressions + breaths);
      // Two breaths a second apart, or one.
      breath = place == compressions || place == compressions + 2;
    } else {
      breath = lastBreath < 0 || half - lastBreath >= interval;
    }
    if (breath) {
      fastFor = fast && lastBreath >= 0 ? fastFor + half - lastBreath : 0;
      if (fastFor >= 122) {
        did.add(Wrong.OVER_VENTILATED);
      }
      lastBreath = half;
      noteFullMouth(state);
      run.recorded(StationAction.BREATH, now);
      run.breath(now);
    } else if (arrest) {
      run.recorded(StationAction.COMPRESSION, now);
      if (PacedTurn.next(run.state()).isPresent()) {
        run.breath(now);
      }
    }
    sinceCare = breath || arrest ? 0 : sinceCare + 1;
  }

  private void noteFullMouth(StationState state) {
    for (StationState.Holding holding : state.findings()) {
      String id = holding.finding().id();
      int since = seenSince.getOrDefault(id + holding.sinceNanos(), half);
      if (FULL_MOUTH.contains(id) && half - since > (id.equals("fluid-again") ? 14 : 8)) {
        did.add(Wrong.SQUEEZED_INTO_IT);
      }
    }
  }
}
