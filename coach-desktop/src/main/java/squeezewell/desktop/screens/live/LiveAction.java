package squeezewell.desktop.screens.live;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.parts.DrawnButton;
import squeezewell.words.WrappedText;

/**
 * A button of a running practice: a sign, what it does, and the key that does the same. On a high
 * button they stand below each other, on a low one beside.
 */
final class LiveAction extends DrawnButton {
  private static final long serialVersionUID = 1L;

  private final String key;
  private final String second;
  private transient Sign sign;
  private transient Palette palette;
  private double text = 1;
  private boolean brief;
  private boolean tile;
  private boolean rows;

  /**
   * A button.
   *
   * @param key what to press for the same
   * @param second a second line; empty for none
   */
  LiveAction(Look look, Sign sign, String label, String key, String second) {
    super(look, label);
    this.key = key;
    this.second = second;
    this.sign = sign;
    palette = look.palette();
    name();
  }

  private void name() {
    getAccessibleContext().setAccessibleName(getText());
    getAccessibleContext()
        .setAccessibleDescription(
            key.isEmpty() ? second : (Faces.say("key", key) + " " + second).trim());
    if (!key.isEmpty()) {
      setToolTipText(getText() + ", " + key);
    }
  }

  /** As one of a sheet; in one column the label stands beside its sign. */
  LiveAction asTile(boolean alone) {
    tile = true;
    rows = alone;
    return this;
  }

  /** Shows what it does now. */
  void label(Sign nextSign, String next) {
    if (!next.equals(getText())) {
      setText(next);
      sign = nextSign;
      name();
      repaint();
    }
  }

  /** The largest text scale, up to one that is wanted, at which its label fits on one line. */
  double mostText(double wanted, boolean inRows) {
    if (!inRows) {
      return Math.max(1, Math.min(wanted, getHeight() / 52.0));
    }
    int label = getFontMetrics(new Look(palette, 1).bold(17)).stringWidth(getText());
    double most = Math.min(getWidth() / (label + 62.0), getHeight() / 26.0);
    return Math.max(1, Math.min(wanted, most));
  }

  /** Takes the colours of a ground and the sizes of a place. */
  void show(Palette colours, double textScale, boolean withoutKeys, boolean inRows) {
    if (!colours.equals(palette) || textScale != text || withoutKeys != brief || inRows != rows) {
      palette = colours;
      text = textScale;
      brief = withoutKeys;
      rows = inRows;
      repaint();
    }
  }

  @Override
  protected void draw(Graphics2D g2, Palette plain) {
    Look own = new Look(palette, Math.max(0.5, Math.min(6, text)));
    double line = isFocusOwner() ? 3 : 1.4;
    RoundRectangle2D shape = outline(line, own.px(32));
    boolean pressed = getModel().isArmed() && getModel().isPressed();
    g2.setColor(pressed ? palette.mist() : tile ? palette.ground() : palette.card());
    g2.fill(shape);
    g2.setColor(isFocusOwner() ? palette.text() : palette.edge());
    g2.setStroke(new java.awt.BasicStroke((float) line));
    g2.draw(shape);
    if (rows || (tile && getHeight() < own.px(74))) {
      beside(g2, own);
    } else if (tile) {
      tile(g2, own);
    } else {
      below(g2, own);
    }
  }

  /** The sign above, the key in the corner, then what it is and what follows. */
  private void tile(Graphics2D g2, Look own) {
    int left = own.px(12);
    int room = getWidth() - 2 * left;
    double side = own.px(22);
    Font small = own.font(13);
    FontMetrics smallMetrics = g2.getFontMetrics(small);
    Font label = Look.fitted(g2, own.bold(16), getText(), room);
    FontMetrics metrics = g2.getFontMetrics(label);
    double block = side + metrics.getHeight() + smallMetrics.getHeight() + own.px(2);
    double y = (getHeight() - block) / 2;
    sign.paint(g2, left, y, side, palette.deep());
    g2.setFont(small);
    g2.setColor(palette.softText());
    int keyWidth = smallMetrics.stringWidth(key);
    g2.drawString(key, getWidth() - keyWidth - left, (float) (y + smallMetrics.getAscent()));
    y += side + own.px(2) + metrics.getAscent();
    g2.setFont(label);
    g2.setColor(palette.text());
    g2.drawString(getText(), left, (float) y);
    g2.setFont(Look.fitted(g2, small, second, room));
    g2.setColor(palette.softText());
    g2.drawString(second, left, (float) (y + smallMetrics.getHeight()));
  }

