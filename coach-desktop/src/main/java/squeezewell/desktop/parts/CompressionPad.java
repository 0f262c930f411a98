package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.LongConsumer;
import javax.accessibility.AccessibleRole;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.protocol.Judgement;

/** The large pad that is pressed once for each compression; it shows how many there were. */
public final class CompressionPad extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final List<String> WORDS = List.of("Press for each", "compression");
  private static final String LOW_WORD = "Compression";

  /** A pad lower than this, in density-independent pixels, says less. */
  private static final int LOW = 92;

  private boolean lit;
  private String count = "";
  private String rate = "";
  private Judgement judgement = Judgement.UNJUDGED;

  /**
   * A pad.
   *
   * @param pressed told when it is pressed with the mouse or a finger, as an event tells the time
   */
  public CompressionPad(Look look, LongConsumer pressed) {
    super(look, AccessibleRole.PUSH_BUTTON, "Compression pad");
    describe("Press the C key or the mouse button once for each compression");
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent e) {
            if (SwingUtilities.isLeftMouseButton(e)) {
              pressed.accept(e.getWhen());
            }
          }
        });
  }

  /**
   * Shows the compressions so far.
   *
   * @param nowLit whether one has just been taken
   * @param newCount how many, or what to press, in words
   * @param newRate how fast, in words; empty for none
   * @param newJudgement how that rate is
   */
  public void show(boolean nowLit, String newCount, String newRate, Judgement newJudgement) {
    if (nowLit != lit || !newCount.equals(count) || !newRate.equals(rate)) {
      lit = nowLit;
      count = newCount;
      rate = newRate;
      judgement = newJudgement;
      repaint();
    }
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(120), look.px(72));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    paintPad(g2, lit);
    paintLines(g2, palette);
  }

  private void paintLines(Graphics2D g2, Palette palette) {
    boolean low = getHeight() < look.px(LOW);
    double unit = low ? Math.min(1, getHeight() / (48.0 * look.scale())) : 1;
    Font word = look.bold(20 * unit);
    Font small = look.font(14 * unit);
    Font feedback = look.bold(15 * unit);
    // A low pad has no room for all: how fast matters more than how many.
    List<String> words = low ? List.of(LOW_WORD) : WORDS;
    boolean counts = !low || rate.isEmpty();
    double height =
        words.size() * height(g2, word)
            + (counts ? height(g2, small) : 0)
            + (rate.isEmpty() ? 0 : height(g2, feedback));
    double y = (getHeight() - height) / 2;
    for (String line : words) {
      y = write(g2, word, lit ? palette.onDeep() : palette.text(), line, y);
    }
    if (counts) {
      y = write(g2, small, lit ? palette.onDeep() : palette.softText(), count, y);
    }
    if (!rate.isEmpty()) {
      Color told =
          lit
              ? palette.onDeep()
              : judgement == Judgement.IN_RANGE ? palette.onMist() : palette.of(judgement);
      write(g2, feedback, told, rate, y);
    }
  }

  private static double height(Graphics2D g2, Font font) {
    return g2.getFontMetrics(font).getHeight();
  }

  /** Writes a line below y; returns where it ends. */
  private double write(Graphics2D g2, Font font, Color colour, String text, double y) {
    Font fitted = Look.fitted(g2, font, text, getWidth() - look.px(24));
    FontMetrics metrics = g2.getFontMetrics(fitted);
    g2.setFont(fitted);
    g2.setColor(colour);
    double x = (getWidth() - metrics.stringWidth(text)) / 2.0;
    g2.drawString(text, (float) x, (float) (y + metrics.getAscent()));
    return y + height(g2, font);
  }
}
