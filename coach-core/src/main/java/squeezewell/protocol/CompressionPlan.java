package squeezewell.protocol;

import java.util.Objects;

/**
 * How fast to compress the chest.
 *
 * @param tempo the rate that is prompted
 * @param lowPerMinute lowest published rate
 * @param highPerMinute highest published rate
 * @param source where the prompted rate comes from
 * @param rangeSource where the range comes from
 */
public record CompressionPlan(
    Tempo tempo, double lowPerMinute, double highPerMinute, Citation source, Citation rangeSource) {
  private static final double TOLERANCE_PER_MINUTE = 0.5;

  public CompressionPlan {
    Objects.requireNonNull(tempo, "tempo");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(rangeSource, "rangeSource");
    if (!(lowPerMinute > 0 && lowPerMinute <= highPerMinute && highPerMinute < 1e6)) {
      throw new IllegalArgumentException(
          "the range " + lowPerMinute + " to " + highPerMinute + " /min makes no sense");
    }
  }

  /** The range of the rate, a minute, to be shown. */
  public Range range() {
    return new Range(lowPerMinute, highPerMinute);
  }

  /**
   * The end of the range that lies next to what is off on one side, a minute, to be shown.
   *
   * @param side {@link Judgement#FAST} for the highest rate, else the lowest
   */
  public double limitPerMinute(Judgement side) {
    return side == Judgement.FAST ? highPerMinute : lowPerMinute;
  }

  /** Whether the guideline itself prints the range; else it is our own. */
  public boolean rangeIsPublished() {
    return rangeSource.confidence() != Confidence.HOUSE;
  }

  /** How the time from one compression to the next is, in nanoseconds; see {@link #judgeRate}. */
  public Judgement judge(long intervalNanos) {
    return judgeRate(60e9 / intervalNanos);
  }

  /**
   * How a rate is. Half a compression a minute beyond either end is still in range: rates are
   * published, prompted and shown in whole numbers, and one that reads 120 must not be called too
   * fast where 120 is allowed.
   *
   * @param perMinute compressions a minute
   */
  public Judgement judgeRate(double perMinute) {
    if (perMinute < lowPerMinute - TOLERANCE_PER_MINUTE) {
      return Judgement.SLOW;
    }
    return perMinute >= highPerMinute + TOLERANCE_PER_MINUTE ? Judgement.FAST : Judgement.IN_RANGE;
  }

  /** A rate as it is to be read beside its judgement: within the tolerance it is the limit. */
  public double asRead(double perMinute) {
    return judgeRate(perMinute) == Judgement.IN_RANGE
        ? Math.max(lowPerMinute, Math.min(highPerMinute, perMinute))
        : perMinute;
  }
}
