package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import squeezewell.input.BadInputException;
import squeezewell.storage.WholeFile;

/**
 * A file that a command is to write. What is there already is replaced only when that was asked
 * for, and then as a whole.
 *
 * @param option the option that names it
 * @param path where it is
 * @param force whether a file that is there may be replaced
 */
record OutputFile(String option, Path path, boolean force) {

  /** A file that can be written as far as can be known beforehand. */
  static OutputFile of(String option, String text, boolean force) throws BadInputException {
    Path path = path(option, text);
    Path folder = path.toAbsolutePath().getParent();
    String allowed = "";
    if (Files.isDirectory(path)) {
      allowed = "a file, not a folder";
    } else if (folder == null || !Files.isDirectory(folder)) {
      allowed = "a file in a folder that is there";
    } else if (Files.exists(path) && !Files.isRegularFile(path)) {
      // A device or a pipe would itself be replaced, and gone for every other program.
      allowed = "an ordinary file";
    } else if (Files.exists(path, LinkOption.NOFOLLOW_LINKS) && !force) {
      allowed = "a file that is not there yet, or --force to replace it";
    }
    if (!allowed.isEmpty()) {
      throw BadInputException.notAllowed(option, "", text, allowed);
    }
    return new OutputFile(option, path, force);
  }

  /** A path that a person wrote. */
  static Path path(String option, String text) throws BadInputException {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw BadInputException.notAllowed(option, "", text, "a path on this system");
    }
  }

  /** Refuses to write to a file that has another part in the same command. */
  void mustDifferFrom(String otherOption, Path other) throws BadInputException {
    if (same(other)) {
      throw BadInputException.notAllowed(
          option, "", path.toString(), "another file than that of " + otherOption);
    }
  }

  private boolean same(Path other) {
    if (path.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize())) {
      return true;
    }
    try {
      return Files.exists(path) && Files.exists(other) && Files.isSameFile(path, other);
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Writes a text as UTF-8. The file appears only when it is complete.
   *
   * @throws IOException if it can't be written; what was there is left as it is
   */
  void write(String text) throws IOException {
    WholeFile.write(path, text, force);
  }

  /** The same with bytes. */
  void write(byte[] bytes) throws IOException {
    WholeFile.write(path, bytes, force);
  }
}
