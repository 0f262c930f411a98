package squeezewell.review.judge;

import java.util.List;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Judgement;
import squeezewell.review.measure.IntervalPoint;

/**
 * For how long breaths came too fast: the sum of the intervals of runs that were. A run is at least
 * three intervals in a row below the range whose mean is clearly below it, and so no chance. A
 * window of a minute that a burst passes through would tell a minute of a burst of seconds.
 *
 * @param seconds the sum
 * @param burstSeconds how long the longest burst lasted: four intervals in a row or more at a rate
 *     more than a tenth above the range; 0 if there was none
 */
record FastTime(double seconds, double burstSeconds) {
  /**
   * From here on it is too long: at practical stations a full minute above the upper rate is what
   * is commonly called hyperventilating (common practice).
   */
  private static final int TOO_LONG_SECONDS = 60;

  /** A burst this long is a fault (our own choice). */
  private static final int LONG_BURST_SECONDS = 15;

  private static final int IN_A_ROW = 3;
  private static final int BURST = 4;
  private static final double CLEARLY = 0.97;
  private static final double MUCH = 0.9;

  /** Of intervals in order of time. */
  static FastTime of(BreathPlan plan, List<IntervalPoint> intervals) {
    double shortest = plan.range().low();
    double sum = 0;
    double burst = 0;
    double run = 0;
    int count = 0;
    for (int i = 0; i <= intervals.size(); i++) {
      if (i < intervals.size() && plan.judge(intervals.get(i).lengthNanos()) == Judgement.FAST) {
        run += intervals.get(i).seconds();
        count++;
        continue;
      }
      sum += count >= IN_A_ROW && run < CLEARLY * shortest * count ? run : 0;
      burst = Math.max(burst, count >= BURST && run < MUCH * shortest * count ? run : 0);
      run = 0;
      count = 0;
    }
    return new FastTime(sum, burst);
  }

  /** Whether it counts against the rhythm by itself. */
  boolean tooLong() {
    return seconds >= TOO_LONG_SECONDS;
  }

  /** Whether the longest burst does. */
  boolean longBurst() {
    return burstSeconds >= LONG_BURST_SECONDS;
  }
}
