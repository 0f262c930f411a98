package squeezewell.desktop.parts;

import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import java.util.Objects;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** A part that we draw ourselves. Swing gives such parts nothing for a screen reader; this does. */
public abstract class Drawn extends JComponent {
  private static final long serialVersionUID = 1L;

  protected final transient Look look;
  private final transient AccessibleRole role;

  /**
   * A drawn part.
   *
   * @param role what it is to a screen reader
   * @param name what a screen reader calls it
   */
  protected Drawn(Look look, AccessibleRole role, String name) {
    this.look = look;
    this.role = Objects.requireNonNull(role, "role");
    setOpaque(false);
    getAccessibleContext().setAccessibleName(name);
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

  /** Tells a screen reader more, when it has changed. */
  protected final void describe(String text) {
    if (!text.equals(getAccessibleContext().getAccessibleDescription())) {
      getAccessibleContext().setAccessibleDescription(text);
    }
  }

  /**
   * Fills this part with the shape of a pad; one that is pressed is brighter and has a thick rim.
   */
  final void paintPad(Graphics2D g2, boolean pressed) {
    Palette palette = look.palette();
    double line = look.px(pressed ? 6 : 3);
    double arc = Math.min(look.px(48), getHeight() / 2.0);
    RoundRectangle2D shape =
        new RoundRectangle2D.Double(
            line / 2, line / 2, getWidth() - line, getHeight() - line, arc, arc);
    g2.setColor(pressed ? palette.deep() : palette.mist());
    g2.fill(shape);
    g2.setColor(pressed ? palette.text() : palette.deep());
    g2.setStroke(look.stroke(line / look.scale()));
    g2.draw(shape);
  }

  @Override
  public AccessibleContext getAccessibleContext() {
    if (accessibleContext == null) {
      accessibleContext =
          new AccessibleJComponent() {
            private static final long serialVersionUID = 1L;

            @Override
            public AccessibleRole getAccessibleRole() {
              return role;
            }
          };
    }
    return accessibleContext;
  }
}
