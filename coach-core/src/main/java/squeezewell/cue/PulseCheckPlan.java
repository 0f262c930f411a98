package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * One time at which a pulse check is planned, in practice time: that does not depend on pauses and
 * on the end, which may yet come.
 *
 * @param practiceNanos when it is due, in practice time
 * @param startedNanos session time at which the check that served it started; empty if none has
 * @param extra whether nothing had asked for that check
 */
record PulseCheckPlan(long practiceNanos, OptionalLong startedNanos, boolean extra) {
  /** The times of a session, in order, up to the end that was planned. */
  static List<PulseCheckPlan> of(PracticePlan plan, List<Stretch> stretches, PracticeClock clock) {
    long every = plan.guidance().limits().pulseCheckEvery().nanos();
    long serves = PulseCheckDue.servesWithin(plan);
    List<PulseCheckPlan> planned = new ArrayList<>();
    long due = plan.countInNanos() + every;
    for (Stretch stretch : stretches) {
      if (stretch.kind() != Stretch.Kind.PULSE_CHECK) {
        continue;
      }
      long started = clock.toPractice(stretch.startNanos());
      for (; due + serves < started; due += every) {
        planned.add(new PulseCheckPlan(due, OptionalLong.empty(), false));
      }
      boolean extra = started < due - serves;
      planned.add(
          new PulseCheckPlan(extra ? started : due, OptionalLong.of(stretch.startNanos()), extra));
      due = started + every;
    }
    for (; due < plan.countInNanos() + plan.lengthNanos(); due += every) {
      planned.add(new PulseCheckPlan(due, OptionalLong.empty(), false));
    }
    return planned;
  }

  /**
   * When it is due in session time; {@link Stretch#OPEN} if that waits for the end of a pause. A
   * check before its time was due when it would have been had nothing come in between.
   */
  long sessionNanos(PracticeClock clock) {
    if (startedNanos.isPresent()) {
      long started = startedNanos.getAsLong();
      long early = practiceNanos - clock.toPractice(started);
      return early >= 0 ? started + early : clock.toSession(practiceNanos);
    }
    return clock.toSession(practiceNanos);
  }
}
