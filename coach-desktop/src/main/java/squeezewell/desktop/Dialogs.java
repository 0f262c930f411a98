package squeezewell.desktop;

import java.awt.Component;
import javax.swing.JOptionPane;

/** What is said or asked in a small window of its own. */
final class Dialogs {
  private Dialogs() {}

  static void tell(Component over, String title, String text) {
    JOptionPane.showMessageDialog(over, text, title, JOptionPane.WARNING_MESSAGE);
  }

  /** Asks whether to leave; staying is what Enter and Escape do. */
  static boolean mayGo(Component over, String text, String title) {
    Object[] choices = {"Leave", "Stay"};
    return JOptionPane.showOptionDialog(
            over,
            text,
            title,
            JOptionPane.YES_NO_OPTION,
            JOptionPane.QUESTION_MESSAGE,
            null,
            choices,
            choices[1])
        == 0;
  }
}
