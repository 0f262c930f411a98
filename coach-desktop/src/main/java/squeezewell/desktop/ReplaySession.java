package squeezewell.desktop;

import squeezewell.audio.JavaSoundSpeech;
import squeezewell.audio.LineStore;
import squeezewell.audio.ReplaySource;
import squeezewell.coach.Replay;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.ReplayScreen;
import squeezewell.files.Settings;
import squeezewell.live.PracticeSound;
import squeezewell.live.ReplayPlayer;
import squeezewell.session.MonotonicClock;
import squeezewell.session.Session;

/** A practice played back. */
final class ReplaySession extends Hosted<ReplayScreen> {
  private final PracticeSound sound;
  private final ReplayPlayer player;
  private final LineStore lines = new LineStore(JavaSoundSpeech::new);
  private final String when;
  private final Runnable back;

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

  @Override
  ReplayPlayer shown() {
    return player;
  }

  @Override
  PracticeSound sound() {
    return sound;
  }

  @Override
  Widgets fitted(Stage stage) {
    Widgets below = stage.fittedKit(ReplayScreen.LEAST_WIDTH, ReplayScreen.LEAST_HEIGHT);
    Widgets beside = stage.fittedKit(ReplayScreen.BESIDE_WIDTH, ReplayScreen.BESIDE_HEIGHT);
    return beside.look().scale() > below.look().scale() ? beside : below;
  }

  @Override
  ReplayScreen screen(Widgets kit) {
    return new ReplayScreen(kit, player, when, soundLine(), back);
  }

  /** Stops drawing and ends the sound in the background. */
  @Override
  void close() {
    stopDrawing();
    lines.close();
    Thread thread = new Thread(sound::close, "squeezewell-replay-end");
    thread.setDaemon(true);
    thread.start();
  }
}
