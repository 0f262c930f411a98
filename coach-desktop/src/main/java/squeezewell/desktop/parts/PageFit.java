package squeezewell.desktop.parts;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.LayoutManager2;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import squeezewell.desktop.look.Look;

/**
 * Makes a page that was built for the usual width fit a narrower window: text wraps earlier,
 * controls become narrower, and what stands beside each other and no longer fits is put below each
 * other. Pictures keep their width. In a window that is wide enough nothing changes.
 */
final class PageFit {
  /** Width that was asked for, of text and controls. */
  private static final String ASKED = "squeezewell.askedWidth";

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
    this.full = look.px(Kit.CONTENT_WIDTH);
    this.available = Math.max(look.px(LEAST_PAGE), Math.min(full, available));
  }

  /** Remembers the width that a text or a control was asked to have, in device pixels. */
  static void asked(JComponent part, int width) {
    part.putClientProperty(ASKED, width);
  }

  /** In a narrow window this card ends where the text does, however wide a picture is. */
  static void card(JComponent card) {
    card.putClientProperty(CARD, true);
  }

  /** Runs something each time a control has got another width. */
  static void whenFitted(JComponent part, Runnable act) {
    part.putClientProperty(FITTED, act);
  }

  /** A row whose parts are put below each other where they do not fit beside each other. */
  static JPanel row(Look look) {
    JPanel row = new JPanel();
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
    if (!(part.getClientProperty(ASKED) instanceof Integer asked)) {
      return false;
    }
    int width = asked;
    if (available < full) {
      width = part instanceof JTextArea ? textWidth(asked, room) : Math.min(asked, room);
    }
    if (width == part.getPreferredSize().width) {
      return false;
    }
    if (part instanceof JTextArea area) {
      Kit.wrap(area, width);
    } else {
      Kit.fix(part, new Dimension(width, part.getPreferredSize().height));
      if (part.getClientProperty(FITTED) instanceof Runnable fitted) {
        fitted.run();
      }
    }
    return true;
  }

  /** Beside what stands next to it a wide text keeps its distance from the edge. */
  private int textWidth(int asked, int room) {
    return 2 * asked > full
        ? Math.max(look.px(LEAST_TEXT), asked - (full - available))
        : Math.min(asked, room);
  }

  /** Beside each other, or below each other. */
  private static final class RowLayout implements LayoutManager2 {
    private final BoxLayout beside;
    private final int gap;
    private boolean below;

    RowLayout(JPanel row, int gap) {
      this.beside = new BoxLayout(row, BoxLayout.X_AXIS);
      this.gap = gap;
    }

    /** Asks the parts anew; they may have become narrower. */
    boolean fit(int room) {
      Container row = beside.getTarget();
      beside.invalidateLayout(row);
      boolean stacked = beside.preferredLayoutSize(row).width > room;
      boolean changed = stacked != below;
      below = stacked;
      if (changed) {
        row.invalidate();
      }
      return changed;
    }

    @Override
    public Dimension preferredLayoutSize(Container row) {
      return below ? stacked(row, false) : beside.preferredLayoutSize(row);
    }

    @Override
    public Dimension minimumLayoutSize(Container row) {
      return below ? stacked(row, false) : beside.minimumLayoutSize(row);
    }

    @Override
    public void layoutContainer(Container row) {
      if (below) {
        stacked(row, true);
      } else {
        beside.layoutContainer(row);
      }
    }

    private Dimension stacked(Container row, boolean place) {
      Insets insets = row.getInsets();
      int y = insets.top;
      int widest = 0;
      for (Component part : row.getComponents()) {
        Dimension size = part.getPreferredSize();
        if (part.isVisible() && !(part instanceof Box.Filler)) {
          y += y > insets.top ? gap : 0;
          if (place) {
            part.setBounds(insets.left, y, size.width, size.height);
          }
          y += size.height;
          widest = Math.max(widest, size.width);
        }
      }
      return new Dimension(widest + insets.left + insets.right, y + insets.bottom);
    }

    @Override
    public Dimension maximumLayoutSize(Container row) {
      return below ? stacked(row, false) : beside.maximumLayoutSize(row);
    }

    @Override
    public float getLayoutAlignmentX(Container row) {
      return beside.getLayoutAlignmentX(row);
    }

    @Override
    public float getLayoutAlignmentY(Container row) {
      return beside.getLayoutAlignmentY(row);
    }

    @Override
    public void invalidateLayout(Container row) {
      beside.invalidateLayout(row);
    }

    @Override
    public void addLayoutComponent(Component part, Object constraints) {
      // Told apart by their kind.
    }

    @Override
    public void addLayoutComponent(String name, Component part) {
      // Told apart by their kind.
    }

    @Override
    public void removeLayoutComponent(Component part) {
      // Told apart by their kind.
    }
  }
}
