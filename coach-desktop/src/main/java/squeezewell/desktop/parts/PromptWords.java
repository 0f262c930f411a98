package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.RibbonPainter;
import squeezewell.protocol.Judgement;

/** The one word to do now, the large count, and how the last breath came. */
public final class PromptWords extends Drawn {
  private static final long serialVersionUID = 1L;

  /** Wider than this many heights, the words stand beside the count. */
  private static final double WIDE = 1.3;

  private String word = "";
  private String count = "";
  private String note = "";
  private String interval = "";
  private Judgement judgement = Judgement.UNJUDGED;

  public PromptWords(Look look) {
    super(look, AccessibleRole.PANEL, "What to do now");
  }

  /** Shows the words of a moment. */
  public void show(
      String newWord, String newCount, String newNote, String newInterval, Judgement newJudgement) {
    boolean same =
        newWord.equals(word)
            && newCount.equals(count)
            && newNote.equals(note)
            && newInterval.equals(interval);
    if (same) {
      return;
    }
    if (!newWord.equals(word)) {
      describe(newWord);
    }
    word = newWord;
    count = newCount;
    note = newNote;
    interval = newInterval;
    judgement = newJudgement;
    repaint();
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(180), look.px(330));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    if (getWidth() > WIDE * getHeight()) {
      paintWide(g2);
    } else {
      paintTall(g2);
    }
  }

  private void paintTall(Graphics2D g2) {
    double unit = Math.min(getHeight() / 330.0, getWidth() / 176.0);
    Column column = new Column(0, getWidth());
    column.write(g2, look.palette().text(), bold(38 * unit), word, 0.27);
    column.write(g2, look.palette().text(), bold(116 * unit), count, 0.66);
    column.write(g2, look.palette().softText(), plain(16 * unit), note, 0.79);
    paintInterval(g2, column, unit, 0.94);
  }

  /** On a low window: the count on the left, what to do on the right, both still large. */
  private void paintWide(Graphics2D g2) {
    int split = getWidth() * 2 / 5;
    double unit = Math.min(getHeight() / 120.0, getWidth() / 200.0);
    Column left = new Column(0, split);
    Column right = new Column(split, getWidth() - split);
    left.write(g2, look.palette().text(), bold(96 * unit), count, 0.78);
    right.write(g2, look.palette().text(), bold(34 * unit), word, 0.42);
    right.write(g2, look.palette().softText(), plain(15 * unit), note, 0.66);
    paintInterval(g2, right, unit, 0.92);
  }

  private void paintInterval(Graphics2D g2, Column column, double unit, double share) {
    if (interval.isEmpty()) {
      return;
    }
    Color colour = look.palette().of(judgement);
    double y = getHeight() * share;
    Column inner = new Column(column.left + (int) (12 * unit), column.width - (int) (24 * unit));
    double textLeft = inner.write(g2, colour, bold(17 * unit), interval, share);
    double x = textLeft - 12 * unit;
    if (judgement == Judgement.FAST) {
      g2.fill(RibbonPainter.tip(x, y - 12 * unit, 6 * unit, 10 * unit));
    } else if (judgement == Judgement.SLOW) {
      g2.fill(RibbonPainter.tip(x, y - 2 * unit, 6 * unit, -10 * unit));
    }
  }

  private Font bold(double pixels) {
    return look.bold(pixels / look.scale());
  }

  private Font plain(double pixels) {
    return look.font(pixels / look.scale());
  }

  /** A part of the width in which lines stand centred. */
  private final class Column {
    private final int left;
    private final int width;

    Column(int left, int width) {
      this.left = left;
      this.width = width;
    }

    /** Writes a line with its base at a share of the height; returns where its text begins. */
    double write(Graphics2D g2, Color colour, Font font, String text, double share) {
      Font fitted = Look.fitted(g2, font, text, width);
      g2.setFont(fitted);
      g2.setColor(colour);
      double x = left + (width - g2.getFontMetrics(fitted).stringWidth(text)) / 2.0;
      g2.drawString(text, (float) x, (float) (getHeight() * share));
      return x;
    }
  }
}
