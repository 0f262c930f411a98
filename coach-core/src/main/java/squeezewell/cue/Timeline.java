package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;

/** Lays a session out into stretches, from its plan and its controls. Pure. */
final class Timeline {
  private final PracticePlan plan;
  private final List<Stretch> done = new ArrayList<>();
  private Stretch open;
  private long pausedNanos;

  private Timeline(PracticePlan plan) {
    this.plan = plan;
  }

  /** The stretches of a session, in order, the last one open. */
  static List<Stretch> of(PracticePlan plan, List<Control> controls) {
    return new Timeline(plan).lay(controls);
  }

  private List<Stretch> lay(List<Control> controls) {
    long origin = plan.countInNanos();
    open = new Stretch(Stretch.Kind.PACED, 0, Stretch.OPEN, origin);
    if (origin > 0) {
      done.add(new Stretch(Stretch.Kind.COUNT_IN, 0, origin, 0));
      open = new Stretch(Stretch.Kind.PACED, origin, Stretch.OPEN, origin);
    }
    for (Control control : controls) {
      endIfOverBefore(control.atNanos());
      if (open.kind() == Stretch.Kind.ENDED) {
        break;
      }
      apply(control);
    }
    endIfOverBefore(Long.MAX_VALUE);
    done.add(open);
    return List.copyOf(done);
  }

  private void apply(Control control) {
    long at = Math.max(control.atNanos(), 0);
    switch (control.kind()) {
      case PULSE_CHECK -> turn(Stretch.Kind.PULSE_CHECK, at, 0);
      case SUCTION -> turn(Stretch.Kind.SUCTION, at, 0);
      case PAUSE -> turn(Stretch.Kind.PAUSED, at, 0);
      case PULSE_CHECK_END -> paceAfter(Stretch.Kind.PULSE_CHECK, at);
      case SUCTION_END -> paceAfter(Stretch.Kind.SUCTION, at);
      case RESUME -> paceAfter(Stretch.Kind.PAUSED, at);
      case FINISH -> turn(Stretch.Kind.ENDED, at, 0);
    }
  }

  private void paceAfter(Stretch.Kind kind, long at) {
    if (open.kind() == kind) {
      turn(Stretch.Kind.PACED, at, at + plan.leadNanos());
    }
  }

  private void turn(Stretch.Kind kind, long at, long origin) {
    if (kind == open.kind()) {
      return;
    }
    if (open.kind() == Stretch.Kind.PAUSED) {
      pausedNanos += at - open.startNanos();
    }
    // A control inside the count-in takes the place of what was to follow it.
    long from = at;
    while (!done.isEmpty() && done.get(done.size() - 1).endNanos() > from) {
      Stretch last = done.remove(done.size() - 1);
      open = last.endingAt(open.endNanos());
    }
    if (from > open.startNanos()) {
      done.add(open.endingAt(from));
    }
    open = new Stretch(kind, from, Stretch.OPEN, origin);
  }

  /** Ends the session by the clock. While it is paused the clock does not run. */
  private void endIfOverBefore(long nanos) {
    if (open.kind() == Stretch.Kind.PAUSED || open.kind() == Stretch.Kind.ENDED) {
      return;
    }
    long end = plan.countInNanos() + plan.lengthNanos() + pausedNanos;
    if (end <= nanos) {
      turn(Stretch.Kind.ENDED, Math.max(end, open.startNanos()), 0);
    }
  }
}
