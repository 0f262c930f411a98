package squeezewell.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** The head of a RIFF WAVE file with linear PCM, mono, 16 bits. Pure. */
final class WavHeader {
  static final int LENGTH = 44;

  /** Sizes in such a file are unsigned numbers of 32 bits. */
  static final long MOST_FRAMES = (0xFFFF_FFFFL - LENGTH) / Pcm.BYTES_PER_SAMPLE;

  private static final short FORMAT_PCM = 1;

  private WavHeader() {}

  /**
   * The first {@link #LENGTH} bytes of a file.
   *
   * @param rate frames a second
   * @param frames length of the sound, at most {@link #MOST_FRAMES}
   */
  static byte[] of(int rate, long frames) {
    if (frames < 0 || frames > MOST_FRAMES) {
      throw new IllegalArgumentException(frames + " frames; a WAV file holds " + MOST_FRAMES);
    }
    long bytes = frames * Pcm.BYTES_PER_SAMPLE;
    return ByteBuffer.allocate(LENGTH)
        .order(ByteOrder.LITTLE_ENDIAN)
        .put(ascii("RIFF"))
        .putInt((int) (bytes + LENGTH - 8))
        .put(ascii("WAVEfmt "))
        .putInt(16)
        .putShort(FORMAT_PCM)
        .putShort((short) 1)
        .putInt(rate)
        .putInt(rate * Pcm.BYTES_PER_SAMPLE)
        .putShort((short) Pcm.BYTES_PER_SAMPLE)
        .putShort((short) (8 * Pcm.BYTES_PER_SAMPLE))
        .put(ascii("data"))
        .putInt((int) bytes)
        .array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
