package squeezewell.protocol;

/** How an interval between two breaths compares with the range that was asked for. */
public enum Judgement {
  IN_RANGE("in range"),
  /** Shorter than the range. */
  FAST("fast"),
  /** Longer than the range. */
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
}
