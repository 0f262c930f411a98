package squeezewell.desktop.screens.live;

import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GridLayout;
import java.awt.event.ActionListener;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.look.Sign;
import squeezewell.desktop.parts.DrawnButton;
import squeezewell.desktop.parts.PushButton;

/** What slides over column and ribbon, never over pad and actions: what changed, or more. */
final class LivePanel extends JPanel {
  private static final long serialVersionUID = 1L;

  private final transient Look look;
  private final String title;
  private final PushButton close;
  private final JPanel grid;
  private final JScrollPane scroll;
  private final int mostColumns;
  private final List<LiveAction> tiles = new ArrayList<>();

  LivePanel(Look look, String title, int columns, Runnable onClose) {
    super(null);
    // A choice must stay whole beside the others; a longer list scrolls.
    this.look = new Look(look.palette(), Math.min(look.scale(), 1.4));
    this.title = title;
    mostColumns = columns;
    setOpaque(false);
    setFocusable(true);
    getAccessibleContext().setAccessibleName(title);
    close = PushButton.sign(this.look, Sign.CLOSE, Faces.say("action.close"), onClose);
    add(close);
    grid = new JPanel(new GridLayout(0, columns, 8, 8));
    grid.setOpaque(false);
    scroll = new JScrollPane(grid);
    scroll.setBorder(BorderFactory.createEmptyBorder());
    scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    scroll.setOpaque(false);
    scroll.getViewport().setOpaque(false);
    add(scroll);
    // What lies below is not pressed through it.
    addMouseListener(new MouseAdapter() {});
  }

  /** Adds a choice. */
  LiveAction tile(Sign sign, String label, String key, String second, ActionListener chosen) {
    LiveAction tile = new LiveAction(this.look, sign, label, key, second).asTile(mostColumns == 1);
    tile.addActionListener(chosen);
    tiles.add(tile);
    grid.add(tile);
    return tile;
  }

  /** Adds something else. */
  void also(Component part) {
    grid.add(part);
  }

  List<LiveAction> tiles() {
    return List.copyOf(tiles);
  }

  @Override
  public void doLayout() {
    int side = 16;
    int bar = Math.min(look.px(48), Math.max(48, getHeight() / 6));
    Dimension size = close.getPreferredSize();
    close.setBounds(getWidth() - side - size.width + 8, 4, size.width, bar);
    int wide = Math.min(getWidth() - 2 * side, 760);
    boolean narrow = mostColumns > 1 && wide / mostColumns < look.px(150);
    ((GridLayout) grid.getLayout()).setColumns(narrow ? 1 : mostColumns);
    tiles.forEach(tile -> tile.show(look.palette(), look.scale(), false, columns() == 1));
    int rows = Math.max(1, (grid.getComponentCount() + columns() - 1) / columns());
    int room = Math.max(0, getHeight() - bar - 16);
    int least = rows * (Math.max(48, look.px(56)) + 8) - 8;
    int high = Math.max(least, Math.min(room, rows * look.px(96)));
    grid.setPreferredSize(
        new Dimension(
            high > room ? wide - scroll.getVerticalScrollBar().getPreferredSize().width - 4 : wide,
            high));
    scroll.setBounds(side, bar + 6, wide, Math.min(high, room));
    scroll.doLayout();
  }

  private int columns() {
    return ((GridLayout) grid.getLayout()).getColumns();
  }

  @Override
  protected void paintComponent(Graphics g) {
    Graphics2D g2 = Look.smooth(g);
    Palette palette = look.palette();
    g2.setColor(palette.card());
    g2.fill(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight() + 40.0, 40, 40));
    Font font = Look.fitted(g2, look.bold(22), title, getWidth() - 90);
    FontMetrics metrics = g2.getFontMetrics(font);
    g2.setFont(font);
    g2.setColor(palette.text());
    g2.drawString(title, 16, close.getY() + (close.getHeight() + metrics.getAscent()) / 2 - 2);
    g2.dispose();
  }

  /** The button that ends a practice when it is held; it fills meanwhile. */
  static final class Finish extends DrawnButton {
    private static final long serialVersionUID = 1L;

    private final long holdNanos;
    private long since;
    private boolean held;
    private boolean tooShort;

    /** Takes when it is pressed and let go, as an event tells the time. */
    interface Holding {
      void pressed(long whenMillis);

      void released(long whenMillis);
    }

    Finish(Look look, long holdNanos, Holding holding) {
      super(look, Faces.say("more.finish"));
      this.holdNanos = holdNanos;
      getAccessibleContext().setAccessibleDescription(Faces.say("key", "End"));
      addMouseListener(
          new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
              held = true;
              tooShort = false;
              since = System.nanoTime();
              holding.pressed(e.getWhen());
            }

            @Override
            public void mouseReleased(MouseEvent e) {
              held = false;
              tooShort = true;
              holding.released(e.getWhen());
              repaint();
            }
          });
    }

    /** A frame later. */
    void frame() {
      if (held) {
        repaint();
      }
    }

    @Override
    protected void draw(Graphics2D g2, Palette palette) {
      RoundRectangle2D shape = outline(2.5, 32);
      g2.setColor(palette.card());
      g2.fill(shape);
      if (held) {
        double share = Math.min(1, (System.nanoTime() - since) / (double) holdNanos);
        g2.clip(shape);
        g2.setColor(palette.plumMist());
        g2.fillRect(0, 0, (int) (getWidth() * share), getHeight());
        g2.setClip(null);
      }
      Color ink = palette.plum();
      g2.setColor(isFocusOwner() ? palette.text() : ink);
      g2.setStroke(new java.awt.BasicStroke(2.5f));
      g2.draw(shape);
      double side = Math.min(look.px(26), getHeight() * 0.5);
      Sign.STOP.paint(g2, look.px(14), (getHeight() - side) / 2, side, ink);
      int left = (int) (look.px(26) + side);
      int room = getWidth() - left - look.px(52);
      Font font = Look.fitted(g2, look.bold(20), getText(), room);
      String under = Faces.say(tooShort ? "more.finish.short" : "more.finish.hint");
      Font small = Look.fitted(g2, look.font(14), under, room);
      int high = g2.getFontMetrics(font).getHeight();
      int underHigh = g2.getFontMetrics(small).getHeight();
      boolean two = high + underHigh <= getHeight() - 4;
      double y =
          (getHeight() - high - (two ? underHigh : 0)) / 2.0 + g2.getFontMetrics(font).getAscent();
      g2.setColor(ink);
      g2.setFont(font);
      g2.drawString(getText(), left, (float) y);
      g2.setFont(small);
      if (two) {
        g2.drawString(under, left, (float) (y + underHigh));
      }
      int keyWidth = g2.getFontMetrics(look.font(14)).stringWidth("End");
      g2.setFont(look.font(14));
      g2.drawString("End", getWidth() - keyWidth - look.px(12), (float) y);
    }
  }
}
