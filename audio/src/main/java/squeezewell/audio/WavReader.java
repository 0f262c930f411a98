package squeezewell.audio;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/** Reads the program's own WAV files: mono, 16 bits or 8 bits of mu-law. Pure. */
final class WavReader {
  private static final int FORMAT_PCM = 1;
  private static final int FORMAT_MU_LAW = 7;

  /** What is added before a number is split into segments (ITU-T G.711, mu-law, 16-bit scale). */
  private static final int BIAS = 132;

  private WavReader() {}

  /**
   * A whole file.
   *
   * @throws IOException if it is damaged or of another kind
   */
  static SpokenLine read(InputStream stream) throws IOException {
    return parse(ByteBuffer.wrap(new DataInputStream(stream).readAllBytes()));
  }

  private static SpokenLine parse(ByteBuffer file) throws IOException {
    file.order(ByteOrder.LITTLE_ENDIAN);
    if (file.limit() < 12) {
      throw new IOException("no sound in it");
    }
    file.position(12);
    int rate = 0;
    boolean muLaw = false;
    while (file.remaining() >= 8) {
      byte[] tag = new byte[4];
      file.get(tag);
      int length = file.getInt();
      if (length < 0 || length > file.remaining()) {
        break;
      }
      String id = new String(tag, StandardCharsets.US_ASCII);
      if (id.equals("fmt ")) {
        ByteBuffer format = file.slice().order(ByteOrder.LITTLE_ENDIAN);
        muLaw = isMuLaw(format, length);
        rate = format.getInt(4);
      } else if (id.equals("data") && rate > 0) {
        return new SpokenLine(samples(file, length, muLaw), rate);
      }
      file.position(Math.min(file.limit(), file.position() + length + length % 2));
    }
    throw new IOException("no sound in it");
  }

  private static boolean isMuLaw(ByteBuffer format, int length) throws IOException {
    if (length < 16) {
      throw new IOException("no format in it");
    }
    int kind = format.getShort(0);
    int bits = format.getShort(14);
    boolean known = (kind == FORMAT_PCM && bits == 16) || (kind == FORMAT_MU_LAW && bits == 8);
    if (!known || format.getShort(2) != 1) {
      throw new IOException("not mono with 16 bits or with 8 bits of mu-law");
    }
    return kind == FORMAT_MU_LAW;
  }

  private static short[] samples(ByteBuffer data, int length, boolean muLaw) {
    short[] samples = new short[muLaw ? length : length / 2];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = muLaw ? ofMuLaw(data.get()) : data.getShort();
    }
    return samples;
  }

  /** The number that a byte of mu-law stands for (ITU-T G.711), on a scale of 16 bits. */
  static short ofMuLaw(byte code) {
    int bits = ~code & 0xFF;
    int size = (((bits & 0x0F) << 3) + BIAS) << ((bits & 0x70) >> 4);
    return (short) ((bits & 0x80) != 0 ? BIAS - size : size - BIAS);
  }
}
