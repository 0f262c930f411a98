package squeezewell.audio;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import squeezewell.cue.CueSchedule;

/**
 * Mixes what a source gives by frame, forwards only. Frame 0 is the start of the session; a cue
 * starts on the frame nearest to its instant. A new schedule takes the place of the old at any
 * position: what no longer holds fades out, and no cue is given twice. Not thread-safe.
 */
public final class CueMixer {
  private static final int FADES_PER_SECOND = 100;

  private final SoundBank bank;
  private final int rate;
  private final List<Voice> voices = new ArrayList<>();
  private final Deque<Sounding> ahead = new ArrayDeque<>();

  /**
   * Those of the last {@link SoundSource#LATE_NANOS} or longer that sound the same whatever their
   * count.
   */
  private final List<Sounding> justBegun = new ArrayList<>();

  private final SpeechLane lane;
  private SoundLevels levels;
  private SoundSource source;
  private long position;
  private long aheadUntil;

  /**
   * A mixer at frame 0 without a schedule.
   *
   * @param rate frames a second, 44,100 or 48,000
   * @param levels how loud
   */
  public CueMixer(int rate, SoundLevels levels) {
    this(new SoundBank(rate), levels);
  }

  CueMixer(SoundBank bank, SoundLevels levels) {
    this.bank = bank;
    this.rate = bank.rate();
    this.lane = new SpeechLane(rate);
    this.levels = Objects.requireNonNull(levels, "levels");
  }

  public int rate() {
    return rate;
  }

  /** The frame that comes next. */
  public long position() {
    return position;
  }

  /** The frame on which an instant of the session falls: the nearest one. */
  public long frameAt(long nanos) {
    return Frames.at(nanos, rate);
  }

  /** Sets how loud everything is; what sounds follows within 10 ms at full range. */
  public void setLevels(SoundLevels newLevels) {
    levels = Objects.requireNonNull(newLevels, "newLevels");
    for (Voice voice : voices) {
      voice.levels(levels);
    }
  }

  /**
   * Takes a schedule in place of the one before. Cues that it adds within the last {@link
   * SoundSource#LATE_NANOS} start at the position.
   */
  public void publish(CueSchedule newSchedule) {
    publish(SoundSource.of(newSchedule));
  }

  /** Takes another source in place of the one before, in the same way. */
  public void publish(SoundSource newSource) {
    SoundSource old = source;
    source = Objects.requireNonNull(newSource, "newSource");
    List<Sounding> added = new ArrayList<>();
    long late = position - Frames.at(SoundSource.LATE_NANOS, rate);
    justBegun.removeIf(b -> Frames.at(b.atNanos(), rate) < late);
    for (Sounding cue : startingIn(late, position + 1)) {
      if (old == null || !begun(old, cue)) {
        added.add(cue);
      }
    }
    added.removeIf(this::takenOver);
    justBegun.removeIf(b -> same(source, b).isEmpty());
    for (Voice voice : voices) {
      voice.fadeFrom(lastsUntil(voice.cue()));
    }
    lane.drop(said -> said.origin().map(o -> same(source, o).isEmpty()).orElse(false));
    ahead.clear();
    aheadUntil = position + 1;
    for (Sounding cue : added) {
      if (Frames.at(cue.atNanos(), rate) < position) {
        start(cue, 0);
      } else {
        ahead.add(cue);
      }
    }
  }

  /**
   * Lets a sound that has just begun and no longer holds go on as that cue, which came a moment too
   * late: the same sound twice in a tenth of a second would be heard as two cues.
   */
  private boolean takenOver(Sounding cue) {
    boolean taken = justBegun.removeIf(b -> b.soundsLike(cue) && same(source, b).isEmpty());
    if (taken) {
      justBegun.add(cue);
      for (Voice voice : voices) {
        boolean old = voice.cue().soundsLike(cue) && same(source, voice.cue()).isEmpty();
        if (old && !voice.fading()) {
          voice.goOnAs(cue);
        }
      }
    }
    return taken;
  }

