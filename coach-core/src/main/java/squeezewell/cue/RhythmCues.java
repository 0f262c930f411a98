package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.LongStream;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Tempo;

/** The cues of a rhythm that starts at an origin. Pure. */
final class RhythmCues {
  private static final double NANOS_PER_SECOND = 1e9;
  private static final int LEAD_IN_COUNTS = 2;

  private RhythmCues() {}

  /**
   * Adds the cues of a paced stretch, or the compressions of one of suction, with an instant in
   * [from, to), in no particular order.
   */
  static void add(Segment segment, long from, long to, List<Cue> cues) {
    Rhythm rhythm = segment.guidance().rhythm();
    long origin = segment.originNanos();
    if (segment.compressing()) {
      addCompressions(rhythm.compressions().get(), origin, from, to, cues);
      return;
    }
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      addCycles(cycle, origin, from, to, cues);
      return;
    }
    rhythm
        .steadyBreaths()
        .ifPresent(b -> addBreaths(b, segment.breathOriginNanos(), from, to, cues));
    rhythm.compressions().ifPresent(c -> addCompressions(c, origin, from, to, cues));
  }

  /** The first cue of a kind that a paced stretch asks for in [from, to); empty without one. */
  static OptionalLong first(Segment segment, CueKind kind, long from, long to) {
    return instants(segment, kind, from, to).min();
  }

  /** The last cue of a kind that a paced stretch asks for in [from, to); empty without one. */
  static OptionalLong last(Segment segment, CueKind kind, long from, long to) {
    return instants(segment, kind, from, to).max();
  }

  /**
   * When prompts can fall silent that are to do so at an instant: with the first cue after the
   * squeeze and release that belong to the breath of that instant, or not before the instant.
   *
   * @param segment a paced stretch of steady breaths
   * @return the instant itself if no squeeze was asked for yet
   */
  static long afterBreathAt(Segment segment, long at) {
    BreathPlan plan = segment.guidance().rhythm().steadyBreaths().get();
    long origin = segment.breathOriginNanos();
    if (at <= origin) {
      return at;
    }
    long k = plan.interval().firstAtOrAfter(at - origin);
    long next = origin + plan.interval().nanosAt(k);
    long before = origin + plan.interval().nanosAt(k - 1);
    long answered = at - before <= next - at ? before : next;
    long after = Math.max(at, answered + plan.inspirationNanos()) + 1;
    List<Cue> cues = new ArrayList<>();
    addBreaths(plan, origin, after, after + plan.interval().nanosAt(1) + 1, cues);
    return cues.stream().mapToLong(Cue::atNanos).min().getAsLong();
  }

  /** All of them, in no particular order. */
  static LongStream instants(Segment segment, CueKind kind, long from, long to) {
    long first = Math.max(from, segment.startNanos());
    long end = Math.min(to, segment.endNanos());
    List<Cue> cues = new ArrayList<>();
    boolean rhythmic = segment.kind() == Segment.Kind.PACED || segment.compressing();
    if (rhythmic && first < end) {
      add(segment, first, end, cues);
    }
    return cues.stream().filter(c -> c.kind() == kind).mapToLong(Cue::atNanos);
  }

  /** How many counts an interval has: the squeeze, the release, then about one a second. */
  static int countsIn(BreathPlan breaths) {
    long rest = breaths.interval().nanosAt(1) - breaths.inspirationNanos();
    return 1 + (int) Math.max(1, Math.round(rest / NANOS_PER_SECOND));
  }

  /** When a count from 2 on comes, from the squeeze on; {@code interval} is the whole interval. */
  static long countAt(BreathPlan plan, long interval, int counts, int count) {
    long rest = interval - plan.inspirationNanos();
    return plan.inspirationNanos() + rest * (count - 2) / (counts - 1);
  }

  /** Whether a count leads in to the next squeeze. */
  static boolean leadsIn(int count, int counts) {
    return count > counts - LEAD_IN_COUNTS;
  }

  /** When a breath of a pause starts, from the start of the pause on; the first has index 0. */
  static long breathAt(Rhythm.CompressionCycle plan, int index) {
    return plan.pauseNanos() * index / plan.breathsPerCycle();
  }

  private static void addBreaths(BreathPlan plan, long origin, long from, long to, List<Cue> cues) {
    Tempo tempo = plan.interval();
    int counts = countsIn(plan);
    for (long k = Math.max(0, tempo.firstAtOrAfter(from - origin) - 1); ; k++) {
      long squeeze = origin + tempo.nanosAt(k);
      if (squeeze >= to) {
        return;
      }
      if (squeeze >= from) {
        cues.add(new Cue(squeeze, CueKind.SQUEEZE, 1, counts, plan.inspirationNanos(), false));
      }
      long interval = origin + tempo.nanosAt(k + 1) - squeeze;
      for (int count = 2; count <= counts; count++) {
        long at = squeeze + countAt(plan, interval, counts, count);
        if (at >= from && at < to) {
          CueKind kind = count == 2 ? CueKind.RELEASE : CueKind.COUNT;
          boolean leadIn = count > 2 && leadsIn(count, counts);
          cues.add(new Cue(at, kind, count, counts, 0, leadIn));
        }
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
      long first = Math.max(c * perCycle, tempo.firstAtOrAfter(from - origin - pauses));
      for (long k = first; k < (c + 1) * perCycle; k++) {
        long at = origin + tempo.nanosAt(k) + pauses;
        if (at >= to) {
          return;
        }
        cues.add(new Cue(at, CueKind.COMPRESS, (int) (k - c * perCycle) + 1, perCycle, 0, false));
      }
      long breathing = origin + tempo.nanosAt((c + 1) * perCycle) + pauses;
      int breaths = plan.breathsPerCycle();
      long length = plan.inspirationNanos();
      for (int b = 0; b < breaths; b++) {
        long squeeze = breathing + breathAt(plan, b);
        put(cues, from, to, new Cue(squeeze, CueKind.SQUEEZE, b + 1, breaths, length, false));
        put(cues, from, to, new Cue(squeeze + length, CueKind.RELEASE, b + 1, breaths, 0, false));
      }
    }
  }

  private static void put(List<Cue> cues, long from, long to, Cue cue) {
    if (cue.atNanos() >= from && cue.atNanos() < to) {
      cues.add(cue);
    }
  }
}
