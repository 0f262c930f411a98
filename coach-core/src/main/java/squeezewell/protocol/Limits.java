package squeezewell.protocol;

/**
 * The time limits of a practice.
 *
 * @param pulseCheckEvery start of one pulse check to the start of the next
 * @param pulseCheckNotice how long before it is due a check is announced; at most half the spacing,
 *     so that a check is never announced before the one before it is settled
 * @param pulseCheckShortest a shorter check can't tell
 * @param pulseCheckLongest a longer check holds up the breaths
 * @param suctionLongest longest time for which to suction
 * @param suctionNotice how long before that limit to warn
 * @param gapLongest longest time without a breath
 */
public record Limits(
    Limit pulseCheckEvery,
    Limit pulseCheckNotice,
    Limit pulseCheckShortest,
    Limit pulseCheckLongest,
    Limit suctionLongest,
    Limit suctionNotice,
    Limit gapLongest) {
  public Limits {
    if (pulseCheckNotice.nanos() > pulseCheckEvery.nanos() / 2) {
      throw new IllegalArgumentException("the notice of a pulse check is over half its spacing");
    }
    if (pulseCheckShortest.nanos() > pulseCheckLongest.nanos()) {
      throw new IllegalArgumentException("the shortest pulse check is longer than the longest");
    }
    if (suctionNotice.nanos() >= suctionLongest.nanos()) {
      throw new IllegalArgumentException("the warning of suction is longer than its limit");
    }
  }
}
