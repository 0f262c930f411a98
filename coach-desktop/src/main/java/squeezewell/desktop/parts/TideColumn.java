package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/**
 * A tall vessel that fills while the bag is to be squeezed and ebbs until the next breath, with a
 * notch for each count.
 */
public final class TideColumn extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final int WAVES = 2;

  private double fill;
  private int count;
  private int of;

  public TideColumn(Look look) {
    super(look, AccessibleRole.PANEL, "Tide column");
    describe("Fills while you squeeze and ebbs until the next breath");
  }

  /**
   * Shows a moment.
   *
   * @param newFill how full, 0 to 1
   * @param newCount the present count, from 1; 0 for none
   * @param newOf how many notches; 0 for none
   */
  public void show(double newFill, int newCount, int newOf) {
    int before = level(fill);
    boolean changed = newCount != count || newOf != of || level(newFill) != before;
    fill = newFill;
    count = newCount;
    of = newOf;
    if (changed) {
      repaint();
    }
  }

  private int level(double of1) {
    return (int) Math.round(of1 * getHeight());
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(176), look.px(330));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    int notchSpace = look.px(24);
    double inset = look.px(6);
    double width = getWidth() - notchSpace;
    double height = getHeight() - 2.0;
    double arc = Math.min(look.px(36), width / 2);
    Shape glass = new RoundRectangle2D.Double(1, 1, width - 2, height, arc, arc);
    g2.setColor(palette.card());
    g2.fill(glass);
    paintWater(g2, palette, inset, width, height, arc);
    g2.setStroke(look.stroke(2));
    g2.setColor(palette.line());
    g2.draw(glass);
    paintNotches(g2, palette, width + look.px(4), inset, height);
  }

  private void paintWater(
      Graphics2D g2, Palette palette, double inset, double width, double height, double arc) {
    double top = inset + (height - 2 * inset) * (1 - Math.max(0, Math.min(1, fill)));
    double left = 1 + inset;
    double right = width - 1 - inset;
    double bottom = height - inset;
    if (bottom - top < 1) {
      return;
    }
    double swell = Math.min(look.px(5), (bottom - top) / 2);
    Path2D water = new Path2D.Double();
    water.moveTo(left, bottom);
    water.lineTo(left, top);
    double step = (right - left) / (2 * WAVES);
    for (int i = 0; i < 2 * WAVES; i++) {
      double x = left + i * step;
      double lift = i % 2 == 0 ? swell : -swell;
      water.quadTo(x + step / 2, top + lift, x + step, top);
    }
    water.lineTo(right, bottom);
    water.closePath();
    Shape clip = g2.getClip();
    double innerArc = Math.max(1, arc - inset);
    g2.clip(
        new RoundRectangle2D.Double(left, inset, right - left, bottom - inset, innerArc, innerArc));
    g2.setColor(palette.tide());
    g2.fill(water);
    g2.setClip(clip);
  }

  private void paintNotches(Graphics2D g2, Palette palette, double x, double inset, double height) {
    double step = of == 0 ? 0 : (height - 2 * inset) / of;
    for (int i = 1; i <= of; i++) {
      double y = inset + (i - 0.5) * step;
      boolean present = i == count;
      g2.setColor(present ? palette.text() : palette.softText());
      // Thirty notches on a low column must not run into one another.
      double thick = present ? look.px(4) : Math.min(look.px(2), step / 2);
      double length = look.px(present ? 18 : 9);
      g2.fill(new RoundRectangle2D.Double(x, y - thick / 2, length, thick, thick, thick));
    }
  }
}
