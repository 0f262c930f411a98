package squeezewell.desktop.parts;

import java.awt.Component;
import java.util.List;
import javax.swing.Box;
import javax.swing.BoxLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;
import squeezewell.desktop.look.Look;

/** Parts and texts below each other. Sizes are in density-independent pixels. */
public class Column extends JPanel {
  private static final long serialVersionUID = 1L;

  private final transient Look look;
  private final int textWidth;

  /**
   * An empty column.
   *
   * @param textWidth where its texts wrap, in device pixels
   */
  Column(Look look, int textWidth) {
    this.look = look;
    this.textWidth = textWidth;
    setLayout(new BoxLayout(this, BoxLayout.Y_AXIS));
    setOpaque(false);
    setAlignmentX(Component.LEFT_ALIGNMENT);
  }

  /** Adds a part. */
  public final Column put(Component part) {
    add(part);
    return this;
  }

  /** Adds a part with room below it. */
  public final Column put(Component part, int below) {
    add(part);
    return gap(below);
  }

  /** Adds room. */
  public final Column gap(int size) {
    JComponent gap = (JComponent) Box.createVerticalStrut(look.px(size));
    gap.setAlignmentX(Component.LEFT_ALIGNMENT);
    add(gap);
    return this;
  }

  /** Adds text of a size. */
  public final Column plain(String text, int size) {
    return put(Texts.text(text, look.font(size), look.palette().text(), textWidth));
  }

  /** Adds bold text of a size. */
  public final Column bold(String text, int size) {
    return put(Texts.text(text, look.bold(size), look.palette().text(), textWidth));
  }

  /** Adds secondary text of a size. */
  public final Column soft(String text, int size) {
    return put(Texts.text(text, look.font(size), look.palette().softText(), textWidth));
  }

  /** Adds secondary text of the usual size. */
  public final Column note(String text) {
    return soft(text, 13);
  }

  /** Adds secondary texts, each with room below it. */
  public final Column notes(List<String> texts, int below) {
    texts.forEach(text -> note(text).gap(below));
    return this;
  }

  /** Adds secondary texts, each with room above it. */
  public final Column notes(int above, List<String> texts) {
    texts.forEach(text -> gap(above).note(text));
    return this;
  }

  /** Adds the heading of a screen, with room below it. */
  public final Column heading(String text, int below) {
    return bold(text, 23).gap(below);
  }

  /** Adds the heading of a part of a screen, with room below it. */
  public final Column subheading(String text, int below) {
    return bold(text, 15).gap(below);
  }

  /** Takes everything out and puts other things in. */
  public final void refill(Runnable filling) {
    removeAll();
    filling.run();
    revalidate();
    repaint();
  }
}
