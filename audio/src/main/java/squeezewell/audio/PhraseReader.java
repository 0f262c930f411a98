package squeezewell.audio;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Reads the spoken prompts from the resources: mono WAV files of 16 bits. */
final class PhraseReader {
  private static final int FORMAT_PCM = 1;

  private PhraseReader() {}

  /**
   * A prompt at a frame rate of our choice.
   *
   * @param phrase which
   * @param rate frames a second
   * @throws IllegalStateException if the program's own file is damaged
   */
  static float[] read(Phrase phrase, int rate) {
    String name = "voice/" + phrase.file() + ".wav";
    try (InputStream stream =
        Objects.requireNonNull(PhraseReader.class.getResourceAsStream(name), name)) {
      return parse(ByteBuffer.wrap(new DataInputStream(stream).readAllBytes()), rate);
    } catch (IOException e) {
      throw new IllegalStateException("the spoken prompt " + name + " is damaged", e);
    }
  }

  private static float[] parse(ByteBuffer file, int rate) throws IOException {
    file.order(ByteOrder.LITTLE_ENDIAN);
    file.position(12);
    int fileRate = 0;
    while (file.remaining() >= 8) {
      byte[] tag = new byte[4];
      file.get(tag);
      int length = file.getInt();
      if (length < 0 || length > file.remaining()) {
        break;
      }
      String id = new String(tag, StandardCharsets.US_ASCII);
      if (id.equals("fmt ")) {
        fileRate = format(file.slice().order(ByteOrder.LITTLE_ENDIAN));
      } else if (id.equals("data") && fileRate > 0) {
        return Resampler.convert(samples(file, length / 2), fileRate, rate);
      }
      file.position(Math.min(file.limit(), file.position() + length + length % 2));
    }
    throw new IOException("no sound in it");
  }

  private static int format(ByteBuffer format) throws IOException {
    boolean known =
        format.getShort(0) == FORMAT_PCM && format.getShort(2) == 1 && format.getShort(14) == 16;
    if (!known) {
      throw new IOException("not mono with 16 bits");
    }
    return format.getInt(4);
  }

  private static float[] samples(ByteBuffer file, int count) {
    float[] samples = new float[count];
    for (int i = 0; i < count; i++) {
      samples[i] = file.getShort() / 32768f;
    }
    return samples;
  }
}
