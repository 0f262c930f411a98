package squeezewell.live;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import squeezewell.audio.ReplaySource;
import squeezewell.audio.SoundOutput;
import squeezewell.audio.SoundSource;
import squeezewell.audio.SpokenLine;
import squeezewell.coach.CoachState;
import squeezewell.coach.Playback;
import squeezewell.coach.Replay;
import squeezewell.session.SessionClock;

/**
 * Plays a session back: what stands on the screen and what is heard come from one {@link Playback},
 * so they can't part. A change takes effect a moment ahead, when what the device holds has been
 * heard. Not thread-safe.
 */
public final class ReplayPlayer implements Shown {
  private final Replay replay;
  private final SessionClock clock;
  private final Consumer<SoundSource> sink;
  private final ReplaySource.Track track;
  private final Function<String, Optional<SpokenLine>> voice;
  private Playback playback;
  private SoundSource source = SoundSource.silence();
  private boolean held;
  private boolean goesOn;

  /**
   * A player at the start of a session, standing still.
   *
   * @param replay what is played
   * @param clock the time it is played in, already running
   * @param sink takes a source in place of the one before; its time is that of the clock
   */
  public ReplayPlayer(Replay replay, SessionClock clock, Consumer<SoundSource> sink) {
    this(replay, clock, sink, text -> Optional.empty());
  }

  /**
   * The same with words.
   *
   * @param voice what the examiner of a station said as sound, where that is known by then
   */
  public ReplayPlayer(
      Replay replay,
      SessionClock clock,
      Consumer<SoundSource> sink,
      Function<String, Optional<SpokenLine>> voice) {
    this.voice = Objects.requireNonNull(voice, "voice");
    this.replay = Objects.requireNonNull(replay, "replay");
    this.clock = Objects.requireNonNull(clock, "clock");
    this.sink = Objects.requireNonNull(sink, "sink");
    this.track = ReplaySource.Track.of(replay.session());
    this.playback = Playback.atStart(replay.endNanos());
  }

  @Override
  public CoachState state() {
    return replay.stateAt(nowNanos());
  }

  @Override
  public long nowNanos() {
    return playback.positionAt(clock.nanos());
  }

  /** What is played. */
  public Replay replay() {
    return replay;
  }

  /** How many times as fast as it was. */
  public int speed() {
    return playback.speed();
  }

  /** Whether it runs, or will when the slider is let go. */
  public boolean playing() {
    return held ? goesOn : runs();
  }

  private boolean runs() {
    return playback.runsAt(clock.nanos());
  }

  /** Plays, or stands still; at the end it starts anew. */
  public void toggle() {
    change(playing() ? playback.pause(soon()) : playback.play(soon()));
  }

  /** One speed up. */
  public void faster() {
    change(playback.at(playback.faster(), soon()));
  }

  /** One speed down. */
  public void slower() {
    change(playback.at(playback.slower(), soon()));
  }

  /** Goes to a moment, and on from there if it was playing. */
  public void seek(long positionNanos) {
    long at = soon();
    Playback there = playback.seek(positionNanos, at);
    change(runs() ? there : there.pause(at));
  }

  /** Goes back (negative) or on by some time. */
  public void skip(long nanos) {
    seek(nowNanos() + nanos);
  }

  /** While a person drags the slider it stands still; then it goes on if it was playing. */
  public void hold(boolean dragging) {
    if (dragging == held) {
      return;
    }
    if (dragging) {
      goesOn = runs();
      change(playback.pause(soon()));
    } else if (goesOn && nowNanos() < playback.endNanos()) {
      change(playback.play(soon()));
    }
    held = dragging;
  }

  /** A moment ahead of now, when a change can be heard. */
  private long soon() {
    return clock.nanos() + SoundOutput.LEAD_NANOS;
  }

  private void change(Playback next) {
    playback = next;
    SoundSource after =
        next.playing() ? new ReplaySource(track, next, voice) : SoundSource.silence();
    source = source.until(next.sinceNanos(), after);
    sink.accept(source);
  }
}
