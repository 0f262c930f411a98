package squeezewell.desktop;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.Stretch;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.FinishGuard;
import squeezewell.desktop.screens.SoundLine;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.desktop.screens.StationRunScreen;
import squeezewell.desktop.screens.Ticks;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.ExaminerVoice;
import squeezewell.live.KeptSession;
import squeezewell.live.LiveStation;
import squeezewell.station.file.TaskHold;

/** Everything that belongs to one running station: its sound, file, keys and screen. */
final class StationSession {
  private final Recording recording;
  private final StationChoice choice;
  private final LiveStation station;
  private final ExaminerVoice voice;
  private final PracticeKeys keys;
  private final FinishGuard finishGuard = new FinishGuard();
  private final Ticks ticks = new Ticks();
  private Optional<StationRunScreen> screen = Optional.empty();

  private StationSession(
      Recording recording,
      StationChoice choice,
      LiveStation station,
      ExaminerVoice voice,
      Settings settings) {
    this.recording = recording;
    this.choice = choice;
    this.station = station;
    this.voice = voice;
    boolean compressions = Recording.mayCompress(choice.plan());
    this.keys = new PracticeKeys(settings.pedalKeys(), compressions, new Commands());
    keys.alsoLetters(
        StationRunScreen.LETTERS,
        (letter, at) -> screen.ifPresent(shown -> shown.choose(letter, at)));
  }

  /**
   * Starts a station.
   *
   * @param onEnd told once, on another thread, when it is over and written
   */
  static StationSession start(
      HomeFolder home, Settings settings, StationChoice choice, Consumer<StationSession> onEnd) {
    Recording recording = Recording.begin(home, settings, choice.protocol(), choice.plan());
    ExaminerVoice voice = ExaminerVoice.start(choice.station(), recording.sound());
    AtEnd<StationSession> atEnd = new AtEnd<>(onEnd);
    LiveStation station =
        new LiveStation(
            choice.station(),
            choice.setup(),
            choice.plan(),
            recording.clock(),
            recording.kept(),
            List.of(recording.sound()),
            now -> {
              voice.changed(now.station());
              atEnd.changed(now.practice().finished());
            });
    StationSession session = new StationSession(recording, choice, station, voice, settings);
    atEnd.of(session);
    recording
        .sound()
        .onLost(
            lost ->
                station.post(lost ? Command.SOUND_LOST : Command.SOUND_BACK, System.nanoTime()));
    station.start();
    return session;
  }

  LiveStation station() {
    return station;
  }

  StationChoice choice() {
    return choice;
  }

  KeptSession kept() {
    return recording.kept();
  }

  StationRunScreen screen(Kit kit) {
    screen.ifPresent(StationRunScreen::close);
    StationRunScreen made =
        new StationRunScreen(
            kit,
            station,
            keys,
            new StationRunScreen.Kept(finishGuard, ticks),
            new SoundLine(this::notice, recording.sound()::muted));
    screen = Optional.of(made);
    return made;
  }

  void apply(Settings settings) {
    recording.sound().apply(settings);
  }

  /** Stops drawing; the last sound may ring on. */
  void closeScreen() {
    screen.ifPresent(StationRunScreen::close);
    voice.close();
    recording.sound().closeAfterRinging();
  }

  /** Ends the station now. */
  void close() {
    screen.ifPresent(StationRunScreen::close);
    station.close();
    voice.close();
    recording.sound().close();
  }

  private String notice() {
    String notice = recording.notice();
    return notice.isEmpty() ? voice.notice(System.nanoTime()) : notice;
  }

  private final class Commands implements PracticeKeys.Listener {
    @Override
    public void squeezeBegan(long nanoTime) {
      station.post(Command.SQUEEZE, nanoTime);
    }

    @Override
    public void squeezeEnded(long nanoTime) {
      station.post(Command.SQUEEZE_END, nanoTime);
    }

    @Override
    public void compressed(long nanoTime) {
      long now = station.clock().nanos();
      if (station.now().practice().schedule().guidanceAt(now).rhythm().compressions().isPresent()) {
        station.post(Command.COMPRESS, nanoTime);
      }
    }

    @Override
    public void digit(int digit, long nanoTime) {
      screen.ifPresent(shown -> shown.choose((char) ('0' + digit), nanoTime));
    }

    @Override
    public void action(PracticeKeys.Action action, long nanoTime) {
      switch (action) {
        case PULSE_CHECK -> hold(Stretch.Kind.PULSE_CHECK, nanoTime);
        case SUCTION -> hold(Stretch.Kind.SUCTION, nanoTime);
        case PAUSE ->
            station.post(
                station.now().station().clockStopped() ? Command.RESUME : Command.PAUSE, nanoTime);
        case UNDO_FINDING -> station.undo(nanoTime);
        case FINISH -> {
          if (finishGuard.press(station.now().station().complete(), nanoTime)) {
            station.post(Command.FINISH, nanoTime);
          }
        }
        case RETRACT_BREATH -> station.post(Command.RETRACT_BREATH, nanoTime);
        case MUTE -> recording.sound().toggleMute();
        case FINDINGS -> {
          // Findings come from the station or its examiner.
        }
      }
    }

    /** Whether a check or suction begins or ends is settled by the task that is one, if any. */
    private void hold(Stretch.Kind kind, long nanoTime) {
      TaskHold hold = kind == Stretch.Kind.PULSE_CHECK ? TaskHold.PULSE_CHECK : TaskHold.SUCTION;
      LiveStation.Now now = station.now();
      boolean going =
          now.practice().schedule().stretchAt(station.clock().nanos()).kind() == kind
              || now.station().tasks().stream().anyMatch(t -> t.isHolding(hold));
      Command begins = hold == TaskHold.PULSE_CHECK ? Command.PULSE_CHECK : Command.SUCTION;
      Command ends = hold == TaskHold.PULSE_CHECK ? Command.PULSE_CHECK_END : Command.SUCTION_END;
      station.post(going ? ends : begins, nanoTime);
    }
  }
}
