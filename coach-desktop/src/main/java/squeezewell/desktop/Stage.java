package squeezewell.desktop;

import java.util.function.BooleanSupplier;
import javax.swing.JComponent;
import javax.swing.JFrame;
import squeezewell.desktop.parts.Navigation;
import squeezewell.desktop.parts.Sheets;
import squeezewell.desktop.parts.Widgets;
import squeezewell.files.Settings;

/** Where one screen at a time is shown. Used on the event thread. */
interface Stage {
  /** Makes parts in the look that is set. */
  Widgets kit();

  /** What dialogues belong to. */
  JFrame window();

  /** The same in the look that fits the window; sizes are in density-independent pixels. */
  Widgets fittedKit(int leastWidth, int leastHeight);

  /** Where sheets come up for choices and questions. */
  Sheets sheets();

  /** Shows one of the places instead of the screen before. */
  void showPlace(Navigation.Place place, JComponent screen);

  /** Shows a screen instead of the one before. */
  default void showScreen(JComponent screen) {
    showScreen(screen, () -> true);
  }

  /**
   * Shows a screen instead of the one before.
   *
   * @param mayLeave asked when the window is to close while the screen is shown
   */
  void showScreen(JComponent screen, BooleanSupplier mayLeave);

  /** Keeps how to come back to where a person is, for when the look changes. */
  void remember(Runnable again);

  /** Shows anew where a person was. */
  void again();

  /** The settings in force. */
  Settings inForce();

  /** Keeps new settings; the windows follow them. */
  void keep(Settings next);
}
