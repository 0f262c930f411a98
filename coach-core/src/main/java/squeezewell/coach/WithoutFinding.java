package squeezewell.coach;

import squeezewell.cue.Control;
import squeezewell.cue.Course;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Stretch;

/**
 * What the prompts would be had the last finding not been noted: the same commands are carried out
 * upon them, so that taking the finding back leads to where they would have led. Immutable.
 *
 * @param schedule the prompts without it
 * @param course where the findings before it had led
 */
record WithoutFinding(CueSchedule schedule, Course course) {
  /** What would be going on at an instant. */
  Stretch.Kind kindAt(long nanos) {
    return schedule.stretchAt(nanos).kind();
  }

  /**
   * After a command, which may mean something else here than where the finding was noted.
   *
   * @param command what was told
   * @param at when, session time, not before an earlier command
   * @param nothing whether it was only a contact that bounced
   */
  WithoutFinding after(Command command, long at, boolean nothing) {
    Stretch now = schedule.stretchAt(at);
    if (nothing || now.kind() == Stretch.Kind.ENDED) {
      return this;
    }
    return switch (command) {
      case PULSE_CHECK -> held(Stretch.Kind.PULSE_CHECK, Control.Kind.PULSE_CHECK, at);
      case SUCTION ->
          held(
              Stretch.Kind.SUCTION,
              course.compressesDuringSuction()
                  ? Control.Kind.SUCTION_COMPRESSING
                  : Control.Kind.SUCTION,
              at);
      case PAUSE -> held(Stretch.Kind.PAUSED, Control.Kind.PAUSE, at);
      case PULSE_CHECK_END -> ended(Stretch.Kind.PULSE_CHECK, at);
      case SUCTION_END -> ended(Stretch.Kind.SUCTION, at);
      case RESUME -> ended(Stretch.Kind.PAUSED, at);
      case SQUEEZE, BREATH, COMPRESS -> {
        boolean ends = command != Command.COMPRESS || !now.compressing();
        yield ends && at - now.startNanos() >= Coach.BREATHING_AGAIN_NANOS
            ? ended(Stretch.Kind.PULSE_CHECK, at).ended(Stretch.Kind.SUCTION, at)
            : this;
      }
      default -> this;
    };
  }

  private WithoutFinding held(Stretch.Kind kind, Control.Kind control, long at) {
    Stretch.Kind now = kindAt(at);
    return now == kind ? this : ended(now, at).with(control, at);
  }

  private WithoutFinding ended(Stretch.Kind kind, long at) {
    if (kindAt(at) != kind) {
      return this;
    }
    return switch (kind) {
      case PULSE_CHECK -> with(Control.Kind.PULSE_CHECK_END, at);
      case SUCTION -> with(Control.Kind.SUCTION_END, at);
      case PAUSED -> with(Control.Kind.RESUME, at);
      default -> this;
    };
  }

  private WithoutFinding with(Control.Kind control, long at) {
    return new WithoutFinding(schedule.with(new Control(at, control)), course);
  }
}
