package squeezewell.audio;

/** One layer of a cue while it sounds. */
final class Voice {
  static final long NEVER = Long.MAX_VALUE;

  private Sounding cue;
  private final Layer layer;
  private final int rampFrames;
  private int waitFrames;
  private int next;
  private float gain;
  private float wantedGain;
  private long fadeFromFrame;
  private int fadeLeft;

  /**
   * A voice that starts.
   *
   * @param cue what it tells
   * @param layer its sound
   * @param gain its volume
   * @param inFrames how far into the next block it starts
   * @param rampFrames how long a fade or a change of volume takes
   */
  Voice(Sounding cue, Layer layer, double gain, int inFrames, int rampFrames) {
    this.cue = cue;
    this.layer = layer;
    this.gain = (float) (gain * layer.share());
    this.wantedGain = this.gain;
    this.waitFrames = inFrames + layer.delayFrames();
    this.rampFrames = rampFrames;
    this.fadeFromFrame = NEVER;
    this.fadeLeft = rampFrames;
  }

  Sounding cue() {
    return cue;
  }

  /** From now on it tells another cue that sounds the same. */
  void goOnAs(Sounding other) {
    cue = other;
  }

  /** Frames from the next block on for which words of a reminder go on; 0 for any other voice. */
  int reminderFrames() {
    boolean reminds = layer.kind() == SoundKind.VOICE && !cue.spokenCount();
    return reminds ? waitFrames + layer.samples().length - next : 0;
  }

  /** Whose volume it follows. */
  SoundKind kind() {
    return layer.kind();
  }

  /** Whether it can be heard among the next frames. */
  boolean soundsWithin(int frames) {
    return waitFrames < frames;
  }

  /** In how many frames its words of a reminder can be heard; never for any other voice. */
  long reminderInFrames() {
    return reminderFrames() > 0 ? waitFrames : NEVER;
  }

  /** Whether its words of a reminder can be heard there, frames from the next block on. */
  boolean remindsBetween(int from, int to) {
    return reminderFrames() > from && waitFrames < to;
  }

  boolean done() {
    return next >= layer.samples().length || fadeLeft <= 0;
  }

  boolean fading() {
    return fadeLeft < rampFrames;
  }

  /** Lets it fade out from a frame on; a fade that has begun goes on. */
  void fadeFrom(long frame) {
    if (fadeLeft == rampFrames) {
      fadeFromFrame = frame;
    }
  }

  void levels(SoundLevels levels) {
    wantedGain = (float) (levels.gain(layer.kind()) * layer.share());
  }

  /** Adds its next samples to a block that starts at a frame. */
  void addTo(float[] out, int frames, long atFrame) {
    int at = Math.min(waitFrames, frames);
    waitFrames -= at;
    boolean waited = at > 0 && fadeFromFrame <= atFrame;
    boolean startsTooLate = waitFrames == 0 && fadeFromFrame <= atFrame + at;
    if (next == 0 && (waited || startsTooLate)) {
      // Not yet heard, so there is nothing to fade.
      fadeLeft = 0;
    }
    int count = Math.min(frames - at, layer.samples().length - next);
    boolean plain = gain == wantedGain && fadeFromFrame >= atFrame + frames;
    if (plain) {
      float[] samples = layer.samples();
      for (int i = 0; i < count; i++) {
        out[at + i] += gain * samples[next + i];
      }
      next += Math.max(0, count);
    } else {
      addRamped(out, at, count, atFrame);
    }
  }

  private void addRamped(float[] out, int at, int count, long atFrame) {
    float step = 1f / rampFrames;
    for (int i = 0; i < count && !done(); i++) {
      if (atFrame + at + i >= fadeFromFrame) {
        fadeLeft--;
      }
      float way = wantedGain - gain;
      gain = Math.abs(way) <= step ? wantedGain : gain + Math.copySign(step, way);
      out[at + i] += gain * layer.samples()[next++] * fadeLeft / rampFrames;
    }
  }
}
