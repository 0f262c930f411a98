package squeezewell.audio;

import java.util.Arrays;
import java.util.concurrent.locks.LockSupport;

/** Plays one sound of a kind, so that a person can set its volume by ear. */
public final class SoundPreview {
  private static final long BUFFER_NANOS = 100_000_000L;
  private static final long WAIT_NANOS = 5_000_000L;
  private static final long TAIL_NANOS = 100_000_000L;

  private SoundPreview() {}

  /**
   * Plays the sound to its end. Waits for it, so call it on a thread that may wait.
   *
   * @param kind which kind
   * @param levels its volume; a muted kind is silent
   * @param device where to
   * @throws SoundUnavailableException if no device can be opened now
   */
  public static void play(SoundKind kind, SoundLevels levels, SoundDevice device)
      throws SoundUnavailableException {
    try (SoundLine line = device.open(BUFFER_NANOS)) {
      SoundGrant grant = line.grant();
      float[] sound = SoundSamples.render(kind, levels, grant.rate());
      int tail = (int) Frames.at(grant.bufferNanos() + TAIL_NANOS, grant.rate());
      float[] samples = Arrays.copyOf(sound, sound.length + tail);
      byte[] block = new byte[grant.bufferFrames() * grant.channels() * Pcm.BYTES_PER_SAMPLE];
      int at = 0;
      int idle = 0;
      // A device that takes nothing for two seconds is gone; the preview then just ends.
      while (at < samples.length && idle < 400) {
        int frames = Math.min(line.writableFrames(), samples.length - at);
        if (frames > 0) {
          float[] part = Arrays.copyOfRange(samples, at, at + frames);
          Pcm.encode(part, frames, grant.channels(), block, 0);
          if (line.write(block, frames) < frames) {
            return;
          }
          at += frames;
          idle = 0;
        } else {
          idle++;
          LockSupport.parkNanos(WAIT_NANOS);
        }
      }
    }
  }
}
