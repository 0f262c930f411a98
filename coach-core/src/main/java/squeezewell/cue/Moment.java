package squeezewell.cue;

import java.util.Objects;
import java.util.OptionalLong;

/**
 * What the schedule asks for at one instant: all that a screen needs to draw a frame.
 *
 * @param segment what goes on
 * @param act the one thing to do
 * @param count the count to show, from 1; 0 for none. In a count-in it runs down, in a check or
 *     suction it is the seconds that have passed
 * @param of how many counts there are; 0 if that has no meaning
 * @param fill how full the lungs should be, 0 to 1
 * @param nextSqueezeNanos when the next squeeze is due; empty if none is planned in this stretch
 */
public record Moment(
    Segment segment, Act act, int count, int of, double fill, OptionalLong nextSqueezeNanos) {
  public Moment {
    Objects.requireNonNull(segment, "stretch");
    Objects.requireNonNull(act, "act");
    Objects.requireNonNull(nextSqueezeNanos, "nextSqueezeNanos");
  }

  /** The one thing to do now. */
  public enum Act {
    GET_READY,
    SQUEEZE,
    RELEASE,
    READY,
    COMPRESS,
    CHECK_PULSE,
    SUCTION,
    /** Nothing to do but watch the patient breathe. */
    WATCH,
    /** Breathe for the patient; there is no rate to keep. */
    BREATHE_NO_RATE,
    PAUSED,
    FINISHED,
    /** Breathe on in the rhythm; nothing tells when. */
    KEEP_RHYTHM
  }
}
