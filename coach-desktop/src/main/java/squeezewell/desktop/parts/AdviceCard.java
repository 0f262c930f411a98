package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.RoundRectangle2D;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.accessibility.AccessibleState;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.words.WrappedText;

/**
 * A title and a text of a few lines on a card that is framed while it matters. What it says is
 * announced to a screen reader: the card is an alert whose name holds the words and changes with
 * them, and it is told anew each time the card comes up.
 */
public final class AdviceCard extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final double SMALLEST = 0.55;

  private final String name;
  private final int titleSize;
  private final int textSize;
  private String title = "";
  private String text = "";

  public AdviceCard(Look look) {
    this(look, "What was found", 17, 14);
  }

  /**
   * A card with type of other sizes.
   *
   * @param name what a screen reader calls it
   * @param titleSize of the title, in density-independent pixels
   * @param textSize of the text, in density-independent pixels
   */
  public AdviceCard(Look look, String name, int titleSize, int textSize) {
    super(look, AccessibleRole.ALERT, name);
    this.name = name;
    this.titleSize = titleSize;
    this.textSize = textSize;
  }

  /** Shows what was found and what to do. */
  public void show(String newTitle, String newText) {
    if (!newTitle.equals(title) || !newText.equals(text)) {
      title = newTitle;
      text = newText;
      announce();
      repaint();
    }
  }

  /** A card that goes away has said its words: the same words are news when they come again. */
  @Override
  public void setVisible(boolean visible) {
    boolean came = visible && !isVisible();
    super.setVisible(visible);
    if (!visible) {
      title = "";
      text = "";
      getAccessibleContext().setAccessibleName(name);
    } else if (came && !title.isEmpty()) {
      announce();
    }
  }

  private void announce() {
    String words = title + ". " + text;
    AccessibleContext context = getAccessibleContext();
    context.setAccessibleName(name + ": " + words);
    describe(words);
    if (isVisible()) {
      context.firePropertyChange(
          AccessibleContext.ACCESSIBLE_STATE_PROPERTY, null, AccessibleState.SHOWING);
    }
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(372), look.px(90));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    double arc = look.px(24);
    double line = look.px(3);
    RoundRectangle2D shape =
        new RoundRectangle2D.Double(
            line / 2, line / 2, getWidth() - line, getHeight() - line, arc, arc);
    g2.setColor(palette.card());
    g2.fill(shape);
    g2.setColor(palette.tide());
    g2.setStroke(look.stroke(3));
    g2.draw(shape);
    int side = look.px(12);
    int room = getWidth() - 2 * side;
    double size = 1;
    while (size > SMALLEST && height(g2, size, room) > getHeight() - look.px(12)) {
      size -= 0.05;
    }
    write(g2, size, side, room);
  }

  private int height(Graphics2D g2, double size, int room) {
    FontMetrics small = g2.getFontMetrics(plain(size));
    return g2.getFontMetrics(bold(size)).getHeight()
        + WrappedText.lines(text, room, small::stringWidth).size() * small.getHeight();
  }

  private void write(Graphics2D g2, double size, int side, int room) {
    Font bold = Look.fitted(g2, bold(size), title, room);
    FontMetrics large = g2.getFontMetrics(bold);
    int y = (getHeight() - height(g2, size, room)) / 2 + large.getAscent();
    g2.setFont(bold);
    g2.setColor(look.palette().text());
    g2.drawString(title, side, y);
    Font plain = plain(size);
    FontMetrics small = g2.getFontMetrics(plain);
    g2.setFont(plain);
    y += large.getDescent() + small.getAscent();
    for (String line : WrappedText.lines(text, room, small::stringWidth)) {
      g2.drawString(line, side, y);
      y += small.getHeight();
    }
  }

  private Font bold(double size) {
    Font font = look.bold(titleSize);
    return font.deriveFont((float) (font.getSize2D() * size));
  }

  private Font plain(double size) {
    Font font = look.font(textSize);
    return font.deriveFont((float) (font.getSize2D() * size));
  }
}
