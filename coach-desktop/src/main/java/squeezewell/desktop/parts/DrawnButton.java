package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import javax.swing.JButton;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** A button that we draw ourselves, large enough for a finger. Its text is never read as HTML. */
public abstract class DrawnButton extends JButton {
  private static final long serialVersionUID = 1L;

  protected final transient Look look;

  protected DrawnButton(Look look, String text) {
    super(text);
    this.look = look;
    putClientProperty("html.disable", true);
    setContentAreaFilled(false);
    setBorderPainted(false);
    setOpaque(false);
  }

  /** Paints it. */
  protected abstract void draw(Graphics2D g2, Palette palette);

  @Override
  protected final void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    try {
      draw(g2, look.palette());
    } finally {
      g2.dispose();
    }
  }

  /** Its outline for a line of so many device pixels. */
  protected final RoundRectangle2D outline(double line, double arc) {
    return new RoundRectangle2D.Double(
        line / 2, line / 2, getWidth() - line, getHeight() - line, arc, arc);
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(48), look.px(48));
  }
}
