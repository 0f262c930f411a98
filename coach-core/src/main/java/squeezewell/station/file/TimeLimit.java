package squeezewell.station.file;

/**
 * By when something has to be begun.
 *
 * @param nanos how long after the anchor, nanoseconds on the station's clock, positive
 * @param from what starts the time
 * @param id identifier of the task or finding; empty for the exercise
 */
public record TimeLimit(long nanos, Anchor from, String id) {
  /** What a time is counted from. */
  public enum Anchor {
    /** The start of the exercise. */
    EXERCISE,
    /** The moment at which a task is done. */
    TASK,
    /** The moment at which a finding first comes. */
    FINDING
  }
}
