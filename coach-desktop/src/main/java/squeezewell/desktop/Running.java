package squeezewell.desktop;

import java.awt.Rectangle;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.LiveScreen;
import squeezewell.desktop.screens.ReplayScreen;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.desktop.screens.StationRunScreen;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.protocol.Protocol;
import squeezewell.session.Session;

/**
 * What runs in the window, a practice, a station or a replay, and the projector that shows it. A
 * screen of theirs is made anew when the window's size asks for other type. Used on the event
 * thread.
 */
final class Running {
  private final HomeFolder home;
  private final Stage stage;
  private final Consumer<Session> onEnd;
  private final StationDesk stations;
  private double liveScale = 1;
  private double replayScale = 1;
  private Optional<LiveSession> live = Optional.empty();
  private Optional<ReplaySession> replay = Optional.empty();
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
    this.stations =
        new StationDesk(
            home, session -> onEnd.accept(session.kept().session()), this::toggleProjector);
  }

  boolean isNothing() {
    return live.isEmpty() && replay.isEmpty() && stations.running().isEmpty();
  }

  /** Starts a practice and shows it; one that runs is ended. */
  void start(Settings settings, Protocol protocol, PracticePlan plan) {
    live.ifPresent(LiveSession::close);
    LiveSession session =
        LiveSession.start(
            home, settings, protocol, plan, next -> SwingUtilities.invokeLater(() -> ended(next)));
    live = Optional.of(session);
    show(session);
  }

  /** Starts a station and shows it, with a console if somebody leads it. */
  void start(Settings settings, StationChoice choice) {
    show(stations.start(choice, settings));
    stations.openConsole(stage.kit(), stage.window().getBounds());
  }

  private void ended(LiveSession session) {
    if (!live.isPresent() || !live.get().equals(session)) {
      return;
    }
    session.closeScreen();
    live = Optional.empty();
    onEnd.accept(session.kept().session());
  }

  private void show(LiveSession session) {
    Kit fitted = liveKit();
    liveScale = fitted.look().scale();
    LiveScreen screen = session.screen(fitted);
    stage.showScreen(screen);
    screen.open();
  }

  private void show(StationSession session) {
    Kit fitted = liveKit();
    liveScale = fitted.look().scale();
    StationRunScreen screen = session.screen(fitted);
    stage.showScreen(screen, this::mayEndStation);
    screen.open();
  }

  private boolean mayEndStation() {
    return Dialogs.mayGo(
        stage.window(), "A station runs. Leaving ends it; what was recorded is kept.", "Station");
  }

  /** Shows a practice played back. */
  void show(ReplaySession session) {
    stage.remember(() -> show(session));
    Kit fitted = replayKit();
    replayScale = fitted.look().scale();
    ReplayScreen screen = session.screen(fitted);
    replay.filter(r -> r != session).ifPresent(ReplaySession::close);
    // Not closed by the change of screens, since it is this one that comes.
    replay = Optional.empty();
    stage.showScreen(screen);
    replay = Optional.of(session);
    screen.open();
  }

  /** Large type must not push the pad or the column off a small screen in mid-practice. */
  private Kit liveKit() {
    return stations.running().isPresent()
        ? stage.fittedKit(StationRunScreen.LEAST_WIDTH, StationRunScreen.LEAST_HEIGHT)
        : stage.fittedKit(LiveScreen.LEAST_WIDTH, LiveScreen.LEAST_HEIGHT);
  }

  private Kit replayKit() {
    Kit below = stage.fittedKit(ReplayScreen.LEAST_WIDTH, ReplayScreen.LEAST_HEIGHT);
    Kit beside = stage.fittedKit(ReplayScreen.BESIDE_WIDTH, ReplayScreen.BESIDE_HEIGHT);
    return beside.look().scale() > below.look().scale() ? beside : below;
  }

  /** The window has another size. */
  void resized() {
    if (live.isPresent() && liveKit().look().scale() != liveScale) {
      show(live.get());
    } else if (stations.running().isPresent() && liveKit().look().scale() != liveScale) {
      show(stations.running().get());
    }
    if (replay.isPresent() && replayKit().look().scale() != replayScale) {
      show(replay.get());
    }
  }

  void apply(Settings settings) {
    live.ifPresent(l -> l.apply(settings));
    replay.ifPresent(r -> r.apply(settings));
    stations.running().ifPresent(s -> s.apply(settings));
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
    Rectangle beside = phone.getBounds();
    ProjectorWindow window = new ProjectorWindow(() -> live, stations::running, beside);
    projector = Optional.of(window);
    window.open();
    phone.toFront();
  }

  /** Ends all that runs. */
  void close() {
    live.ifPresent(LiveSession::close);
    live = Optional.empty();
    leaveReplay();
    stations.close();
    projector.ifPresent(ProjectorWindow::dispose);
  }
}
