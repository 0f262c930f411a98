package squeezewell.desktop;

import squeezewell.desktop.screens.SoundLine;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Stretch;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.LiveScreen;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.KeptSession;
import squeezewell.live.LivePractice;
import squeezewell.live.PracticeSound;
import squeezewell.protocol.Protocol;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionHeader;

/** Everything that belongs to one running practice: its coach, sound, file, keys and screen. */
final class LiveSession {
  private final KeptSession kept;
  private final Protocol protocol;
  private final LivePractice practice;
  private final PracticeSound sound;
  private final PracticeKeys keys;
  private Optional<LiveScreen> screen = Optional.empty();

  private LiveSession(
      KeptSession kept,
      Protocol protocol,
      LivePractice practice,
      PracticeSound sound,
      Settings settings) {
    this.kept = kept;
    this.protocol = protocol;
    this.practice = practice;
    this.sound = sound;
    boolean compressions =
        practice.state().schedule().plan().all().stream()
            .anyMatch(g -> g.rhythm().compressions().isPresent());
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
    MonotonicClock clock = MonotonicClock.startNow();
    SessionHeader header =
        new SessionHeader(
            clock.startedAt(), SessionHeader.Origin.LIVE, settings.trainee(), protocol, plan);
    KeptSession kept = KeptSession.create(home.newSessionFile(header.startedAt()), header);
    PracticeSound sound = new PracticeSound(clock, settings);
    AtEnd<LiveSession> atEnd = new AtEnd<>(onEnd);
    LivePractice practice =
        new LivePractice(
            plan, clock, kept, List.of(sound), state -> atEnd.changed(state.finished()));
    LiveSession session = new LiveSession(kept, protocol, practice, sound, settings);
    atEnd.of(session);
    sound.onLost(
        lost -> practice.post(lost ? Command.SOUND_LOST : Command.SOUND_BACK, System.nanoTime()));
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
    return kept;
  }

  LiveScreen screen(Kit kit) {
    screen.ifPresent(LiveScreen::close);
    LiveScreen made = new LiveScreen(
            kit, practice, protocol, keys, new SoundLine(this::notice, sound::muted));
    screen = Optional.of(made);
    return made;
  }

  void apply(Settings settings) {
    sound.apply(settings);
  }

  /** Stops drawing; the last sound may ring on. */
  void closeScreen() {
    screen.ifPresent(LiveScreen::close);
    sound.closeAfterRinging();
  }

  /** Ends the practice now. */
  void close() {
    screen.ifPresent(LiveScreen::close);
    practice.close();
    sound.close();
  }

  private String notice() {
    return kept.trouble().isEmpty() ? sound.notice() : kept.trouble();
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
        case MUTE -> sound.toggleMute();
      }
    }
  }
}
