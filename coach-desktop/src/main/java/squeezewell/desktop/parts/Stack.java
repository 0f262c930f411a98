package squeezewell.desktop.parts;

import java.awt.Color;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Insets;
import java.awt.KeyboardFocusManager;
import java.awt.LayoutManager2;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.JViewport;
import javax.swing.Scrollable;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;

/**
 * Parts below each other, all as wide as the stack. Text wraps at whatever width there is, so that
 * one screen serves a phone and a tablet. Sizes are in density-independent pixels.
 */
public class Stack extends JPanel implements Fluid, Scrollable {
  private static final long serialVersionUID = 1L;

  private static final int USUAL_WIDTH = 412;

  /** What a stack is painted on. */
  public enum Ground {
    NONE,
    CARD,
    MIST,
    DEEP
  }

  final transient Look look;
  private final Ground ground;
  private int gap;

  public Stack(Look look) {
    this(look, Ground.NONE, 0);
  }

  /**
   * An empty stack.
   *
   * @param padding on all sides
   */
  public Stack(Look look, Ground ground, int padding) {
    this.look = look;
    this.ground = ground;
    setOpaque(false);
    setLayout(new Below());
    pad(padding, padding, padding, padding);
  }

  /** Leaves room around its parts. */
  public final Stack pad(int top, int left, int bottom, int right) {
    setBorder(
        BorderFactory.createEmptyBorder(
            look.px(top), look.px(left), look.px(bottom), look.px(right)));
    return this;
  }

  /** Leaves room above the next part. */
  public final Stack gap(int size) {
    gap += size;
    return this;
  }

  /** Adds a part. */
  public final Stack put(Component part) {
    add(part, Integer.valueOf(look.px(gap)));
    gap = 0;
    return this;
  }

  /** Adds text of a size in the first colour of its ground. */
  public final Stack text(String text, int size) {
    return put(Texts.flowing(text, look.font(size), colour()));
  }

  /** Adds bold text of a size. */
  public final Stack bold(String text, int size) {
    return put(Texts.flowing(text, look.bold(size), colour()));
  }

  /** Adds secondary text of a size. */
  public final Stack soft(String text, int size) {
    Palette palette = look.palette();
    return put(
        Texts.flowing(
            text,
            look.font(size),
            ground == Ground.DEEP ? palette.softOnDeep() : palette.softText()));
  }

  private Color colour() {
    Palette palette = look.palette();
    return switch (ground) {
      case DEEP -> palette.onDeep();
      case MIST -> palette.onMist();
      default -> palette.text();
    };
  }

  /** Adds secondary texts, a paragraph each. */
  public final Stack softs(List<String> texts, int size, int between) {
    for (String text : texts) {
      soft(text, size).gap(between);
    }
    return this;
  }

  /** Adds a field to type in, with its name above it. */
  public final Stack field(String name, JTextField field) {
    JLabel label = Texts.label(name, look.font(14), look.palette().softText());
    label.setLabelFor(field);
    field.setFont(look.font(18));
    field.setPreferredSize(new Dimension(look.px(200), look.px(52)));
    return put(label).gap(4).put(field);
  }

  /** Adds a small heading that says what follows is about. */
  public final Stack eyebrow(String text) {
    return put(Texts.flowing(text, look.bold(14), look.palette().deep()));
  }

  /**
   * Takes everything out and puts other things in. Who was on one of its parts by the keyboard goes
   * on from the new part of the same name.
   */
  public final void refill(Runnable filling) {
    Component focused = KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner();
    boolean inside = focused != null && SwingUtilities.isDescendingFrom(focused, this);
    removeAll();
    gap = 0;
    filling.run();
    revalidate();
    repaint();
    if (inside && focused.getName() != null) {
      named(this, focused.getName()).ifPresent(Component::requestFocusInWindow);
    }
  }

