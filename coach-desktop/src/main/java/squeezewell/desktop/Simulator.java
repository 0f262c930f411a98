package squeezewell.desktop;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import javax.swing.JDialog;
import javax.swing.JOptionPane;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import squeezewell.files.HomeFolder;
import squeezewell.files.SettingsFile;
import squeezewell.live.SmallHeap;

/** Opens the window of the simulated phone. */
public final class Simulator {
  private static final int SHOWN_MILLIS = 30_000;

  private Simulator() {}

  /**
   * Opens the simulator and returns; the program ends when its last window closes.
   *
   * @param home where practices and settings are kept
   * @return false if there is no display that can be reached; then nothing was opened
   */
  public static boolean open(HomeFolder home) {
    if (!isThereADisplay()) {
      return false;
    }
    SettingsFile.Loaded loaded = new SettingsFile(home.settingsFile()).load();
    SmallHeap.ask();
    Thread.setDefaultUncaughtExceptionHandler(Simulator::report);
    SwingUtilities.invokeLater(
        () -> {
          MainWindow window = new MainWindow(home, loaded.settings());
          window.open();
          if (!loaded.problem().isEmpty()) {
            window.sheets().tell("Settings", loaded.problem());
          }
        });
    return true;
  }

  /** A display that is named need not be there. */
  private static boolean isThereADisplay() {
    try {
      return GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices().length > 0;
    } catch (HeadlessException | AWTError | NoClassDefFoundError e) {
      return false;
    }
  }

  /**
   * Shows why the window could not open to a person who started the program without a terminal.
   * Goes away by itself, so that a script never waits for it for long. Does nothing without a
   * display.
   *
   * @param why in words
   */
  public static void sayThatItDidNotOpen(String why) {
    if (GraphicsEnvironment.isHeadless()) {
      return;
    }
    JTextArea text = new JTextArea(why.trim(), 5, 46);
    text.setLineWrap(true);
    text.setWrapStyleWord(true);
    text.setEditable(false);
    JOptionPane pane = new JOptionPane(text, JOptionPane.ERROR_MESSAGE);
    JDialog dialog = pane.createDialog("Squeezewell can't open");
    Timer end = new Timer(SHOWN_MILLIS, e -> dialog.dispose());
    end.start();
    dialog.setVisible(true);
    end.stop();
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
