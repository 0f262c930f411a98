package squeezewell.session;

import java.util.Objects;
import squeezewell.cue.Course;
import squeezewell.protocol.ClinicalFinding;

/**
 * Something that was found in a session, and where it led.
 *
 * @param number of the event
 * @param atNanos when it was noted, nanoseconds since the session began
 * @param finding what was found
 * @param before the course until then
 * @param after the course from then on
 * @param undone whether it was taken back as a slip
 */
public record NotedFinding(
    int number,
    long atNanos,
    ClinicalFinding finding,
    Course before,
    Course after,
    boolean undone) {
  public NotedFinding {
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(after, "after");
  }

  /** Whether it changed what is prompted. */
  public boolean changesPrompts() {
    return after.controlFrom(before, atNanos).isPresent();
  }

  /** The same, taken back. */
  public NotedFinding takenBack() {
    return new NotedFinding(number, atNanos, finding, before, after, true);
  }
}
