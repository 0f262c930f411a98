package squeezewell.review.measure;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How closely breaths keep to one place between prompts: the length of the mean of unit vectors at
 * the angle 2π (breath − prompt) / (prompt interval), as usual in circular statistics. 1 if every
 * breath stands at the same place, near 0 if the breaths run at a tempo of their own.
 *
 * @param strength 0 to 1; empty if no breath lies between two prompts
 * @param offsetNanos the mean place, from −half to +half a prompt interval; 0 if there is none
 * @param breaths how many breaths it rests on
 * @param prompts how many prompts there were
 */
public record PhaseLocking(OptionalDouble strength, long offsetNanos, int breaths, int prompts) {
  /** Below this, single prompts can't be told to be answered (our own choice). */
  static final double LOCKED = 0.5;

  private static final int FEWEST = 6;

  /** Prompts further apart than this many usual intervals have a hold between them. */
  private static final double BROKEN = 1.5;

  static PhaseLocking of(long[] prompts, long[] breaths) {
    if (prompts.length < 2) {
      return new PhaseLocking(OptionalDouble.empty(), 0, 0, prompts.length);
    }
    double usual = usualInterval(prompts);
    double east = 0;
    double north = 0;
    int count = 0;
    int i = 0;
    for (long breath : breaths) {
      while (i + 1 < prompts.length && prompts[i + 1] <= breath) {
        i++;
      }
      if (i + 1 >= prompts.length || breath < prompts[i]) {
        continue;
      }
      double interval = prompts[i + 1] - prompts[i];
      if (interval <= BROKEN * usual) {
        double angle = 2 * Math.PI * (breath - prompts[i]) / interval;
        east += Math.cos(angle);
        north += Math.sin(angle);
        count++;
      }
    }
    if (count == 0) {
      return new PhaseLocking(OptionalDouble.empty(), 0, 0, prompts.length);
    }
    double turn = Math.atan2(north, east) / (2 * Math.PI);
    return new PhaseLocking(
        OptionalDouble.of(Math.hypot(east, north) / count),
        Math.round(turn * usual),
        count,
        prompts.length);
  }

  /**
   * Of stretches one after the other, each with a place of its own: the mean of their strengths,
   * each weighed by its breaths, so that another place after a check is no tempo of its own. A few
   * breaths keep a place by chance: stretches of fewer than six do not count.
   *
   * @param all of all stretches together, which holds where none has six
   */
  static PhaseLocking joined(List<PhaseLocking> stretches, PhaseLocking all) {
    double sum = 0;
    int breaths = 0;
    for (PhaseLocking one : stretches) {
      if (one.breaths >= FEWEST) {
        sum += one.strength.orElse(0) * one.breaths;
        breaths += one.breaths;
      }
    }
    return breaths == 0
        ? all
        : new PhaseLocking(OptionalDouble.of(sum / breaths), all.offsetNanos, breaths, all.prompts);
  }

  /** Whether the breaths followed a tempo of their own rather than the prompts. */
  public boolean ownTempo() {
    return strength.orElse(1) < LOCKED && breaths >= FEWEST && prompts >= FEWEST;
  }

  private static double usualInterval(long[] prompts) {
    long[] intervals = new long[prompts.length - 1];
    for (int i = 0; i < intervals.length; i++) {
      intervals[i] = prompts[i + 1] - prompts[i];
    }
    Arrays.sort(intervals);
    return intervals[intervals.length / 2];
  }
}
