package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Measure;
import squeezewell.review.measure.Metrics;

/** Findings about the length of the squeezes. */
final class SqueezeFindings {
  private static final int FEWEST = 5;

  /** Below this share of good squeezes something is said, although the usual one was good. */
  private static final double MOSTLY_GOOD = 0.7;

  private SqueezeFindings() {}

  static List<Finding> of(Analysis facts) {
    List<Finding> found = new ArrayList<>();
    Metrics.Inspiration squeeze = facts.metrics().inspiration();
    if (squeeze.count() < FEWEST) {
      return found;
    }
    double median = squeeze.medianSeconds().getAsDouble();
    double asked = Measure.inspirationNanos(facts.practice()) / 1e9;
    double shortest = squeeze.shortestGoodSeconds();
    double longest = squeeze.longestGoodSeconds();
    Quantity usual = Quantity.hundredths(median);
    if (median < shortest) {
      usual = Quantity.hundredths(median, shortest);
    } else if (median > longest) {
      usual = Quantity.hundredths(median, longest);
    }
    Sentence done = Sentence.done("squeezes.done", usual, Quantity.hundredths(asked));
    Sentence share =
        Sentence.done(
            "squeezes.share",
            squeeze.goodCount(),
            squeeze.count(),
            Quantity.hundredths(shortest),
            Quantity.hundredths(longest));
    // The median would tell of one of two lengths alone.
    boolean both =
        squeeze.lowerQuartileSeconds().getAsDouble() < shortest
            && squeeze.upperQuartileSeconds().getAsDouble() > longest;
    if (both) {
      found.add(
          Finding.fault(
              FindingCode.SQUEEZES_UNEVEN,
              done,
              share,
              Sentence.done("squeezes-uneven.done"),
              Sentence.why("squeezes-uneven.why")));
    } else if (median < shortest) {
      found.add(
          Finding.fault(
              FindingCode.SHORT_SQUEEZE,
              done,
              share,
              Sentence.why(whyShort(facts.practice().guidance())),
              Sentence.next("short-squeeze.next", Quantity.hundredths(asked))));
    } else if (median > longest) {
      found.add(
          Finding.fault(
              FindingCode.LONG_SQUEEZE,
              done,
              share,
              Sentence.why("long-squeeze.why"),
              Sentence.next("long-squeeze.next")));
    } else if (squeeze.goodFraction().getAsDouble() < MOSTLY_GOOD) {
      found.add(
          Finding.advice(
              FindingCode.SQUEEZES_UNEVEN, done, share, Sentence.why("squeezes-uneven.why")));
    } else {
      found.add(Finding.good(FindingCode.SQUEEZES_GOOD, done, share));
    }
    return found;
  }

  /** What was measured in adults and in children of 2 to 4 years is told of nobody else. */
  private static String whyShort(Guidance guidance) {
    if (guidance.situation() == Situation.ARREST_ADVANCED_AIRWAY) {
      return "short-squeeze.why.airway";
    }
    return switch (guidance.patient()) {
      case ADULT -> "short-squeeze.why.adult";
      case NEWBORN -> "short-squeeze.why.newborn";
      default -> "short-squeeze.why.child";
    };
  }
}
