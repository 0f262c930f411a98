package squeezewell.station.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.input.BadInputException;
import squeezewell.input.InputFile;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;

/**
 * Reads station files, format versions 1 and 2, as docs/formats.md describes them. All faults are
 * gathered; a file with any fault gives no station. Here stands what a file as a whole must be;
 * {@link StationParser} reads what is in it.
 */
public final class StationReader {
  public static final String FORMAT = "squeezewell-station";
  public static final int VERSION = 2;

  /** The longest definition, in bytes, since it stands on one line of a session. */
  static final int LONGEST_DEFINITION = 40_000;

  private static final long LARGEST_FILE = 400_000;

  private StationReader() {}

  /**
   * Reads a file.
   *
   * @throws BadInputException if the file is not a station that this version can use
   */
  public static Station readFile(Path file) throws BadInputException {
    return checkFile(file).require();
  }

  /** Reads a text; {@code source} names it in messages. */
  public static Station readText(String source, String text) throws BadInputException {
    return checkText(source, text).require();
  }

  /** Reads a file and tells all that is wrong with it. */
  public static StationFile checkFile(Path file) {
    String source = file.toString();
    try {
      InputFile.require(file, LARGEST_FILE);
      ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file));
      return checkText(source, StandardCharsets.UTF_8.newDecoder().decode(bytes).toString());
    } catch (BadInputException e) {
      return unusable(e);
    } catch (CharacterCodingException e) {
      return unusable(BadInputException.fault(source, "", "the text is not UTF-8"));
    } catch (IOException e) {
      return unusable(
          BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")"));
    }
  }

  /** Reads a text and tells all that is wrong with it. */
  public static StationFile checkText(String source, String text) {
    try {
      JsonValue top = Json.readText(source, text);
      long version = version(top);
      return new StationParser(top).read(definition(top), version);
    } catch (BadInputException e) {
      return unusable(e);
    }
  }

  private static StationFile unusable(BadInputException fault) {
    return new StationFile(Optional.empty(), List.of(fault), List.of(), Map.of());
  }

  private static long version(JsonValue top) throws BadInputException {
    top.choice("format", List.of(FORMAT), f -> f);
    long version = top.integer("version", 1, Integer.MAX_VALUE);
    if (version > VERSION) {
      throw BadInputException.notAllowed(
          top.source(),
          "version",
          Long.toString(version),
          "at most " + VERSION + "; this file was made by a newer version of Squeezewell");
    }
    return version;
  }

  private static String definition(JsonValue top) throws BadInputException {
    String text = top.compact();
    int bytes = text.getBytes(StandardCharsets.UTF_8).length;
    if (bytes > LONGEST_DEFINITION) {
      throw BadInputException.notAllowed(
          top.source(),
          "size",
          bytes + " bytes without needless space",
          "at most " + LONGEST_DEFINITION + " bytes");
    }
    return text;
  }
}
