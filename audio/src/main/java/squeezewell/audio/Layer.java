package squeezewell.audio;

import java.util.Objects;

/**
 * One part of what a cue sounds like. The samples are shared and must not be changed.
 *
 * @param kind whose volume it follows
 * @param samples the sound at full volume
 * @param delayFrames how long after the cue it starts, frames
 * @param share part of the volume it takes, 0 to 1
 */
@SuppressWarnings("ArrayRecordComponent") // never compared; copies would cost memory
record Layer(SoundKind kind, float[] samples, int delayFrames, double share) {
  Layer {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(samples, "samples");
  }

  static Layer of(SoundKind kind, float[] samples) {
    return new Layer(kind, samples, 0, 1);
  }
}
