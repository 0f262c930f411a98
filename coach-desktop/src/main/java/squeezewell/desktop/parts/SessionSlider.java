package squeezewell.desktop.parts;

import com.formdev.flatlaf.ui.FlatSliderUI;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.KeyEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.swing.JSlider;
import javax.swing.KeyStroke;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/**
 * A slider over a whole session, in tenths of a second. Above the line stand a tick for each
 * breath, a block for each hold and a flag for each finding: they differ in shape, not in colour
 * alone.
 */
public final class SessionSlider extends JSlider {
  private static final long serialVersionUID = 1L;
  private static final long TENTH_NANOS = 100_000_000L;

  private final transient Look look;
  private final transient List<Long> breaths;
  private final transient List<Span> spans;
  private transient Places places;

  /**
   * A hold, or a finding, which has no length.
   *
   * @param fromNanos where it begins
   * @param toNanos where it ends
   */
  public record Span(long fromNanos, long toNanos) {}

  /**
   * A slider at the start.
   *
   * @param endNanos length of the session
   * @param breaths when each breath began
   * @param spans holds and findings
   */
  public SessionSlider(Look look, long endNanos, List<Long> breaths, List<Span> spans) {
    super(0, (int) Math.max(1, (endNanos + TENTH_NANOS - 1) / TENTH_NANOS), 0);
    this.look = look;
    this.breaths = List.copyOf(breaths);
    this.spans = List.copyOf(spans);
    setOpaque(false);
    getAccessibleContext().setAccessibleName("Moment of the practice, in tenths of a second");
    for (int key :
        new int[] {
          KeyEvent.VK_LEFT, KeyEvent.VK_RIGHT, KeyEvent.VK_UP, KeyEvent.VK_DOWN,
          KeyEvent.VK_HOME, KeyEvent.VK_END, KeyEvent.VK_PAGE_UP, KeyEvent.VK_PAGE_DOWN
        }) {
      // The screen gives these keys their meaning.
      getInputMap(WHEN_FOCUSED).put(KeyStroke.getKeyStroke(key, 0), "left to the screen");
    }
  }

  /** The moment it stands at, nanoseconds. */
  public long nanos() {
    return getValue() * TENTH_NANOS;
  }

  /** Moves it, unless a person is dragging it. */
  public void show(long nanos, String words) {
    if (!getValueIsAdjusting()) {
      setValue((int) (nanos / TENTH_NANOS));
    }
    if (!words.equals(getAccessibleContext().getAccessibleDescription())) {
      getAccessibleContext().setAccessibleDescription(words);
    }
  }

  /** Knows where a value stands. */
  private static final class Places extends FlatSliderUI {
    double xOf(JSlider slider, long nanos) {
      double share = nanos / (double) TENTH_NANOS / slider.getMaximum();
      return trackRect.x + share * trackRect.width;
    }

    int lineY() {
      return trackRect.y + trackRect.height / 2;
    }
  }

  @Override
  public void updateUI() {
    places = new Places();
    setUI(places);
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(look.px(372), look.px(64));
  }

  @Override
  public Dimension getMinimumSize() {
    return new Dimension(look.px(160), look.px(56));
  }

  @Override
  protected void paintComponent(Graphics g) {
    super.paintComponent(g);
    Graphics2D g2 = Look.smooth(g);
    try {
      Palette palette = look.palette();
      double line = places.lineY();
      double foot = line - look.px(13);
      g2.setStroke(look.stroke(1));
      for (Span span : spans) {
        double x = places.xOf(this, span.fromNanos());
        if (span.toNanos() > span.fromNanos()) {
          double width = Math.max(look.px(4), places.xOf(this, span.toNanos()) - x);
          RoundRectangle2D block =
              new RoundRectangle2D.Double(x, foot - look.px(8), width, look.px(8), 4, 4);
          g2.setColor(palette.mist());
          g2.fill(block);
          g2.setColor(palette.softText());
          g2.draw(block);
        }
      }
      g2.setColor(palette.softText());
      for (long at : breaths) {
        double x = places.xOf(this, at);
        g2.draw(new Line2D.Double(x, foot - look.px(4), x, foot));
      }
      g2.setColor(palette.text());
      for (Span span : spans) {
        if (span.toNanos() == span.fromNanos()) {
          paintFlag(g2, places.xOf(this, span.fromNanos()), line);
        }
      }
    } finally {
      g2.dispose();
    }
  }

  /** Below the line, so that a finding stands apart from the holds it leads to. */
  private void paintFlag(Graphics2D g2, double x, double line) {
    double top = line + look.px(11);
    Path2D flag = new Path2D.Double();
    flag.moveTo(x, top);
    flag.lineTo(x + look.px(5), top + look.px(9));
    flag.lineTo(x - look.px(5), top + look.px(9));
    flag.closePath();
    g2.fill(flag);
  }
}
