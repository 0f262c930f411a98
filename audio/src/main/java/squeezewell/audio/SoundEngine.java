package squeezewell.audio;

import java.util.Objects;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import squeezewell.cue.CueSchedule;
import squeezewell.session.SessionClock;

/**
 * Keeps a device playing: opens it, feeds it, notices its loss and tries again. It has no thread of
 * its own; one thread calls {@link #step}, any thread may publish.
 */
final class SoundEngine {
  /** Pause between two tries to open a device (our own choice). */
  static final long RETRY_NANOS = 1_500_000_000L;

  /** The buffer to start with: small, since a command is heard behind it (our own choice). */
  static final long LEAST_BUFFER_NANOS = 30_000_000L;

  /** A machine that can't keep up with a buffer gets a larger one, up to this. */
  static final long MOST_BUFFER_NANOS = 120_000_000L;

  /** Running dry this often, within the time below, shows that the buffer is too small. */
  private static final int TOO_OFTEN = 4;

  private static final long TOO_OFTEN_WITHIN_NANOS = 20_000_000_000L;

  private static final double LOOKS_PER_DEPTH = 4;

  /** The golden section: looks spread evenly over a device's steps, whatever their length. */
  private static final double SPREAD = 0.6180339887;

  private static final String SCREEN_GOES_ON = " The screen goes on without sound.";

  private final SoundDevice device;
  private final SessionClock clock;
  private final Consumer<SoundStatus> onStatus;
  private final AtomicReference<SoundSource> newSource = new AtomicReference<>();
  private final AtomicReference<SoundLevels> newLevels = new AtomicReference<>();
  private final Queue<Consumer<CueMixer>> spoken = new ConcurrentLinkedQueue<>();
  private CueMixer mixer;
  private SoundSource source;
  private SoundLevels levels;
  private volatile SoundFeed feed;
  private volatile SoundLine line;
  private volatile SoundStatus.State state;
  private boolean played;
  private long bufferNanos = LEAST_BUFFER_NANOS;
  private int holesBefore;
  private long holesSinceNanos;
  private long retryAtNanos = Long.MIN_VALUE;
  private double spread;

  SoundEngine(
      SoundDevice device, SessionClock clock, SoundLevels levels, Consumer<SoundStatus> onStatus) {
    this.device = Objects.requireNonNull(device, "device");
    this.clock = Objects.requireNonNull(clock, "clock");
    this.levels = Objects.requireNonNull(levels, "levels");
    this.onStatus = Objects.requireNonNull(onStatus, "onStatus");
  }

  /** Any thread. */
  void publish(CueSchedule next) {
    publish(SoundSource.of(next));
  }

  /** Any thread. */
  void publish(SoundSource next) {
    newSource.set(Objects.requireNonNull(next, "next"));
  }

  /** Any thread. */
  void setLevels(SoundLevels next) {
    newLevels.set(Objects.requireNonNull(next, "next"));
  }

  /** Any thread. Said while nothing plays, it is dropped. */
  void say(SpokenLine words, boolean urgent) {
    Objects.requireNonNull(words, "words");
    long at = clock.nanos();
    ask(to -> to.say(words, at, urgent));
  }

  /** Any thread. */
  void hush() {
    ask(CueMixer::hush);
  }

  private void ask(Consumer<CueMixer> what) {
    if (state == SoundStatus.State.PLAYING) {
      spoken.add(what);
    }
  }

  /** Frees a step that hangs in the device, if closing it helps. Any thread. */
  void forceClose() {
    SoundLine open = line;
    if (open != null) {
      open.close();
    }
  }

  /** The feed of the open line, for tests; null if there is none. */
  SoundFeed feed() {
    return feed;
  }

  /**
   * Does what is to be done now.
   *
   * @return how long to wait before the next step, nanoseconds
   */
  long step() {
    if (feed == null) {
      long wait = retryAtNanos - clock.nanos();
      if (retryAtNanos != Long.MIN_VALUE && wait > 0) {
        return wait;
      }
      open();
    }
    return feed == null ? RETRY_NANOS : play();
  }

  /** Lets what sounds fade out; {@link #step} goes on with silence. */
  void fadeOut() {
    newSource.set(null);
    if (mixer != null) {
      mixer.stop();
    }
  }

  /** Closes the line; the engine is not used again. */
  void close() {
    forceClose();
    feed = null;
  }

  private void open() {
    if (state == null) {
      tell(SoundStatus.State.STARTING, "Sound is starting.", null);
    }
    try {
      line = device.open(bufferNanos);
      SoundGrant grant = line.grant();
      if (mixer == null || mixer.rate() != grant.rate()) {
        mixer = new CueMixer(grant.rate(), levels);
        if (source != null) {
          newSource.compareAndSet(null, source);
        }
      }
      feed = new SoundFeed(line, mixer, bufferNanos, clock);
      holesBefore = 0;
      holesSinceNanos = clock.nanos();
    } catch (SoundUnavailableException | RuntimeException e) {
      giveUp(e.getMessage());
    }
  }

  private long play() {
    try {
      takeChanges();
      boolean before = feed.playing();
      feed.step();
      if (feed.playing() && !before) {
        played = true;
        takeChanges();
        SoundGrant grant = line.grant();
        tell(SoundStatus.State.PLAYING, "Sound plays on " + grant.mixerName() + ".", grant);
      }
      widen();
      spread = (spread + SPREAD) % 1;
      if (feed == null) {
        return RETRY_NANOS;
      }
      return (long) (feed.depthNanos() / LOOKS_PER_DEPTH * (0.75 + 0.5 * spread));
    } catch (SoundLostException | RuntimeException e) {
      giveUp(e.getMessage());
      return RETRY_NANOS;
    }
  }

  /** Opens anew with a larger buffer if the device runs dry too often. */
  private void widen() {
    long now = clock.nanos();
    if (now - holesSinceNanos > TOO_OFTEN_WITHIN_NANOS) {
      holesSinceNanos = now;
      holesBefore = feed.holes();
    }
    if (feed.holes() - holesBefore >= TOO_OFTEN && bufferNanos < MOST_BUFFER_NANOS) {
      bufferNanos = Math.min(MOST_BUFFER_NANOS, 2 * bufferNanos);
      forceClose();
      feed = null;
      open();
    }
  }

  private void takeChanges() {
    SoundLevels nextLevels = newLevels.getAndSet(null);
    if (nextLevels != null) {
      levels = nextLevels;
      mixer.setLevels(nextLevels);
    }
    // Before it plays the mixer's position means nothing, and a schedule is taken by position.
    SoundSource next = feed.playing() ? newSource.getAndSet(null) : null;
    if (next != null) {
      source = next;
      mixer.publish(next);
    }
    for (Consumer<CueMixer> each = spoken.poll(); each != null; each = spoken.poll()) {
      each.accept(mixer);
    }
  }

  private void giveUp(String reason) {
    forceClose();
    line = null;
    feed = null;
    retryAtNanos = clock.nanos() + RETRY_NANOS;
    if (played) {
      String text = "Sound was lost: " + reason + "." + SCREEN_GOES_ON;
      tell(SoundStatus.State.LOST, text, null);
    } else {
      tell(SoundStatus.State.UNAVAILABLE, reason + SCREEN_GOES_ON, null);
    }
  }

  /** Tells of changes only: each further try that fails is no news. */
  private void tell(SoundStatus.State next, String text, SoundGrant grant) {
    if (next != state || grant != null) {
      state = next;
      onStatus.accept(new SoundStatus(next, text, Optional.ofNullable(grant)));
    }
  }
}
