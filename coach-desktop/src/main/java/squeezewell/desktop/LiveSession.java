package squeezewell.desktop;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import javax.swing.JComponent;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.screens.RunningView;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.KeptSession;
import squeezewell.live.LiveRun;
import squeezewell.live.PracticeSound;
import squeezewell.protocol.Protocol;
import squeezewell.session.MonotonicClock;
import squeezewell.session.SessionHeader;

/**
 * Everything that belongs to a practice or a station that runs: its time, file, sound, keys,
 * screen.
 *
 * @param <S> its screen
 */
abstract class LiveSession<S extends JComponent & RunningView> extends Hosted<S>
    implements PracticeKeys.Listener {
  private final MonotonicClock clock = MonotonicClock.startNow();
  private final Protocol protocol;
  private final KeptSession kept;
  private final PracticeSound sound;
  private final PracticeKeys keys;
  private final Consumer<LiveSession<?>> onEnd;
  private final AtomicBoolean over = new AtomicBoolean();

  /** A program that is told to stop writes the end of what runs. */
  private final Thread rescue = new Thread(() -> run().close(), "squeezewell-stop");

  /**
   * Begins its time, file and sound.
   *
   * @param time tells when keys and taps happened
   * @param onEnd told once, on another thread, when it is over and written
   */
  LiveSession(
      HomeFolder home,
      Settings settings,
      EventTime time,
      Protocol protocol,
      PracticePlan plan,
      Consumer<LiveSession<?>> onEnd) {
    this.protocol = protocol;
    this.onEnd = onEnd;
    SessionHeader header =
        new SessionHeader(
            clock.startedAt(), SessionHeader.Origin.LIVE, settings.trainee(), protocol, plan);
    kept = KeptSession.create(() -> home.newSessionFile(header.startedAt()), header);
    sound = new PracticeSound(clock, settings);
    boolean compressions = plan.all().stream().anyMatch(g -> g.rhythm().compressions().isPresent());
    keys = new PracticeKeys(time, settings.pedalKeys(), compressions, this);
  }

  /** What is driven. */
  abstract LiveRun<?> run();

  /** Lets it run. */
  final void start() {
    sound.onLost(
        lost -> run().post(lost ? Command.SOUND_LOST : Command.SOUND_BACK, System.nanoTime()));
    Runtime.getRuntime().addShutdownHook(rescue);
    run().start();
  }

  final void changed(boolean finished) {
    if (finished && over.compareAndSet(false, true)) {
      forgetRescue();
      onEnd.accept(this);
    }
  }

  private void forgetRescue() {
    try {
      Runtime.getRuntime().removeShutdownHook(rescue);
    } catch (IllegalStateException e) {
      // The program is being stopped, and this is its end.
    }
  }

  final MonotonicClock clock() {
    return clock;
  }

  final Protocol protocol() {
    return protocol;
  }

  final KeptSession kept() {
    return kept;
  }

  final PracticeKeys keys() {
    return keys;
  }

  @Override
  final LiveRun<?> shown() {
    return run();
  }

  @Override
  final PracticeSound sound() {
    return sound;
  }

  /** Of saving, or else of sound. */
  @Override
  String notice() {
    return kept.trouble().isEmpty() ? sound.notice() : kept.trouble();
  }

  /** Stops drawing; the last sound may ring on. */
  void ended() {
    stopDrawing();
    sound.closeAfterRinging();
  }

  @Override
  void close() {
    stopDrawing();
    run().close();
    sound.close();
  }

  /** Whether breathing is being held for something. */
  boolean holds(Segment.Kind kind) {
    return run().state().schedule().stretchAt(clock.nanos()).kind() == kind;
  }

  /** Does what differs. */
  abstract void act(PracticeKeys.Action action, long nanoTime);

  @Override
  public final void squeezeBegan(long nanoTime) {
    run().post(Command.SQUEEZE, nanoTime);
  }

  @Override
  public final void squeezeEnded(long nanoTime) {
    run().post(Command.SQUEEZE_END, nanoTime);
  }

  @Override
  public final void compressed(long nanoTime) {
    long now = clock.nanos();
    if (run().state().schedule().guidanceAt(now).rhythm().compressions().isPresent()) {
      run().post(Command.COMPRESS, nanoTime);
    }
  }

  @Override
  public final void finishWasShort() {
    screen().ifPresent(RunningView::finishWasShort);
  }

  final void toggle(Segment.Kind hold, long nanoTime) {
    run().post(Command.toggle(hold, holds(hold)), nanoTime);
  }

  @Override
  public final void action(PracticeKeys.Action action, long nanoTime) {
    switch (action) {
      case PULSE_CHECK -> toggle(Segment.Kind.PULSE_CHECK, nanoTime);
      case SUCTION -> toggle(Segment.Kind.SUCTION, nanoTime);
      case RETRACT_BREATH -> run().post(Command.RETRACT_BREATH, nanoTime);
      case MUTE -> sound.toggleMute();
      default -> act(action, nanoTime);
    }
  }
}
