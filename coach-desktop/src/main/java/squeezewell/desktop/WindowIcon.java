package squeezewell.desktop;

import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** The picture of our windows in title bars and task lists: a tide column, half full. */
final class WindowIcon {
  private static final int[] SIZES = {16, 24, 32, 48, 64, 128};

  private WindowIcon() {}

  /** The same picture in the sizes that systems ask for. */
  static List<Image> sizes() {
    List<Image> images = new ArrayList<>();
    for (int size : SIZES) {
      images.add(paint(size));
    }
    return images;
  }

  private static Image paint(int size) {
    Palette palette = Palette.lightTheme();
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
    Graphics2D g = Look.smooth(image.createGraphics());
    double edge = size / 16.0;
    RoundRectangle2D vessel =
        new RoundRectangle2D.Double(4 * edge, edge, 8 * edge, 14 * edge, 4 * edge, 4 * edge);
    g.setColor(palette.card());
    g.fill(vessel);
    g.setClip(vessel);
    g.setColor(palette.tide());
    g.fill(new Rectangle2D.Double(0, 7 * edge, size, size));
    g.setClip(null);
    g.setColor(palette.text());
    g.setStroke(new java.awt.BasicStroke((float) (1.5 * edge)));
    g.draw(vessel);
    g.dispose();
    return image;
  }
}
