package squeezewell.desktop.parts;

import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.util.function.Consumer;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;

/**
 * A line with a title, something short at its end and an arrow. It leads somewhere, or unfolds what
 * lies below it, which is built when it is first asked for.
 */
public final class Fold extends DrawnButton {
  private static final long serialVersionUID = 1L;

  private final transient Sign sign;
  private final String second;
  private String end;
  private transient Sign arrow;

  private Fold(Look look, Sign sign, String title, String second, String end, Sign arrow) {
    super(look, title);
    this.sign = sign;
    this.second = second;
    this.end = end;
    this.arrow = arrow;
    describe();
  }

  /**
   * A line that leads somewhere.
   *
   * @param sign before its title; null for none
   * @param second below its title, smaller; empty for none
   * @param end at its end; empty for nothing
   */
  public static Fold to(
      Look look, Sign sign, String title, String second, String end, Runnable leads) {
    Fold line = new Fold(look, sign, title, second, end, Sign.NEXT);
    line.addActionListener(e -> leads.run());
    return line;
  }

  /**
   * A line with what it unfolds below it.
   *
   * @param fill puts what is unfolded into a stack, once
   */
  public static Stack over(Look look, String title, String end, Consumer<Stack> fill) {
    Fold line = new Fold(look, null, title, "", end, Sign.DOWN);
    Stack inside = new Stack(look).pad(4, 0, 12, 0);
    inside.setVisible(false);
    line.addActionListener(
        e -> {
          if (inside.getComponentCount() == 0) {
            fill.accept(inside);
          }
          inside.setVisible(!inside.isVisible());
          line.arrow = inside.isVisible() ? Sign.UP : Sign.DOWN;
          line.describe();
          line.getParent().revalidate();
          line.repaint();
        });
    return new Stack(look).put(line).put(inside);
  }

  /** Shows something else at its end. */
  public void end(String newEnd) {
    end = newEnd;
    describe();
    repaint();
  }

  private void describe() {
    String state = arrow == Sign.DOWN ? "folded" : arrow == Sign.UP ? "unfolded" : "";
    getAccessibleContext().setAccessibleName(getText());
    getAccessibleContext().setAccessibleDescription((second + " " + end + " " + state).trim());
  }

  @Override
  public java.awt.Dimension getPreferredSize() {
    return new java.awt.Dimension(look.px(200), look.px(second.isEmpty() ? 48 : 64));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    g2.setColor(palette.line());
    g2.setStroke(look.stroke(1));
    g2.draw(new Line2D.Double(0, 0.5, getWidth(), 0.5));
    int left = sign == null ? 0 : look.px(40);
    if (sign != null) {
      sign.paint(
          g2, look.px(6), (getHeight() - look.px(24)) / 2.0, look.px(24), palette.softText());
    }
    int arrowAt = getWidth() - look.px(22);
    arrow.paint(g2, arrowAt, (getHeight() - look.px(20)) / 2.0, look.px(20), palette.softText());
    g2.setFont(second.isEmpty() ? look.font(18) : look.bold(18));
    FontMetrics metrics = g2.getFontMetrics();
    FontMetrics small = g2.getFontMetrics(look.font(14));
    int block = metrics.getHeight() + (second.isEmpty() ? 0 : small.getHeight());
    float y = (getHeight() - block) / 2f + metrics.getAscent();
    int titled = left + metrics.stringWidth(getText()) + look.px(12);
    g2.setColor(palette.text());
    g2.drawString(getText(), left, y);
    if (!second.isEmpty()) {
      g2.setFont(Look.fitted(g2, look.font(14), second, arrowAt - left));
      g2.setColor(palette.softText());
      g2.drawString(second, left, y + metrics.getDescent() + small.getAscent());
    }
    g2.setFont(Look.fitted(g2, look.font(14), end, arrowAt - titled - look.px(6)));
    g2.setColor(palette.deep());
    int width = g2.getFontMetrics().stringWidth(end);
    g2.drawString(
        end, arrowAt - look.px(6) - width, (getHeight() + small.getAscent()) / 2f - look.px(1));
    if (isFocusOwner()) {
      g2.setColor(palette.text());
      g2.setStroke(look.stroke(3));
      g2.draw(outline(look.px(3), look.px(16)));
    }
  }
}
