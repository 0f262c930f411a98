package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** A button of the live screen: what it does, and under it the key that does the same. */
public final class ActionButton extends DrawnButton {
  private static final long serialVersionUID = 1L;

  private final String key;
  private boolean on;

  public ActionButton(Look look, String text, String key) {
    super(look, text);
    this.key = key;
    describe();
  }

  /** Shows what the button does now, and whether what it started is going on. */
  public void show(String text, boolean nowOn) {
    if (!text.equals(getText()) || nowOn != on) {
      setText(text);
      on = nowOn;
      describe();
      repaint();
    }
  }

  private void describe() {
    getAccessibleContext().setAccessibleName(getText());
    getAccessibleContext().setAccessibleDescription("Key " + key);
    setToolTipText(getText() + ", key " + key);
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(84), look.px(52));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    double line = isFocusOwner() || on ? look.px(3) : Math.max(1, look.px(1.5));
    RoundRectangle2D shape = outline(line, look.px(28));
    boolean lit =
        on || (isEnabled() && getModel().isArmed()) || (isEnabled() && getModel().isRollover());
    g2.setColor(lit ? palette.mist() : palette.card());
    g2.fill(shape);
    g2.setColor(isFocusOwner() || on ? palette.deep() : palette.edge());
    g2.setStroke(look.stroke(line / look.scale()));
    g2.draw(shape);
    int room = getWidth() - look.px(10);
    Font font = Look.fitted(g2, look.bold(13), getText(), room);
    FontMetrics metrics = g2.getFontMetrics(font);
    Font small = Look.fitted(g2, look.font(12), key, room);
    FontMetrics smallMetrics = g2.getFontMetrics(small);
    int between = look.px(4);
    int block = metrics.getHeight() + between + smallMetrics.getHeight();
    int y = (getHeight() - block) / 2 + metrics.getAscent();
    g2.setFont(font);
    g2.setColor(isEnabled() ? palette.text() : palette.softText());
    g2.drawString(getText(), (getWidth() - metrics.stringWidth(getText())) / 2, y);
    g2.setFont(small);
    g2.setColor(palette.softText());
    g2.drawString(
        key,
        (getWidth() - smallMetrics.stringWidth(key)) / 2,
        y + metrics.getDescent() + between + smallMetrics.getAscent());
  }
}
