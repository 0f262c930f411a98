package squeezewell.session;

import java.util.Objects;
import java.util.OptionalLong;
import squeezewell.cue.PatientCourse;
import squeezewell.protocol.PatientChange;

/**
 * Something that was found in a session, and where it led.
 *
 * @param number of the event
 * @param atNanos when it was noted, nanoseconds since the session began
 * @param finding what was found
 * @param before the course until then
 * @param after the course from then on
 * @param undoneNanos when it was taken back as a slip, session time; empty if it was not
 */
public record NotedFinding(
    int number,
    long atNanos,
    PatientChange finding,
    PatientCourse before,
    PatientCourse after,
    OptionalLong undoneNanos) {
  public NotedFinding {
    Objects.requireNonNull(finding, "finding");
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(after, "after");
  }

  /** Whether it changed what is prompted. */
  public boolean changesPrompts() {
    return after.controlFrom(before, atNanos).isPresent();
  }

  /** Whether it was taken back as a slip. */
  public boolean undone() {
    return undoneNanos.isPresent();
  }

  /** The same, taken back. */
  public NotedFinding takenBack(long nanos) {
    return new NotedFinding(number, atNanos, finding, before, after, OptionalLong.of(nanos));
  }

  /** The same, counted from an instant. */
  public NotedFinding from(long zero) {
    return new NotedFinding(
        number,
        atNanos - zero,
        finding,
        before,
        after,
        undone() ? OptionalLong.of(undoneNanos.getAsLong() - zero) : undoneNanos);
  }

  /** The same as it was known at an instant. */
  public NotedFinding asOf(long nanos) {
    return undoneNanos.orElse(nanos) <= nanos
        ? this
        : new NotedFinding(number, atNanos, finding, before, after, OptionalLong.empty());
  }
}
