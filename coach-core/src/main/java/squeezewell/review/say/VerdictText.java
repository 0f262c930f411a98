package squeezewell.review.say;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import squeezewell.review.judge.Verdict;

/** A verdict in words. */
public final class VerdictText {
  private VerdictText() {}

  /** The rule, in plain words. */
  public static String rule(Verdict verdict) {
    return Sayings.sentences(verdict.rule());
  }

  /** What fell short of the rule, in plain words; empty if nothing did. */
  public static List<String> reasons(Verdict verdict) {
    return verdict.reasons().stream().map(Sayings::clause).collect(Collectors.toList());
  }

  /** The outcome as that of a test without prompts. */
  public static String test(Verdict.Outcome outcome) {
    return Sayings.WORDS.say("test." + outcome.name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  /** The same for programs: {@code pass}, {@code repeat}, {@code incomplete} or {@code fail}. */
  public static String testWord(Verdict.Outcome outcome) {
    return switch (outcome) {
      case HELD -> "pass";
      case UNDECIDED -> "repeat";
      case TOO_SHORT -> "incomplete";
      case NOT_HELD, NOT_JUDGED -> "fail";
    };
  }
}
