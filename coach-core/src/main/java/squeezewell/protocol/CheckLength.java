package squeezewell.protocol;

/** How long a check lasted against what was asked. The one place that judges it. */
public enum CheckLength {
  /** It was broken off before anything could be felt: the check was not made. */
  NOT_MADE,
  TOO_SHORT,
  RIGHT,
  TOO_LONG;

  /** Under this a pulse check was not made (our own choice for practice on manikins). */
  private static final long MADE_FROM_NANOS = 2_000_000_000L;

  /**
   * Judges the length of a check. A rhythm check has no least length: the chest is not compressed
   * meanwhile.
   *
   * @param guidance what was followed
   * @param nanos how long it lasted
   */
  public static CheckLength judge(Guidance guidance, long nanos) {
    Limits limits = guidance.limits();
    long shortest = limits.pulseCheckShortest().nanos();
    if (nanos > limits.pulseCheckLongest().nanos()) {
      return TOO_LONG;
    }
    if (guidance.checksRhythm() || nanos >= shortest) {
      return RIGHT;
    }
    return nanos < MADE_FROM_NANOS && !guidance.patient().isJudgedByHeartRate()
        ? NOT_MADE
        : TOO_SHORT;
  }
}
