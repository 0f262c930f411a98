package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.event.ActionEvent;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.image.BufferedImage;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** Parts painted into pictures, and keys and a mouse for them. */
final class Painted {
  private Painted() {}

  /** The part as it is, on black; one pixel where it has no size. */
  static BufferedImage of(JComponent part) {
    BufferedImage picture =
        new BufferedImage(
            Math.max(1, part.getWidth()),
            Math.max(1, part.getHeight()),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = picture.createGraphics();
    part.paint(g2);
    g2.dispose();
    return picture;
  }

  /** Whether a pixel within so many pixels of a place has a colour. */
  static boolean near(BufferedImage picture, double x, double y, int within, Color colour) {
    for (int dx = -within; dx <= within; dx++) {
      for (int dy = -within; dy <= within; dy++) {
        int px = (int) Math.round(x) + dx;
        int py = (int) Math.round(y) + dy;
        if (px >= 0 && py >= 0 && px < picture.getWidth() && py < picture.getHeight()) {
          Color there = new Color(picture.getRGB(px, py));
          if (Math.abs(there.getRed() - colour.getRed()) < 12
              && Math.abs(there.getGreen() - colour.getGreen()) < 12
              && Math.abs(there.getBlue() - colour.getBlue()) < 12) {
            return true;
          }
        }
      }
    }
    return false;
  }

  static void press(JComponent part, String key) {
    KeyStroke stroke = KeyStroke.getKeyStroke(key);
    part.getActionForKeyStroke(stroke)
        .actionPerformed(new ActionEvent(part, ActionEvent.ACTION_PERFORMED, key));
  }

  /** Sends a mouse event of a kind, with the first button. */
  static void mouse(JComponent part, int id, int x, int y) {
    part.dispatchEvent(
        new MouseEvent(part, id, 0, MouseEvent.BUTTON1_DOWN_MASK, x, y, 1, false, 1));
  }

  static void wheel(JComponent part, int x, int y, int notches) {
    part.dispatchEvent(
        new MouseWheelEvent(
            part,
            MouseEvent.MOUSE_WHEEL,
            0,
            0,
            x,
            y,
            0,
            false,
            MouseWheelEvent.WHEEL_UNIT_SCROLL,
            1,
            notches));
  }
}
