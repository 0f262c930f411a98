package squeezewell.cue;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Translates between session time and practice time, which stands still while the practice is
 * paused. Reminders and the end of the practice are set in practice time.
 */
final class PracticeClock {
  private final List<Stretch> pauses;

  PracticeClock(List<Stretch> stretches) {
    pauses =
        stretches.stream()
            .filter(s -> s.kind() == Stretch.Kind.PAUSED)
            .collect(Collectors.toList());
  }

  /** Practice time at an instant of the session. */
  long toPractice(long session) {
    long practice = session;
    for (Stretch pause : pauses) {
      if (pause.startNanos() < session) {
        practice -= Math.min(pause.endNanos(), session) - pause.startNanos();
      }
    }
    return practice;
  }

  /**
   * The instant of the session at which practice time is reached; {@link Stretch#OPEN} if that
   * waits for the end of a pause that has not ended. What falls on the very start of a pause waits
   * for its end, since nothing is prompted in a pause.
   */
  long toSession(long practice) {
    long session = practice;
    for (Stretch pause : pauses) {
      if (pause.startNanos() > session) {
        break;
      }
      if (pause.endNanos() == Stretch.OPEN) {
        return Stretch.OPEN;
      }
      session += pause.endNanos() - pause.startNanos();
    }
    return session;
  }
}
