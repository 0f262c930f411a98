package squeezewell.audio;

import java.util.List;

/**
 * How steadily onsets follow their instants. The delay between the two is unknown and does not
 * matter; only its change does.
 *
 * @param onsets how many
 * @param worstIntervalFrames largest deviation of an interval from the one asked for
 * @param spreadMillis latest minus earliest
 * @param driftMillisPerMinute slope of the least-squares line
 */
record Steadiness(
    int onsets, long worstIntervalFrames, double spreadMillis, double driftMillisPerMinute) {

  /**
   * Compares frames heard with frames asked for, one by one.
   *
   * @param heard frames
   * @param asked frames, as many
   * @param rate of both
   */
  static Steadiness of(List<Long> heard, List<Long> asked, int rate) {
    int n = asked.size();
    long least = Long.MAX_VALUE;
    long most = Long.MIN_VALUE;
    long worst = 0;
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < n; i++) {
      long delay = heard.get(i) - asked.get(i);
      least = Math.min(least, delay);
      most = Math.max(most, delay);
      meanX += asked.get(i) / (double) n;
      meanY += delay / (double) n;
      if (i > 0) {
        long change = delay - (heard.get(i - 1) - asked.get(i - 1));
        worst = Math.max(worst, Math.abs(change));
      }
    }
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < n; i++) {
      double x = asked.get(i) - meanX;
      xy += x * (heard.get(i) - asked.get(i) - meanY);
      xx += x * x;
    }
    return new Steadiness(
        n, worst, (most - least) * 1_000.0 / rate, xx == 0 ? 0 : xy / xx * 60_000);
  }
}
