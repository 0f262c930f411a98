package squeezewell.picture;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import squeezewell.desktop.look.Look;

/** A chart painted into an image, and where each of its stops stands in it. */
public final class PlotPicture {
  private final PlotPainter painter;
  private final BufferedImage image;

  private PlotPicture(PlotPainter painter, BufferedImage image) {
    this.painter = painter;
    this.image = image;
  }

  /**
   * Paints a chart. May be called on any thread.
   *
   * @param width of the place it is for, pixels of the window; 0 is allowed
   * @param height of the same
   * @param fine how many pixels of the image stand for one of the window
   */
  public static PlotPicture draw(Look look, PlotData data, int width, int height, double fine) {
    BufferedImage image =
        new BufferedImage(pixels(width, fine), pixels(height, fine), BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = Look.smooth(image.createGraphics());
    try {
      g2.setColor(look.palette().card());
      g2.fillRect(0, 0, image.getWidth(), image.getHeight());
      g2.scale(fine, fine);
      PlotPainter painter = new PlotPainter(look, data, new ScreenCanvas(g2, look), width, height);
      painter.paint();
      return new PlotPicture(painter, image);
    } finally {
      g2.dispose();
    }
  }

  private static int pixels(int length, double fine) {
    return Math.max(1, (int) Math.ceil(length * fine));
  }

  public BufferedImage image() {
    return image;
  }

  /** Whether it was painted for a place of that size. */
  public boolean fits(int width, int height, double fine) {
    return image.getWidth() == pixels(width, fine) && image.getHeight() == pixels(height, fine);
  }

  /**
   * Where a stop stands, in pixels of the window.
   *
   * @param half half the side of the square around a point
   */
  public Rectangle2D place(PlotData.Stop stop, double half) {
    return painter.place(stop, half);
  }
}
