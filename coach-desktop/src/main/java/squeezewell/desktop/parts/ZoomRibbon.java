package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import javax.accessibility.AccessibleRole;
import javax.swing.KeyStroke;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.MarkIndex;
import squeezewell.picture.PartSpan;
import squeezewell.picture.RibbonPainter;
import squeezewell.picture.ScreenCanvas;

/**
 * A ribbon to look at closely: it zooms, moves, and tells of each mark that is chosen or pointed
 * at.
 *
 * <p>Keys: {@code +} and {@code -} zoom, {@code 0} shows all, the arrows left and right move, Home
 * and End lead to the ends, {@code ,} and {@code .} choose the mark before and after, {@code <} and
 * {@code >} the one before and after that was not as asked. The wheel zooms, dragging moves, a
 * click chooses.
 */
public final class ZoomRibbon extends Drawn {
  private static final long serialVersionUID = 1L;
  private static final double ZOOM = 1.5;
  private static final double SMALL_STEP = 0.25;
  private static final long[] TICKS = {1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600};
  private static final long SECOND = 1_000_000_000L;
  private static final int MARGIN = 10;

  private final transient MarkIndex index;
  private final transient List<PartSpan> parts;
  private final transient IntFunction<String> words;
  private final transient IntPredicate notAsAsked;
  private transient Consumer<String> onWords = text -> {};
  private transient Consumer<String> onWindow = text -> {};
  private transient TimeWindow window;
  private int chosen = MarkIndex.NONE;
  private int pointed = MarkIndex.NONE;

  /**
   * Shows a whole practice.
   *
   * @param index the marks
   * @param parts the parts, if the rhythm changed
   * @param words what to say of the mark at a place in the index
   * @param notAsAsked whether the mark at a place was not as asked
   * @param startNanos where the practice begins, nanoseconds since the session began
   * @param endNanos where it ends, later
   */
  public ZoomRibbon(
      Look look,
      MarkIndex index,
      List<PartSpan> parts,
      IntFunction<String> words,
      IntPredicate notAsAsked,
      long startNanos,
      long endNanos) {
    super(look, AccessibleRole.PANEL, "Ribbon: prompts above, what was done below");
    this.index = index;
    this.parts = List.copyOf(parts);
    this.words = words;
    this.notAsAsked = notAsAsked;
    this.window = TimeWindow.whole(startNanos, endNanos);
    setFocusable(true);
    listen();
    bindKeys();
  }

  /**
   * Tells what is chosen or pointed at, and what is shown.
   *
   * @param newOnWords is given the words of a mark
   * @param newOnWindow is given the span that is shown, at once and whenever it changes
   */
  public void tell(Consumer<String> newOnWords, Consumer<String> newOnWindow) {
    onWords = newOnWords;
    onWindow = newOnWindow;
    onWindow.accept(span());
  }

  /** Shows less of the practice, larger; keeps the chosen mark in view. */
  public void zoomIn() {
    show(window.zoomed(1 / ZOOM, anchor()));
  }

  /** Shows more of the practice, smaller. */
  public void zoomOut() {
    show(window.zoomed(ZOOM, anchor()));
  }

  /** Shows all of the practice. */
  public void showAll() {
    show(window.whole());
  }

  /** Moves by a share of what is shown; negative to the left. */
  public void move(double share) {
    show(window.moved(Math.round(share * window.lengthNanos())));
  }

  /**
   * Chooses the next mark.
   *
   * @param step 1 for the next, -1 for the one before
   */
  public void step(int step) {
    stepTo(step, i -> true);
  }

  /**
   * Chooses the next mark that was not as asked.
   *
   * @param step 1 for the next, -1 for the one before
   */
  public void stepToFault(int step) {
    stepTo(step, notAsAsked);
  }

  /** The place in the index of the chosen mark, {@link MarkIndex#NONE} without one. */
  public int chosen() {
    return chosen;
  }

  private void stepTo(int step, IntPredicate wanted) {
    int from = chosen;
    if (from == MarkIndex.NONE) {
      int there = step > 0 ? index.firstFrom(window.fromNanos()) : index.lastUpTo(window.toNanos());
      from = there == MarkIndex.NONE ? (step > 0 ? index.marks().size() : 0) : there - step;
    }
    int next = index.next(from, step, wanted);
    if (next == MarkIndex.NONE) {
      String none = step > 0 ? "No such mark after this." : "No such mark before this.";
      say(none);
    } else {
      choose(next);
    }
  }

