package squeezewell.picture;

import java.util.List;
import squeezewell.protocol.Judgement;

/**
 * What a plain chart shows, worked out. The units of both axes stand in the labels. Immutable.
 *
 * @param name what it is, for a screen reader
 * @param xLabel under the axis to the right
 * @param yLabel what the axis upwards counts
 * @param xLow left end
 * @param xHigh right end, larger
 * @param yLow lower end
 * @param yHigh upper end, larger
 * @param ranges what was asked for, as boxes behind the rest
 * @param targets single values that were asked for, as dashed lines
 * @param stops what can be chosen and told of, from left to right
 * @param joined whether the points are joined by a line instead of drawn as shapes
 * @param bars bars, for a histogram
 * @param found where something was found, numbered in this order
 * @param holds where no breaths were asked for
 * @param partStarts where a part with another rhythm begins
 * @param summary the whole in one sentence
 * @param step how many stops a key moves on
 */
public record PlotData(
    String name,
    String xLabel,
    String yLabel,
    double xLow,
    double xHigh,
    double yLow,
    double yHigh,
    List<Box> ranges,
    List<Level> targets,
    List<Stop> stops,
    boolean joined,
    List<Bar> bars,
    List<Double> found,
    List<Span> holds,
    List<Double> partStarts,
    String summary,
    int step) {
  public PlotData {
    if (!(xHigh > xLow && yHigh > yLow && step > 0)) {
      throw new IllegalArgumentException("an axis must be longer than nothing, a step too");
    }
    ranges = List.copyOf(ranges);
    targets = List.copyOf(targets);
    stops = List.copyOf(stops);
    bars = List.copyOf(bars);
    found = List.copyOf(found);
    holds = List.copyOf(holds);
    partStarts = List.copyOf(partStarts);
  }

  /** A box, in the units of the axes. */
  public record Box(double xLow, double xHigh, double yLow, double yHigh) {}

  /** A line at a height from one place to another, or upright where both heights differ. */
  public record Level(double xLow, double yLow, double xHigh, double yHigh) {}

  /** A stretch of the axis to the right. */
  public record Span(double from, double to) {}

  /** A bar, or a piece of one that stands on another. */
  public record Bar(double xLow, double xHigh, double yLow, double yHigh, Judgement judgement) {}

  /**
   * Something that can be chosen.
   *
   * @param kind what it is
   * @param x where it stands
   * @param y how high; for a line or stretch over the whole height not used
   * @param judgement how it was timed
   * @param words what is said of it
   */
  public record Stop(Kind kind, double x, double y, Judgement judgement, String words) {
    /** Whether it was too soon or too late. */
    public boolean notAsAsked() {
      return judgement == Judgement.FAST || judgement == Judgement.SLOW;
    }
  }

  /** What can be chosen in a chart. */
  public enum Kind {
    POINT,
    BAR,
    /** Something over the whole height: a finding, a hold, the beginning of a part. */
    LINE
  }
}
