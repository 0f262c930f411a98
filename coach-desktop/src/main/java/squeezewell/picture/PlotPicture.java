package squeezewell.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import squeezewell.desktop.look.Look;

/** A chart drawn into an image, and where each of its stops stands in it. */
public final class PlotPicture {
  private final PlotData data;
  private final JFreeChart chart;
  private final Rectangle2D area;
  private final BufferedImage image;

  private PlotPicture(PlotData data, JFreeChart chart, Rectangle2D area, BufferedImage image) {
    this.data = data;
    this.chart = chart;
    this.area = area;
    this.image = image;
  }

  /**
   * Draws a chart. May be called on any thread.
   *
   * @param width of the place it is for, pixels of the window; 0 is allowed
   * @param height of the same
   * @param fine how many pixels of the image stand for one of the window
   */
  public static PlotPicture draw(Look look, PlotData data, int width, int height, double fine) {
    BufferedImage image =
        new BufferedImage(pixels(width, fine), pixels(height, fine), BufferedImage.TYPE_INT_RGB);
    JFreeChart chart = new PlotPainter(look).chart(data);
    ChartRenderingInfo info = new ChartRenderingInfo();
    Graphics2D g2 = Look.smooth(image.createGraphics());
    try {
      g2.scale(fine, fine);
      chart.draw(g2, new Rectangle2D.Double(0, 0, width, height), info);
    } finally {
      g2.dispose();
    }
    return new PlotPicture(data, chart, info.getPlotInfo().getDataArea(), image);
  }

  private static int pixels(int length, double fine) {
    return Math.max(1, (int) Math.ceil(length * fine));
  }

  public BufferedImage image() {
    return image;
  }

  /** Whether it was drawn for a place of that size. */
  public boolean fits(int width, int height, double fine) {
    return image.getWidth() == pixels(width, fine) && image.getHeight() == pixels(height, fine);
  }

  /**
   * Where a stop stands, in pixels of the window.
   *
   * @param half half the side of the square around a point
   */
  public Rectangle2D place(PlotData.Stop stop, double half) {
    XYPlot plot = chart.getXYPlot();
    ValueAxis right = plot.getDomainAxis();
    double x = right.valueToJava2D(stop.x(), area, RectangleEdge.BOTTOM);
    double y = plot.getRangeAxis().valueToJava2D(stop.y(), area, RectangleEdge.LEFT);
    return switch (stop.kind()) {
      case POINT -> new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half);
      case LINE -> new Rectangle2D.Double(x, area.getMinY(), 0, area.getHeight());
      case BAR -> {
        double bar = data.bars().get(0).xHigh() - data.bars().get(0).xLow();
        double wide = right.lengthToJava2D(bar, area, RectangleEdge.BOTTOM);
        yield new Rectangle2D.Double(x - wide / 2, area.getMinY(), wide, area.getHeight());
      }
    };
  }
}