  private void choose(int place) {
    chosen = place;
    show(window.showing(index.marks().get(place).startNanos()));
    say(words.apply(place));
  }

  private void say(String text) {
    describe(text);
    onWords.accept(text);
    repaint();
  }

  private void show(TimeWindow next) {
    if (!next.equals(window)) {
      window = next;
      onWindow.accept(span());
      repaint();
    }
  }

  private long anchor() {
    if (chosen != MarkIndex.NONE) {
      long at = index.marks().get(chosen).startNanos();
      if (at >= window.fromNanos() && at <= window.toNanos()) {
        return at;
      }
    }
    return window.fromNanos() + window.lengthNanos() / 2;
  }

  private String span() {
    return (window.isWhole() ? "Shown: all, " : "Shown: ")
        + clock(window.fromNanos())
        + " to "
        + clock(window.toNanos());
  }

  private static String clock(long nanos) {
    return squeezewell.words.Quantities.clock(nanos);
  }

  private void bindKeys() {
    bind(this::zoomIn, "typed +", "typed =");
    bind(this::zoomOut, "typed -");
    bind(this::showAll, "typed 0");
    bind(() -> move(-SMALL_STEP), "LEFT", "KP_LEFT");
    bind(() -> move(SMALL_STEP), "RIGHT", "KP_RIGHT");
    bind(() -> show(window.moved(window.startNanos() - window.fromNanos())), "HOME");
    bind(() -> show(window.moved(window.endNanos() - window.toNanos())), "END");
    bind(() -> step(-1), "typed ,");
    bind(() -> step(1), "typed .");
    bind(() -> stepToFault(-1), "typed <");
    bind(() -> stepToFault(1), "typed >");
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
          private int draggedFrom;
          private transient TimeWindow before = window;

          @Override
          public void mousePressed(MouseEvent e) {
            requestFocusInWindow(FocusEvent.Cause.MOUSE_EVENT);
            draggedFrom = e.getX();
            before = window;
          }

          @Override
          public void mouseDragged(MouseEvent e) {
            show(before.moved(Math.round((draggedFrom - e.getX()) * nanosPerPixel(before))));
          }

          @Override
          public void mouseClicked(MouseEvent e) {
            int there = markAt(e);
            if (there != MarkIndex.NONE) {
              choose(there);
            }
          }

          @Override
          public void mouseMoved(MouseEvent e) {
            point(markAt(e));
          }

          @Override
          public void mouseExited(MouseEvent e) {
            point(MarkIndex.NONE);
          }

          @Override
          public void mouseWheelMoved(MouseWheelEvent e) {
            show(window.zoomed(Math.pow(ZOOM, e.getPreciseWheelRotation()), nanosAt(e.getX())));
          }
        };
    addMouseListener(mouse);
    addMouseMotionListener(mouse);
    addMouseWheelListener(mouse);
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
      int shown = place == MarkIndex.NONE ? chosen : place;
      say(shown == MarkIndex.NONE ? "" : words.apply(shown));
    }
  }

  private int markAt(MouseEvent e) {
    long tolerance = Math.round(look.px(6) * nanosPerPixel(window));
    boolean prompts = e.getY() < top() + lanes() / 2.0;
    return index.nearest(nanosAt(e.getX()), tolerance, prompts);
  }

  private double nanosPerPixel(TimeWindow of) {
    return of.lengthNanos() / (double) Math.max(1, getWidth() - 2 * look.px(MARGIN));
  }

  private long nanosAt(int x) {
    long at = window.fromNanos() + Math.round((x - look.px(MARGIN)) * nanosPerPixel(window));
    return Math.max(window.fromNanos(), Math.min(at, window.toNanos()));
  }

  private int top() {
    return parts.isEmpty() ? 0 : look.px(20);
  }

  private int lanes() {
    return getHeight() - top() - look.px(22);
  }

  @Override
  public Dimension getPreferredSize() {
    return isPreferredSizeSet()
        ? super.getPreferredSize()
        : new Dimension(look.px(372), look.px(parts.isEmpty() ? 130 : 150));
  }

  @Override
  protected void draw(Graphics2D g2, Palette palette) {
    double arc = look.px(20);
    RoundRectangle2D ground = new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), arc, arc);
    g2.setColor(palette.card());
    g2.fill(ground);
    paintParts(g2, palette);
    paintTicks(g2, palette);
    Graphics2D in = (Graphics2D) g2.create(0, top(), getWidth(), lanes());
    try {
      RibbonPainter painter =
          new RibbonPainter(
              look,
              new ScreenCanvas(in, look),
              new Rectangle2D.Double(0, 0, getWidth(), lanes()),
              window.fromNanos(),
              window.toNanos());
      long from = nanosBeyond(-1);
      painter.paint(index.around(from, nanosBeyond(1)), index.foundBefore(from));
      ring(in, painter, pointed, look.px(1), palette.softText());
      ring(in, painter, chosen, look.px(2.5), palette.text());
    } finally {
      in.dispose();
    }
    if (isFocusOwner()) {
      double line = look.px(2);
      g2.setColor(palette.tide());
      g2.setStroke(look.stroke(2));
      g2.draw(
          new RoundRectangle2D.Double(
              line / 2, line / 2, getWidth() - line, getHeight() - line, arc, arc));
    }
  }

  /** A little outside the window, where a mark would still reach into the margin. */
  private long nanosBeyond(int side) {
    long margin = Math.round(2 * look.px(MARGIN) * nanosPerPixel(window));
    return side < 0 ? window.fromNanos() - margin : window.toNanos() + margin;
  }

  private void ring(Graphics2D g2, RibbonPainter painter, int place, double line, Color colour) {
    if (place == MarkIndex.NONE) {
      return;
    }
    Rectangle2D at = painter.place(index.marks().get(place));
    double gap = look.px(3);
    g2.setColor(colour);
    g2.setStroke(look.stroke(line / look.scale()));
    g2.draw(
        new RoundRectangle2D.Double(
            at.getX() - gap,
            Math.max(line, at.getY() - gap),
            at.getWidth() + 2 * gap,
            Math.min(lanes() - 2 * line, at.getHeight() + 2 * gap),
            gap * 2,
            gap * 2));
  }

  private double x(long nanos) {
    return look.px(MARGIN) + (nanos - window.fromNanos()) / nanosPerPixel(window);
  }

  private void paintParts(Graphics2D g2, Palette palette) {
    g2.setFont(look.font(11));
    boolean second = false;
    for (PartSpan part : parts) {
      double left = Math.max(look.px(MARGIN), x(part.fromNanos()));
      double right = Math.min(getWidth() - look.px(MARGIN), x(part.toNanos()));
      if (right > left) {
        Rectangle2D bar = new Rectangle2D.Double(left, look.px(5), right - left, look.px(16));
        g2.setColor(second ? palette.mist() : palette.line());
        g2.fill(bar);
        g2.setColor(palette.text());
        double room = right - left - look.px(8);
        String text = partText(part, g2.getFontMetrics(), room);
        g2.drawString(text, (float) (left + look.px(4)), look.px(17));
      }
      second = !second;
    }
  }

  /** All of it or its letter, never half a word; nothing where not even that has room. */
  static String partText(PartSpan part, FontMetrics metrics, double room) {
    if (metrics.stringWidth(part.full()) <= room) {
      return part.full();
    }
    return metrics.stringWidth(part.letter()) <= room ? part.letter() : "";
  }

  private void paintTicks(Graphics2D g2, Palette palette) {
    double least = look.px(58) * nanosPerPixel(window);
    long step = TICKS[TICKS.length - 1] * SECOND;
    for (int i = TICKS.length - 1; i >= 0 && TICKS[i] * SECOND >= least; i--) {
      step = TICKS[i] * SECOND;
    }
    g2.setFont(look.font(11));
    g2.setStroke(look.stroke(1));
    int foot = top() + lanes();
    for (long at = -Math.floorDiv(-window.fromNanos(), step) * step;
        at <= window.toNanos();
        at += step) {
      double x = x(at);
      g2.setColor(palette.softText());
      g2.draw(new Line2D.Double(x, foot, x, foot + look.px(4)));
      String text = clock(at);
      double wide = g2.getFontMetrics().stringWidth(text);
      double left = Math.max(look.px(6), Math.min(x - wide / 2, getWidth() - wide - look.px(6)));
      g2.drawString(text, (float) left, foot + look.px(16));
    }
  }
}
