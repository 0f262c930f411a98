package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import squeezewell.protocol.CheckLength;
import squeezewell.protocol.Limits;

/**
 * One time at which a pulse check is planned, in practice time: that does not depend on pauses and
 * on the end, which may yet come.
 *
 * @param practiceNanos when it is due, in practice time
 * @param settledNanos session time at which the check that served it started, or at which a change
 *     of rhythm made it void; empty if neither has happened
 * @param status what became of it
 * @param limits the limits it was planned by
 */
record PulseCheckPlan(long practiceNanos, OptionalLong settledNanos, Status status, Limits limits) {
  static final long SERVES_WITHIN_NANOS = 60_000_000_000L;

  /** What became of a planned check. */
  enum Status {
    OPEN,
    MADE,
    /** Made, but nothing had asked for it. */
    EXTRA,
    /** The rhythm changed near its time: somebody had looked. */
    VOID;

    boolean made() {
      return this == MADE || this == EXTRA;
    }
  }

  /** The times of a session, in order, up to the end that was planned. */
  static List<PulseCheckPlan> of(PracticePlan plan, List<Segment> segments, PracticeClock clock) {
    List<PulseCheckPlan> planned = new ArrayList<>();
    Limits limits = segments.get(0).guidance().limits();
    long due = plan.countInNanos() + limits.pulseCheckEvery().nanos();
    Segment before = segments.get(0);
    for (int i = 0; i < segments.size(); i++) {
      Segment segment = segments.get(i);
      boolean check = segment.kind() == Segment.Kind.PULSE_CHECK && !brokenOff(segments, i);
      boolean changed =
          segment.kind() != Segment.Kind.ENDED && !segment.guidance().equals(before.guidance());
      before = segment;
      if (!changed && !check) {
        continue;
      }
      long start = clock.toPractice(segment.startNanos());
      long serves = servesWithin(limits);
      long every = limits.pulseCheckEvery().nanos();
      for (; due + serves < start; due += every) {
        planned.add(new PulseCheckPlan(due, OptionalLong.empty(), Status.OPEN, limits));
      }
      OptionalLong settled = OptionalLong.of(segment.startNanos());
      if (changed) {
        planned.add(new PulseCheckPlan(due, settled, Status.VOID, limits));
        limits = segment.guidance().limits();
        due = Math.max(start, plan.countInNanos()) + limits.pulseCheckEvery().nanos();
      }
      if (check) {
        boolean extra = start < due - servesWithin(limits);
        planned.add(
            extra
                ? new PulseCheckPlan(start, settled, Status.EXTRA, limits)
                : new PulseCheckPlan(due, settled, Status.MADE, limits));
        due = start + limits.pulseCheckEvery().nanos();
      }
    }
    long every = limits.pulseCheckEvery().nanos();
    for (; due < plan.countInNanos() + plan.lengthNanos(); due += every) {
      planned.add(new PulseCheckPlan(due, OptionalLong.empty(), Status.OPEN, limits));
    }
    return planned;
  }

  /** Whether a stretch is a check that ended before anything could be felt: it was not made. */
  static boolean brokenOff(List<Segment> segments, int index) {
    Segment check = segments.get(index);
    if (check.kind() != Segment.Kind.PULSE_CHECK || index + 1 == segments.size()) {
      return false;
    }
    boolean cut = segments.get(index + 1).kind() == Segment.Kind.ENDED;
    long length = check.endNanos() - check.startNanos();
    return !cut && CheckLength.judge(check.guidance(), length) == CheckLength.NOT_MADE;
  }

  /** At least the notice, so that a check that was announced is never an extra one. */
  static long servesWithin(Limits limits) {
    return Math.min(
        Math.max(SERVES_WITHIN_NANOS, limits.pulseCheckNotice().nanos()),
        limits.pulseCheckEvery().nanos() / 2);
  }

  /**
   * When it is due in session time; {@link Segment#OPEN} if that waits for the end of a pause. A
   * check before its time was due when it would have been had nothing come in between.
   */
  long sessionNanos(PracticeClock clock) {
    if (status.made()) {
      long started = settledNanos.getAsLong();
      long early = practiceNanos - clock.toPractice(started);
      return early >= 0 ? started + early : clock.toSession(practiceNanos);
    }
    return clock.toSession(practiceNanos);
  }
}
