package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.review.Judgement;

/** The one word to do now, the large count, and how the last breath came. */
public final class PromptWords extends Drawn {
  private static final long serialVersionUID = 1L;

  private final transient Look look;
  private String word = "";
  private String count = "";
  private String note = "";
  private String interval = "";
  private Judgement judgement = Judgement.UNJUDGED;

  public PromptWords(Look look) {
    super(AccessibleRole.PANEL, "What to do now");
    this.look = look;
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
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    try {
      Palette palette = look.palette();
      double unit = Math.min(getHeight() / 330.0, getWidth() / 176.0);
      double size = unit / look.scale();
      int width = getWidth();
      g2.setColor(palette.text());
      centred(g2, look.bold(38 * size), word, width, 0.27);
      centred(g2, look.bold(116 * size), count, width, 0.66);
      g2.setColor(palette.softText());
      centred(g2, look.font(16 * size), note, width, 0.79);
      if (!interval.isEmpty()) {
        g2.setColor(Ribbon.colour(palette, judgement));
        Font font = Look.fitted(g2, look.bold(17 * size), interval, width - (int) (24 * unit));
        double y = getHeight() * 0.94;
        int textWidth = centred(g2, font, interval, width, 0.94);
        double left = (width - textWidth) / 2.0 - 12 * unit;
        if (judgement == Judgement.FAST) {
          Ribbon.tip(g2, left, y - 12 * unit, 6 * unit, 10 * unit);
        } else if (judgement == Judgement.SLOW) {
          Ribbon.tip(g2, left, y - 2 * unit, 6 * unit, -10 * unit);
        }
      }
    } finally {
      g2.dispose();
    }
  }

  private int centred(Graphics2D g2, Font font, String text, int width, double share) {
    Font fitted = Look.fitted(g2, font, text, width);
    FontMetrics metrics = g2.getFontMetrics(fitted);
    g2.setFont(fitted);
    int textWidth = metrics.stringWidth(text);
    g2.drawString(text, (width - textWidth) / 2f, (float) (getHeight() * share));
    return textWidth;
  }
}
