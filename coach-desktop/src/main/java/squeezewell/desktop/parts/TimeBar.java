package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** A line of text on a bar that fills as the time it speaks of runs out. */
public final class TimeBar extends Drawn {
  private static final long serialVersionUID = 1L;

  private String text = "";
  private double fill;
  private boolean urgent;

  public TimeBar(Look look) {
    super(look, AccessibleRole.PANEL, "Time");
  }

  /** Shows a text, how much of its time is used up (0 to 1), and whether it presses. */
  public void show(String newText, double newFill, boolean nowUrgent) {
    boolean moved = Math.abs(newFill - fill) * getWidth() >= 1;
    if (!newText.equals(text) || moved || nowUrgent != urgent) {
      text = newText;
      fill = newFill;
      urgent = nowUrgent;
      getAccessibleContext().setAccessibleName(newText);
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(372), look.px(50));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(160), look.px(36));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    double arc = look.px(24);
    RoundRectangle2D whole =
        new RoundRectangle2D.Double(1, 1, getWidth() - 2, getHeight() - 2, arc, arc);
    g2.setColor(palette.card());
    g2.fill(whole);
    g2.setColor(palette.mist());
    java.awt.Shape clip = g2.getClip();
    g2.clip(whole);
    double share = Math.max(0, Math.min(1, fill));
    g2.fill(new Rectangle2D.Double(0, 0, getWidth() * share, getHeight()));
    g2.setClip(clip);
    if (urgent) {
      g2.setColor(palette.tide());
      g2.setStroke(look.stroke(3));
      g2.draw(
          new RoundRectangle2D.Double(
              look.px(2),
              look.px(2),
              getWidth() - look.px(4.0),
              getHeight() - look.px(4.0),
              arc,
              arc));
    }
    Font base = urgent ? look.bold(17) : look.font(17);
    Font font = Look.fitted(g2, base, text, getWidth() - look.px(32));
    FontMetrics metrics = g2.getFontMetrics(font);
    g2.setFont(font);
    g2.setColor(palette.text());
    g2.drawString(text, look.px(16), (getHeight() - metrics.getHeight()) / 2 + metrics.getAscent());
  }
}
