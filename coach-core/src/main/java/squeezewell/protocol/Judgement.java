package squeezewell.protocol;

/**
 * How an interval, or the rate that comes of it, compares with the range that was asked for. Only
 * {@link BreathPlan} and {@link CompressionPlan} judge; all others hand on what they said. A breath
 * or a compression has the judgement of the interval before it.
 */
public enum Judgement {
  IN_RANGE("in range"),
  /** The interval is shorter than the range: the breath came early. */
  FAST("fast"),
  /** The interval is longer than the range: the breath came late. */
  SLOW("slow"),
  /** There is no interval to judge, or a hold cut it, or the rhythm has no range. */
  UNJUDGED("not judged");

  private final String label;

  Judgement(String label) {
    this.label = label;
  }

  /** The words shown to people, in lower case. */
  public String label() {
    return label;
  }

  /** Whether it was judged and lies outside of the range. */
  public boolean off() {
    return this == FAST || this == SLOW;
  }
}
