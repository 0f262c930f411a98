package squeezewell.picture;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.protocol.Judgement;
import squeezewell.words.Quantities;

/** Paints a chart into a place. */
public final class PlotPainter {
  /** What is in range is painted last, over the rest. */
  private static final List<Judgement> ORDER =
      List.of(Judgement.UNJUDGED, Judgement.SLOW, Judgement.FAST, Judgement.IN_RANGE);

  /** Points of a rate further apart than this, in minutes, are not joined. */
  private static final double APART = 1.5 / 60;

  private static final int MOST_TO_THE_RIGHT = 10;
  private static final int MOST_UPWARDS = 8;

  private final Look look;
  private final Palette palette;
  private final PlotData data;
  private final Canvas canvas;
  private final Axis right;
  private final Axis up;

  /** Values of the data, and where they stand in the picture. */
  private record Axis(double low, double high, double from, double to) {
    double at(double value) {
      return from + (value - low) / (high - low) * (to - from);
    }

    /** Steps of 1, 2 or 5 times a power of ten, not more than that, with room for their words. */
    List<Double> ticks(int most, double room) {
      for (double power = 0.1; power <= 1000; power *= 10) {
        for (int digit : new int[] {1, 2, 5}) {
          double share = digit * power / (high - low);
          if (share * most >= 1 && share * Math.abs(to - from) >= room) {
            return multiples(digit * power);
          }
        }
      }
      return List.of();
    }

    private List<Double> multiples(double step) {
      List<Double> ticks = new ArrayList<>();
      for (double k = Math.ceil(low / step); k * step <= high; k++) {
        ticks.add(k * step);
      }
      return ticks;
    }
  }

  /** A painter of a chart on a place of a size, its upper left corner at 0. */
  public PlotPainter(Look look, PlotData data, Canvas canvas, double width, double height) {
    this.look = look;
    this.palette = look.palette();
    this.data = data;
    this.canvas = canvas;
    double foot = Math.max(look.px(11), height - look.px(38));
    this.up = new Axis(data.yLow(), data.yHigh(), foot, look.px(10));
    double widest =
        upTicks().stream().mapToDouble(t -> canvas.lengthOf(false, text(t))).max().orElse(0);
    double left = look.px(14) + widest;
    double end = Math.max(left + 1, width - look.px(12));
    this.right = new Axis(data.xLow(), data.xHigh(), left, end);
  }

  /** Where a stop stands; a point in a square with sides of twice a half. */
  public Rectangle2D place(PlotData.Stop stop, double half) {
    double x = right.at(stop.x());
    double height = up.from() - up.to();
    return switch (stop.kind()) {
      case POINT -> new Rectangle2D.Double(x - half, up.at(stop.y()) - half, 2 * half, 2 * half);
      case LINE -> new Rectangle2D.Double(x, up.to(), 0, height);
      case BAR -> {
        PlotData.Bar bar = data.bars().get(0);
        double wide = right.at(bar.xHigh()) - right.at(bar.xLow());
        yield new Rectangle2D.Double(x - wide / 2, up.to(), wide, height);
      }
    };
  }

  /** Paints it. */
  public void paint() {
    for (PlotData.Box box : data.ranges()) {
      canvas.fill(palette.mist(), box(box.xLow(), box.xHigh(), box.yLow(), box.yHigh()));
    }
    // A low bar at the foot: told from a range by its place, and by the words on pointing at it.
    double low = data.yLow() + (data.yHigh() - data.yLow()) * 0.05;
    for (PlotData.Span hold : data.holds()) {
      Shape bar = box(hold.from(), hold.to(), data.yLow(), low);
      canvas.fill(palette.softText(), bar);
      canvas.draw(palette.softText(), look.px(1), bar);
    }
    float dash = look.px(5);
    double thin = Math.max(1, look.px(1.5));
    for (PlotData.Level target : data.targets()) {
      canvas.draw(
          palette.tide(),
          thin,
          line(target.xLow(), target.yLow(), target.xHigh(), target.yHigh()),
          dash,
          dash);
    }
    if (data.joined()) {
      canvas.draw(palette.text(), look.px(2), joined());
    } else {
      ORDER.forEach(this::points);
    }
    data.bars().forEach(this::bar);
    for (double start : data.partStarts()) {
      canvas.draw(
          palette.softText(), thin, line(start, data.yLow(), start, data.yHigh()), dash, dash);
    }
    for (int i = 0; i < data.found().size(); i++) {
      double at = data.found().get(i);
      canvas.draw(palette.text(), thin, line(at, data.yLow(), at, data.yHigh()));
      canvas.text(
          palette.text(),
          true,
          right.at(at) + look.px(3),
          up.to() + look.px(10),
          Integer.toString(i + 1));
    }
    axes();
  }

