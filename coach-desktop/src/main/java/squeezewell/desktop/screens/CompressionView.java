package squeezewell.desktop.screens;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import squeezewell.coach.CoachState;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Segment;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.Rhythm;
import squeezewell.session.Breath;

/**
 * What the compression pad says at one instant. Pure.
 *
 * @param lit whether a compression has just been taken
 * @param count how many there were; empty before the first
 * @param rate how fast the last ones came, and its judgement in words; empty if that can't be told
 * @param judgement how that rate is
 */
public record CompressionView(boolean lit, String count, String rate, Judgement judgement) {
  /** So many intervals are looked at: at a usual rate, some five seconds (our own choice). */
  static final int INTERVALS = 10;

  private static final int FEWEST_INTERVALS = 2;

  /** A longer interval is a break and says nothing about the rate (our own choice). */
  static final long BREAK_NANOS = 1_500_000_000L;

  /** A rate is shown for so long after the last compression: a pause for breaths is shorter. */
  static final long FRESH_NANOS = 10_000_000_000L;

  private static final long LIT_NANOS = 120_000_000L;

  /** Whether compressions are asked for; not while there is only to watch. */
  public static boolean asked(CoachState state, long nowNanos) {
    boolean compresses = state.schedule().guidanceAt(nowNanos).rhythm().compressions().isPresent();
    return compresses && state.course().care().prompted();
  }

  /** The view of a state. */
  public static CompressionView of(CoachState state, long nowNanos) {
    List<Long> recent = state.recentCompressions();
    if (recent.isEmpty()) {
      return new CompressionView(false, "", "", Judgement.UNJUDGED);
    }
    long since = nowNanos - recent.get(recent.size() - 1);
    String count = state.compressionCount() + " so far";
    OptionalDouble rate = perMinute(state);
    boolean paced = state.schedule().stretchAt(nowNanos).kind() == Segment.Kind.PACED;
    Rhythm rhythm = state.schedule().guidanceAt(nowNanos).rhythm();
    Optional<CompressionPlan> asked = rhythm.compressions();
    if (!asked.isPresent() || !rate.isPresent() || !paced || since > FRESH_NANOS) {
      return new CompressionView(since < LIT_NANOS, count, "", Judgement.UNJUDGED);
    }
    Judgement judgement = asked.get().judgeRate(rate.getAsDouble());
    String words =
        Math.round(rhythm.compressionShare() * rate.getAsDouble()) + "/min  " + judgement.label();
    return new CompressionView(since < LIT_NANOS, count, words, judgement);
  }

  /** The rate of the last compressions, a minute, while it is fresh; empty if it can't be told. */
  public static OptionalDouble rate(CoachState state, long nowNanos) {
    List<Long> recent = state.recentCompressions();
    boolean fresh = !recent.isEmpty() && nowNanos - recent.get(recent.size() - 1) <= FRESH_NANOS;
    return fresh && asked(state, nowNanos) ? perMinute(state) : OptionalDouble.empty();
  }

  /**
   * The rate of the last compressions, a minute: one over the mean of the last intervals between
   * neighbours, at most {@link #INTERVALS}. Breaks, holds and, where compressions wait for breaths,
   * intervals with a breath or its prompt in them do not count.
   */
  static OptionalDouble perMinute(CoachState state) {
    List<Long> recent = state.recentCompressions();
    long sum = 0;
    int counted = 0;
    int first = Math.max(1, recent.size() - INTERVALS);
    for (int i = first; i < recent.size(); i++) {
      long before = recent.get(i - 1);
      long at = recent.get(i);
      if (at - before <= BREAK_NANOS && !interrupted(state, before, at)) {
        sum += at - before;
        counted++;
      }
    }
    return counted < FEWEST_INTERVALS
        ? OptionalDouble.empty()
        : OptionalDouble.of(60e9 * counted / sum);
  }

  private static boolean interrupted(CoachState state, long before, long at) {
    CueSchedule schedule = state.schedule();
    Segment segment = schedule.stretchAt(at);
    if (!schedule.stretchAt(before).equals(segment) || stopped(segment)) {
      return true;
    }
    if (!(schedule.guidanceAt(at).rhythm() instanceof Rhythm.CompressionCycle)) {
      return false;
    }
    return schedule.between(before, at).stream().anyMatch(c -> c.kind() == CueKind.SQUEEZE)
        || breathBetween(state.breaths(), before, at);
  }

  /** Whether compressions were to stop, as they are in a pause. */
  private static boolean stopped(Segment segment) {
    return switch (segment.kind()) {
      case COUNT_IN, PACED -> false;
      default -> !segment.compressing();
    };
  }

  private static boolean breathBetween(List<Breath> breaths, long before, long at) {
    for (int i = breaths.size() - 1; i >= 0 && breaths.get(i).startNanos() > before; i--) {
      if (breaths.get(i).startNanos() < at) {
        return true;
      }
    }
    return false;
  }
}
