package squeezewell.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.Shape;
import java.awt.TexturePaint;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.protocol.Judgement;

/** Makes a chart of the library from what a chart is to show. */
final class PlotPainter {
  private static final List<Judgement> SERIES =
      List.of(Judgement.IN_RANGE, Judgement.FAST, Judgement.SLOW, Judgement.UNJUDGED);

  /** Points of a rate further apart than this, in minutes, are not joined. */
  private static final double APART = 1.5 / 60;

  private final Look look;
  private final Palette palette;

  PlotPainter(Look look) {
    this.look = look;
    this.palette = look.palette();
  }

  JFreeChart chart(PlotData data) {
    NumberAxis right = axis(data.xLabel());
    right.setRange(data.xLow(), data.xHigh());
    right.setStandardTickUnits(units(data.xHigh() - data.xLow(), 10));
    NumberAxis up = axis("");
    up.setRange(data.yLow(), data.yHigh());
    up.setStandardTickUnits(units(data.yHigh() - data.yLow(), 8));
    XYLineAndShapeRenderer renderer = renderer(data.joined());
    XYPlot plot = new XYPlot(series(data), right, up, renderer);
    plot.setBackgroundPaint(palette.card());
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    for (PlotData.Box range : data.ranges()) {
      renderer.addAnnotation(
          new XYBoxAnnotation(
              range.xLow(),
              range.yLow(),
              range.xHigh(),
              range.yHigh(),
              null,
              null,
              palette.active()),
          Layer.BACKGROUND);
    }
    for (PlotData.Span hold : data.holds()) {
      addHold(renderer, data, hold);
    }
    for (PlotData.Level target : data.targets()) {
      renderer.addAnnotation(
          new XYLineAnnotation(
              target.xLow(),
              target.yLow(),
              target.xHigh(),
              target.yHigh(),
              dashed(),
              palette.tide()),
          Layer.BACKGROUND);
    }
    for (PlotData.Bar bar : data.bars()) {
      renderer.addAnnotation(
          new XYBoxAnnotation(
              bar.xLow(),
              bar.yLow(),
              bar.xHigh(),
              bar.yHigh(),
              look.stroke(1),
              palette.card(),
              fill(bar.judgement())),
          Layer.FOREGROUND);
    }
    for (double start : data.partStarts()) {
      plot.addDomainMarker(new ValueMarker(start, palette.softText(), dashed()), Layer.FOREGROUND);
    }
    for (int i = 0; i < data.found().size(); i++) {
      addFinding(plot, data.found().get(i), i + 1);
    }
    JFreeChart made = new JFreeChart(null, (Font) null, plot, false);
    made.setBackgroundPaint(palette.card());
    made.setPadding(new RectangleInsets(look.px(10), look.px(6), look.px(4), look.px(12)));
    return made;
  }

  /** Fast is striped upwards, slow downwards, the rest is full. */
  private Paint fill(Judgement judgement) {
    Color colour = palette.of(judgement);
    if (judgement != Judgement.FAST && judgement != Judgement.SLOW) {
      return colour;
    }
    int size = Math.max(4, look.px(6));
    BufferedImage stripe = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = Look.smooth(stripe.createGraphics());
    g2.setColor(palette.card());
    g2.fillRect(0, 0, size, size);
    g2.setColor(colour);
    g2.setStroke(new BasicStroke(size * 0.45f));
    int up = judgement == Judgement.FAST ? 1 : -1;
    for (int shift = -size; shift <= size; shift += size) {
      int middle = shift + size / 2;
      g2.drawLine(middle - size, size / 2 + up * size, middle + size, size / 2 - up * size);
    }
    g2.dispose();
    return new TexturePaint(stripe, new Rectangle2D.Double(0, 0, size, size));
  }

  /** A low bar at the foot: told from a range by its place, and by the words on pointing at it. */
  private void addHold(XYLineAndShapeRenderer renderer, PlotData data, PlotData.Span hold) {
    double high = data.yLow() + (data.yHigh() - data.yLow()) * 0.05;
    renderer.addAnnotation(
        new XYBoxAnnotation(
            hold.from(),
            data.yLow(),
            hold.to(),
            high,
            look.stroke(1),
            palette.softText(),
            palette.softText()),
        Layer.BACKGROUND);
  }

