package squeezewell.review.judge;

import java.util.Objects;
import java.util.Set;

/**
 * One thing to tell the trainee.
 *
 * @param code what it is, one of {@link #CODES}; stable, for programs
 * @param severity how much it matters
 * @param title one short sentence or phrase without a full stop
 * @param text what was done, what was asked and why it matters, in plain words
 */
public record Finding(String code, Severity severity, String title, String text) {
  /** Every code there is; a program that reads them has to know them all. */
  public static final Set<String> CODES =
      Set.of(
          "a-little-fast",
          "a-little-slow",
          "anticipates",
          "breaths-missing",
          "breaths-not-needed",
          "checks-on-time",
          "compress-too-fast",
          "compress-too-slow",
          "compressions-at-once",
          "compressions-good",
          "compressions-late",
          "compressions-missing",
          "compressions-went-on",
          "extra-breaths",
          "late",
          "late-breath",
          "long-gap",
          "long-squeeze",
          "missed-prompts",
          "no-breaths",
          "no-long-gap",
          "nothing-to-judge",
          "own-tempo",
          "pause-too-long",
          "prompts-met",
          "pulse-check-early",
          "pulse-check-late",
          "pulse-check-long",
          "pulse-check-missed",
          "pulse-check-short",
          "rhythm-even",
          "rhythm-not-held",
          "rhythm-undecided",
          "rhythm-uneven",
          "short-squeeze",
          "slip",
          "slowed-down",
          "sped-up",
          "squeezes-good",
          "squeezes-uneven",
          "suction-long",
          "suction-within-limit",
          "too-fast",
          "too-few-breaths",
          "too-slow",
          "unprompted-fast",
          "unprompted-held",
          "unprompted-slow",
          "unprompted-uneven",
          "wrong-number");

  public Finding {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(text, "text");
    if (!CODES.contains(code)) {
      throw new IllegalArgumentException("no finding has the code " + code);
    }
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
