package squeezewell.review.judge;

/** How much a finding matters, worst first. */
public enum Severity {
  /** It would harm a patient. */
  FAULT("fault", "To change"),
  /** It could be better. */
  ADVICE("advice", "Worth a try"),
  /** It went well. */
  GOOD("good", "Went well");

  private final String word;
  private final String label;

  Severity(String word, String label) {
    this.word = word;
    this.label = label;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The words shown to people. */
  public String label() {
    return label;
  }
}
