package squeezewell.audio;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;

/** Reads the spoken prompts from the resources. */
final class PhraseReader {
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
      SpokenLine line = WavReader.read(stream);
      return Resampler.convert(line, rate);
    } catch (IOException e) {
      throw new IllegalStateException("the spoken prompt " + name + " is damaged", e);
    }
  }
}
