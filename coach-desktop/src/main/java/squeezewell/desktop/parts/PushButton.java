package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;
import squeezewell.words.WrappedText;

/** A button with a text, a sign or both. A text too long for its width goes on in a new line. */
public final class PushButton extends DrawnButton implements Fluid {
  private static final long serialVersionUID = 1L;
  private static final int LEAST = 48;

  /** How much a button asks to be pressed. */
  public enum Kind {
    /** The one thing to do on a screen. */
    FILLED,
    /** The same on a ground of that colour. */
    ON_DEEP,
    /** Something to do. */
    TONAL,
    /** Something else to do. */
    OUTLINED,
    /** A sign by itself. */
    BARE
  }

  private final Kind kind;
  private final int size;
  private final transient Sign sign;
  private int height = LEAST;

  private PushButton(Look look, Kind kind, String text, Sign sign, int size, Runnable action) {
    super(look, text);
    this.kind = kind;
    this.sign = sign;
    this.size = size;
    addActionListener(e -> action.run());
  }

  /** A button with a text. */
  public static PushButton of(Look look, Kind kind, String text, Runnable action) {
    return new PushButton(look, kind, text, null, 16, action);
  }

  /** A button with a sign before its text. */
  public static PushButton of(Look look, Kind kind, String text, Sign sign, Runnable action) {
    return new PushButton(look, kind, text, sign, 18, action);
  }

  /** A sign by itself; its name is for screen readers, and shown as a tip. */
  public static PushButton sign(Look look, Sign sign, String name, Runnable action) {
    PushButton button = new PushButton(look, Kind.BARE, "", sign, 16, action);
    button.getAccessibleContext().setAccessibleName(name);
    button.setToolTipText(name);
    return button;
  }

  /** Makes it at least so high, in density-independent pixels. */
  public PushButton high(int newHeight) {
    height = newHeight;
    return this;
  }

  private Font type() {
    return look.bold(height >= 60 ? 24 : size);
  }

  private int signWidth() {
    return sign == null ? 0 : look.px(getText().isEmpty() ? 24 : 34);
  }

  private List<String> lines(FontMetrics metrics, int width) {
    return WrappedText.lines(getText(), Math.max(1, width), metrics::stringWidth);
  }

  @Override
  public Dimension getPreferredSize() {
    FontMetrics metrics = getFontMetrics(type());
    int text = getText().isEmpty() ? 0 : metrics.stringWidth(getText()) + look.px(32);
    int width = Math.max(look.px(LEAST), text + signWidth());
    return new Dimension(width, look.px(height));
  }

  @Override
  public int heightAt(int width) {
    FontMetrics metrics = getFontMetrics(type());
    int lines = lines(metrics, width - look.px(24) - signWidth()).size();
    return Math.max(look.px(height), lines * metrics.getHeight() + look.px(16));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    boolean edged = kind == Kind.OUTLINED;
    boolean pressed = getModel().isArmed() && getModel().isPressed();
    Color ground =
        switch (kind) {
          case FILLED -> palette.deep();
          case ON_DEEP, OUTLINED -> palette.card();
          case TONAL -> palette.mist();
          case BARE -> null;
        };
    RoundRectangle2D shape = outline(look.px(edged ? 1.2 : 0), look.px(32));
    if (ground != null) {
      g2.setColor(pressed ? mixed(ground, palette.text()) : ground);
      g2.fill(shape);
    }
    if (edged) {
      g2.setColor(palette.edge());
      g2.setStroke(look.stroke(1.2));
      g2.draw(shape);
    }
    if (isFocusOwner()) {
      g2.setColor(palette.text());
      g2.setStroke(look.stroke(3));
      g2.draw(outline(look.px(3), look.px(32)));
    }
    write(g2, palette);
  }

  private void write(Graphics2D g2, Palette palette) {
    Color colour =
        !isEnabled()
            ? palette.softText()
            : switch (kind) {
              case FILLED -> palette.onDeep();
              case ON_DEEP -> palette.dark() ? palette.text() : palette.deep();
              case TONAL -> palette.onMist();
              default -> palette.text();
            };
    g2.setFont(type());
    FontMetrics metrics = g2.getFontMetrics();
    List<String> lines =
        getText().isEmpty() ? List.of() : lines(metrics, getWidth() - look.px(24) - signWidth());
    int widest = lines.stream().mapToInt(metrics::stringWidth).max().orElse(0);
    double left = (getWidth() - widest - signWidth()) / 2.0;
    if (sign != null) {
      sign.paint(g2, left, (getHeight() - look.px(24)) / 2.0, look.px(24), colour);
    }
    g2.setColor(colour);
    float y = (getHeight() - lines.size() * metrics.getHeight()) / 2f + metrics.getAscent();
    for (String line : lines) {
      double x = left + signWidth() + (widest - metrics.stringWidth(line)) / 2.0;
      g2.drawString(line, (float) x, y);
      y += metrics.getHeight();
    }
  }

  private static Color mixed(Color a, Color b) {
    return new Color(
        (a.getRed() * 5 + b.getRed()) / 6,
        (a.getGreen() * 5 + b.getGreen()) / 6,
        (a.getBlue() * 5 + b.getBlue()) / 6);
  }
}
