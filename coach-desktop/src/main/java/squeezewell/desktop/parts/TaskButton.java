package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.words.WrappedText;

/**
 * Something to tap with one finger and a mask in the other hand: its words over several lines, and
 * under them its key and how it stands.
 */
public final class TaskButton extends DrawnButton {
  private static final long serialVersionUID = 1L;
  private static final double SMALLEST = 0.55;

  private final int points;
  private final boolean main;
  private String words = "";
  private String under = "";
  private boolean on;
  private boolean done;

  /**
   * A button without words yet.
   *
   * @param points size of the words, in density-independent pixels
   * @param main whether it is the main thing to do
   */
  public TaskButton(Look look, int points, boolean main) {
    super(look, "");
    this.points = points;
    this.main = main;
  }

  /**
   * Shows what it is and how it stands.
   *
   * @param newWords what it is
   * @param key its key; empty for none
   * @param status how it stands, in words
   * @param nowOn whether it runs or presses
   * @param nowDone whether it is done, which a tick shows too
   */
  public void show(String newWords, String key, String status, boolean nowOn, boolean nowDone) {
    String below = key.isEmpty() || status.isEmpty() ? key + status : key + "  ·  " + status;
    if (newWords.equals(words) && below.equals(under) && nowOn == on && nowDone == done) {
      return;
    }
    words = newWords;
    under = below;
    on = nowOn;
    done = nowDone;
    setText(newWords);
    getAccessibleContext().setAccessibleName(newWords + (status.isEmpty() ? "" : ", " + status));
    getAccessibleContext().setAccessibleDescription(key.isEmpty() ? "Tab and Enter" : "Key " + key);
    repaint();
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(main ? 372 : 150), look.px(main ? 64 : 58));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    boolean strong = isFocusOwner() || on;
    double line = strong ? look.px(3) : Math.max(1, look.px(1.5));
    RoundRectangle2D shape = outline(line, look.px(24));
    boolean lit = on || getModel().isArmed() || getModel().isRollover();
    g2.setColor(main ? palette.deep() : lit ? palette.mist() : palette.card());
    g2.fill(shape);
    g2.setColor(main ? palette.text() : strong ? palette.deep() : palette.edge());
    if (!main || strong) {
      g2.setStroke(look.stroke(line / look.scale()));
      g2.draw(shape);
    }
    write(g2, palette);
  }

  private void write(Graphics2D g2, Palette palette) {
    int room = getWidth() - look.px(20);
    String text = (done ? "\u2713 " : "") + words;
    Font bold = look.bold(points);
    Font small = Look.fitted(g2, look.font(12), under, room);
    FontMetrics smallMetrics = g2.getFontMetrics(small);
    int below = under.isEmpty() ? 0 : smallMetrics.getHeight();
    double size = 1;
    Font font = bold;
    List<String> lines = WrappedText.lines(text, room, g2.getFontMetrics(font)::stringWidth);
    while (size > SMALLEST
        && lines.size() * g2.getFontMetrics(font).getHeight() + below > getHeight() - look.px(8)) {
      size -= 0.05;
      font = bold.deriveFont((float) (bold.getSize2D() * size));
      lines = WrappedText.lines(text, room, g2.getFontMetrics(font)::stringWidth);
    }
    FontMetrics metrics = g2.getFontMetrics(font);
    int y = (getHeight() - lines.size() * metrics.getHeight() - below) / 2;
    g2.setFont(font);
    g2.setColor(main ? palette.onDeep() : done ? palette.softText() : palette.text());
    for (String line : lines) {
      g2.drawString(line, look.px(10), y + metrics.getAscent());
      y += metrics.getHeight();
    }
    g2.setFont(small);
    g2.setColor(main ? palette.onDeep() : palette.softText());
    g2.drawString(under, look.px(10), y + smallMetrics.getAscent());
  }
}
