package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import javax.accessibility.AccessibleRole;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** Where a practice has a pad to press, a replay shows what was pressed. */
public final class DonePanel extends Drawn {
  private static final long serialVersionUID = 1L;

  private boolean lit;
  private String word = "";
  private String note = "";

  /**
   * A panel.
   *
   * @param name what a screen reader calls it
   */
  public DonePanel(Look look, String name) {
    super(look, AccessibleRole.PANEL, name);
  }

  /** Shows whether it is being done, what, and something more about it. */
  public void show(boolean nowLit, String newWord, String newNote) {
    if (nowLit != lit || !newWord.equals(word) || !newNote.equals(note)) {
      lit = nowLit;
      word = newWord;
      note = newNote;
      describe(newNote.isEmpty() ? newWord : newWord + ". " + newNote);
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(180), look.px(72));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(120), look.px(52));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    paintPad(g2, lit);
    int room = getWidth() - look.px(24);
    Font font = Look.fitted(g2, look.bold(17), word, room);
    Font small = Look.fitted(g2, look.font(14), note, room);
    FontMetrics metrics = g2.getFontMetrics(font);
    FontMetrics smallMetrics = g2.getFontMetrics(small);
    int block = metrics.getHeight() + (note.isEmpty() ? 0 : smallMetrics.getHeight());
    int y = (getHeight() - block) / 2 + metrics.getAscent();
    g2.setColor(lit ? palette.onDeep() : palette.text());
    g2.setFont(font);
    g2.drawString(word, (getWidth() - metrics.stringWidth(word)) / 2, y);
    g2.setColor(lit ? palette.onDeep() : palette.softText());
    g2.setFont(small);
    g2.drawString(
        note,
        (getWidth() - smallMetrics.stringWidth(note)) / 2,
        y + metrics.getDescent() + smallMetrics.getAscent());
  }
}
