package squeezewell.desktop;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Stretch;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.LiveScreen;
import squeezewell.desktop.screens.SoundLine;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.KeptSession;
import squeezewell.live.LivePractice;
import squeezewell.protocol.Protocol;

/** Everything that belongs to one running practice: its coach, sound, file, keys and screen. */
final class LiveSession {
  private final Recording recording;
  private final Protocol protocol;
  private final LivePractice practice;
  private final PracticeKeys keys;
  private Optional<LiveScreen> screen = Optional.empty();

  private LiveSession(
      Recording recording, Protocol protocol, LivePractice practice, Settings settings) {
    this.recording = recording;
    this.protocol = protocol;
    this.practice = practice;
    boolean compressions = Recording.mayCompress(practice.state().schedule().plan());
    this.keys = new PracticeKeys(settings.pedalKeys(), compressions, new Commands());
  }

  /**
   * Starts a practice.
   *
   * @param onEnd told once, on another thread, when the practice is over and written
   */
  static LiveSession start(
      HomeFolder home,
      Settings settings,
      Protocol protocol,
      PracticePlan plan,
      Consumer<LiveSession> onEnd) {
    Recording recording = Recording.begin(home, settings, protocol, plan);
    AtEnd<LiveSession> atEnd = new AtEnd<>(onEnd);
    LivePractice practice =
        new LivePractice(
            plan,
            recording.clock(),
            recording.kept(),
            List.of(recording.sound()),
            state -> atEnd.changed(state.finished()));
    LiveSession session = new LiveSession(recording, protocol, practice, settings);
    atEnd.of(session);
    recording
        .sound()
        .onLost(
            lost ->
                practice.post(lost ? Command.SOUND_LOST : Command.SOUND_BACK, System.nanoTime()));
    practice.start();
    return session;
  }

  LivePractice practice() {
    return practice;
  }

  Protocol protocol() {
    return protocol;
  }

  KeptSession kept() {
    return recording.kept();
  }

  LiveScreen screen(Kit kit) {
    screen.ifPresent(LiveScreen::close);
    LiveScreen made =
        new LiveScreen(
            kit,
            practice,
            protocol,
            keys,
            new SoundLine(recording::notice, recording.sound()::muted));
    screen = Optional.of(made);
    return made;
  }

  void apply(Settings settings) {
    recording.sound().apply(settings);
  }

  /** Stops drawing; the last sound may ring on. */
  void closeScreen() {
    screen.ifPresent(LiveScreen::close);
    recording.sound().closeAfterRinging();
  }

  /** Ends the practice now. */
  void close() {
    screen.ifPresent(LiveScreen::close);
    practice.close();
    recording.sound().close();
  }

  private final class Commands implements PracticeKeys.Listener {
    @Override
    public void squeezeBegan(long nanoTime) {
      practice.post(Command.SQUEEZE, nanoTime);
    }

    @Override
    public void squeezeEnded(long nanoTime) {
      practice.post(Command.SQUEEZE_END, nanoTime);
    }

    @Override
    public void compressed(long nanoTime) {
      long now = practice.clock().nanos();
      if (practice.state().schedule().guidanceAt(now).rhythm().compressions().isPresent()) {
        practice.post(Command.COMPRESS, nanoTime);
      }
    }

    @Override
    public void digit(int digit, long nanoTime) {
      screen.ifPresent(shown -> shown.choose(digit, nanoTime));
    }

    @Override
    public void action(PracticeKeys.Action action, long nanoTime) {
      Stretch.Kind now = practice.state().schedule().stretchAt(practice.clock().nanos()).kind();
      switch (action) {
        case PULSE_CHECK ->
            practice.post(
                now == Stretch.Kind.PULSE_CHECK ? Command.PULSE_CHECK_END : Command.PULSE_CHECK,
                nanoTime);
        case SUCTION ->
            practice.post(
                now == Stretch.Kind.SUCTION ? Command.SUCTION_END : Command.SUCTION, nanoTime);
        case FINDINGS -> screen.ifPresent(LiveScreen::toggleFindings);
        case UNDO_FINDING -> {
          // What is offered was worked out before the slip is taken back.
          screen.ifPresent(LiveScreen::closeFindings);
          practice.post(Command.UNDO_FINDING, nanoTime);
        }
        case PAUSE -> {
          // Escape first leaves what stands open.
          if (screen.isPresent() && screen.get().closeFindings()) {
            return;
          }
          practice.post(now == Stretch.Kind.PAUSED ? Command.RESUME : Command.PAUSE, nanoTime);
        }
        case FINISH -> practice.post(Command.FINISH, nanoTime);
        case RETRACT_BREATH -> practice.post(Command.RETRACT_BREATH, nanoTime);
        case MUTE -> recording.sound().toggleMute();
      }
    }
  }
}
