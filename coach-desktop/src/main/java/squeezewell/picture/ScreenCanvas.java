package squeezewell.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import squeezewell.desktop.look.Look;

/** Paints on a screen or an image. */
public final class ScreenCanvas implements Canvas {
  private static final double TEXT = 11;

  private final Graphics2D g2;
  private final Font plain;
  private final Font bold;

  /** The caller disposes of the graphics. */
  public ScreenCanvas(Graphics2D g2, Look look) {
    this.g2 = g2;
    this.plain = look.font(TEXT);
    this.bold = look.bold(TEXT);
  }

  @Override
  public void fill(Color colour, Shape shape) {
    g2.setColor(colour);
    g2.fill(shape);
  }

  @Override
  public void draw(Color colour, double width, Shape shape, float... dashes) {
    g2.setColor(colour);
    g2.setStroke(
        dashes.length == 0
            ? new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
            : new BasicStroke(
                (float) width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 1, dashes, 0));
    g2.draw(shape);
  }

  @Override
  public void text(Color colour, boolean isBold, double x, double y, String text) {
    g2.setColor(colour);
    g2.setFont(isBold ? bold : plain);
    g2.drawString(text, (float) x, (float) y);
  }

  @Override
  public double lengthOf(boolean isBold, String text) {
    return g2.getFontMetrics(isBold ? bold : plain).stringWidth(text);
  }
}
