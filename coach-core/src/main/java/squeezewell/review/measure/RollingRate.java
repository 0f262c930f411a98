package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaths a minute over the last 60 s, once a second: the intervals inside the window, the ones at
 * its edges in part, over the time they cover. So one breath more or less makes no jump. Not known
 * while the intervals cover less than 30 s of the window.
 */
public final class RollingRate {
  private static final long SECOND = 1_000_000_000L;
  private static final long WINDOW = 60 * SECOND;
  private static final long LEAST_COVERED = 30 * SECOND;

  private RollingRate() {}

  /**
   * A point each second.
   *
   * @param intervals in order of time
   * @param startNanos the first point lies one second after it
   * @param endNanos no point lies after it
   */
  public static List<RatePoint> of(List<IntervalPoint> intervals, long startNanos, long endNanos) {
    List<RatePoint> points = new ArrayList<>();
    Covered upToNow = new Covered(intervals);
    Covered upToWindow = new Covered(intervals);
    for (long at = startNanos + SECOND; at <= endNanos; at += SECOND) {
      upToNow.moveTo(at);
      upToWindow.moveTo(at - WINDOW);
      long covered = upToNow.nanos() - upToWindow.nanos();
      if (covered >= LEAST_COVERED) {
        double breaths = upToNow.breaths() - upToWindow.breaths();
        points.add(new RatePoint(at, breaths * WINDOW / covered));
      }
    }
    return List.copyOf(points);
  }

  /** For how many seconds the rate was above a limit. A rate at the limit is not above it. */
  public static int secondsAbove(List<RatePoint> points, double perMinute) {
    double rounding = 1e-9 * perMinute;
    return (int) points.stream().filter(p -> p.perMinute() > perMinute + rounding).count();
  }

  /** Valid intervals summed up to an instant that only moves on. */
  private static final class Covered {
    private final List<IntervalPoint> intervals;
    private int next;
    private long nanosBefore;
    private int breathsBefore;
    private long nanosPart;
    private double breathsPart;

    Covered(List<IntervalPoint> intervals) {
      this.intervals = intervals;
    }

    void moveTo(long at) {
      while (next < intervals.size() && intervals.get(next).atNanos() <= at) {
        if (intervals.get(next).valid()) {
          nanosBefore += intervals.get(next).lengthNanos();
          breathsBefore++;
        }
        next++;
      }
      nanosPart = 0;
      breathsPart = 0;
      if (next < intervals.size() && intervals.get(next).valid()) {
        IntervalPoint open = intervals.get(next);
        nanosPart = Math.max(0, at - (open.atNanos() - open.lengthNanos()));
        breathsPart = nanosPart == 0 ? 0 : (double) nanosPart / open.lengthNanos();
      }
    }

    long nanos() {
      return nanosBefore + nanosPart;
    }

    double breaths() {
      return breathsBefore + breathsPart;
    }
  }
}
