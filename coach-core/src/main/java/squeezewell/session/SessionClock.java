package squeezewell.session;

/** Tells how long ago the session began. */
@FunctionalInterface
public interface SessionClock {
  /** Nanoseconds since the session began; never goes back. */
  long nanos();
}
