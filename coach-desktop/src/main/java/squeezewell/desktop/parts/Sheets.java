package squeezewell.desktop.parts;

import java.awt.AWTEvent;
import java.awt.Color;
import java.awt.Component;
import java.awt.EventQueue;
import java.awt.FocusTraversalPolicy;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.KeyboardFocusManager;
import java.awt.Rectangle;
import java.awt.SecondaryLoop;
import java.awt.Toolkit;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.atomic.AtomicBoolean;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JLayeredPane;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.KeyStroke;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Sign;

/**
 * A screen, and sheets that come up from its foot for choices and questions. What lies below a
 * sheet can't be reached while it is open; Escape, the close sign and a press beside it close it.
 * Used on the event thread.
 */
public final class Sheets extends JLayeredPane {
  private static final long serialVersionUID = 1L;

  /** The widest sheet, in density-independent pixels. */
  private static final int WIDEST = 560;

  private final JPanel base = new JPanel(new java.awt.BorderLayout());
  private final transient Deque<Overlay> open = new ArrayDeque<>();
  private transient Look look;

  public Sheets(Look look) {
    this.look = look;
    base.setOpaque(true);
    add(base, DEFAULT_LAYER);
  }

  /** Another look for sheets to come. */
  public void look(Look newLook) {
    look = newLook;
  }

  /** Shows a screen in place of the one before; what was open over it goes. */
  public void show(JComponent screen) {
    while (!open.isEmpty()) {
      open.peek().close();
    }
    base.removeAll();
    base.setBackground(look.palette().ground());
    base.add(screen, java.awt.BorderLayout.CENTER);
    revalidate();
    repaint();
  }

  @Override
  public void doLayout() {
    for (Component part : getComponents()) {
      part.setBounds(0, 0, getWidth(), getHeight());
    }
  }

  @Override
  public java.awt.Dimension getPreferredSize() {
    return base.getPreferredSize();
  }

  /** Closes a sheet. */
  public interface Sheet {
    /** Closes it; does nothing once it is closed. */
    void close();
  }

  /**
   * Opens a sheet.
   *
   * @param title at its top
   * @param content what is in it
   * @param onClose told once when it has closed, however that came
   */
  public Sheet open(String title, Stack content, Runnable onClose) {
    Overlay overlay = new Overlay(title, content, onClose);
    open.push(overlay);
    add(overlay, Integer.valueOf(MODAL_LAYER + open.size()));
    revalidate();
    repaint();
    overlay.validate();
    overlay.takeFocus();
    return overlay;
  }

  /** Says something; goes on when it has been read. */
  public void tell(String title, String text) {
    wait(title, text, "OK", "");
  }

  /**
   * Asks a question and waits for the answer; the windows go on meanwhile.
   *
   * @param safe what nothing is lost by; it has the focus, and Escape gives it
   * @param other the other answer
   * @return whether the other answer was given
   */
  public boolean ask(String title, String text, String safe, String other) {
    return wait(title, text, safe, other);
  }

  private boolean wait(String title, String text, String safe, String other) {
    AtomicBoolean answer = new AtomicBoolean();
    EventQueue queue = Toolkit.getDefaultToolkit().getSystemEventQueue();
    SecondaryLoop loop = queue.createSecondaryLoop();
    Stack content = new Stack(look);
    content.text(text, 16);
    Sheet[] sheet = new Sheet[1];
    content
        .gap(24)
        .put(PushButton.of(look, PushButton.Kind.FILLED, safe, () -> sheet[0].close()).high(56));
    if (!other.isEmpty()) {
      Runnable go =
          () -> {
            answer.set(true);
            sheet[0].close();
          };
      content.gap(8).put(PushButton.of(look, PushButton.Kind.OUTLINED, other, go).high(56));
    }
    sheet[0] = open(title, content, loop::exit);
    loop.enter();
    return answer.get();
  }

  /** What lies over the screen while a sheet is open. */
  private final class Overlay extends JPanel implements Sheet {
    private static final long serialVersionUID = 1L;

    private final Stack sheet;
    private final JScrollPane scroll;
    private final transient Runnable onClose;
    private final transient Component before =
        KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
    private boolean closed;

    Overlay(String title, Stack content, Runnable onClose) {
      super(null);
      this.onClose = onClose;
      setOpaque(false);
      setFocusCycleRoot(true);
      getAccessibleContext().setAccessibleName(title);
      PushButton close = PushButton.sign(look, Sign.CLOSE, "Close", this::close);
      sheet =
          new Stack(look)
              .pad(24, 16, 16, 16)
              .put(Lines.with(look, 8, Texts.flowing(title, look.bold(24), text()), close));
      sheet.gap(8).put(content);
      scroll =
          new JScrollPane(sheet) {
            private static final long serialVersionUID = 1L;

            /** A sheet grows with what is in it. */
            @Override
            public boolean isValidateRoot() {
              return false;
            }
          };
      scroll.setBorder(BorderFactory.createEmptyBorder());
      scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
      scroll.setOpaque(false);
      scroll.getViewport().setOpaque(false);
      add(scroll);
      registerKeyboardAction(
          e -> close(),
          KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
          JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
      addMouseListener(
          new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
              if (!place().contains(e.getPoint())) {
                close();
              }
            }
          });
      enableEvents(AWTEvent.MOUSE_EVENT_MASK | AWTEvent.MOUSE_WHEEL_EVENT_MASK);
    }

    private Color text() {
      return look.palette().text();
    }

    private Rectangle place() {
      int width = Math.min(getWidth(), look.px(WIDEST));
      int height = Math.min(sheet.heightAt(width), getHeight() - look.px(24));
      return new Rectangle((getWidth() - width) / 2, getHeight() - height, width, height);
    }

    @Override
    public void doLayout() {
      scroll.setBounds(place());
    }

    @Override
    protected void paintComponent(Graphics g) {
      Graphics2D g2 = Look.smooth(g);
      Color dim = look.palette().dark() ? Color.BLACK : text();
      g2.setColor(new Color(dim.getRed(), dim.getGreen(), dim.getBlue(), 140));
      g2.fillRect(0, 0, getWidth(), getHeight());
      Rectangle place = place();
      double arc = look.px(48);
      g2.setColor(look.palette().card());
      g2.fill(
          new RoundRectangle2D.Double(place.x, place.y, place.width, place.height + arc, arc, arc));
      g2.setColor(look.palette().edge());
      g2.fillRoundRect(
          place.x + place.width / 2 - look.px(20),
          place.y + look.px(10),
          look.px(40),
          look.px(4),
          look.px(4),
          look.px(4));
      g2.dispose();
    }

    /** The close sign comes first in order; the keyboard begins after it. */
    private void takeFocus() {
      FocusTraversalPolicy order = getFocusTraversalPolicy();
      Component first = order.getFirstComponent(this);
      Component after = first == null ? null : order.getComponentAfter(this, first);
      (after == null ? this : after).requestFocusInWindow();
    }

    @Override
    public void close() {
      if (closed) {
        return;
      }
      closed = true;
      open.remove(this);
      Sheets.this.remove(this);
      Sheets.this.revalidate();
      Sheets.this.repaint();
      if (before != null) {
        before.requestFocusInWindow();
      }
      onClose.run();
    }
  }
}
