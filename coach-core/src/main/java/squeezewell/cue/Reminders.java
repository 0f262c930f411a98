package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.Limits;

/** The reminders of a whole session: pulse checks that fall due, and the last minute. Pure. */
final class Reminders {
  private static final long SECOND = 1_000_000_000L;
  private static final long MINUTE = 60 * SECOND;

  /** How often a reminder is given again while nothing is done about it (our own choice). */
  private static final long OVERDUE_AGAIN = 15 * SECOND;

  private Reminders() {}

  /**
   * All reminders, in the schedule's order.
   *
   * @param end when the session ends; {@link Segment#OPEN} if that is not known
   */
  static List<Cue> of(
      PracticePlan plan, List<PulseCheckPlan> planned, PracticeClock clock, long end) {
    List<Cue> found = new ArrayList<>();
    long lengthEnd = plan.countInNanos() + plan.lengthNanos();
    for (PulseCheckPlan check : planned) {
      if (check.status() != PulseCheckPlan.Status.EXTRA && check.practiceNanos() < lengthEnd) {
        addCheck(check, clock, Math.min(check.settledNanos().orElse(end), end), found);
      }
    }
    if (plan.lengthNanos() >= 2 * MINUTE) {
      put(found, clock.toSession(lengthEnd - MINUTE), end, CueKind.LAST_MINUTE, 1);
    }
    found.sort(Cue.ORDER);
    return List.copyOf(found);
  }

  private static void addCheck(
      PulseCheckPlan check, PracticeClock clock, long until, List<Cue> found) {
    Limits limits = check.limits();
    long serves = PulseCheckPlan.servesWithin(limits);
    long due = check.practiceNanos();
    long soon = clock.toSession(due - limits.pulseCheckNotice().nanos());
    put(found, soon, until, CueKind.PULSE_CHECK_SOON, 1);
    // A check that begins on its call does not take the call away.
    long called = check.status() == PulseCheckPlan.Status.MADE ? until + 1 : until;
    for (int n = 0; n * OVERDUE_AGAIN < serves; n++) {
      long at = clock.toSession(due + n * OVERDUE_AGAIN);
      put(found, at, called, CueKind.PULSE_CHECK_DUE, n + 1);
    }
  }

  private static void put(List<Cue> found, long at, long until, CueKind kind, int count) {
    if (at < until) {
      found.add(Cue.of(at, kind, count));
    }
  }
}
