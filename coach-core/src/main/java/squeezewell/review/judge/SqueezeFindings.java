package squeezewell.review.judge;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Facts;
import squeezewell.review.measure.Measure;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Words;

/** Findings about the length of the squeezes. */
final class SqueezeFindings {
  private static final int FEWEST = 5;

  /** Below this share of good squeezes something is said, although the usual one was good. */
  private static final double MOSTLY_GOOD = 0.7;

  private SqueezeFindings() {}

  static List<Ranked> of(Facts facts) {
    List<Ranked> found = new ArrayList<>();
    Metrics.Inspiration squeeze = facts.metrics().inspiration();
    if (squeeze.count() < FEWEST) {
      return found;
    }
    double median = squeeze.medianSeconds().getAsDouble();
    String share =
        squeeze.goodCount()
            + " of "
            + squeeze.count()
            + " squeezes lasted "
            + Words.hundredths(squeeze.shortestGoodSeconds())
            + " to "
            + Words.hundredths(squeeze.longestGoodSeconds())
            + " s.";
    String usual =
        "Your usual squeeze lasted "
            + usual(median, squeeze)
            + "; asked was "
            + Words.hundredths(Measure.inspirationNanos(facts.practice()) / 1e9)
            + " s. ";
    String whyShort =
        whyShort(facts.practice().guidance())
            + " Next time squeeze gently, and let it last "
            + Words.hundredths(Measure.inspirationNanos(facts.practice()) / 1e9)
            + " s.";
    String whyLong =
        " A long squeeze keeps the chest under pressure and leaves less time to empty (physiology)."
            + " Next time release when the chest has risen.";
    if (median < squeeze.shortestGoodSeconds()) {
      found.add(
          Ranked.fault(
              Ranked.SQUEEZE, "short-squeeze", "Squeezes too short", usual + share + whyShort));
    } else if (median > squeeze.longestGoodSeconds()) {
      found.add(
          Ranked.fault(
              Ranked.SQUEEZE, "long-squeeze", "Squeezes too long", usual + share + whyLong));
    } else if (squeeze.goodFraction().getAsDouble() < MOSTLY_GOOD) {
      found.add(
          Ranked.advice(
              Ranked.SQUEEZE,
              "squeezes-uneven",
              "Squeezes of different lengths",
              usual + share + " An even squeeze gives the same breath each time."));
    } else {
      found.add(Ranked.good(4, "squeezes-good", "Squeezes of the right length", usual + share));
    }
    return found;
  }

  /** What was measured in adults and in children of 2 to 4 years is told of nobody else. */
  private static String whyShort(Guidance guidance) {
    String why = " A short, hard squeeze raises the pressure in the airway";
    if (guidance.situation() == Situation.ARREST_ADVANCED_AIRWAY) {
      return why + " (physiology).";
    }
    switch (guidance.patient()) {
      case ADULT:
        return why
            + ", and above some 15 cmH2O air goes into the stomach more and more often"
            + " (Anesthesiology 2014).";
      case NEWBORN:
        return why + " and can send air into the stomach (physiology).";
      default:
        return why
            + ", and the higher it is, the more often air goes into the stomach (BMC Anesthesiology"
            + " 2017).";
    }
  }

  private static String usual(double median, Metrics.Inspiration squeeze) {
    boolean tooShort = median < squeeze.shortestGoodSeconds();
    boolean tooLong = median > squeeze.longestGoodSeconds();
    return tooShort || tooLong
        ? Words.hundredthsBeside(
            median, tooShort ? squeeze.shortestGoodSeconds() : squeeze.longestGoodSeconds())
        : Words.hundredths(median) + " s";
  }
}