  private static XYSeriesCollection series(PlotData data) {
    XYSeriesCollection all = new XYSeriesCollection();
    if (data.joined()) {
      XYSeries line = new XYSeries("line", false, true);
      double before = Double.NaN;
      for (PlotData.Stop stop : data.stops()) {
        if (stop.kind() == PlotData.Kind.POINT) {
          if (stop.x() - before > APART) {
            line.add(before + APART / 2, null);
          }
          line.add(stop.x(), stop.y());
          before = stop.x();
        }
      }
      all.addSeries(line);
      return all;
    }
    for (Judgement judgement : SERIES) {
      XYSeries series = new XYSeries(judgement.label(), false, true);
      for (PlotData.Stop stop : data.stops()) {
        if (stop.kind() == PlotData.Kind.POINT && stop.judgement() == judgement) {
          series.add(stop.x(), stop.y());
        }
      }
      all.addSeries(series);
    }
    return all;
  }

  private void addFinding(XYPlot plot, double at, int number) {
    ValueMarker line =
        new ValueMarker(at, palette.text(), new BasicStroke(Math.max(1, look.px(1.5))));
    line.setLabel(Integer.toString(number));
    line.setLabelFont(look.bold(11));
    line.setLabelPaint(palette.text());
    line.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    line.setLabelAnchor(RectangleAnchor.TOP_RIGHT);
    line.setLabelTextAnchor(TextAnchor.TOP_LEFT);
    plot.addDomainMarker(line, Layer.FOREGROUND);
  }

  private NumberAxis axis(String label) {
    NumberAxis axis = new NumberAxis(label.isEmpty() ? null : label);
    axis.setTickLabelFont(look.font(11));
    axis.setTickLabelPaint(palette.softText());
    axis.setLabelFont(look.font(11));
    axis.setLabelPaint(palette.softText());
    axis.setAxisLinePaint(palette.line());
    axis.setTickMarksVisible(false);
    axis.setAutoRangeIncludesZero(false);
    return axis;
  }

  /** Steps of 1, 2 or 5 times a power of ten, not more of them than asked for. */
  private static TickUnits units(double length, int most) {
    TickUnits units = new TickUnits();
    for (double power = 0.1; power <= 1000; power *= 10) {
      for (int digit : new int[] {1, 2, 5}) {
        if (length / (digit * power) <= most) {
          units.add(
              new NumberTickUnit(
                  digit * power,
                  new DecimalFormat(
                      power < 0.5 ? "0.0" : "0", DecimalFormatSymbols.getInstance(Locale.ROOT))));
        }
      }
    }
    return units;
  }

  private XYLineAndShapeRenderer renderer(boolean joined) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(joined, !joined);
    double half = Math.max(2, look.px(4));
    renderer.setSeriesShape(0, new Rectangle2D.Double(-half, -half, 2 * half, 2 * half));
    renderer.setSeriesShape(1, triangle(half * 1.3, 1));
    renderer.setSeriesShape(2, triangle(half * 1.3, -1));
    renderer.setSeriesShape(3, new Rectangle2D.Double(-half, -half / 3, 2 * half, half * 2 / 3));
    for (int i = 0; i < SERIES.size(); i++) {
      renderer.setSeriesPaint(i, palette.of(SERIES.get(i)));
    }
    if (joined) {
      renderer.setSeriesPaint(0, palette.text());
      renderer.setSeriesStroke(0, look.stroke(2));
      renderer.setDrawSeriesLineAsPath(true);
    }
    return renderer;
  }

  /** A triangle that points up (1) or down (-1). */
  private static Shape triangle(double half, int up) {
    Path2D shape = new Path2D.Double();
    shape.moveTo(0, -half * up);
    shape.lineTo(half, half * up);
    shape.lineTo(-half, half * up);
    shape.closePath();
    return shape;
  }

  private BasicStroke dashed() {
    float dash = look.px(5);
    return new BasicStroke(
        Math.max(1, look.px(1.5)),
        BasicStroke.CAP_BUTT,
        BasicStroke.JOIN_MITER,
        1,
        new float[] {dash, dash},
        0);
  }
}
