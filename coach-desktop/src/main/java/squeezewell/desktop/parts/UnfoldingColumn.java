package squeezewell.desktop.parts;

import java.awt.Graphics;
import java.util.ArrayDeque;
import java.util.Deque;
import javax.swing.SwingUtilities;
import squeezewell.desktop.look.Look;

/**
 * The column of a long page, of which only what is seen first is built at once. The rest follows as
 * soon as that has been painted, so that nobody waits for what lies below the window. Used on the
 * event thread.
 */
public final class UnfoldingColumn extends Column {
  private static final long serialVersionUID = 1L;

  private final int seenHeight;
  private final transient Deque<Runnable> waiting = new ArrayDeque<>();
  private boolean asked;

  /**
   * An empty column.
   *
   * @param seenHeight how much of it is seen at first, in density-independent pixels
   */
  public UnfoldingColumn(Look look, int seenHeight) {
    super(look, look.px(Widgets.CONTENT_WIDTH));
    this.seenHeight = look.px(seenHeight);
  }

  /**
   * Adds a part under the others, at once or once the page has been painted.
   *
   * @param part adds its components to this column
   */
  public void then(Runnable part) {
    if (waiting.isEmpty() && getPreferredSize().height < seenHeight) {
      part.run();
    } else {
      waiting.add(part);
    }
  }

  /** Adds what waits. */
  public void unfold() {
    if (!waiting.isEmpty()) {
      while (!waiting.isEmpty()) {
        waiting.remove().run();
      }
      revalidate();
    }
  }

  @Override
  protected void paintChildren(Graphics g) {
    super.paintChildren(g);
    if (!asked) {
      asked = true;
      SwingUtilities.invokeLater(this::unfold);
    }
  }
}
