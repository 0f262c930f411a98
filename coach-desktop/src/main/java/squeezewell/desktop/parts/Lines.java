package squeezewell.desktop.parts;

import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.swing.JPanel;
import squeezewell.desktop.look.Look;

/**
 * Parts beside each other, in as many lines as they need. A line that is shared evenly is filled by
 * its parts; else each has the width it wants, and one may take what is left.
 */
public final class Lines extends JPanel implements Fluid {
  private static final long serialVersionUID = 1L;
  private static final int LEAST_REST = 96;

  private final transient Look look;
  private final int gap;
  private final boolean even;
  private transient Component rest;

  private Lines(Look look, int gap, boolean even) {
    this.look = look;
    this.gap = look.px(gap);
    this.even = even;
    setOpaque(false);
    setLayout(new Beside());
  }

  /** Parts of the width they want, with a gap in density-independent pixels. */
  public static Lines of(Look look, int gap, Component... parts) {
    return new Lines(look, gap, false).with(parts);
  }

  /** Parts that share each line evenly. */
  public static Lines even(Look look, int gap, Component... parts) {
    return new Lines(look, gap, true).with(parts);
  }

  /** A part that takes what the others, after it, leave of the line; they go below if need be. */
  public static Lines with(Look look, int gap, Component rest, Component... others) {
    Lines lines = new Lines(look, gap, false);
    lines.rest = rest;
    lines.add(rest);
    return lines.with(others);
  }

  /** A part, and another that takes what it leaves of the line. */
  public static Lines before(Look look, int gap, Component first, Component rest) {
    Lines lines = of(look, gap, first);
    lines.rest = rest;
    return lines.with(rest);
  }

  private Lines with(Component... parts) {
    Arrays.stream(parts).forEach(this::add);
    return this;
  }

  private int wanted(Component part) {
    return part.equals(rest) ? look.px(LEAST_REST) : part.getPreferredSize().width;
  }

  private List<Component> shown() {
    return Arrays.stream(getComponents()).filter(Component::isVisible).toList();
  }

  /** The parts of each line. */
  private List<List<Component>> broken(int width) {
    List<Component> parts = shown();
    List<List<Component>> lines = new ArrayList<>();
    if (even) {
      int widest = parts.stream().mapToInt(this::wanted).max().orElse(1);
      int most = Math.max(1, Math.min(parts.size(), (width + gap) / (widest + gap)));
      int count = most == 0 ? 1 : (parts.size() + most - 1) / most;
      int each = Math.max(1, (parts.size() + Math.max(1, count) - 1) / Math.max(1, count));
      for (int i = 0; i < parts.size(); i += each) {
        lines.add(parts.subList(i, Math.min(parts.size(), i + each)));
      }
      return lines;
    }
    int used = 0;
    for (Component part : parts) {
      int wanted = wanted(part);
      if (lines.isEmpty() || used + gap + wanted > width) {
        lines.add(new ArrayList<>());
        used = -gap;
      }
      lines.get(lines.size() - 1).add(part);
      used += gap + wanted;
    }
    return lines;
  }

  private int[] widths(List<Component> line, int width) {
    int[] widths = new int[line.size()];
    int left = width - gap * (line.size() - 1);
    for (int i = 0; i < widths.length; i++) {
      widths[i] = even ? left / line.size() : Math.min(width, wanted(line.get(i)));
    }
    int at = line.indexOf(rest);
    if (at >= 0) {
      widths[at] += Math.max(0, left - Arrays.stream(widths).sum());
    }
    return widths;
  }

  /** Lays the lines out and tells their height. */
  private int lay(int width, boolean places) {
    int y = 0;
    for (List<Component> line : broken(width)) {
      int[] widths = widths(line, width);
      int[] heights = new int[widths.length];
      for (int i = 0; i < widths.length; i++) {
        heights[i] = Fluid.heightOf(line.get(i), widths[i]);
      }
      int height = Arrays.stream(heights).max().orElse(0);
      int x = 0;
      for (int i = 0; places && i < widths.length; i++) {
        int own = even ? height : heights[i];
        line.get(i).setBounds(x, y + (height - own) / 2, widths[i], own);
        x += widths[i] + gap;
      }
      y += height + gap;
    }
    return Math.max(0, y - gap);
  }

  @Override
  public int heightAt(int width) {
    return lay(width, false);
  }

  private final class Beside implements LayoutManager {
    @Override
    public void addLayoutComponent(String name, Component part) {
      // Parts need no names.
    }

    @Override
    public void removeLayoutComponent(Component part) {
      // Nothing is kept of parts.
    }

    @Override
    public Dimension preferredLayoutSize(Container in) {
      int all = shown().stream().mapToInt(p -> p.getPreferredSize().width + gap).sum() - gap;
      int width = getWidth() > 0 ? getWidth() : Math.max(0, all);
      return new Dimension(Math.max(0, all), lay(Math.max(1, width), false));
    }

    @Override
    public Dimension minimumLayoutSize(Container in) {
      return new Dimension(0, 0);
    }

    @Override
    public void layoutContainer(Container in) {
      lay(getWidth(), true);
    }
  }
}
