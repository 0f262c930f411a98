package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import javax.accessibility.AccessibleRole;
import javax.swing.KeyStroke;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/**
 * A chart whose points, bars and lines can be chosen and are told in words.
 *
 * <p>Keys: {@code ,} and {@code .} or the arrows left and right choose the one before and after,
 * {@code <} and {@code >} the one before and after that was too soon or too late, Home and End the
 * first and the last. Pointing and clicking do the same.
 */
public final class PlainChart extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final int NONE = -1;

  private final transient Look look;
  private final transient PlotData data;
  private final transient JFreeChart chart;
  private final transient ChartRenderingInfo info = new ChartRenderingInfo();
  private transient Consumer<String> onWords = text -> {};
  private transient BufferedImage picture;
  private int chosen = NONE;
  private int pointed = NONE;

  /** Shows a chart; its summary is its description until something is chosen. */
  public PlainChart(Look look, PlotData data) {
    super(AccessibleRole.PANEL, "Chart: " + data.name());
    this.look = look;
    this.data = data;
    this.chart = new PlotPainter(look).chart(data);
    describe(data.summary());
    setFocusable(true);
    bind(() -> step(-data.step(), s -> true), "typed ,", "LEFT", "KP_LEFT");
    bind(() -> step(data.step(), s -> true), "typed .", "RIGHT", "KP_RIGHT");
    bind(() -> step(-1, PlotData.Stop::notAsAsked), "typed <");
    bind(() -> step(1, PlotData.Stop::notAsAsked), "typed >");
    bind(() -> choose(data.stops().isEmpty() ? NONE : 0), "HOME");
    bind(() -> choose(data.stops().size() - 1), "END");
    listen();
  }

  /** Tells the words of what is chosen or pointed at. */
  public void tell(Consumer<String> newOnWords) {
    onWords = newOnWords;
  }

  /**
   * Chooses the next stop.
   *
   * @param by how many places on; negative for back
   * @param wanted which stops count
   */
  public void step(int by, Predicate<PlotData.Stop> wanted) {
    List<PlotData.Stop> stops = data.stops();
    int next = chosen == NONE ? (by > 0 ? 0 : stops.size() - 1) : chosen + by;
    // A long step still comes to the last and to the first.
    boolean cut = Math.abs(by) > 1 && chosen != NONE;
    next = cut ? Math.max(0, Math.min(next, stops.size() - 1)) : next;
    while (next >= 0 && next < stops.size() && !wanted.test(stops.get(next))) {
      next += Integer.signum(by);
    }
    if (next >= 0 && next < stops.size()) {
      choose(next);
    } else {
      say(by > 0 ? "No such mark after this." : "No such mark before this.");
    }
  }

  private void choose(int place) {
    if (place != NONE) {
      chosen = place;
      say(data.stops().get(place).words());
    }
  }

  private void say(String text) {
    describe(text.isEmpty() ? data.summary() : text);
    onWords.accept(text);
    repaint();
  }

  private void bind(Runnable action, String... keys) {
    for (String key : keys) {
      // A sign does the same wherever the focus is; the arrows belong to what has it.
      int when = key.startsWith("typed") ? WHEN_IN_FOCUSED_WINDOW : WHEN_FOCUSED;
      registerKeyboardAction(e -> action.run(), KeyStroke.getKeyStroke(key), when);
    }
  }

  private void listen() {
    MouseAdapter mouse =
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent e) {
            requestFocusInWindow(FocusEvent.Cause.MOUSE_EVENT);
            choose(stopAt(e.getX(), e.getY()));
          }

          @Override
          public void mouseMoved(MouseEvent e) {
            point(stopAt(e.getX(), e.getY()));
          }

          @Override
          public void mouseExited(MouseEvent e) {
            point(NONE);
          }
        };
    addMouseListener(mouse);
    addMouseMotionListener(mouse);
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

  private void point(int place) {
    if (place != pointed) {
      pointed = place;
      int shown = place == NONE ? chosen : place;
      say(shown == NONE ? "" : data.stops().get(shown).words());
    }
  }

  /** Points win over lines, and what is nearer over what is farther. */
  private int stopAt(int x, int y) {
    int best = NONE;
    double least = look.px(12);
    for (int i = 0; i < data.stops().size(); i++) {
      PlotData.Stop stop = data.stops().get(i);
      double away = awayFrom(stop, x, y);
      if (away < least) {
        best = i;
        least = away;
      }
    }
    return best;
  }

  private double awayFrom(PlotData.Stop stop, int x, int y) {
    Rectangle2D place = place(stop);
    return switch (stop.kind()) {
      case POINT -> Math.hypot(place.getCenterX() - x, place.getCenterY() - y);
      case BAR -> x >= place.getMinX() && x < place.getMaxX() ? 0 : Double.MAX_VALUE;
      case LINE -> look.px(6) + Math.abs(place.getCenterX() - x);
    };
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(364), look.px(220));
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    try {
      Palette palette = look.palette();
      double fine = g2.getTransform().getScaleX();
      int width = (int) Math.ceil(getWidth() * fine);
      int height = (int) Math.ceil(getHeight() * fine);
      if (picture == null || picture.getWidth() != width || picture.getHeight() != height) {
        picture = draw(width, height, fine);
      }
      g2.drawImage(picture, 0, 0, getWidth(), getHeight(), null);
      ring(g2, pointed, 1);
      ring(g2, chosen, 2.5);
      if (isFocusOwner()) {
        double line = look.px(2);
        g2.setColor(palette.tide());
        g2.setStroke(look.stroke(2));
        g2.draw(
            new RoundRectangle2D.Double(
                line / 2,
                line / 2,
                getWidth() - line,
                getHeight() - line,
                look.px(12),
                look.px(12)));
      }
    } finally {
      g2.dispose();
    }
  }

  /** An hour of points takes longer to draw than pointing at them may take. */
  private BufferedImage draw(int width, int height, double fine) {
    BufferedImage made =
        new BufferedImage(Math.max(1, width), Math.max(1, height), BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = Look.smooth(made.createGraphics());
    g2.scale(fine, fine);
    chart.draw(g2, new Rectangle2D.Double(0, 0, getWidth(), getHeight()), info);
    g2.dispose();
    return made;
  }

  private void ring(Graphics2D g2, int place, double line) {
    if (place == NONE) {
      return;
    }
    PlotData.Stop stop = data.stops().get(place);
    Rectangle2D at = place(stop);
    g2.setColor(look.palette().text());
    g2.setStroke(look.stroke(line));
    if (stop.kind() == PlotData.Kind.LINE) {
      g2.draw(new Line2D.Double(at.getX(), at.getMinY(), at.getX(), at.getMaxY()));
    } else {
      g2.draw(at);
    }
  }

  private Rectangle2D place(PlotData.Stop stop) {
    Rectangle2D area = info.getPlotInfo().getDataArea();
    XYPlot plot = chart.getXYPlot();
    double x = plot.getDomainAxis().valueToJava2D(stop.x(), area, RectangleEdge.BOTTOM);
    double y = plot.getRangeAxis().valueToJava2D(stop.y(), area, RectangleEdge.LEFT);
    double half = look.px(7);
    return switch (stop.kind()) {
      case POINT -> new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half);
      case LINE -> new Rectangle2D.Double(x, area.getMinY(), 0, area.getHeight());
      case BAR -> {
        double wide =
            plot.getDomainAxis()
                .lengthToJava2D(
                    data.bars().get(0).xHigh() - data.bars().get(0).xLow(),
                    area,
                    RectangleEdge.BOTTOM);
        yield new Rectangle2D.Double(x - wide / 2, area.getMinY(), wide, area.getHeight());
      }
    };
  }
}
