package squeezewell.desktop.parts;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javax.accessibility.AccessibleRole;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYBoxAnnotation;
import org.jfree.chart.annotations.XYLineAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnits;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.IntervalMarker;
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
import squeezewell.review.IntervalPoint;
import squeezewell.review.Judgement;
import squeezewell.review.Review;

/**
 * The time between breaths over the practice, with the range that was asked for in each part. What
 * was found is a line with its number.
 */
public final class IntervalChart extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final List<Judgement> SERIES =
      List.of(Judgement.IN_RANGE, Judgement.FAST, Judgement.SLOW, Judgement.UNJUDGED);

  /** Intervals beyond this many times the longest in range are drawn at the upper edge. */
  private static final double HIGHEST = 2;

  private final transient Look look;
  private final transient JFreeChart chart;

  /**
   * Draws the intervals of a review.
   *
   * @param review a review of a practice with a rhythm that has a range, in a part at least
   */
  public IntervalChart(Look look, Review review) {
    super(AccessibleRole.PANEL, "Chart: seconds between breaths");
    this.look = look;
    this.chart = build(review);
    var interval = review.metrics().interval();
    describe(
        String.format(
            Locale.ROOT,
            "%d intervals: %d in range, %d fast, %d slow",
            interval.count(),
            interval.inRangeCount(),
            interval.fastCount(),
            interval.slowCount()));
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(372), look.px(170));
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    try {
      chart.draw(g2, new Rectangle2D.Double(0, 0, getWidth(), getHeight()));
    } finally {
      g2.dispose();
    }
  }

  private JFreeChart build(Review review) {
    Palette palette = look.palette();
    List<Review> parts =
        review.rhythms().stream()
            .filter(p -> p.asked().lowNanos().isPresent() && !p.slip())
            .collect(Collectors.toList());
    double top =
        HIGHEST
            * parts.stream().mapToLong(p -> p.asked().highNanos().getAsLong()).max().orElse(1)
            / 1e9;
    XYSeriesCollection data = new XYSeriesCollection();
    for (Judgement judgement : SERIES) {
      XYSeries series = new XYSeries(judgement.label(), false, true);
      for (IntervalPoint point : review.intervals()) {
        if (point.valid() && point.judgement() == judgement) {
          series.add(minutes(point.atNanos(), review), Math.min(point.seconds(), top));
        }
      }
      data.addSeries(series);
    }
    NumberAxis minutes = axis(palette);
    double length = Math.max(1, (review.endNanos() - review.startNanos()) / 60e9);
    minutes.setRange(0, length * 1.01);
    minutes.setTickUnit(new NumberTickUnit(length <= 12 ? 1 : Math.ceil(length / 10)));
    minutes.setLabel("minutes");
    minutes.setLabelFont(look.font(11));
    minutes.setLabelPaint(palette.softText());
    NumberAxis seconds = axis(palette);
    seconds.setRange(0, top * 1.04);
    seconds.setStandardTickUnits(wholeSeconds());
    XYPlot plot = new XYPlot(data, minutes, seconds, renderer(palette));
    plot.setBackgroundPaint(palette.card());
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    for (Review part : parts) {
      addRange(plot, part, review);
    }
    for (int i = 0; i < review.found().size(); i++) {
      addFinding(plot, minutes(review.found().get(i).atNanos(), review), i + 1);
    }
    JFreeChart made = new JFreeChart(null, (Font) null, plot, false);
    made.setBackgroundPaint(palette.card());
    made.setPadding(new RectangleInsets(look.px(10), look.px(6), look.px(4), look.px(12)));
    return made;
  }

  private void addRange(XYPlot plot, Review part, Review whole) {
    Palette palette = look.palette();
    double low = part.asked().lowNanos().getAsLong() / 1e9;
    double high = part.asked().highNanos().getAsLong() / 1e9;
    double target = part.asked().intervalSeconds().getAsDouble();
    if (whole.parts().isEmpty()) {
      plot.addRangeMarker(new IntervalMarker(low, high, palette.active()), Layer.BACKGROUND);
      plot.addRangeMarker(new ValueMarker(target, palette.tide(), dashed()), Layer.BACKGROUND);
      return;
    }
    double from = minutes(part.startNanos(), whole);
    double to = minutes(part.endNanos(), whole);
    plot.getRenderer()
        .addAnnotation(
            new XYBoxAnnotation(from, low, to, high, null, null, palette.active()),
            Layer.BACKGROUND);
    plot.getRenderer()
        .addAnnotation(
            new XYLineAnnotation(from, target, to, target, dashed(), palette.tide()),
            Layer.BACKGROUND);
  }

  private void addFinding(XYPlot plot, double minutes, int number) {
    Palette palette = look.palette();
    ValueMarker line =
        new ValueMarker(minutes, palette.text(), new BasicStroke(Math.max(1, look.px(1.5))));
    line.setLabel(Integer.toString(number));
    line.setLabelFont(look.bold(11));
    line.setLabelPaint(palette.text());
    line.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    line.setLabelAnchor(RectangleAnchor.TOP_RIGHT);
    line.setLabelTextAnchor(TextAnchor.TOP_LEFT);
    plot.addDomainMarker(line, Layer.BACKGROUND);
  }

  private static double minutes(long nanos, Review review) {
    return (nanos - review.startNanos()) / 60e9;
  }

  private NumberAxis axis(Palette palette) {
    NumberAxis axis = new NumberAxis();
    axis.setTickLabelFont(look.font(11));
    axis.setTickLabelPaint(palette.softText());
    axis.setAxisLinePaint(palette.line());
    axis.setTickMarksVisible(false);
    return axis;
  }

  private static TickUnits wholeSeconds() {
    TickUnits units = new TickUnits();
    for (int size : new int[] {1, 2, 5, 10, 20, 60}) {
      units.add(new NumberTickUnit(size));
    }
    return units;
  }

  private XYLineAndShapeRenderer renderer(Palette palette) {
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(false, true);
    double half = Math.max(2, look.px(4));
    Shape square = new Rectangle2D.Double(-half, -half, 2 * half, 2 * half);
    renderer.setSeriesShape(0, square);
    renderer.setSeriesShape(1, triangle(half * 1.3, 1));
    renderer.setSeriesShape(2, triangle(half * 1.3, -1));
    renderer.setSeriesShape(3, new Rectangle2D.Double(-half, -half / 3, 2 * half, half * 2 / 3));
    for (int i = 0; i < SERIES.size(); i++) {
      Color colour = Ribbon.colour(palette, SERIES.get(i));
      renderer.setSeriesPaint(i, colour);
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

  /** The axis that time runs along, for tests. */
  ValueAxis timeAxis() {
    return chart.getXYPlot().getDomainAxis();
  }
}
