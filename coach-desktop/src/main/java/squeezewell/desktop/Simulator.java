package squeezewell.desktop;

import javax.swing.JOptionPane;
import javax.swing.SwingUtilities;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.files.SettingsFile;
import squeezewell.input.BadInputException;
import squeezewell.live.SmallHeap;

/** Opens the window of the simulated phone. */
public final class Simulator {
  private Simulator() {}

  /**
   * Opens the simulator and returns; the program ends when its last window closes.
   *
   * @param home where practices and settings are kept
   * @throws BadInputException if the settings can't be read; they are left as they are
   */
  public static void open(HomeFolder home) throws BadInputException {
    Settings settings = new SettingsFile(home.settingsFile()).read();
    SmallHeap.ask();
    Thread.setDefaultUncaughtExceptionHandler(Simulator::report);
    SwingUtilities.invokeLater(() -> new PhoneWindow(home, settings).open());
  }

  /** A fault on any thread is shown rather than lost in a console that nobody sees. */
  private static void report(Thread thread, Throwable fault) {
    System.getLogger(Simulator.class.getName())
        .log(System.Logger.Level.ERROR, "A fault on the thread " + thread.getName(), fault);
    SwingUtilities.invokeLater(
        () ->
            JOptionPane.showMessageDialog(
                null,
                "Something went wrong: " + fault + "\nWhat was recorded so far is kept.",
                "Squeezewell",
                JOptionPane.ERROR_MESSAGE));
  }
}
