package squeezewell.desktop;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.Toolkit;
import javax.swing.JFrame;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.StationConsole;
import squeezewell.live.LiveStation;

/** The instructor's window. Of the keys of the practice only those that squeeze work in it. */
final class ConsoleWindow extends JFrame {
  private static final long serialVersionUID = 1L;
  private static final int WIDTH = 412;
  private static final int HEIGHT = 892;

  private final transient StationConsole console;

  /**
   * @param beside where the phone is
   * @param onProjector opens or closes the window for the class
   */
  ConsoleWindow(Widgets kit, LiveStation station, Rectangle beside, Runnable onProjector) {
    super("Squeezewell instructor");
    setIconImages(WindowIcon.sizes());
    // The station goes on without it.
    setDefaultCloseOperation(DISPOSE_ON_CLOSE);
    PracticeKeys.leaveOthersAlone(this);
    console = new StationConsole(kit, station, onProjector);
    setContentPane(console.page());
    Dimension screen = Toolkit.getDefaultToolkit().getScreenSize();
    setSize(
        Math.min(kit.look().px(WIDTH), screen.width),
        Math.min(kit.look().px(HEIGHT), screen.height));
    setMinimumSize(new Dimension(330, 400));
    int right = screen.width - getWidth();
    setLocation(Math.max(0, Math.min(beside.x + beside.width, right)), beside.y);
  }

  void open() {
    setVisible(true);
    console.open();
  }

  @Override
  public void dispose() {
    console.close();
    super.dispose();
  }
}
