package squeezewell.desktop.screens.live;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.function.LongConsumer;
import javax.accessibility.AccessibleRole;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Drawn;
import squeezewell.words.WrappedText;

/** A large pad under the hand: held for a squeeze, or pressed once for each compression. */
final class LivePad extends Drawn {
  private static final long serialVersionUID = 1L;

  private transient Shown shown = new Shown("", "", false, false);
  private transient Palette palette;
  private double text = 1;
  private double unit = 1;

  /**
   * What a pad shows.
   *
   * @param word what it does now
   * @param hint what to press; empty for none
   * @param down whether it is held
   * @param filled whether it calls for a hand
   */
  record Shown(String word, String hint, boolean down, boolean filled) {}

  /**
   * A pad.
   *
   * @param name for screen readers
   * @param description how it is used, for screen readers
   * @param pressed told when it is pressed with the mouse or a finger, as an event tells the time
   * @param released told when it is let go
   */
  LivePad(Look look, String name, String description, LongConsumer pressed, LongConsumer released) {
    super(look, AccessibleRole.PUSH_BUTTON, name);
    palette = look.palette();
    setFocusable(true);
    describe(description);
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
        new FocusListener() {
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

  /** Shows something, in the colours of a ground and the sizes of a place. */
  void show(Shown next, Palette colours, LivePlaces places) {
    boolean same =
        next.equals(shown)
            && colours.equals(palette)
            && text == places.text()
            && unit == places.unit();
    if (!same) {
      shown = next;
      palette = colours;
      text = places.text();
      unit = places.unit();
      repaint();
    }
  }

  @Override
  protected void draw(Graphics2D g2, Palette plain) {
    double line = unit * (shown.down() ? 5 : 3);
    double arc = unit * 48;
    RoundRectangle2D shape =
        new RoundRectangle2D.Double(
            line / 2, line / 2, getWidth() - line, getHeight() - line, arc, arc);
    Color fill = shown.down() ? palette.deep() : shown.filled() ? palette.text() : palette.mist();
    Color ink =
        shown.down() ? palette.onDeep() : shown.filled() ? palette.ground() : palette.onMist();
    g2.setColor(fill);
    g2.fill(shape);
    g2.setColor(shown.down() ? palette.text() : palette.deep());
    g2.setStroke(new java.awt.BasicStroke((float) line));
    g2.draw(shape);
    if (isFocusOwner()) {
      g2.setColor(ink);
      g2.setStroke(new java.awt.BasicStroke((float) (unit * 1.5)));
      double in = unit * 8;
      g2.draw(
          new RoundRectangle2D.Double(
              in, in, getWidth() - 2 * in, getHeight() - 2 * in, arc - in, arc - in));
    }
    write(g2, ink);
  }

  private void write(Graphics2D g2, Color ink) {
    int room = (int) (getWidth() - unit * 32);
    double size = Math.min(36, getHeight() / unit / 3.2) * Math.min(text, unit * 1.4);
    Look own = new Look(palette, 1);
    Font word = own.bold(Math.max(16, Math.min(size, unit * 44)));
    FontMetrics metrics = g2.getFontMetrics(word);
    List<String> lines = WrappedText.lines(shown.word(), room, metrics::stringWidth);
    if (lines.size() * metrics.getHeight() > getHeight() * 0.8) {
      lines = List.of(shown.word());
    }
    for (String part : lines) {
      word = Look.fitted(g2, word, part, room);
    }
    metrics = g2.getFontMetrics(word);
    boolean hints =
        !shown.hint().isEmpty()
            && lines.size() * metrics.getHeight() + text * 20 < getHeight() - unit * 16;
    Font small = Look.fitted(g2, own.font(15 * text), shown.hint(), room);
    FontMetrics smallMetrics = g2.getFontMetrics(small);
    double block =
        lines.size() * (double) metrics.getHeight() + (hints ? smallMetrics.getHeight() : 0);
    double y = (getHeight() - block) / 2 + metrics.getAscent();
    g2.setColor(ink);
    g2.setFont(word);
    for (String part : lines) {
      g2.drawString(part, (getWidth() - metrics.stringWidth(part)) / 2f, (float) y);
      y += metrics.getHeight();
    }
    if (hints) {
      g2.setFont(small);
      g2.drawString(
          shown.hint(),
          (getWidth() - smallMetrics.stringWidth(shown.hint())) / 2f,
          (float) (y - metrics.getAscent() + smallMetrics.getAscent()));
    }
  }
}