  private void below(Graphics2D g2, Look own) {
    int room = getWidth() - own.px(10);
    boolean keys = !brief && !key.isEmpty();
    double side = Math.min(own.px(28), getHeight() * 0.34);
    Font label = own.bold(16);
    FontMetrics metrics = g2.getFontMetrics(label);
    List<String> lines = WrappedText.lines(getText(), room, metrics::stringWidth);
    if (lines.size() > 1) {
      label = own.bold(13);
      metrics = g2.getFontMetrics(label);
      lines = WrappedText.lines(getText(), room, metrics::stringWidth);
      side = Math.min(side, own.px(18));
    }
    for (String line : lines) {
      label = Look.fitted(g2, label, line, room);
    }
    metrics = g2.getFontMetrics(label);
    double block =
        side + lines.size() * metrics.getHeight() + (keys ? own.px(lines.size() > 1 ? 10 : 13) : 0);
    double y = Math.max(2, (getHeight() - block) / 2);
    sign.paint(g2, (getWidth() - side) / 2, y, side, palette.text());
    y += side + metrics.getAscent();
    for (String line : lines) {
      write(g2, label, line, palette.text(), y);
      y += metrics.getHeight();
    }
    if (keys) {
      write(g2, own.font(12), key, palette.softText(), y - metrics.getHeight() + own.px(15));
    }
  }

  private void write(Graphics2D g2, Font font, String what, java.awt.Color colour, double y) {
    g2.setFont(font);
    g2.setColor(colour);
    int width = g2.getFontMetrics(font).stringWidth(what);
    g2.drawString(what, (getWidth() - width) / 2f, (float) y);
  }

  private void beside(Graphics2D g2, Look own) {
    double side = Math.min(own.px(26), getHeight() * 0.5);
    double left = own.px(12);
    sign.paint(g2, left, (getHeight() - side) / 2, side, palette.text());
    left += side + own.px(10);
    Font small = own.font(13);
    int keyWidth = key.isEmpty() || brief ? 0 : g2.getFontMetrics(small).stringWidth(key);
    int room = (int) (getWidth() - left - own.px(8) - (tile ? keyWidth + own.px(8) : 0));
    Font label = own.bold(17);
    List<String> lines = List.of(getText());
    if (g2.getFontMetrics(label).stringWidth(getText()) > room) {
      label = own.bold(15);
      FontMetrics narrow = g2.getFontMetrics(label);
      lines = WrappedText.lines(getText(), room, narrow::stringWidth);
      if (lines.size() * narrow.getHeight() > getHeight() - 6) {
        lines = List.of(getText());
      }
    }
    for (String line : lines) {
      label = Look.fitted(g2, label, line, room);
    }
    FontMetrics metrics = g2.getFontMetrics(label);
    String under = tile ? second : brief ? "" : key;
    Font underFont = Look.fitted(g2, small, under, room);
    int underHigh = under.isEmpty() ? 0 : g2.getFontMetrics(underFont).getHeight();
    int labelHigh = lines.size() * metrics.getHeight();
    boolean two = labelHigh + underHigh <= getHeight() - 4 && !under.isEmpty();
    double y = (getHeight() - labelHigh - (two ? underHigh : 0)) / 2.0 + metrics.getAscent();
    g2.setColor(palette.softText());
    if (tile && keyWidth > 0) {
      g2.setFont(small);
      g2.drawString(key, getWidth() - keyWidth - own.px(12), (float) y);
    }
    g2.setFont(label);
    g2.setColor(palette.text());
    for (String line : lines) {
      g2.drawString(line, (float) left, (float) y);
      y += metrics.getHeight();
    }
    g2.setFont(underFont);
    g2.setColor(palette.softText());
    if (two) {
      g2.drawString(under, (float) left, (float) (y - metrics.getHeight() + underHigh));
    }
  }
}
