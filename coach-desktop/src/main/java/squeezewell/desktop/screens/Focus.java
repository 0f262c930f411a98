package squeezewell.desktop.screens;

import javax.swing.JComponent;
import javax.swing.event.AncestorEvent;
import javax.swing.event.AncestorListener;

/** Puts the keyboard where a person expects it when a screen appears. */
final class Focus implements AncestorListener {
  private final JComponent target;

  private Focus(JComponent target) {
    this.target = target;
  }

  static AncestorListener on(JComponent target) {
    return new Focus(target);
  }

  @Override
  public void ancestorAdded(AncestorEvent event) {
    target.requestFocusInWindow();
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
