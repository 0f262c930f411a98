package squeezewell.desktop;

import java.util.Optional;
import squeezewell.audio.JavaSoundSpeech;
import squeezewell.audio.LineStore;
import squeezewell.audio.ReplaySource;
import squeezewell.coach.Replay;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.screens.ReplayScreen;
import squeezewell.files.Settings;
import squeezewell.live.PracticeSound;
import squeezewell.live.ReplayPlayer;
import squeezewell.session.MonotonicClock;
import squeezewell.session.Session;

/** Everything that belongs to one replay: its player, sound and screen. */
final class ReplaySession {
  private final PracticeSound sound;
  private final ReplayPlayer player;
  private final LineStore lines = new LineStore(JavaSoundSpeech::new);
  private final String when;
  private final Runnable back;
  private Optional<ReplayScreen> screen = Optional.empty();

  /**
   * Opens the sound and stands at the start of a session.
   *
   * @param when the date and time of the practice, and the name if one was given, for people
   * @param back leads back to where the person came from
   */
  ReplaySession(Session session, Settings settings, String when, Runnable back) {
    MonotonicClock clock = MonotonicClock.startNow();
    this.sound = new PracticeSound(clock, settings);
    this.player = new ReplayPlayer(new Replay(session), clock, sound::play, lines::find);
    lines.prepare(ReplaySource.Track.of(session).texts());
    this.when = when;
    this.back = back;
  }

  ReplayScreen screen(Kit kit) {
    screen.ifPresent(ReplayScreen::close);
    ReplayScreen made =
        new ReplayScreen(
            kit,
            player,
            when,
            new ReplayScreen.Sound(sound::notice, sound::muted, sound::toggleMute),
            back);
    screen = Optional.of(made);
    return made;
  }

  void apply(Settings settings) {
    sound.apply(settings);
  }

  /** Stops drawing and ends the sound in the background. */
  void close() {
    screen.ifPresent(ReplayScreen::close);
    lines.close();
    Thread thread = new Thread(sound::close, "squeezewell-replay-end");
    thread.setDaemon(true);
    thread.start();
  }
}
