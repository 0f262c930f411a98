package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import javax.swing.JToggleButton;
import squeezewell.desktop.look.Look;

/**
 * One of a few ways of looking at the same thing, side by side. The chosen one has a bar under its
 * word, so that it is told by more than its shade.
 */
public final class ChoiceButton extends JToggleButton {
  private static final long serialVersionUID = 1L;

  private final transient Look look;

  /**
   * A button.
   *
   * @param text what it shows
   * @param chosen whether it is the chosen one at first
   * @param width in density-independent pixels
   */
  public ChoiceButton(Look look, String text, boolean chosen, int width) {
    super(text, chosen);
    this.look = look;
    putClientProperty("html.disable", true);
    putClientProperty(
        "FlatLaf.style",
        "margin: 0,0,0,0; selectedBackground: "
            + Look.hex(look.palette().mist())
            + "; selectedForeground: "
            + Look.hex(look.palette().text()));
    setFont(look.bold(14));
    setAlignmentX(LEFT_ALIGNMENT);
    Dimension size = new Dimension(look.px(width), look.px(48));
    setPreferredSize(size);
    setMinimumSize(size);
    setMaximumSize(size);
  }

  @Override
  protected void paintComponent(Graphics g) {
    super.paintComponent(g);
    if (isSelected()) {
      Graphics2D g2 = Look.smooth(g);
      try {
        double side = look.px(16);
        double high = look.px(4);
        g2.setColor(look.palette().tide());
        g2.fill(
            new RoundRectangle2D.Double(
                side, getHeight() - look.px(12), getWidth() - 2 * side, high, high, high));
      } finally {
        g2.dispose();
      }
    }
  }
}
