package squeezewell.desktop.parts;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Predicate;
import javax.accessibility.AccessibleRole;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotPicture;

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

  private final transient PlotData data;
  private transient Consumer<String> onWords = text -> {};
  private final transient Executor worker;
  private final transient Executor eventThread;
  private transient PlotPicture picture;
  private boolean drawing;
  private int chosen = NONE;
  private int pointed = NONE;

  /**
   * Shows a chart; its summary is its description until something is chosen. It is drawn in the
   * background when it is first seen.
   */
  public PlainChart(Look look, PlotData data) {
    this(look, data, PlainChart::inBackground, SwingUtilities::invokeLater);
  }

  /**
   * The same.
   *
   * @param worker does the drawing
   * @param eventThread takes what was drawn
   */
  PlainChart(Look look, PlotData data, Executor worker, Executor eventThread) {
    super(look, AccessibleRole.PANEL, "Chart: " + data.name());
    this.data = data;
    this.worker = worker;
    this.eventThread = eventThread;
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

  /** Whether it has been drawn. */
  public boolean drawn() {
    return picture != null;
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
    if (picture == null) {
      return NONE;
    }
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
  protected void draw(Graphics2D g2, Palette palette) {
    double fine = g2.getTransform().getScaleX();
    if (picture == null || !picture.fits(getWidth(), getHeight(), fine)) {
      draw(getWidth(), getHeight(), fine);
    }
    if (picture != null) {
      g2.drawImage(picture.image(), 0, 0, getWidth(), getHeight(), null);
      ring(g2, pointed, 1);
      ring(g2, chosen, 2.5);
    }
    if (isFocusOwner()) {
      double line = look.px(2);
      g2.setColor(palette.tide());
      g2.setStroke(look.stroke(2));
      g2.draw(
          new RoundRectangle2D.Double(
              line / 2, line / 2, getWidth() - line, getHeight() - line, look.px(12), look.px(12)));
    }
  }

  /**
   * An hour of points takes longer to draw than a key may wait: the page is there before its chart.
   */
  private void draw(int width, int height, double fine) {
    if (drawing) {
      return;
    }
    drawing = true;
    worker.execute(
        () -> {
          PlotPicture made = PlotPicture.draw(look, data, width, height, fine);
          eventThread.execute(() -> take(made));
        });
  }

  private void take(PlotPicture made) {
    picture = made;
    drawing = false;
    repaint();
  }

  private static void inBackground(Runnable work) {
    Thread thread = new Thread(work, "chart");
    thread.setDaemon(true);
    thread.start();
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
    return picture.place(stop, look.px(7));
  }
}
