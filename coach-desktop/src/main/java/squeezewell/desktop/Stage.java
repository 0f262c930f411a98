package squeezewell.desktop;

import javax.swing.JComponent;
import javax.swing.JFrame;
import squeezewell.desktop.parts.Kit;

/** Where one screen at a time is shown. Used on the event thread. */
interface Stage {
  /** Makes parts in the look that is set. */
  Kit kit();

  /** What dialogues belong to. */
  JFrame window();

  /** Shows a screen instead of the one before. */
  void showScreen(JComponent screen);

  /** Keeps how to come back to where a person is, for when the look changes. */
  void remember(Runnable again);

  /** Shows anew where a person was. */
  void again();
}
