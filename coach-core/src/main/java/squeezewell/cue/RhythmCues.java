package squeezewell.cue;

import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Tempo;

/** The cues of a rhythm that starts at an origin. Pure. */
final class RhythmCues {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final int LEAD_IN_COUNTS = 2;

  private RhythmCues() {}

  /** Adds the cues with an instant in [from, to), in no particular order. */
  static void add(Rhythm rhythm, long origin, long from, long to, List<Cue> cues) {
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      addCycles(cycle, origin, from, to, cues);
      return;
    }
    rhythm.steadyBreaths().ifPresent(b -> addBreaths(b, origin, from, to, cues));
    rhythm.compressions().ifPresent(c -> addCompressions(c, origin, from, to, cues));
  }

  /** How many counts an interval has: the squeeze, the release, then about one a second. */
  static int countsIn(BreathPlan breaths) {
    long rest = breaths.interval().nanosAt(1) - breaths.inspirationNanos();
    return 1 + (int) Math.max(1, Math.round(rest / NANOS_PER_SECOND));
  }

  private static void addBreaths(BreathPlan plan, long origin, long from, long to, List<Cue> cues) {
    Tempo tempo = plan.interval();
    int counts = countsIn(plan);
    for (long k = Math.max(0, tempo.firstAtOrAfter(from - origin) - 1); ; k++) {
      long squeeze = origin + tempo.nanosAt(k);
      if (squeeze >= to) {
        return;
      }
      long release = squeeze + plan.inspirationNanos();
      long rest = origin + tempo.nanosAt(k + 1) - release;
      put(
          cues,
          from,
          to,
          new Cue(squeeze, CueKind.SQUEEZE, 1, counts, plan.inspirationNanos(), false));
      put(cues, from, to, new Cue(release, CueKind.RELEASE, 2, counts, 0, false));
      for (int count = 3; count <= counts; count++) {
        long at = release + rest * (count - 2) / (counts - 1);
        boolean leadIn = count > counts - LEAD_IN_COUNTS;
        put(cues, from, to, new Cue(at, CueKind.COUNT, count, counts, 0, leadIn));
      }
    }
  }

  private static void addCompressions(
      CompressionPlan plan, long origin, long from, long to, List<Cue> cues) {
    Tempo tempo = plan.tempo();
    for (long k = Math.max(0, tempo.firstAtOrAfter(from - origin)); ; k++) {
      long at = origin + tempo.nanosAt(k);
      if (at >= to) {
        return;
      }
      cues.add(Cue.of(at, CueKind.COMPRESS, (int) (k % Integer.MAX_VALUE) + 1));
    }
  }

  private static void addCycles(
      Rhythm.CompressionCycle plan, long origin, long from, long to, List<Cue> cues) {
    Tempo tempo = plan.compressing().tempo();
    int perCycle = plan.perCycle();
    long pause = plan.pauseNanos();
    for (long c = Math.max(0, plan.cycle().firstAtOrAfter(from - origin) - 1); ; c++) {
      // One rounding only: compressions are counted through, pauses are whole nanoseconds.
      long pauses = c * pause;
      if (origin + tempo.nanosAt(c * perCycle) + pauses >= to) {
        return;
      }
      for (int i = 0; i < perCycle; i++) {
        long at = origin + tempo.nanosAt(c * perCycle + i) + pauses;
        put(cues, from, to, new Cue(at, CueKind.COMPRESS, i + 1, perCycle, 0, false));
      }
      long breathing = origin + tempo.nanosAt((c + 1) * perCycle) + pauses;
      int breaths = plan.breathsPerCycle();
      for (int b = 0; b < breaths; b++) {
        long squeeze = breathing + pause * b / breaths;
        long release = squeeze + plan.inspirationNanos();
        put(
            cues,
            from,
            to,
            new Cue(squeeze, CueKind.SQUEEZE, b + 1, breaths, plan.inspirationNanos(), false));
        put(cues, from, to, new Cue(release, CueKind.RELEASE, b + 1, breaths, 0, false));
      }
    }
  }

  private static void put(List<Cue> cues, long from, long to, Cue cue) {
    if (cue.atNanos() >= from && cue.atNanos() < to) {
      cues.add(cue);
    }
  }
}
