package squeezewell.review.compare;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import squeezewell.review.say.Review;

/**
 * Two practices side by side, A and B: the same trainee before and after, or two trainees.
 * Immutable. There is no single score.
 *
 * @param sentence the most important thing, in one or two plain sentences
 * @param askedDifferently in what the two practices did not ask for the same, a sentence each
 * @param rows the figures that can honestly be compared, in a fixed order
 * @param rules by which rule a difference is called clear, a sentence each
 */
public record Comparison(
    String sentence, List<String> askedDifferently, List<Row> rows, List<String> rules) {
  /**
   * Level of the intervals of differences (our own choice). Several rows are tested at once; at 99
   * % at most 30 of 1000 pairs of practices by the same made-up trainee of 20 breaths each had a
   * row called clear.
   */
  public static final double LEVEL = 0.99;

  public Comparison {
    Objects.requireNonNull(sentence, "sentence");
    askedDifferently = List.copyOf(askedDifferently);
    rows = List.copyOf(rows);
    rules = List.copyOf(rules);
  }

  /** Compares two reviews. Which of them is A changes only the signs and the words. */
  public static Comparison of(Review a, Review b) {
    return new Comparer(a, b).compare();
  }

  /**
   * One figure of both practices.
   *
   * @param code what it is, in words joined by dots; stable, for programs
   * @param label what it is, for people
   * @param unit of the values and the difference: {@code s}, {@code /min}, {@code 1} for counts and
   *     shares from 0 to 1; empty for words
   * @param a the figure of A
   * @param b the figure of B
   * @param difference B minus A; empty if either is not known or is a word
   * @param tested the interval of what was tested: B minus A of a share or of the spread, or how
   *     much further from what was asked B's mean is than A's; empty if not tested
   * @param outcome what can be said
   */
  public record Row(
      String code,
      String label,
      String unit,
      Side a,
      Side b,
      OptionalDouble difference,
      Optional<Tested> tested,
      Outcome outcome) {
    public Row {
      Objects.requireNonNull(code, "code");
      Objects.requireNonNull(outcome, "outcome");
    }
  }

  /**
   * A figure of one practice.
   *
   * @param text for people; a dash if it is not known
   * @param value empty if it is not known or is a word
   * @param observations how many it rests on; empty where there is nothing to count
   * @param low lower end of the 95 % score interval (Wilson, 1927) of a share that has one
   * @param high upper end of it
   */
  public record Side(
      String text,
      OptionalDouble value,
      OptionalInt observations,
      OptionalDouble low,
      OptionalDouble high) {}

  /**
   * An interval of a difference, at {@link #LEVEL}.
   *
   * @param value what was tested
   * @param low lower end
   * @param high upper end
   */
  public record Tested(double value, double low, double high) {}

  /** What can be said of a difference. */
  public enum Outcome {
    /** B is nearer to what was asked, beyond chance. */
    BETTER("better in B"),
    /** A is nearer to what was asked, beyond chance. */
    WORSE("worse in B"),
    NO_CLEAR_DIFFERENCE("no clear difference"),
    /** There are too few observations to say anything. */
    TOO_FEW("too few to tell"),
    /** No sound simple test is known for it; both values are shown and nothing is claimed. */
    NOT_TESTED("not tested");

    private final String label;

    Outcome(String label) {
      this.label = label;
    }

    /** The words shown to people, in lower case. */
    public String label() {
      return label;
    }

    /** Whether a difference is beyond chance. */
    public boolean isClear() {
      return this == BETTER || this == WORSE;
    }
  }
}
