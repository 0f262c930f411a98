package squeezewell.files;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolReader;
import squeezewell.protocol.ProtocolWriter;
import squeezewell.storage.WholeFile;
import squeezewell.words.Wording;

/**
 * The file of a local protocol, as it was when it was opened. Immutable.
 *
 * @param path where it is
 * @param text what stood in it
 * @param protocol what that says
 */
public record LocalProtocolFile(Path path, String text, Protocol protocol) {
  private static final Wording WORDS = Wording.beside(LocalProtocolFile.class);

  /**
   * Opens a file.
   *
   * @throws BadInputException if it is not a protocol that this version can use
   */
  public static LocalProtocolFile open(Path path) throws BadInputException {
    Protocol protocol = ProtocolReader.readFile(path).asLocal();
    try {
      return new LocalProtocolFile(path, Files.readString(path), protocol);
    } catch (IOException e) {
      throw HomeFolder.fault(path, WORDS.say("not-read", e.getMessage()));
    }
  }

  /**
   * Keeps a new protocol in a file of its own, named after its identifier; no file is replaced.
   *
   * @throws IOException if it can't be written
   */
  public static LocalProtocolFile create(HomeFolder home, Protocol protocol) throws IOException {
    Files.createDirectories(home.protocols());
    String text = text(protocol);
    for (int n = 1; ; n++) {
      Path path = home.protocols().resolve(protocol.id() + (n == 1 ? "" : "-" + n) + ".json");
      try {
        WholeFile.write(path, text, false);
        return new LocalProtocolFile(path, text, protocol);
      } catch (FileAlreadyExistsException e) {
        if (n == 1_000) {
          throw e;
        }
      }
    }
  }

  /**
   * Replaces the file by what the protocol says now. Fields that this version does not know are not
   * kept.
   *
   * @throws BadInputException if another program changed the file since it was opened; it is left
   *     as it is
   * @throws IOException if it can't be written; the old file is left as it is
   */
  public LocalProtocolFile replace(Protocol changed) throws BadInputException, IOException {
    // Where the name is a link, the file that it leads to is the one that was opened.
    Path real = path.toRealPath();
    if (!Files.readString(real).equals(text)) {
      throw HomeFolder.fault(path, WORDS.say("changed-elsewhere"));
    }
    String fresh = text(changed);
    WholeFile.write(real, fresh, true);
    return new LocalProtocolFile(path, fresh, changed);
  }

  /** A protocol as the text of a file that people can read and edit. */
  public static String text(Protocol protocol) {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      json.setIndent("  ");
      json.setHtmlSafe(false);
      ProtocolWriter.write(json, protocol);
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory can't be written", e);
    }
    return text + "\n";
  }
}
