package squeezewell.protocol;

import java.util.Objects;

/**
 * A length of time that a guideline sets.
 *
 * @param nanos in nanoseconds, positive
 * @param source where it comes from
 */
public record Limit(long nanos, Citation source) {
  public Limit {
    Objects.requireNonNull(source, "source");
    if (nanos <= 0) {
      throw new IllegalArgumentException("a limit must be positive, not " + nanos);
    }
  }

  /** In seconds, for display. */
  public double seconds() {
    return nanos / 1e9;
  }
}
