package squeezewell.audio;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Optional;

/**
 * The lines that come with the program, rendered ahead: all that the examiner of a built-in station
 * can say. A line is found by its text.
 */
public final class PreparedLines {
  private static final int NAME_BYTES = 8;

  private PreparedLines() {}

  /**
   * A line.
   *
   * @param text exactly what is shown
   * @return empty if there is no rendering of that text
   * @throws IllegalStateException if the program's own file is damaged
   */
  public static Optional<SpokenLine> find(String text) {
    String name = "voice/examiner/" + name(text) + ".wav";
    try (InputStream stream = PreparedLines.class.getResourceAsStream(name)) {
      return stream == null ? Optional.empty() : Optional.of(WavReader.read(stream));
    } catch (IOException e) {
      throw new IllegalStateException("the spoken line " + name + " is damaged", e);
    }
  }

  /** The name of a text's file, without ending: the first 16 hexadecimal digits of its SHA-256. */
  static String name(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      StringBuilder name = new StringBuilder();
      for (int i = 0; i < NAME_BYTES; i++) {
        name.append(String.format("%02x", hash[i]));
      }
      return name.toString();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
