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

  /** End of each pause in session time; the last may be {@link Stretch#OPEN}. */
  private final long[] sessionEnds;

  PracticeClock(List<Stretch> stretches) {
    Stretch[] pauses =
        stretches.stream().filter(s -> s.kind() == Stretch.Kind.PAUSED).toArray(Stretch[]::new);
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
   * The instant of the session at which practice time is reached; {@link Stretch#OPEN} if that
   * waits for the end of a pause that has not ended. What falls on the very start of a pause waits
   * for its end, since nothing is prompted in a pause.
   */
  long toSession(long practice) {
    int last = InOrder.countUpTo(practiceStarts.length, i -> practiceStarts[i], practice) - 1;
    if (last < 0) {
      return practice;
    }
    return sessionEnds[last] == Stretch.OPEN
        ? Stretch.OPEN
        : sessionEnds[last] + (practice - practiceStarts[last]);
  }
}
