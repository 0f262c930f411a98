package squeezewell.audio;

import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import squeezewell.coach.CueOutput;
import squeezewell.cue.CueSchedule;
import squeezewell.session.MonotonicClock;

/**
 * Gives the cues of a live practice as sound. It works from the schedule alone, ahead of time, so
 * that the first frame of a cue leaves the device at the cue's instant. Without a device, or when
 * it is lost, it says so and tries again about every second and a half; nothing else is held up.
 *
 * <p>All methods may be called from any thread; none but {@link #close} waits.
 */
public final class SoundOutput implements CueOutput, AutoCloseable {
  /**
   * The least lead with which the first squeeze after a command is still on time, nanoseconds: what
   * is already written to the device and some room for a late thread. Measured on a sound server of
   * our own: 30 ms was enough for each squeeze, with 25 ms some were 2 ms late. For {@link
   * squeezewell.cue.PracticePlan#leadNanos()}.
   */
  public static final long LEAD_NANOS = SoundEngine.LEAST_BUFFER_NANOS + 5_000_000L;

  private static final long STUCK_NANOS = 2_000_000_000L;
  private static final long FADE_OUT_NANOS = 150_000_000L;
  private static final long WATCH_MILLIS = 500;
  private static final long CLOSE_MILLIS = 1_000;
  private static final long FORCED_CLOSE_MILLIS = 400;

  private final MonotonicClock clock;
  private final Consumer<SoundStatus> onStatus;
  private final SoundEngine engine;
  private final Thread soundThread;
  private final Thread watchThread;
  private final Object statusLock = new Object();
  private SoundStatus status =
      new SoundStatus(SoundStatus.State.STARTING, "Sound is starting.", Optional.empty());
  private volatile boolean closing;
  private volatile long nextStepNanos;

  /**
   * Starts sound. Returns at once; the device is opened in the background.
   *
   * @param clock the session's clock
   * @param levels how loud
   * @param device where to
   * @param onStatus told of each change, on a thread of this class; must return quickly and not
   *     throw
   */
  @SuppressWarnings("ThreadPriorityCheck") // only makes a late thread rarer; nothing relies on it
  public SoundOutput(
      MonotonicClock clock,
      SoundLevels levels,
      SoundDevice device,
      Consumer<SoundStatus> onStatus) {
    this.clock = Objects.requireNonNull(clock, "clock");
    this.onStatus = Objects.requireNonNull(onStatus, "onStatus");
    this.engine = new SoundEngine(device, clock, levels, this::tell);
    this.nextStepNanos = clock.nanos();
    this.soundThread = daemon("squeezewell-sound", this::play);
    this.watchThread = daemon("squeezewell-sound-watch", this::watch);
    soundThread.setPriority(Thread.MAX_PRIORITY);
    soundThread.start();
    watchThread.start();
  }

  /** Takes a schedule; it is heard as soon as what is already in the device has played. */
  @Override
  public void scheduleChanged(CueSchedule schedule) {
    engine.publish(schedule);
    LockSupport.unpark(soundThread);
  }

  /** Takes another source, such as a replay, whose time is that of the clock. */
  public void play(SoundSource source) {
    engine.publish(source);
    LockSupport.unpark(soundThread);
  }

  /**
   * Says a line under the prompts, as soon as what is already in the device has played and no other
   * words sound. Without sound it is dropped.
   *
   * @param urgent whether it may cut a line short that is not
   */
  public void say(SpokenLine line, boolean urgent) {
    engine.say(line, urgent);
    LockSupport.unpark(soundThread);
  }

  /** Lets a spoken line fade out and forgets those that wait. */
  public void hush() {
    engine.hush();
    LockSupport.unpark(soundThread);
  }

  /** Sets how loud everything is, from now on. */
  public void setLevels(SoundLevels levels) {
    engine.setLevels(levels);
  }

  /** How sound is doing. */
  public SoundStatus status() {
    synchronized (statusLock) {
      return status;
    }
  }

  /** What works behind it, for measurements. */
  SoundEngine engine() {
    return engine;
  }

  /** Ends sound within two seconds, also if the device does not answer. */
  @Override
  public void close() {
    closing = true;
    LockSupport.unpark(soundThread);
    watchThread.interrupt();
    if (!joined(soundThread, CLOSE_MILLIS)) {
      Thread closer = daemon("squeezewell-sound-close", engine::forceClose);
      closer.start();
      joined(soundThread, FORCED_CLOSE_MILLIS);
    }
    tell(new SoundStatus(SoundStatus.State.CLOSED, "Sound is off.", Optional.empty()));
  }

  private void play() {
    try {
      while (!closing) {
        long wait = engine.step();
        nextStepNanos = clock.nanos() + wait;
        LockSupport.parkNanos(wait);
      }
      fadeOut();
    } finally {
      engine.close();
    }
  }

  /** A sound that is cut off would click. */
  private void fadeOut() {
    engine.fadeOut();
    long until = clock.nanos() + FADE_OUT_NANOS;
    while (engine.feed() != null && clock.nanos() < until) {
      LockSupport.parkNanos(Math.min(engine.step(), FADE_OUT_NANOS / 10));
    }
  }

  /** A call into a dead device may never return; then somebody else must say so. */
  private void watch() {
    boolean stuck = false;
    while (!closing) {
      try {
        Thread.sleep(WATCH_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
      boolean late = clock.nanos() - nextStepNanos > STUCK_NANOS;
      if (late && !stuck) {
        String text = "The sound device does not answer. The screen goes on without sound.";
        boolean played = status().playing();
        tell(
            new SoundStatus(
                played ? SoundStatus.State.LOST : SoundStatus.State.UNAVAILABLE,
                text,
                Optional.empty()));
        engine.forceClose();
      }
      stuck = late;
    }
  }

  private void tell(SoundStatus next) {
    synchronized (statusLock) {
      if (next.equals(status) || status.state() == SoundStatus.State.CLOSED) {
        return;
      }
      status = next;
      onStatus.accept(next);
    }
  }

  private static Thread daemon(String name, Runnable work) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    return thread;
  }

  private static boolean joined(Thread thread, long millis) {
    try {
      thread.join(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return !thread.isAlive();
  }
}
