package squeezewell.review.say;

import squeezewell.protocol.CompressionPlan;
import squeezewell.review.measure.Metrics;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** Numbers as people read them. */
public final class Words {
  private static final Wording WORDS = Wording.beside(Words.class);

  /** A tenth of a second is more than 3 % of a shorter interval than about this. */
  private static final double SHORT_SECONDS = 3.5;

  private Words() {}

  /** Seconds with one decimal, none if it is zero: {@code 6 s}, {@code 5.5 s}. */
  public static String seconds(double seconds) {
    return decimal(seconds) + " s";
  }

  /** One decimal, none if it is zero. */
  public static String decimal(double value) {
    return Quantities.upTo(value, 1);
  }

  /**
   * Seconds to a tenth, or to a hundredth where the interval asked for is so short that a tenth of
   * a second of it can be heard.
   *
   * @param askedSeconds the interval asked for
   */
  public static String intervalSeconds(double seconds, double askedSeconds) {
    return askedSeconds < SHORT_SECONDS ? hundredths(seconds) + " s" : seconds(seconds);
  }

  /** At most two decimals, none that are zero at the end. */
  public static String hundredths(double value) {
    return Quantities.upTo(value, 2);
  }

  /**
   * {@code 100 to 120 a minute}.
   *
   * @param share how many compressions one of the plan's tempo stands for
   */
  static String range(CompressionPlan plan, double share) {
    return WORDS.say(
        share < 1 ? "compressions.range.events" : "compressions.range",
        decimal(share * plan.range().low()),
        decimal(share * plan.range().high()),
        decimal(plan.tempo().perMinute()));
  }

  /** What became of the prompts, in one line. */
  public static String prompts(Metrics.Prompts prompts) {
    String extra = count(prompts.extra(), "extra breath");
    if (prompts.given() == 0) {
      return prompts.extra() == 0
          ? WORDS.say("row.prompts.none")
          : WORDS.say("row.prompts.none.extra", extra);
    }
    return WORDS.say(
        prompts.forgiven() > 0 ? "row.prompts.excused" : "row.prompts.met",
        prompts.given(),
        prompts.met(),
        prompts.missed(),
        prompts.forgiven(),
        extra);
  }

  /** {@code 1 breath}, {@code 2 breaths}. */
  public static String count(long count, String noun) {
    return Quantities.count(count, noun);
  }
}
