package squeezewell.review;

import java.util.Objects;

/**
 * One thing to tell the trainee.
 *
 * @param code what it is, in lower-case words with hyphens; stable, for programs
 * @param severity how much it matters
 * @param title one short sentence or phrase without a full stop
 * @param text what was done, what was asked and why it matters, in plain words
 */
public record Finding(String code, Severity severity, String title, String text) {
  public Finding {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(text, "text");
  }

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
}
