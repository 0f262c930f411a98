package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.LongConsumer;
import javax.accessibility.AccessibleRole;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/** The large pad that is held for as long as the bag is squeezed. */
public final class BreathPad extends Drawn {
  private static final long serialVersionUID = 1L;

  private boolean held;
  private String word = "Hold while you squeeze";
  private String hint = "";

  /**
   * A pad.
   *
   * @param pressed told when it is pressed with the mouse or a finger, as an event tells the time
   * @param released told when it is let go
   */
  public BreathPad(Look look, LongConsumer pressed, LongConsumer released) {
    super(look, AccessibleRole.PUSH_BUTTON, "Breath pad");
    setFocusable(true);
    describe("Hold the space bar, a bound key or the mouse button for as long as you squeeze");
    addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent e) {
            if (SwingUtilities.isLeftMouseButton(e)) {
              pressed.accept(e.getWhen());
            }
          }

          @Override
          public void mouseReleased(MouseEvent e) {
            if (SwingUtilities.isLeftMouseButton(e)) {
              released.accept(e.getWhen());
            }
          }
        });
    addFocusListener(
        new FocusAdapter() {
          @Override
          public void focusGained(FocusEvent e) {
            repaint();
          }

          @Override
          public void focusLost(FocusEvent e) {
            repaint();
          }
        });
  }

  /** Shows whether a squeeze is going on, and what to say. */
  public void show(boolean nowHeld, String newWord, String newHint) {
    if (nowHeld != held || !newWord.equals(word) || !newHint.equals(hint)) {
      held = nowHeld;
      word = newWord;
      hint = newHint;
      repaint();
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(372), look.px(170));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(160), look.px(72));
  }

  /** The word on one line; on a narrow pad on two, broken nearest its middle. */
  private List<String> lines(FontMetrics metrics, int room) {
    boolean low = getHeight() < look.px(72);
    if (low || metrics.stringWidth(word) <= room || word.indexOf(' ') < 0) {
      return List.of(word);
    }
    int middle = word.length() / 2;
    int after = word.indexOf(' ', middle);
    int before = word.lastIndexOf(' ', middle);
    int at = before < 0 || (after >= 0 && after - middle < middle - before) ? after : before;
    return List.of(word.substring(0, at), word.substring(at + 1));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    paintPad(g2, held);
    int room = getWidth() - look.px(32);
    List<String> lines = lines(g2.getFontMetrics(look.bold(23)), room);
    Font font = look.bold(lines.size() > 1 ? 20 : 23);
    for (String text : lines) {
      font = Look.fitted(g2, font, text, room);
    }
    FontMetrics metrics = g2.getFontMetrics(font);
    Font small = Look.fitted(g2, look.font(14), hint, room);
    FontMetrics smallMetrics = g2.getFontMetrics(small);
    int block =
        lines.size() * metrics.getHeight() + (hint.isEmpty() ? 0 : smallMetrics.getHeight());
    int y = (getHeight() - block) / 2 + metrics.getAscent();
    g2.setColor(held ? palette.onDeep() : palette.text());
    g2.setFont(font);
    for (String text : lines) {
      g2.drawString(text, (getWidth() - metrics.stringWidth(text)) / 2, y);
      y += metrics.getHeight();
    }
    y -= metrics.getHeight();
    g2.setColor(held ? palette.onDeep() : palette.softText());
    g2.setFont(small);
    g2.drawString(
        hint,
        (getWidth() - smallMetrics.stringWidth(hint)) / 2,
        y + metrics.getDescent() + smallMetrics.getAscent());
  }
}
