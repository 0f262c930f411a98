package squeezewell.desktop;

import java.util.List;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.Segment;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.desktop.screens.StationRunScreen;
import squeezewell.desktop.screens.Ticks;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.ExaminerVoice;
import squeezewell.live.LiveStation;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationState;

/** A station that runs. */
final class StationSession extends LiveSession<StationRunScreen> {
  private final boolean led;
  private final LiveStation station;
  private final ExaminerVoice voice;
  private final Ticks ticks = new Ticks();

  StationSession(
      HomeFolder home,
      Settings settings,
      EventTime time,
      StationChoice choice,
      Consumer<LiveSession<?>> onEnd) {
    super(home, settings, time, choice.protocol(), choice.plan(), onEnd);
    led = choice.setup().mode() == StationMode.INSTRUCTOR;
    voice = ExaminerVoice.start(choice.station(), sound());
    station =
        new LiveStation(
            choice.station(),
            choice.setup(),
            choice.plan(),
            clock(),
            kept(),
            List.of(sound()),
            now -> {
              voice.changed(now.station());
              changed(now.practice().finished());
            });
    keys().alsoLetters(StationRunScreen.LETTERS, this::choose);
  }

  /** Whether an instructor leads it. */
  boolean isLed() {
    return led;
  }

  @Override
  LiveStation run() {
    return station;
  }

  @Override
  Widgets fitted(Stage stage) {
    return stage.fittedKit(StationRunScreen.LEAST_WIDTH, StationRunScreen.LEAST_HEIGHT);
  }

  @Override
  StationRunScreen screen(Widgets kit) {
    return new StationRunScreen(kit, station, keys(), ticks, soundLine());
  }

  @Override
  String notice() {
    String notice = super.notice();
    return notice.isEmpty() ? voice.notice(System.nanoTime()) : notice;
  }

  @Override
  void ended() {
    voice.close();
    super.ended();
  }

  @Override
  void close() {
    super.close();
    voice.close();
  }

  @Override
  public void digit(int digit, long nanoTime) {
    choose((char) ('0' + digit), nanoTime);
  }

  private void choose(char key, long nanoTime) {
    screen().ifPresent(shown -> shown.choose(key, nanoTime));
  }

  /** Whether a check or suction begins or ends is settled by the task that is one, if any. */
  @Override
  boolean holds(Segment.Kind kind) {
    return super.holds(kind)
        || station.now().station().tasks().stream().anyMatch(t -> t.isHolding(kind));
  }

  @Override
  void act(PracticeKeys.Action action, long nanoTime) {
    StationState now = station.now().station();
    switch (action) {
      case PAUSE -> station.post(Command.toggle(Segment.Kind.PAUSED, now.clockStopped()), nanoTime);
      case UNDO_FINDING -> station.undo(nanoTime);
      case FINISH -> station.post(Command.FINISH, nanoTime);
      default -> {
        // Findings come from the station or its examiner.
      }
    }
  }
}
