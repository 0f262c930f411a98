package squeezewell.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Writes files that are there whole or not at all. */
public final class WholeFile {
  private WholeFile() {}

  /**
   * Writes a text as UTF-8. The file appears only when it is complete.
   *
   * @param path where to, in a folder that is there
   * @param text what to write
   * @param replace whether a file that is there may be replaced
   * @throws FileAlreadyExistsException if something is there and may not be replaced
   * @throws IOException if it can't be written; what was there is left as it is
   */
  public static void write(Path path, String text, boolean replace) throws IOException {
    // An encoder of its own: it refuses what is no text, where getBytes would put question marks.
    ByteBuffer encoded = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(text));
    byte[] bytes = new byte[encoded.remaining()];
    encoded.get(bytes);
    write(path, bytes, replace);
  }

  /**
   * Writes bytes. The file appears only when it is complete.
   *
   * @param path where to, in a folder that is there
   * @param bytes what to write
   * @param replace whether a file that is there may be replaced
   * @throws FileAlreadyExistsException if something is there and may not be replaced
   * @throws IOException if it can't be written; what was there is left as it is
   */
  public static void write(Path path, byte[] bytes, boolean replace) throws IOException {
    // Not a temporary file of the system's: that would be hidden from other users for good.
    Path part = path.resolveSibling("." + path.getFileName() + "-" + UUID.randomUUID() + ".part");
    try {
      Files.write(part, bytes, StandardOpenOption.CREATE_NEW);
      if (replace) {
        replace(part, path);
      } else if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
        throw new FileAlreadyExistsException(path.toString());
      } else {
        Files.move(part, path);
      }
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** A reader sees the old file or the new one, never a part, where the file system can do that. */
  private static void replace(Path part, Path path) throws IOException {
    try {
      Files.move(part, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, path, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
