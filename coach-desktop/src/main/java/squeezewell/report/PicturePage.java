package squeezewell.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.LineBreakMeasurer;
import java.awt.font.TextAttribute;
import java.awt.font.TextLayout;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.text.AttributedString;
import java.util.List;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.ScreenCanvas;

/** A page that is painted from top to bottom; it only knows how far down it is. */
final class PicturePage {
  /** A4 at {@link #DOTS_PER_INCH}. */
  static final int WIDTH = 1240;

  static final int A4_HEIGHT = 1754;
  static final int DOTS_PER_INCH = 150;

  static final Palette COLOURS = ReportPicture.LOOK.palette();
  private static final Color RULE = new Color(0xDDD8C8);
  private static final int MARGIN = 72;
  private static final int INNER = WIDTH - 2 * MARGIN;
  private static final int PADDING = 20;

  private final Graphics2D g;
  private double y = MARGIN;

  PicturePage(Graphics2D g) {
    this.g = g;
  }

  /** How high the page is so far, with its lower margin. */
  int height() {
    return (int) Math.ceil(y) + MARGIN;
  }

  void space(double pixels) {
    y += pixels;
  }

  void text(String text, float size, boolean bold, Color colour) {
    y += wrapped(text, size, bold, colour, MARGIN, y, INNER, true);
  }

  /** Cards side by side, all as high as the highest. */
  void cards(List<DebriefWords.Card> cards) {
    int gap = 16;
    double width = (double) (INNER - gap * (cards.size() - 1)) / cards.size();
    double highest = 0;
    for (boolean paint : new boolean[] {false, true}) {
      double x = MARGIN;
      for (DebriefWords.Card card : cards) {
        if (paint) {
          box(x, y, width, highest);
        }
        highest = Math.max(highest, card(card, x, width, paint));
        x += width + gap;
      }
    }
    y += highest;
  }

  private double card(DebriefWords.Card card, double x, double width, boolean paint) {
    double left = x + PADDING;
    double inner = width - 2 * PADDING;
    double at = y + PADDING;
    at += wrapped(card.value(), 40, true, COLOURS.text(), left, at, inner, paint);
    at += wrapped(card.name(), 22, false, COLOURS.text(), left, at, inner, paint);
    at += wrapped(card.note(), 19, false, COLOURS.softText(), left, at, inner, paint);
    return at + PADDING - y;
  }

  void picture(ReportPicture picture) {
    double scale = (INNER - 2.0 * PADDING) / ReportPicture.WIDTH;
    double height = picture.height() * scale + 2 * PADDING;
    box(MARGIN, y, INNER, height);
    Graphics2D inside = (Graphics2D) g.create();
    inside.translate(MARGIN + PADDING, y + PADDING);
    inside.scale(scale, scale);
    picture.painter().accept(new ScreenCanvas(inside, ReportPicture.LOOK));
    inside.dispose();
    y += height;
  }

  void rule() {
    g.setColor(RULE);
    g.fill(new Rectangle2D.Double(MARGIN, y, INNER, 2));
    y += 2;
  }

  private void box(double x, double top, double width, double height) {
    RoundRectangle2D box = new RoundRectangle2D.Double(x, top, width, height, 24, 24);
    g.setColor(COLOURS.card());
    g.fill(box);
    g.setColor(RULE);
    g.setStroke(new BasicStroke(1.5f));
    g.draw(box);
  }

  /** The height that the text takes. */
  private double wrapped(
      String text,
      float size,
      boolean bold,
      Color colour,
      double x,
      double top,
      double width,
      boolean paint) {
    String shown = PlainText.of(text);
    if (shown.isEmpty()) {
      return 0;
    }
    Font font = bold ? ReportPicture.LOOK.bold(size) : ReportPicture.LOOK.font(size);
    AttributedString styled = new AttributedString(shown);
    styled.addAttribute(TextAttribute.FONT, font);
    LineBreakMeasurer lines = new LineBreakMeasurer(styled.getIterator(), g.getFontRenderContext());
    g.setColor(colour);
    double at = top;
    while (lines.getPosition() < shown.length()) {
      TextLayout line = lines.nextLayout((float) width);
      at += size * 1.3;
      if (paint) {
        // Each line from the left, as the page is English, whatever the direction of a name.
        line.draw(g, (float) x, (float) (at - size * 0.3));
      }
    }
    return at - top;
  }
}