  /**
   * Whether a schedule had that sound before the position. Two rhythms in step may differ by the
   * rounding of a nanosecond, which may fall between two frames.
   */
  private boolean begun(SoundSource old, Sounding cue) {
    return same(old, cue).stream().anyMatch(c -> Frames.at(c.atNanos(), rate) < position);
  }

  /**
   * Says a line as soon as it may be heard, under the prompts.
   *
   * @param atNanos when it was said, nanoseconds of the sound's time
   * @param urgent whether it may cut a line short that is not
   */
  public void say(SpokenLine line, long atNanos, boolean urgent) {
    lane.say(new LineQueue.Said(line, Frames.at(atNanos, rate), urgent, Optional.empty()));
  }

  /** Lets a spoken line fade out and forgets those that wait; the prompts go on. */
  public void hush() {
    lane.hush();
  }

  /** Lets what sounds fade out; nothing follows until a schedule is published. */
  public void stop() {
    lane.hush();
    for (Voice voice : voices) {
      voice.fadeFrom(position);
    }
    ahead.clear();
    source = null;
  }

  /**
   * Goes forward at once, as after a hole in the sound. Cues of the last {@link
   * SoundSource#LATE_NANOS} that were jumped over start at the new position. What sounds goes on,
   * unless the jump is longer.
   *
   * @param frame where to go on, not before the position
   */
  public void jumpTo(long frame) {
    if (frame < position) {
      throw new IllegalArgumentException("back from frame " + position + " to " + frame);
    }
    if (frame - position <= rate && silentFrames(frame - position) == frame - position) {
      position = frame;
      return;
    }
    long late = Frames.at(SoundSource.LATE_NANOS, rate);
    List<Sounding> missed =
        source == null ? List.of() : startingIn(Math.max(position, frame - late), frame);
    if (frame - position > late) {
      // The hole was silent already, so there is nothing to fade.
      voices.clear();
    }
    position = frame;
    ahead.clear();
    aheadUntil = frame;
    for (Sounding cue : missed) {
      start(cue, 0);
    }
  }

  /**
   * How many frames from the position on are silent for certain.
   *
   * @param most how far to look, frames
   */
  public long silentFrames(long most) {
    if (!voices.isEmpty() || lane.busy()) {
      return 0;
    }
    if (source == null) {
      return most;
    }
    lookAhead(position + most);
    return ahead.isEmpty()
        ? most
        : Math.min(most, Frames.at(ahead.peekFirst().atNanos(), rate) - position);
  }

  /**
   * Mixes the next frames.
   *
   * @param out receives mono samples from its start, -1 to 1
   * @param frames how many, not more than the array holds
   * @return whether there may be sound among them; if not, all of them are zero
   */
  public boolean mix(float[] out, int frames) {
    Arrays.fill(out, 0, frames, 0);
    if (source != null) {
      lookAhead(position + frames);
    }
    while (!ahead.isEmpty()) {
      long in = Frames.at(ahead.peekFirst().atNanos(), rate) - position;
      if (in >= frames) {
        break;
      }
      start(ahead.removeFirst(), (int) in);
    }
    boolean sounds = !voices.isEmpty();
    if (lane.busy()) {
      sounds |=
          lane.mix(
              out, frames, position, levels.gain(SoundKind.EXAMINER), share(frames), quietFrames());
    }
    if (sounds) {
      for (Voice voice : voices) {
        voice.addTo(out, frames, position);
      }
      voices.removeIf(Voice::done);
      Limiter.apply(out, frames);
    }
    position += frames;
    return sounds;
  }

  /** What the prompts of the next frames leave to a spoken line. */
  private double share(int frames) {
    double share = 1;
    for (Voice voice : voices) {
      if (voice.soundsWithin(frames)) {
        share = Math.min(share, shareUnder(voice.kind()));
      }
    }
    return share;
  }

  /** A tick is too short to hide words; two voices can hardly be told apart (our own choice). */
  private static double shareUnder(SoundKind kind) {
    return switch (kind) {
      case SQUEEZE, RELEASE, REMINDER, DONE -> 0.5;
      case VOICE -> 0.35;
      case COUNT, COMPRESSION, EXAMINER -> 1;
    };
  }

