package squeezewell.desktop;

import squeezewell.desktop.screens.SoundLine;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.Stretch;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.FinishGuard;
import squeezewell.desktop.screens.StationChoice;
import squeezewell.desktop.screens.StationRunScreen;
import squeezewell.desktop.screens.Ticks;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.ExaminerVoice;
import squeezewell.live.KeptSession;
import squeezewell.live.LiveStation;
import squeezewell.live.PracticeSound;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionHeader;

/** Everything that belongs to one running station: its sound, file, keys and screen. */
final class StationSession {
  private final KeptSession kept;
  private final StationChoice choice;
  private final LiveStation station;
  private final PracticeSound sound;
  private final ExaminerVoice voice;
  private final PracticeKeys keys;
  private final FinishGuard finishGuard = new FinishGuard();
  private final Ticks ticks = new Ticks();
  private Optional<StationRunScreen> screen = Optional.empty();

  private StationSession(
      KeptSession kept,
      StationChoice choice,
      LiveStation station,
      PracticeSound sound,
      ExaminerVoice voice,
      Settings settings) {
    this.kept = kept;
    this.choice = choice;
    this.station = station;
    this.sound = sound;
    this.voice = voice;
    boolean compressions =
        choice.plan().all().stream().anyMatch(g -> g.rhythm().compressions().isPresent());
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
    MonotonicClock clock = MonotonicClock.startNow();
    SessionHeader header =
        new SessionHeader(
            clock.startedAt(),
            SessionHeader.Origin.LIVE,
            settings.trainee(),
            choice.protocol(),
            choice.plan());
    KeptSession kept = KeptSession.create(home.newSessionFile(header.startedAt()), header);
    PracticeSound sound = new PracticeSound(clock, settings);
    ExaminerVoice voice = ExaminerVoice.start(choice.station(), sound);
    AtEnd<StationSession> atEnd = new AtEnd<>(onEnd);
    LiveStation station =
        new LiveStation(
            choice.station(),
            choice.setup(),
            choice.plan(),
            clock,
            kept,
            List.of(sound),
            now -> {
              voice.changed(now.station());
              atEnd.changed(now.practice().finished());
            });
    StationSession session = new StationSession(kept, choice, station, sound, voice, settings);
    atEnd.of(session);
    sound.onLost(
        lost -> station.post(lost ? Command.SOUND_LOST : Command.SOUND_BACK, System.nanoTime()));
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
    return kept;
  }

  StationRunScreen screen(Kit kit) {
    screen.ifPresent(StationRunScreen::close);
    StationRunScreen made =
        new StationRunScreen(
            kit,
            station,
            keys,
            new StationRunScreen.Kept(finishGuard, ticks),
            new SoundLine(this::notice, sound::muted));
    screen = Optional.of(made);
    return made;
  }

  void apply(Settings settings) {
    sound.apply(settings);
  }

  /** Stops drawing; the last sound may ring on. */
  void closeScreen() {
    screen.ifPresent(StationRunScreen::close);
    voice.close();
    sound.closeAfterRinging();
  }

  /** Ends the station now. */
  void close() {
    screen.ifPresent(StationRunScreen::close);
    station.close();
    voice.close();
    sound.close();
  }

  private String notice() {
    if (!kept.trouble().isEmpty()) {
      return kept.trouble();
    }
    return sound.notice().isEmpty() ? voice.notice(System.nanoTime()) : sound.notice();
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
        case MUTE -> sound.toggleMute();
        case FINDINGS -> {
          // Findings come from the station or its examiner.
        }
      }
    }

    /** Whether a check or suction begins or ends is settled by the task that is one, if any. */
    private void hold(Stretch.Kind kind, long nanoTime) {
      boolean check = kind == Stretch.Kind.PULSE_CHECK;
      LiveStation.Now now = station.now();
      boolean going =
          now.practice().schedule().stretchAt(station.clock().nanos()).kind() == kind
              || now.station().tasks().stream()
                  .anyMatch(
                      t ->
                          t.progress() == squeezewell.station.TaskState.Progress.RUNNING
                              && t.task().hold().isPresent()
                              && (t.task().hold().get() == squeezewell.station.TaskHold.PULSE_CHECK)
                                  == check);
      station.post(
          check
              ? going ? Command.PULSE_CHECK_END : Command.PULSE_CHECK
              : going ? Command.SUCTION_END : Command.SUCTION,
          nanoTime);
    }
  }
}
