package squeezewell.desktop.parts;

import java.awt.Point;
import java.awt.event.FocusEvent;
import javax.swing.JComponent;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import javax.swing.event.AncestorEvent;
import javax.swing.event.AncestorListener;

/** Puts the keyboard where a person expects it when a screen appears. */
public final class Focus implements AncestorListener {
  private final JComponent target;
  private final Runnable then;

  private Focus(JComponent target, Runnable then) {
    this.target = target;
    this.then = then;
  }

  /** Gives a part the keyboard. */
  public static AncestorListener on(JComponent target) {
    return new Focus(target, () -> {});
  }

  /** Gives a part of a page the keyboard, and shows the page from its top. */
  static AncestorListener on(JComponent target, JScrollPane page) {
    return new Focus(
        target,
        () ->
            SwingUtilities.invokeLater(() -> page.getViewport().setViewPosition(new Point(0, 0))));
  }

  /** For a page that is read from its top: the arrow keys scroll it. */
  static AncestorListener onTop(JScrollPane page) {
    JComponent content = (JComponent) page.getViewport().getView();
    content.setFocusable(true);
    return on(content, page);
  }

  @Override
  public void ancestorAdded(AncestorEvent event) {
    // The cause tells a control that nobody moved to it, so that it does not scroll the page.
    target.requestFocusInWindow(FocusEvent.Cause.ACTIVATION);
    then.run();
  }

  @Override
  public void ancestorRemoved(AncestorEvent event) {
    // Nothing to do when the screen goes.
  }

  @Override
  public void ancestorMoved(AncestorEvent event) {
    // Moving changes nothing.
  }
}
