package squeezewell.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** What must be known of a file before it is read. */
public final class InputFile {
  private InputFile() {}

  /**
   * Refuses what can't be read as a whole: a folder, a device or pipe that may never end, a file
   * that would fill the memory.
   *
   * @param file the file, not null
   * @param largestBytes size above which it is refused unread
   * @throws BadInputException if it is not there, not an ordinary file or too large
   * @throws IOException if that can't be found out
   */
  public static void require(Path file, long largestBytes) throws BadInputException, IOException {
    String source = file.toString();
    if (!Files.isRegularFile(file)) {
      throw BadInputException.fault(
          source,
          "",
          Files.exists(file)
              ? "this is a folder or a device; allowed: an ordinary file"
              : "there is no such file");
    }
    long size = Files.size(file);
    if (size > largestBytes) {
      throw BadInputException.notAllowed(
          source, "size", size + " bytes", "at most " + largestBytes + " bytes");
    }
  }
}
