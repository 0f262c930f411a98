package squeezewell.review.compare;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import squeezewell.review.say.Review;
import squeezewell.words.Wording;

/**
 * Two practices side by side, A and B: the same trainee before and after, or two trainees.
 * Immutable. There is no single score, and nothing is said of chance: marked is what lies outside
 * its target.
 *
 * @param sentence the most important thing, in plain sentences
 * @param askedDifferently in what the two practices did not ask for the same, a sentence each
 * @param rows the figures that can honestly be compared; what matters most to a patient first
 * @param targets what is marked, a sentence each
 */
public record Comparison(
    String sentence, List<String> askedDifferently, List<Row> rows, List<String> targets) {
  static final Wording WORDS = Wording.beside(Comparison.class);

  public Comparison {
    Objects.requireNonNull(sentence, "sentence");
    askedDifferently = List.copyOf(askedDifferently);
    rows = List.copyOf(rows);
    targets = List.copyOf(targets);
  }

  /** Compares two reviews. Which of them is A changes only the signs and the words. */
  public static Comparison of(Review a, Review b) {
    return new Comparer(a, b).compare();
  }

  /**
   * One figure of both practices.
   *
   * @param code what it is, in words joined by dots; stable, for programs
   * @param unit of the values and the difference: {@code s}, {@code /min}, {@code %}, {@code 1} for
   *     counts and shares from 0 to 1; empty for words
   * @param a the figure of A
   * @param b the figure of B
   * @param difference B minus A; empty if either is not known or is a word
   * @param change the same for people; empty likewise
   */
  public record Row(
      String code, String unit, Side a, Side b, OptionalDouble difference, String change) {
    public Row {
      Objects.requireNonNull(code, "code");
    }

    /** What it is, for people. */
    public String label() {
      return WORDS.say("row." + code);
    }

    /** Which of the two lie outside the target, for people; empty if none does. */
    public String outside() {
      if (a.isOutside()) {
        return WORDS.say(b.isOutside() ? "outside.both" : "outside.a");
      }
      return b.isOutside() ? WORDS.say("outside.b") : "";
    }
  }

  /**
   * A figure of one practice.
   *
   * @param text for people; a dash if it is not known
   * @param value empty if it is not known or is a word
   * @param observations how many it rests on; empty where there is nothing to count
   * @param outside whether it lies outside its target; empty if it has none or is not known
   */
  public record Side(
      String text, OptionalDouble value, OptionalInt observations, Optional<Boolean> outside) {
    /** Whether it is known to lie outside its target. */
    public boolean isOutside() {
      return outside.orElse(false);
    }
  }
}
