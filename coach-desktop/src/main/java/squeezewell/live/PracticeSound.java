package squeezewell.live;

import java.util.function.Consumer;
import squeezewell.audio.CountStyle;
import squeezewell.audio.JavaSoundDevice;
import squeezewell.audio.SoundDevice;
import squeezewell.audio.SoundKind;
import squeezewell.audio.SoundLevels;
import squeezewell.audio.SoundOutput;
import squeezewell.audio.SoundPreview;
import squeezewell.audio.SoundSource;
import squeezewell.audio.SoundStatus;
import squeezewell.audio.SoundUnavailableException;
import squeezewell.audio.SpokenLine;
import squeezewell.coach.CueOutput;
import squeezewell.cue.CueSchedule;
import squeezewell.files.Settings;
import squeezewell.files.SoundLevel;
import squeezewell.session.MonotonicClock;

/** The sound of one practice, as the settings want it. */
public final class PracticeSound implements CueOutput, Mouth, AutoCloseable {
  /** The last cue may be a spoken sentence. */
  private static final long RING_MILLIS = 3_000;

  private final SoundOutput output;
  private volatile SoundLevels levels;
  private volatile SoundStatus.State last = SoundStatus.State.STARTING;
  private volatile Consumer<Boolean> onLost = lost -> {};

  /**
   * Starts sound on the machine's own device. Returns at once.
   *
   * @param clock the session's clock
   * @param settings how loud
   */
  public PracticeSound(MonotonicClock clock, Settings settings) {
    this(clock, settings, new JavaSoundDevice());
  }

  PracticeSound(MonotonicClock clock, Settings settings, SoundDevice device) {
    levels = levels(settings);
    output = new SoundOutput(clock, levels, device, this::changed);
  }

  /** How long before its time sound must know of a cue, nanoseconds. */
  public static long leadNanos() {
    return SoundOutput.LEAD_NANOS;
  }

  /** Plays one sound of a kind in the background. Silent if there is no device. */
  public static void preview(String kindWord, Settings settings) {
    SoundKind kind = kind(kindWord);
    SoundLevels loud = levels(settings).withMuted(kind, false);
    Thread thread =
        new Thread(
            () -> {
              try {
                SoundPreview.play(kind, loud, new JavaSoundDevice());
              } catch (SoundUnavailableException e) {
                System.getLogger(PracticeSound.class.getName())
                    .log(System.Logger.Level.DEBUG, "No preview: {0}", e.getMessage());
              }
            },
            "squeezewell-preview");
    thread.setDaemon(true);
    thread.start();
  }

  /** The levels that settings stand for. */
  public static SoundLevels levels(Settings settings) {
    SoundLevels levels = SoundLevels.defaults();
    for (SoundKind kind : SoundKind.values()) {
      SoundLevel level = settings.soundLevels().get(kind.id());
      if (level != null) {
        levels = levels.withVolume(kind, level.volume()).withMuted(kind, level.muted());
      }
    }
    for (CountStyle style : CountStyle.values()) {
      if (style.id().equals(settings.countStyle())) {
        levels = levels.withCountStyle(style);
      }
    }
    return levels;
  }

  private static SoundKind kind(String word) {
    for (SoundKind kind : SoundKind.values()) {
      if (kind.id().equals(word)) {
        return kind;
      }
    }
    throw new IllegalArgumentException("no kind of sound is called " + word);
  }

  @Override
  public void scheduleChanged(CueSchedule schedule) {
    output.scheduleChanged(schedule);
  }

  /** Plays another source, such as a replay; its time is that of the clock. */
  public void play(SoundSource source) {
    output.play(source);
  }

  @Override
  public void say(SpokenLine line, boolean urgent) {
    output.say(line, urgent);
  }

  @Override
  public void hush() {
    output.hush();
  }

  /** Says who is told when sound stops (true) and comes back (false). */
  public synchronized void onLost(Consumer<Boolean> listener) {
    onLost = listener;
    if (isSilent(last)) {
      listener.accept(true);
    }
  }

  /** Takes new levels at once. A mute by key stays. */
  public void apply(Settings settings) {
    levels = levels(settings).withAllMuted(levels.allMuted());
    output.setLevels(levels);
  }

  /** Mutes everything, or nothing. */
  public void toggleMute() {
    levels = levels.withAllMuted(!levels.allMuted());
    output.setLevels(levels);
  }

  /** Whether everything was muted with {@link #toggleMute}. */
  public boolean muted() {
    return levels.allMuted();
  }

  /** What a person must know about sound; empty if it plays. */
  public String notice() {
    if (isSilent(last)) {
      return "No sound: follow the screen. It is being tried again.";
    }
    return muted() ? "Sound is muted. M turns it on." : "";
  }

  /** Ends sound when the last cue has rung out. Returns at once. */
  public void closeAfterRinging() {
    Thread thread =
        new Thread(
            () -> {
              try {
                Thread.sleep(RING_MILLIS);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
              output.close();
            },
            "squeezewell-sound-end");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() {
    output.close();
  }

  /** One at a time with {@link #onLost}: else a loss could be told after the return. */
  private synchronized void changed(SoundStatus status) {
    boolean silentBefore = isSilent(last);
    last = status.state();
    boolean silent = isSilent(last);
    if (silent != silentBefore && last != SoundStatus.State.CLOSED) {
      onLost.accept(silent);
    }
  }

  private static boolean isSilent(SoundStatus.State state) {
    return state == SoundStatus.State.LOST || state == SoundStatus.State.UNAVAILABLE;
  }
}