  /** The part of a name within another. */
  public static Optional<Component> named(Container in, String name) {
    for (Component part : in.getComponents()) {
      if (name.equals(part.getName())) {
        return Optional.of(part);
      }
      Optional<Component> found =
          part instanceof Container inner ? named(inner, name) : Optional.empty();
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  @Override
  protected void paintComponent(Graphics g) {
    if (ground == Ground.NONE) {
      return;
    }
    Palette palette = look.palette();
    Graphics2D g2 = Look.smooth(g);
    double arc = look.px(ground == Ground.DEEP ? 40 : 30);
    g2.setColor(
        switch (ground) {
          case DEEP -> palette.deep();
          case MIST -> palette.mist();
          default -> palette.card();
        });
    g2.fill(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), arc, arc));
    g2.dispose();
  }

  @Override
  public int heightAt(int width) {
    return ((Below) getLayout()).height(this, width);
  }

  /** A page is as wide as the window it is seen through, even before it has been laid out. */
  private int widthToBe() {
    int width = getParent() instanceof JViewport port ? port.getWidth() : getWidth();
    return width > 0 ? width : look.px(USUAL_WIDTH);
  }

  @Override
  public Dimension getPreferredScrollableViewportSize() {
    return getPreferredSize();
  }

  @Override
  public int getScrollableUnitIncrement(Rectangle seen, int orientation, int direction) {
    return look.px(32);
  }

  @Override
  public int getScrollableBlockIncrement(Rectangle seen, int orientation, int direction) {
    return Math.max(look.px(32), seen.height - look.px(48));
  }

  @Override
  public boolean getScrollableTracksViewportWidth() {
    return true;
  }

  @Override
  public boolean getScrollableTracksViewportHeight() {
    return getParent() != null && getPreferredSize().height < getParent().getHeight();
  }

  /** Lays parts out below each other, each with room above it. */
  private static final class Below implements LayoutManager2 {
    private final Map<Component, Integer> above = new WeakHashMap<>();

    @Override
    public void addLayoutComponent(Component part, Object constraint) {
      above.put(part, constraint instanceof Integer room ? room : 0);
    }

    @Override
    public void addLayoutComponent(String name, Component part) {
      above.put(part, 0);
    }

    @Override
    public void removeLayoutComponent(Component part) {
      above.remove(part);
    }

    private int height(Container in, int width) {
      Insets around = in.getInsets();
      int inner = width - around.left - around.right;
      int height = around.top + around.bottom;
      boolean first = true;
      for (Component part : in.getComponents()) {
        if (part.isVisible()) {
          height += (first ? 0 : above.getOrDefault(part, 0)) + Fluid.heightOf(part, inner);
          first = false;
        }
      }
      return height;
    }

    @Override
    public Dimension preferredLayoutSize(Container in) {
      int width = ((Stack) in).widthToBe();
      return new Dimension(width, height(in, width));
    }

    @Override
    public Dimension minimumLayoutSize(Container in) {
      return new Dimension(0, 0);
    }

    @Override
    public void layoutContainer(Container in) {
      Insets around = in.getInsets();
      int inner = in.getWidth() - around.left - around.right;
      int y = around.top;
      boolean first = true;
      for (Component part : in.getComponents()) {
        if (part.isVisible()) {
          y += first ? 0 : above.getOrDefault(part, 0);
          int height = Fluid.heightOf(part, inner);
          part.setBounds(around.left, y, inner, height);
          y += height;
          first = false;
        }
      }
    }

    @Override
    public Dimension maximumLayoutSize(Container in) {
      return new Dimension(Integer.MAX_VALUE, Integer.MAX_VALUE);
    }

    @Override
    public float getLayoutAlignmentX(Container in) {
      return 0;
    }

    @Override
    public float getLayoutAlignmentY(Container in) {
      return 0;
    }

    @Override
    public void invalidateLayout(Container in) {
      // Heights are worked out anew each time.
    }
  }
}
