package squeezewell.review.measure;

/**
 * One prompt that was given.
 *
 * @param atNanos when the squeeze was asked for, nanoseconds since the session began
 * @param lengthNanos for how long
 * @param outcome what became of it
 */
public record PromptMark(long atNanos, long lengthNanos, Outcome outcome) {
  /** What became of a prompt. */
  public enum Outcome {
    MET,
    MISSED,
    /** No breath answered it, but right after it a check, suction or pause began, or all ended. */
    FORGIVEN
  }
}
