package squeezewell.desktop;

import java.awt.Rectangle;
import java.awt.Toolkit;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.protocol.Protocol;
import squeezewell.session.Session;

/**
 * What runs in the window, the instructor's console of a station, and the projector that shows what
 * runs. Used on the event thread.
 */
final class Running {
  private final EventTime time = new EventTime();
  private final HomeFolder home;
  private final Stage stage;
  private final Consumer<Session> onEnd;
  private Optional<LiveSession<?>> live = Optional.empty();
  private Optional<ReplaySession> replay = Optional.empty();
  private Optional<ConsoleWindow> console = Optional.empty();
  private Optional<ProjectorWindow> projector = Optional.empty();

  /**
   * @param home where practices are kept
   * @param stage where screens are shown
   * @param onEnd told what was recorded when a practice or a station is over
   */
  Running(HomeFolder home, Stage stage, Consumer<Session> onEnd) {
    this.home = home;
    this.stage = stage;
    this.onEnd = onEnd;
  }

  /** Learns from every input of a person, whatever window it goes to. */
  void watchInput() {
    Toolkit.getDefaultToolkit().addAWTEventListener(time, EventTime.EVENTS);
  }

  boolean isNothing() {
    return live.isEmpty() && replay.isEmpty();
  }

  /** Starts a practice and shows it; what runs is ended. */
  void start(Settings settings, Protocol protocol, PracticePlan plan) {
    closeLive();
    start(
        new PracticeSession(
            home, settings, time, protocol, plan, this::toggleProjector, this::over));
  }

  /** Starts a station and shows it, with a console if somebody leads it; what runs is ended. */
  void start(Settings settings, StationChoice choice) {
    closeLive();
    StationSession session = new StationSession(home, settings, time, choice, this::over);
    start(session);
    if (session.isLed()) {
      Rectangle beside = stage.window().getBounds();
      ConsoleWindow window =
          new ConsoleWindow(stage.kit(), session.run(), beside, this::toggleProjector);
      console = Optional.of(window);
      window.open();
    }
  }

  private void start(LiveSession<?> session) {
    live = Optional.of(session);
    session.start();
    show(session);
  }

  private void over(LiveSession<?> session) {
    SwingUtilities.invokeLater(() -> ended(session));
  }

  private void ended(LiveSession<?> session) {
    if (!live.isPresent() || !live.get().equals(session)) {
      return;
    }
    session.ended();
    live = Optional.empty();
    closeConsole();
    onEnd.accept(session.kept().session());
  }

  private void show(LiveSession<?> session) {
    session.show(stage, () -> !(session instanceof StationSession) || mayEndStation());
  }

  private boolean mayEndStation() {
    return stage
        .sheets()
        .ask("End the station?", "What was recorded is kept.", "Go on", "End and leave");
  }

  /** Shows a practice played back. */
  void show(ReplaySession session) {
    stage.remember(() -> show(session));
    replay.filter(r -> r != session).ifPresent(ReplaySession::close);
    // Not closed by the change of screens, since it is this one that comes.
    replay = Optional.empty();
    session.show(stage, () -> true);
    replay = Optional.of(session);
  }

  /** The window has another size. */
  void resized() {
    live.filter(session -> !session.fits(stage)).ifPresent(this::show);
    replay.filter(session -> !session.fits(stage)).ifPresent(this::show);
  }

  void apply(Settings settings) {
    live.ifPresent(session -> session.apply(settings));
    replay.ifPresent(session -> session.apply(settings));
  }

  /** Another screen comes: a replay ends, what is recorded goes on. */
  void leaveReplay() {
    replay.ifPresent(ReplaySession::close);
    replay = Optional.empty();
  }

  /** Opens the projector window, or closes it. */
  void toggleProjector() {
    if (projector.isPresent() && projector.get().isDisplayable()) {
      projector.get().dispose();
      projector = Optional.empty();
      return;
    }
    JFrame phone = stage.window();
    ProjectorWindow window = new ProjectorWindow(() -> live, phone.getBounds());
    projector = Optional.of(window);
    window.open();
    phone.toFront();
  }

  /** Ends all that runs. */
  void close() {
    closeLive();
    leaveReplay();
    projector.ifPresent(ProjectorWindow::dispose);
  }

  private void closeLive() {
    closeConsole();
    live.ifPresent(LiveSession::close);
    live = Optional.empty();
  }

  private void closeConsole() {
    console.ifPresent(ConsoleWindow::dispose);
    console = Optional.empty();
  }
}
