package squeezewell.desktop.parts;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Insets;
import javax.swing.AbstractButton;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import squeezewell.desktop.look.Look;

/**
 * Makes a page that was built for the usual width fit a narrower window: text wraps earlier,
 * controls become narrower, and what no longer fits beside each other goes on in a new line.
 * Pictures keep their width. In a window that is wide enough nothing changes.
 */
final class PageFit {
  /** The usual width of what is narrower now. */
  private static final String USUAL = "squeezewell.usualWidth";

  /** What a control does once its width has changed. */
  private static final String FITTED = "squeezewell.fitted";

  private static final String CARD = "squeezewell.card";

  /** Text gets no narrower than that, in density-independent pixels. */
  private static final int LEAST_TEXT = 100;

  /** A page gets no narrower than that, in density-independent pixels. */
  private static final int LEAST_PAGE = 160;

  private final Look look;
  private final int full;
  private final int available;

  private PageFit(Look look, int available) {
    this.look = look;
    this.full = look.px(Widgets.CONTENT_WIDTH);
    this.available = Math.max(look.px(LEAST_PAGE), Math.min(full, available));
  }

  /** Lets a text or a control become narrower where there is no room for it. */
  static void fits(JComponent part) {
    part.putClientProperty(Texts.FITS, true);
  }

  /** In a narrow window this card ends where the text does, however wide a picture is. */
  static void card(JComponent card) {
    card.putClientProperty(CARD, true);
  }

  /** Runs something each time a control has got another width. */
  static void whenFitted(JComponent part, Runnable act) {
    part.putClientProperty(FITTED, act);
  }

  /** A row whose parts are put into several lines where they do not fit beside each other. */
  static JPanel row(Look look) {
    JPanel row =
        new JPanel() {
          private static final long serialVersionUID = 1L;

          /** One that was set holds for one line only. */
          @Override
          public Dimension getMaximumSize() {
            return getLayout() instanceof RowLayout layout && layout.wraps
                ? getPreferredSize()
                : super.getMaximumSize();
          }
        };
    row.setLayout(new RowLayout(row, look.px(8)));
    return row;
  }

  /**
   * Makes what is on a page fit.
   *
   * @param content of the page, with its margins as its border
   * @param width of the content without its margins, in device pixels
   */
  static void fit(Look look, Container content, int width) {
    PageFit fit = new PageFit(look, width);
    if (fit.fit(content, fit.available)) {
      Container around = content.getParent();
      while (around != null && !(around instanceof JScrollPane)) {
        around.invalidate();
        around = around.getParent();
      }
    }
  }

  /** Tells whether something has changed: what holds it must then forget the sizes it knew. */
  private boolean fit(Container holder, int room) {
    boolean changed = false;
    for (Component part : holder.getComponents()) {
      if (part instanceof JComponent component && !(part instanceof JScrollPane)) {
        changed |= fitOne(component, room);
        Insets insets = component.getInsets();
        changed |= fit(component, room - insets.left - insets.right);
        if (component.getLayout() instanceof RowLayout layout) {
          changed |= layout.fit(available < full ? room : Integer.MAX_VALUE);
        }
      }
    }
    if (changed) {
      holder.invalidate();
    }
    return changed;
  }

  private boolean fitOne(JComponent part, int room) {
    if (part.getClientProperty(CARD) != null) {
      part.setMaximumSize(available < full ? new Dimension(room, Short.MAX_VALUE) : null);
    }
    if (part.getClientProperty(Texts.FITS) == null) {
      return false;
    }
    int now = part.getPreferredSize().width;
    int usual = part.getClientProperty(USUAL) instanceof Integer before ? before : now;
    int width = available < full ? narrowed(part, usual, room) : usual;
    part.putClientProperty(USUAL, width < usual ? usual : null);
    if (width == now) {
      return false;
    }
    if (part instanceof JTextArea area) {
      Texts.wrap(area, width);
    } else {
      Texts.fix(part, new Dimension(width, part.getPreferredSize().height));
      if (part.getClientProperty(FITTED) instanceof Runnable fitted) {
        fitted.run();
      }
    }
    return true;
  }

  /** Beside what stands next to it a wide text keeps its distance from the edge. */
  private int narrowed(JComponent part, int usual, int room) {
    if (part instanceof JTextArea && 2 * usual > full) {
      return Math.max(look.px(LEAST_TEXT), usual - (full - available));
    }
    // A button's words would be cut.
    int least = part instanceof AbstractButton b ? b.getUI().getPreferredSize(b).width : 0;
    return Math.min(usual, Math.max(least, room));
  }

  /** Beside each other, or in several lines. */
  private static final class RowLayout extends BoxLayout {
    private static final long serialVersionUID = 1L;

    private final int gap;
    private int room = Integer.MAX_VALUE;
    private boolean wraps;

    RowLayout(JPanel row, int gap) {
      super(row, BoxLayout.X_AXIS);
      this.gap = gap;
    }

    /** Asks the parts anew; they may have become narrower. */
    boolean fit(int roomNow) {
      Container row = getTarget();
      invalidateLayout(row);
      boolean wrapsNow = super.preferredLayoutSize(row).width > roomNow;
      boolean changed = wrapsNow != wraps || (wraps && roomNow != room);
      wraps = wrapsNow;
      room = roomNow;
      if (changed) {
        row.invalidate();
      }
      return changed;
    }

    @Override
    public Dimension preferredLayoutSize(Container row) {
      return wraps ? lines(row, false) : super.preferredLayoutSize(row);
    }

    @Override
    public Dimension minimumLayoutSize(Container row) {
      return wraps ? lines(row, false) : super.minimumLayoutSize(row);
    }

    @Override
    public void layoutContainer(Container row) {
      if (wraps) {
        lines(row, true);
      } else {
        super.layoutContainer(row);
      }
    }

    /** In lines, as many beside each other as fit. */
    private Dimension lines(Container row, boolean place) {
      Insets insets = row.getInsets();
      int x = 0;
      int y = 0;
      int lineHeight = 0;
      int widest = 0;
      for (Component part : row.getComponents()) {
        if (part.isVisible() && !(part instanceof Box.Filler)) {
          Dimension size = part.getPreferredSize();
          if (x > 0 && x + gap + size.width > room) {
            y += lineHeight + gap;
            x = 0;
            lineHeight = 0;
          }
          x += x > 0 ? gap : 0;
          if (place) {
            part.setBounds(insets.left + x, insets.top + y, size.width, size.height);
          }
          x += size.width;
          lineHeight = Math.max(lineHeight, size.height);
          widest = Math.max(widest, x);
        }
      }
      return new Dimension(
          widest + insets.left + insets.right, y + lineHeight + insets.top + insets.bottom);
    }

    @Override
    public Dimension maximumLayoutSize(Container row) {
      return wraps ? lines(row, false) : super.maximumLayoutSize(row);
    }
  }
}
