package squeezewell.desktop.input;

import java.awt.KeyEventDispatcher;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import javax.swing.Timer;

/**
 * A key that was held to leave a screen and is held on: its repeats must not move the page that
 * follows. It is swallowed until it has been quiet for a while.
 */
final class HeldOn implements KeyEventDispatcher {
  /** Longer than the pause of a slow keyboard before its first repeat (our own choice). */
  private static final int QUIET_MILLIS = 700;

  private final int key;
  private final Timer quiet = new Timer(QUIET_MILLIS, e -> end());

  HeldOn(int key) {
    this.key = key;
    quiet.setRepeats(false);
  }

  void swallow() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().addKeyEventDispatcher(this);
    quiet.start();
  }

  private void end() {
    KeyboardFocusManager.getCurrentKeyboardFocusManager().removeKeyEventDispatcher(this);
  }

  @Override
  public boolean dispatchKeyEvent(KeyEvent e) {
    boolean ours = e.getKeyCode() == key;
    if (ours) {
      quiet.restart();
    }
    return ours;
  }
}
