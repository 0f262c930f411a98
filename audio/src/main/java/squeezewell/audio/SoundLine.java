package squeezewell.audio;

/** An open line of a {@link SoundDevice}. One thread uses it; {@link #close} may come from any. */
public interface SoundLine extends AutoCloseable {
  /** What the device gave. */
  SoundGrant grant();

  /** How many frames can be written now without waiting: 0 to the size of the buffer. */
  int writableFrames();

  /**
   * Writes frames, signed 16 bits, little-endian, interleaved.
   *
   * @param pcm holds the frames from its start
   * @param frames how many, at most {@link #writableFrames()}
   * @return how many it took; fewer than asked for means that the device is gone
   */
  int write(byte[] pcm, int frames);

  /** Stops at once and gives the device back. Does nothing the second time. */
  @Override
  void close();
}
