package squeezewell.cue;

/**
 * A time in which the breaths are not prompted, neither by sound nor on a screen. The rhythm that
 * was asked for goes on underneath.
 *
 * @param startNanos inclusive, nanoseconds since the session began
 * @param endNanos exclusive; {@link Segment#OPEN} while it goes on
 */
public record UnpromptedSpan(long startNanos, long endNanos) {
  public UnpromptedSpan {
    if (endNanos <= startNanos) {
      throw new IllegalArgumentException("a silence from " + startNanos + " to " + endNanos);
    }
  }

  /** Whether the instant lies in it. */
  public boolean holds(long nanos) {
    return nanos >= startNanos && nanos < endNanos;
  }
}
