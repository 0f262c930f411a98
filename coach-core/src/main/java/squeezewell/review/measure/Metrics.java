package squeezewell.review.measure;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The figures of a practice. What can't be computed is empty, never 0; sums and counts of nothing
 * are 0.
 *
 * @param breathCount breaths given, retracted ones left out
 * @param sessionSeconds from the end of the count-in to the end
 * @param effectiveSeconds the same, without the excused parts of holds
 * @param firstBreathSeconds from the end of the count-in to the first breath, negative if it came
 *     before; empty without a breath
 * @param rate breaths a minute
 * @param interval start of one breath to start of the next
 * @param hyperventilationMinutes how long the rate over the last minute was above the rate of the
 *     shortest interval in range; empty if that rate was known at no time
 * @param gap longest time without a breath
 * @param prompts what became of the prompts; empty where it means nothing which breath met which
 *     prompt (see {@link Marks#paired})
 * @param asynchrony how breaths stood to prompts, where they were prompted; empty likewise
 * @param unprompted how the rhythm went without prompts; empty if every breath was prompted
 * @param inspiration length of the squeezes
 * @param pulseChecks in order of time
 * @param suctions in order of time
 * @param holeCount how often the program stood still
 * @param holeSeconds for how long in all
 * @param drift whether the rhythm slowed or sped up
 * @param volume volumes delivered
 * @param compressions chest compressions; empty if the rhythm has none and none were recorded
 */
public record Metrics(
    int breathCount,
    double sessionSeconds,
    double effectiveSeconds,
    OptionalDouble firstBreathSeconds,
    Rate rate,
    Interval interval,
    OptionalDouble hyperventilationMinutes,
    Gap gap,
    Optional<Prompts> prompts,
    Optional<Asynchrony> asynchrony,
    Optional<Unprompted> unprompted,
    Inspiration inspiration,
    List<PulseCheckResult> pulseChecks,
    List<SuctionResult> suctions,
    int holeCount,
    double holeSeconds,
    Drift drift,
    Volume volume,
    Optional<Compressions> compressions) {
  public Metrics {
    pulseChecks = List.copyOf(pulseChecks);
    suctions = List.copyOf(suctions);
  }

  /**
   * Breaths a minute.
   *
   * @param overallPerMinute 60 over the mean of the valid intervals; empty without one
   * @param countPerMinute breaths outside the excused parts over the effective time; it is off by
   *     up to one breath in the time. Empty if there is no such time
   */
  public record Rate(OptionalDouble overallPerMinute, OptionalDouble countPerMinute) {}

  /**
   * The valid intervals: those between two breaths with no hold between. All empty or 0 for a
   * rhythm of compressions and pauses.
   *
   * @param count how many
   * @param meanSeconds mean
   * @param medianSeconds median
   * @param sdSeconds standard deviation, n − 1 below; empty for one
   * @param robustSdSeconds 1.4826 times the median distance from the median; empty for one
   * @param inRangeCount how many lay in the range
   * @param fastCount how many were shorter
   * @param slowCount how many were longer
   * @param inRangeFraction 0 to 1
   * @param inRangeLow lower end of its 95 % score interval (Wilson, 1927)
   * @param inRangeHigh upper end
   * @param timeInRangeFraction time in intervals in range, as a share of all time that was not
   *     excused; waiting less than the longest interval at the ends and at holds costs nothing
   * @param tempoErrorPercent mean against the interval asked for; positive if slow
   * @param excessBreaths how many breaths too many the short intervals add up to
   * @param deficitBreaths how many breaths are missing from the long intervals
   * @param fastMinutes time in intervals shorter than the range
   * @param slowMinutes time in intervals longer than the range
   */
  public record Interval(
      int count,
      OptionalDouble meanSeconds,
      OptionalDouble medianSeconds,
      OptionalDouble sdSeconds,
      OptionalDouble robustSdSeconds,
      int inRangeCount,
      int fastCount,
      int slowCount,
      OptionalDouble inRangeFraction,
      OptionalDouble inRangeLow,
      OptionalDouble inRangeHigh,
      OptionalDouble timeInRangeFraction,
      OptionalDouble tempoErrorPercent,
      double excessBreaths,
      double deficitBreaths,
      double fastMinutes,
      double slowMinutes) {}

  /**
   * The longest time without a breath, from the end of a squeeze (its start if the end is not
   * known) to the start of the next, and at both ends of the session; checks, suction and pauses
   * are left out of it.
   *
   * @param longestSeconds how long it was
   * @param longestAtSeconds when it began, seconds on the clock of the practice
   * @param overLimitCount how many were longer than the limit
   * @param overLimitSeconds by how much in all
   */
  public record Gap(
      double longestSeconds, double longestAtSeconds, int overLimitCount, double overLimitSeconds) {
    /**
     * Whether any time passed in which breaths were to be given, as none does before they begin.
     */
    public boolean happened() {
      return longestSeconds > 0;
    }
  }

  /**
   * What became of the prompts: given = met + missed + forgiven, and met + extra + unprompted =
   * breaths.
   *
   * @param given prompts given; those the program slept through are left out
   * @param met answered by a breath
   * @param missed not answered
   * @param extra breaths that answer no prompt
   * @param forgiven not answered, but a hold began right after, or the session ended
   * @param unprompted breaths given while breaths were not prompted; they are neither met nor extra
   */
  public record Prompts(int given, int met, int missed, int extra, int forgiven, int unprompted) {
    /** Where every breath was prompted. */
    public Prompts(int given, int met, int missed, int extra, int forgiven) {
      this(given, met, missed, extra, forgiven, 0);
    }
  }

  /**
   * Breath minus prompt, over the prompts that were met; positive if late.
   *
   * @param meanSeconds mean
   * @param medianSeconds median
   * @param sdSeconds standard deviation, n − 1 below; empty for one
   * @param phaseLocking 1 if every breath stood at the same place between prompts, near 0 if the
   *     breaths ran at a tempo of their own; empty for a rhythm of compressions and pauses
   */
  public record Asynchrony(
      OptionalDouble meanSeconds,
      OptionalDouble medianSeconds,
      OptionalDouble sdSeconds,
      OptionalDouble phaseLocking) {}

  /**
   * Length of the squeezes whose end is known.
   *
   * @param count how many
   * @param meanSeconds mean
   * @param medianSeconds median
   * @param lowerQuartileSeconds lower quartile
   * @param upperQuartileSeconds upper quartile
   * @param goodCount how many were neither too short nor too long
   * @param goodFraction the same as a share, 0 to 1
   * @param shortestGoodSeconds 0.8 times the length asked for, but never less than 0.15 s below it
   *     (our own choice; the second part matters for newborns only)
   * @param longestGoodSeconds 1.3 times the length asked for, but never less than 0.15 s above it
   *     (our own choice)
   */
  public record Inspiration(
      int count,
      OptionalDouble meanSeconds,
      OptionalDouble medianSeconds,
      OptionalDouble lowerQuartileSeconds,
      OptionalDouble upperQuartileSeconds,
      int goodCount,
      OptionalDouble goodFraction,
      double shortestGoodSeconds,
      double longestGoodSeconds) {}

  /**
   * Volumes, over the breaths whose volume is known.
   *
   * @param count how many
   * @param medianMillilitres median
   * @param variationFraction standard deviation over mean; empty for one
   * @param litresPerMinute volume of the breaths that begin a valid interval over the time of those
   *     intervals
   */
  public record Volume(
      int count,
      OptionalDouble medianMillilitres,
      OptionalDouble variationFraction,
      OptionalDouble litresPerMinute) {}
}
