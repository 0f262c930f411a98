package squeezewell.audio;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Spoken lines under the prompts, one at a time. It only ever adds to a block, so no prompt is
 * moved. While a prompt sounds the line is lower; for the coach's own words it gives way, and
 * begins again after them if little of it was heard. Not thread-safe.
 */
final class SpeechLane {
  /** How long a line takes to go silent, or to become lower (our own choice). */
  static final long FALL_NANOS = 30_000_000L;

  /** How long it takes to be loud again (our own choice). */
  private static final double RISE_SECONDS = 0.15;

  /** Between two lines (our own choice). */
  private static final long GAP_NANOS = 250_000_000L;

  /** A line of which more than this was heard does not begin again (our own choice). */
  private static final double ENOUGH = 0.67;

  private final int rate;
  private final int gapFrames;
  private final float fallStep;
  private final float riseStep;
  private final LineQueue queue;
  private final Map<Integer, Resampler> resamplers = new HashMap<>();
  private LineQueue.Said current;
  private Resampler resampler;
  private int next;
  private int total;
  private float gain;
  private boolean leaving;
  private boolean again;
  private long freeFromFrame = Long.MIN_VALUE;

  SpeechLane(int rate) {
    this.rate = rate;
    this.gapFrames = (int) Frames.at(GAP_NANOS, rate);
    this.fallStep = 1f / Frames.at(FALL_NANOS, rate);
    this.riseStep = (float) (1 / (RISE_SECONDS * rate));
    this.queue = new LineQueue(rate);
  }

  /** How long it takes to go silent, frames. */
  int fallFrames() {
    return Math.round(1 / fallStep);
  }

  /** Whether a line sounds or waits. */
  boolean busy() {
    return current != null || !queue.isEmpty();
  }

  /** Takes a line; an urgent one cuts one that is not. */
  void say(LineQueue.Said said) {
    queue.add(said);
    if (said.urgent() && current != null && !current.urgent()) {
      leave(false);
    }
  }

  /** Lets what sounds fade out and forgets what waits. */
  void hush() {
    drop(said -> true);
  }

  /** The same for some lines only. */
  void drop(Predicate<LineQueue.Said> which) {
    queue.removeIf(which);
    if (current != null && which.test(current)) {
      leave(false);
    }
  }

  private void leave(boolean beginAgain) {
    again = beginAgain && (!leaving || again);
    leaving = true;
  }

  /**
   * Adds the next frames.
   *
   * @param out a block
   * @param frames how many
   * @param position the block's first frame
   * @param volume 0 to 1
   * @param share part of the volume that prompts leave, 0 to 1
   * @param quietFrames from the position on until the coach's own words begin
   * @return whether there may be sound among them
   */
  boolean mix(
      float[] out, int frames, long position, double volume, double share, long quietFrames) {
    if (current != null && quietFrames < frames + fallFrames()) {
      leave(next < ENOUGH * total);
    }
    boolean sounds = false;
    int at = 0;
    while (at < frames) {
      if (current == null) {
        at = begin(at, frames, position, volume, (float) (volume * share), quietFrames);
      }
      if (current != null) {
        at = add(out, at, frames, (float) (volume * share));
        sounds = true;
        if (current == null) {
          freeFromFrame = position + at + gapFrames;
        }
      }
    }
    return sounds;
  }

  /** Begins the next line if it may; returns where in the block, or the block's end. */
  private int begin(
      int from, int frames, long position, double volume, float wanted, long quietFrames) {
    Optional<LineQueue.Said> first = queue.peek(position + from);
    if (!first.isPresent()) {
      return frames;
    }
    LineQueue.Said said = first.get();
    if (volume <= 0) {
      queue.removeFirst();
      return from;
    }
    long at = Math.max(from, Math.max(said.atFrame(), freeFromFrame) - position);
    int length = resampler(said.line()).length(said.line().frames());
    if (at >= frames || at + length > quietFrames) {
      return frames;
    }
    queue.removeFirst();
    current = said;
    resampler = resampler(said.line());
    total = length;
    next = 0;
    gain = wanted;
    leaving = false;
    again = false;
    return (int) at;
  }

  private int add(float[] out, int from, int frames, float wanted) {
    float target = leaving ? 0 : wanted;
    int at = from;
    while (at < frames && next < total && !(leaving && gain <= 0)) {
      if (gain > target) {
        gain = Math.max(target, gain - fallStep);
      } else {
        gain = Math.min(target, gain + riseStep);
      }
      out[at++] += gain * resampler.sample(current.line(), next++);
    }
    if (at < frames || next >= total) {
      if (leaving && again) {
        queue.putBack(current);
      }
      current = null;
    }
    return at;
  }

  private Resampler resampler(SpokenLine line) {
    return resamplers.computeIfAbsent(line.rate(), from -> new Resampler(from, rate));
  }
}
