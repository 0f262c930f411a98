package squeezewell.audio;

/** Where sound comes out: the seam between our code and the sound card. */
@FunctionalInterface
public interface SoundDevice {
  /**
   * Opens a line and starts it. May take seconds; called on the sound thread only.
   *
   * @throws SoundUnavailableException if no device can be opened now
   */
  SoundLine open() throws SoundUnavailableException;
}