  /** For how long none of the coach's own words can be heard, as far as is known by now, frames. */
  private long quietFrames() {
    long quiet = Long.MAX_VALUE;
    for (Voice voice : voices) {
      quiet = Math.min(quiet, voice.reminderInFrames());
    }
    if (source == null || levels.gain(SoundKind.VOICE) <= 0) {
      return quiet;
    }
    lookAhead(position + rate / 2);
    for (Sounding cue : ahead) {
      if (cue instanceof Sounding.Prompt prompt && !cue.uncounted() && !cue.spokenCount()) {
        long in = Frames.at(cue.atNanos(), rate) - position;
        for (Layer layer : bank.of(prompt, levels.countStyle())) {
          if (layer.kind() == SoundKind.VOICE) {
            quiet = Math.min(quiet, in + layer.delayFrames());
          }
        }
      }
    }
    return quiet;
  }

  private void start(Sounding cue, int inFrames) {
    if (cue instanceof Sounding.Line line) {
      lane.say(new LineQueue.Said(line.words(), position + inFrames, false, Optional.of(line)));
      return;
    }
    if (cue.uncounted()) {
      long late = position - Frames.at(SoundSource.LATE_NANOS, rate);
      justBegun.removeIf(b -> Frames.at(b.atNanos(), rate) < late);
      justBegun.add(cue);
    }
    for (Layer layer : bank.of(cue, levels.countStyle())) {
      double gain = levels.gain(layer.kind());
      int taken = layer.kind() == SoundKind.VOICE ? framesOfReminders() : 0;
      boolean drowned = cue.spokenCount() && remindedWithin(inFrames, layer);
      if (gain > 0 && !drowned) {
        int from = Math.max(inFrames, taken - layer.delayFrames());
        Voice voice = new Voice(cue, layer, gain, from, rate / FADES_PER_SECOND);
        voice.fadeFrom(lastsUntil(cue));
        voices.add(voice);
      }
    }
  }

  /** For how long a reminder goes on speaking: two voices at once can't be understood. */
  private int framesOfReminders() {
    int frames = 0;
    for (Voice voice : voices) {
      frames = Math.max(frames, voice.reminderFrames());
    }
    return frames;
  }

  private boolean remindedWithin(int inFrames, Layer layer) {
    int until = inFrames + layer.delayFrames() + layer.samples().length;
    return layer.kind() == SoundKind.VOICE
        && voices.stream().anyMatch(v -> v.remindsBetween(inFrames, until));
  }

  /** Keeps the cues of about the next second at hand. */
  private void lookAhead(long untilFrame) {
    while (aheadUntil < untilFrame) {
      long to = Math.max(untilFrame, aheadUntil + rate);
      ahead.addAll(startingIn(aheadUntil, to));
      aheadUntil = to;
    }
  }

  private List<Sounding> startingIn(long fromFrame, long toFrame) {
    List<Sounding> cues = new ArrayList<>();
    for (Sounding cue :
        source.between(Frames.nanosOf(fromFrame - 1, rate), Frames.nanosOf(toFrame, rate) + 1)) {
      long frame = Frames.at(cue.atNanos(), rate);
      if (frame >= fromFrame && frame < toFrame) {
        cues.add(cue);
      }
    }
    return cues;
  }

  /** Where a cue's sound must end at the latest; the position itself if it no longer holds. */
  private long lastsUntil(Sounding cue) {
    if (same(source, cue).isEmpty()) {
      return position;
    }
    long end = source.soundsUntil(cue);
    return Math.max(position, Frames.at(end, rate));
  }

  /** The cues of a schedule that sound like that one and fall on its frame or the next to it. */
  private List<Sounding> same(SoundSource source, Sounding cue) {
    long frame = Frames.at(cue.atNanos(), rate);
    long from = Frames.nanosOf(frame - 2, rate);
    List<Sounding> found = new ArrayList<>();
    for (Sounding other : source.between(from, Frames.nanosOf(frame + 2, rate))) {
      boolean near = Math.abs(Frames.at(other.atNanos(), rate) - frame) <= 1;
      if (near && other.soundsLike(cue)) {
        found.add(other);
      }
    }
    return found;
  }
}
