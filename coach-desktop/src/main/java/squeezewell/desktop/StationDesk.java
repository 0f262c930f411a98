package squeezewell.desktop;

import java.awt.Rectangle;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.station.run.StationMode;

/** The station that runs, if one does, and its instructor's console. Used on the event thread. */
final class StationDesk {
  private final HomeFolder home;
  private final Consumer<StationSession> onEnd;
  private final Runnable onProjector;
  private Optional<StationSession> running = Optional.empty();
  private Optional<ConsoleWindow> console = Optional.empty();

  /**
   * @param onEnd told on the event thread when a station is over, not when it is closed
   * @param onProjector opens or closes the window for the class
   */
  StationDesk(HomeFolder home, Consumer<StationSession> onEnd, Runnable onProjector) {
    this.home = home;
    this.onEnd = onEnd;
    this.onProjector = onProjector;
  }

  Optional<StationSession> running() {
    return running;
  }

  /** Starts a station; one that runs is ended. */
  StationSession start(StationChoice choice, Settings settings) {
    close();
    StationSession session =
        StationSession.start(
            home, settings, choice, next -> SwingUtilities.invokeLater(() -> ended(next)));
    running = Optional.of(session);
    return session;
  }

  /** Opens the console of the station that runs, if somebody leads it. */
  void openConsole(Kit kit, Rectangle beside) {
    if (running.isPresent() && running.get().choice().setup().mode() == StationMode.INSTRUCTOR) {
      ConsoleWindow window = new ConsoleWindow(kit, running.get().station(), beside, onProjector);
      console = Optional.of(window);
      window.open();
    }
  }

  /** Ends what runs, without a word of it. */
  void close() {
    closeConsole();
    running.ifPresent(StationSession::close);
    running = Optional.empty();
  }

  private void closeConsole() {
    console.ifPresent(ConsoleWindow::dispose);
    console = Optional.empty();
  }

  private void ended(StationSession session) {
    if (!running.isPresent() || !running.get().equals(session)) {
      return;
    }
    session.closeScreen();
    running = Optional.empty();
    closeConsole();
    onEnd.accept(session);
  }
}
