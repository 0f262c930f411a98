package squeezewell.review.judge;

import java.util.List;
import java.util.Objects;

/**
 * Whether the rhythm was held, by a rule that is stated.
 *
 * @param outcome what the rule gives
 * @param rule the rule, for each rhythm one sentence
 * @param reasons what fell short of it; empty if nothing did
 */
public record Verdict(Outcome outcome, List<Sentence> rule, List<Sentence> reasons) {
  public Verdict {
    Objects.requireNonNull(outcome, "outcome");
    rule = List.copyOf(rule);
    reasons = List.copyOf(reasons);
  }

  static Verdict notJudged(String why) {
    return new Verdict(Outcome.NOT_JUDGED, List.of(Sentence.done(why)), List.of());
  }

  /** What the rule gives. */
  public enum Outcome {
    HELD("Rhythm held"),
    NOT_HELD("Rhythm not held"),
    /** It would be held but for one interval that may be a breath which was not recorded. */
    UNDECIDED("Undecided, try again"),
    /** Too little was practised. */
    TOO_SHORT("Too short to judge"),
    /** The rule does not fit this rhythm. */
    NOT_JUDGED("Not judged");

    private final String label;

    Outcome(String label) {
      this.label = label;
    }

    /** The words shown to people. */
    public String label() {
      return label;
    }
  }
}
