package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.RibbonMark;
import squeezewell.picture.RibbonPainter;
import squeezewell.picture.ScreenCanvas;

/**
 * Two lanes over one time line: above, what was asked; below, what was done. A late breath stands
 * to the right of its prompt. Fast carries a tip upwards, slow a tip downwards.
 */
public final class Ribbon extends Drawn {
  private static final long serialVersionUID = 1L;

  private transient List<RibbonMark> marks = List.of();
  private long fromNanos;
  private long toNanos = 1;

  public Ribbon(Look look) {
    super(look, AccessibleRole.PANEL, "Ribbon: prompts above, what was done below");
  }

  /**
   * Shows marks.
   *
   * @param newMarks what stands on it
   * @param newFromNanos the instant at the left edge
   * @param newToNanos the instant at the right edge, later
   */
  public void show(List<RibbonMark> newMarks, long newFromNanos, long newToNanos) {
    if (newToNanos <= newFromNanos) {
      throw new IllegalArgumentException("the right edge must be later than the left");
    }
    marks = List.copyOf(newMarks);
    fromNanos = newFromNanos;
    toNanos = newToNanos;
    repaint();
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(372), look.px(80));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(160), look.px(62));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    double arc = look.px(20);
    g2.setColor(look.palette().card());
    g2.fill(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), arc, arc));
    g2.clip(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), arc, arc));
    Rectangle2D lanes = new Rectangle2D.Double(0, 0, getWidth(), getHeight());
    new RibbonPainter(look, new ScreenCanvas(g2, look), lanes, fromNanos, toNanos).paint(marks, 0);
  }
}