  private void axes() {
    canvas.draw(
        palette.line(), look.px(1), line(data.xLow(), data.yLow(), data.xHigh(), data.yLow()));
    canvas.draw(
        palette.line(), look.px(1), line(data.xLow(), data.yLow(), data.xLow(), data.yHigh()));
    Color soft = palette.softText();
    for (double tick : upTicks()) {
      String text = text(tick);
      double left = right.from() - look.px(7) - canvas.lengthOf(false, text);
      canvas.text(soft, false, left, up.at(tick) + look.px(4), text);
    }
    for (double tick : right.ticks(MOST_TO_THE_RIGHT, look.px(34))) {
      double half = canvas.lengthOf(false, text(tick)) / 2;
      canvas.text(soft, false, right.at(tick) - half, up.from() + look.px(15), text(tick));
    }
    double half = canvas.lengthOf(false, data.xLabel()) / 2;
    double middle = (right.from() + right.to()) / 2;
    canvas.text(soft, false, middle - half, up.from() + look.px(31), data.xLabel());
  }

  private List<Double> upTicks() {
    return up.ticks(MOST_UPWARDS, look.px(14));
  }

  private static String text(double tick) {
    return Quantities.upTo(tick, 1);
  }

  private Rectangle2D box(double xLow, double xHigh, double yLow, double yHigh) {
    double left = right.at(Math.max(data.xLow(), xLow));
    double top = up.at(Math.min(data.yHigh(), yHigh));
    return new Rectangle2D.Double(
        left,
        top,
        Math.max(0, right.at(Math.min(data.xHigh(), xHigh)) - left),
        Math.max(0, up.at(Math.max(data.yLow(), yLow)) - top));
  }

  private Line2D line(double x1, double y1, double x2, double y2) {
    return new Line2D.Double(
        right.at(x1), up.at(y1), right.at(Math.min(x2, data.xHigh())), up.at(y2));
  }

  /** Fast is striped upwards, slow downwards, the rest is full. */
  private void bar(PlotData.Bar bar) {
    Rectangle2D area = box(bar.xLow(), bar.xHigh(), bar.yLow(), bar.yHigh());
    Color colour = palette.of(bar.judgement());
    double step = Math.max(4, look.px(6));
    boolean striped = bar.judgement() == Judgement.FAST || bar.judgement() == Judgement.SLOW;
    if (striped && Math.min(area.getWidth(), area.getHeight()) > step) {
      double line = step * 0.45;
      Rectangle2D inner =
          new Rectangle2D.Double(
              area.getX() + line / 2,
              area.getY() + line / 2,
              area.getWidth() - line,
              area.getHeight() - line);
      canvas.fill(palette.card(), area);
      canvas.draw(colour, line, stripes(inner, step, bar.judgement() == Judgement.FAST));
    } else {
      canvas.fill(colour, area);
    }
    canvas.draw(palette.card(), look.px(1), area);
  }

  /** Slanting lines over an area, fixed to the place and not to what is drawn there. */
  static Path2D stripes(Rectangle2D area, double step, boolean upwards) {
    Path2D lines = new Path2D.Double();
    double high = area.getHeight();
    double first = Math.floor((area.getX() - high) / step) * step;
    for (double at = first; at < area.getMaxX(); at += step) {
      double from = Math.max(at, area.getX());
      double to = Math.min(at + high, area.getMaxX());
      if (to > from) {
        double base = upwards ? area.getMaxY() : area.getY();
        int sign = upwards ? -1 : 1;
        lines.moveTo(from, base + sign * (from - at));
        lines.lineTo(to, base + sign * (to - at));
      }
    }
    return lines;
  }

  private void points(Judgement judgement) {
    Path2D shapes = new Path2D.Double();
    double half = Math.max(2, look.px(4));
    for (PlotData.Stop stop : data.stops()) {
      if (stop.kind() == PlotData.Kind.POINT && stop.judgement() == judgement) {
        double x = right.at(stop.x());
        double y = up.at(stop.y());
        double tip = half * 1.3;
        shapes.append(
            switch (judgement) {
              case FAST -> RibbonPainter.tip(x, y - tip, tip, 2 * tip);
              case SLOW -> RibbonPainter.tip(x, y + tip, tip, -2 * tip);
              case IN_RANGE -> new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half);
              case UNJUDGED ->
                  new Rectangle2D.Double(x - half, y - half / 3, 2 * half, half * 2 / 3);
            },
            false);
      }
    }
    if (shapes.getCurrentPoint() != null) {
      canvas.fill(palette.of(judgement), shapes);
    }
  }

  private Path2D joined() {
    Path2D line = new Path2D.Double();
    double before = Double.NEGATIVE_INFINITY;
    for (PlotData.Stop stop : data.stops()) {
      if (stop.kind() == PlotData.Kind.POINT) {
        if (stop.x() - before > APART) {
          line.moveTo(right.at(stop.x()), up.at(stop.y()));
        } else {
          line.lineTo(right.at(stop.x()), up.at(stop.y()));
        }
        before = stop.x();
      }
    }
    return line;
  }
}
