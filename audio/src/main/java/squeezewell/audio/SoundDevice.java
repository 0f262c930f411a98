package squeezewell.audio;

/** Where sound comes out: the seam between our code and the sound card. */
@FunctionalInterface
public interface SoundDevice {
  /**
   * Opens a line and starts it. May take seconds; called on the sound thread only.
   *
   * @param bufferNanos how much it should hold, nanoseconds; it may give another
   * @throws SoundUnavailableException if no device can be opened now
   */
  SoundLine open(long bufferNanos) throws SoundUnavailableException;
}
