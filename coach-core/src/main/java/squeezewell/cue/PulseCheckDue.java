package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * One time at which a pulse check was due, and the check that served it.
 *
 * @param dueNanos when it was due, nanoseconds since the session began
 * @param startedNanos when the check that served it started; empty if none has
 * @param extra whether the check was made well before its time, so that nothing had asked for it
 */
public record PulseCheckDue(long dueNanos, OptionalLong startedNanos, boolean extra) {
  /** A check this long before or after its time still serves it (our own choice). */
  public static final long SERVES_WITHIN_NANOS = PulseCheckPlan.SERVES_WITHIN_NANOS;

  /**
   * Works out when pulse checks are due. The first is due one spacing after the first prompt, each
   * later one a spacing after the start of the check before. A check within {@link
   * #SERVES_WITHIN_NANOS} of its time serves it; a time that no check serves is missed, and the
   * next is a spacing later. A check well before its time is an extra one, due when it was made. A
   * change of rhythm settles the time that stands near it, and starts the spacing anew. Pauses move
   * the times that follow.
   *
   * @param planned the same in practice time
   * @param segments the session
   * @param clock the clock of those stretches
   * @return in order, up to the end of the session as far as it is known
   */
  static List<PulseCheckDue> of(
      List<PulseCheckPlan> planned, List<Segment> segments, PracticeClock clock) {
    Segment last = segments.get(segments.size() - 1);
    long end = last.kind() == Segment.Kind.ENDED ? last.startNanos() : Segment.OPEN;
    List<PulseCheckDue> dues = new ArrayList<>();
    for (PulseCheckPlan check : planned) {
      long at = check.sessionNanos(clock);
      boolean made = check.status().made();
      if (made || (check.status() == PulseCheckPlan.Status.OPEN && at < end)) {
        dues.add(
            new PulseCheckDue(
                at, check.settledNanos(), check.status() == PulseCheckPlan.Status.EXTRA));
      }
    }
    return List.copyOf(dues);
  }
}
