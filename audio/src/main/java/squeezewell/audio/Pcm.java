package squeezewell.audio;

/** Turns samples into bytes: signed 16 bits, little-endian. Pure apart from the array it fills. */
final class Pcm {
  static final int BYTES_PER_SAMPLE = 2;
  private static final int FULL_SCALE = 32_767;

  private Pcm() {}

  /**
   * Writes the first samples, each once for every channel.
   *
   * @param samples mono, -1 to 1
   * @param frames how many of them
   * @param channels 1 or more
   * @param bytes receives {@code frames * channels * 2} bytes
   * @param from where in it they start
   */
  static void encode(float[] samples, int frames, int channels, byte[] bytes, int from) {
    int at = from;
    for (int i = 0; i < frames; i++) {
      int value = Math.round(samples[i] * FULL_SCALE);
      for (int c = 0; c < channels; c++) {
        bytes[at++] = (byte) value;
        bytes[at++] = (byte) (value >> 8);
      }
    }
  }
}
