package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import javax.swing.ButtonGroup;
import javax.swing.JToggleButton;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;

/** One of several to choose from. What is chosen has a tick, a thicker edge and another ground. */
public final class Chip<T> extends JToggleButton {
  private static final long serialVersionUID = 1L;

  private final transient Look look;
  private final transient T value;
  private final transient Sign picture;
  private boolean dim;

  private Chip(Look look, T value, String text, Sign picture) {
    super(text);
    this.look = look;
    this.value = value;
    this.picture = picture;
    putClientProperty("html.disable", true);
    setContentAreaFilled(false);
    setBorderPainted(false);
    setOpaque(false);
  }

  /**
   * Chips of which one is chosen.
   *
   * @param picture above the text of each; may give null for none
   * @param chosen told what a person chose
   */
  public static <T> List<Chip<T>> oneOf(
      Look look,
      List<T> values,
      Function<T, String> text,
      Function<T, Sign> picture,
      Consumer<T> chosen) {
    ButtonGroup group = new ButtonGroup();
    List<Chip<T>> chips =
        values.stream().map(v -> new Chip<>(look, v, text.apply(v), picture.apply(v))).toList();
    for (Chip<T> chip : chips) {
      group.add(chip);
      chip.addActionListener(e -> chosen.accept(chip.value));
    }
    return chips;
  }

  public T value() {
    return value;
  }

  /** Shows that it can't be had as things are; it can be pressed all the same. */
  public Chip<T> dimmed(boolean nowDim) {
    dim = nowDim;
    repaint();
    return this;
  }

  @Override
  public Dimension getPreferredSize() {
    FontMetrics metrics = getFontMetrics(look.bold(16));
    int text = metrics.stringWidth(getText());
    if (picture != null) {
      return new Dimension(look.px(72), look.px(76) + metrics.getHeight());
    }
    boolean brief = getText().length() <= 3;
    int around = (brief ? 16 : 24) + (isSelected() ? (brief ? 20 : 26) : 0);
    return new Dimension(Math.max(look.px(48), text + look.px(around)), look.px(48));
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    Palette palette = look.palette();
    boolean on = isSelected();
    double line = look.px(isFocusOwner() ? 3 : on ? 2.5 : 1.2);
    RoundRectangle2D shape =
        new RoundRectangle2D.Double(
            line / 2,
            line / 2,
            getWidth() - line,
            getHeight() - line,
            look.px(picture == null ? 24 : 30),
            look.px(picture == null ? 24 : 30));
    g2.setColor(on ? palette.mist() : palette.card());
    g2.fill(shape);
    g2.setColor(isFocusOwner() ? palette.text() : on ? palette.deep() : palette.edge());
    g2.setStroke(look.stroke(line / look.scale()));
    g2.draw(shape);
    Color colour = on ? palette.onMist() : dim ? palette.softText() : palette.text();
    int tick = on && picture == null ? look.px(getText().length() <= 3 ? 20 : 26) : 0;
    g2.setFont(on ? look.bold(16) : look.font(16));
    g2.setFont(Look.fitted(g2, g2.getFont(), getText(), getWidth() - look.px(8) - tick));
    FontMetrics metrics = g2.getFontMetrics();
    double x = (getWidth() - metrics.stringWidth(getText()) - tick) / 2.0;
    double y =
        picture == null
            ? (getHeight() - metrics.getHeight()) / 2.0 + metrics.getAscent()
            : getHeight() - look.px(8) - metrics.getDescent();
    if (on) {
      double at = picture == null ? x - look.px(2) : getWidth() - look.px(28);
      double down = picture == null ? (getHeight() - look.px(18)) / 2.0 : look.px(8);
      Sign.TICK.paint(g2, at, down, look.px(18), colour);
    }
    if (picture != null) {
      // The pictograms stand on a floor at 48 of their own grid.
      double size = look.px(22);
      picture.paint(
          g2,
          getWidth() / 2.0 - size * 8 / 24,
          y - metrics.getAscent() - look.px(6) - size * 2,
          size,
          on ? palette.onMist() : palette.softText());
    }
    g2.setColor(colour);
    g2.drawString(getText(), (float) (x + tick), (float) y);
    g2.dispose();
  }
}
