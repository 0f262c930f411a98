package squeezewell.audio;

import java.util.Objects;

/**
 * What a sound device really gave, as against what was asked for.
 *
 * @param rate frames a second
 * @param channels 1 or 2
 * @param bufferFrames how many frames it holds at most
 * @param mixerName its name for people
 */
public record SoundGrant(int rate, int channels, int bufferFrames, String mixerName) {
  public SoundGrant {
    Objects.requireNonNull(mixerName, "mixerName");
    if (rate <= 0 || channels <= 0 || bufferFrames <= 0) {
      throw new IllegalArgumentException(rate + " Hz, " + channels + " ch, " + bufferFrames);
    }
  }

  /** Length of the buffer in nanoseconds. */
  public long bufferNanos() {
    return Frames.nanosOf(bufferFrames, rate);
  }
}
