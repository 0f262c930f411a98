package squeezewell.cue;

import java.util.List;

/**
 * Translates between session time and practice time, which stands still while the practice is
 * paused. Reminders and the end of the practice are set in practice time. Immutable.
 */
final class PracticeClock {
  /** Start of each pause in session time and in practice time; both rise. */
  private final long[] sessionStarts;

  private final long[] practiceStarts;

  /** End of each pause in session time; the last may be {@link Segment#OPEN}. */
  private final long[] sessionEnds;

  PracticeClock(List<Segment> segments) {
    Segment[] pauses =
        segments.stream().filter(s -> s.kind() == Segment.Kind.PAUSED).toArray(Segment[]::new);
    sessionStarts = new long[pauses.length];
    practiceStarts = new long[pauses.length];
    sessionEnds = new long[pauses.length];
    long paused = 0;
    for (int i = 0; i < pauses.length; i++) {
      sessionStarts[i] = pauses[i].startNanos();
      practiceStarts[i] = sessionStarts[i] - paused;
      sessionEnds[i] = pauses[i].endNanos();
      paused += sessionEnds[i] - sessionStarts[i];
    }
  }

  /** Practice time at an instant of the session. */
  long toPractice(long session) {
    int last = InOrder.countUpTo(sessionStarts.length, i -> sessionStarts[i], session) - 1;
    if (last < 0) {
      return session;
    }
    return practiceStarts[last] + Math.max(0, session - sessionEnds[last]);
  }

  /**
   * The instant of the session at which practice time is reached; {@link Segment#OPEN} if that
   * waits for the end of a pause that has not ended. What falls on the very start of a pause waits
   * for its end, since nothing is prompted in a pause.
   */
  long toSession(long practice) {
    int last = InOrder.countUpTo(practiceStarts.length, i -> practiceStarts[i], practice) - 1;
    if (last < 0) {
      return practice;
    }
    return sessionEnds[last] == Segment.OPEN
        ? Segment.OPEN
        : sessionEnds[last] + (practice - practiceStarts[last]);
  }
}
