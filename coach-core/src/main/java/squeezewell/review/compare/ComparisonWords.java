package squeezewell.review.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import squeezewell.review.judge.Severity;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;

/** The sentence at the top of a comparison. */
final class ComparisonWords {
  private ComparisonWords() {}

  /** What is clearly better, what is clearly worse, and what both have to change. */
  static String sentence(Review a, Review b, List<Comparison.Row> rows) {
    List<String> sentences = new ArrayList<>();
    add(sentences, "Worse in B: ", rows, Comparison.Outcome.WORSE);
    add(sentences, "Better in B: ", rows, Comparison.Outcome.BETTER);
    if (sentences.isEmpty()) {
      boolean tested = rows.stream().anyMatch(row -> row.tested().isPresent());
      sentences.add(
          tested ? "No clear difference between A and B." : "Too little to compare A and B.");
    }
    both(a, b).ifPresent(sentences::add);
    return String.join(" ", sentences);
  }

  private static void add(
      List<String> sentences, String first, List<Comparison.Row> rows, Comparison.Outcome outcome) {
    String words =
        rows.stream()
            .filter(row -> row.outcome() == outcome)
            .map(row -> words(row.code(), outcome == Comparison.Outcome.BETTER))
            .collect(Collectors.joining("; "));
    if (!words.isEmpty()) {
      sentences.add(first + words + ".");
    }
  }

  private static String words(String code, boolean better) {
    String more = better ? "more " : "fewer ";
    String nearer = better ? "nearer to what was asked" : "further from what was asked";
    return switch (code) {
      case "interval.mean" -> "the pace " + nearer;
      case "interval.spread" -> better ? "more even" : "less even";
      case "interval.inRange" -> more + "intervals in range";
      case "unprompted.inRange" -> more + "intervals in range without prompts";
      case "prompts.met" -> more + "prompts met";
      case "prompts.extra" -> (better ? "fewer " : "more ") + "extra breaths";
      case "squeeze.mean" -> "the length of the squeeze " + nearer;
      case "squeeze.good" -> more + "squeezes of good length";
      case "checks.onTime" -> more + "checks on time";
      case "checks.length" -> more + "checks of good length";
      case "suction.withinLimit" -> more + "suctions within their limit";
      case "compressions.goodCycles" -> more + "good cycles";
      default -> throw new IllegalArgumentException(code);
    };
  }

  /** The worst thing to change that both debriefs name. */
  private static Optional<String> both(Review a, Review b) {
    for (Feedback ofB : b.findings()) {
      for (Feedback ofA : a.findings()) {
        boolean same =
            ofA.code().equals(ofB.code())
                && ofA.severity() != Severity.GOOD
                && ofB.severity() != Severity.GOOD;
        if (same) {
          String titleA = ofA.title().toLowerCase(Locale.ROOT);
          String titleB = ofB.title().toLowerCase(Locale.ROOT);
          return Optional.of(
              "Still to change in both: "
                  + (titleA.equals(titleB) ? titleA : titleA + " (A), " + titleB + " (B)")
                  + ".");
        }
      }
    }
    return Optional.empty();
  }
}
