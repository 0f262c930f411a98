package squeezewell.storage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.time.Instant;
import java.util.UUID;

/**
 * Writes files that are there whole or not at all, after a power cut too: the old file or the new
 * one, never a part. Where a name is a link, the file that it leads to is written; a file that is
 * replaced keeps its rights.
 */
public final class WholeFile {
  private static final String ENDING = ".part";

  private final Disk disk;

  WholeFile(Disk disk) {
    this.disk = disk;
  }

  /** As the other, a text as UTF-8. */
  public static void write(Path path, String text, boolean replace) throws IOException {
    // An encoder of its own: it refuses what is no text, where getBytes would put question marks.
    ByteBuffer encoded = StandardCharsets.UTF_8.newEncoder().encode(CharBuffer.wrap(text));
    byte[] bytes = new byte[encoded.remaining()];
    encoded.get(bytes);
    write(path, bytes, replace);
  }

  /**
   * Writes bytes. The file appears only when it is complete and forced to the disk.
   *
   * @param path where to, in a folder that is there
   * @param bytes what to write
   * @param replace whether a file that is there may be replaced
   * @throws FileAlreadyExistsException if something is there and may not be replaced
   * @throws IOException if it can't be written; what was there is left as it is
   */
  public static void write(Path path, byte[] bytes, boolean replace) throws IOException {
    new WholeFile(Disk.ofThisMachine()).put(path, bytes, replace, Disk.Rights.USUAL);
  }

  /** As {@link #write}, in place of a file that may be there; only its owner can read a new one. */
  public static void writeOwn(Path path, String text) throws IOException {
    new WholeFile(Disk.ofThisMachine())
        .put(path, text.getBytes(StandardCharsets.UTF_8), true, Disk.Rights.OWNER);
  }

  void put(Path path, byte[] bytes, boolean replace, Disk.Rights rights) throws IOException {
    boolean there = Files.exists(path);
    Path real = there && replace ? path.toRealPath() : path;
    // Not a temporary file of the system's: that would be hidden from other users for good.
    Path part = real.resolveSibling("." + real.getFileName() + "-" + UUID.randomUUID() + ENDING);
    try {
      try (Disk.OpenFile out = disk.create(part, rights)) {
        out.write(0, bytes);
        out.force();
      }
      if (there && replace) {
        copyRights(real, part);
      }
      if (replace) {
        disk.replace(part, real);
      } else {
        disk.rename(part, real);
      }
      disk.forceFolder(real.toAbsolutePath().getParent());
    } finally {
      disk.delete(part);
    }
  }

  private static void copyRights(Path from, Path to) throws IOException {
    PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
    PosixFileAttributeView fresh = Files.getFileAttributeView(to, PosixFileAttributeView.class);
    if (old != null && fresh != null) {
      fresh.setPermissions(old.readAttributes().permissions());
    }
  }

  /**
   * Gives a file that can't be used another name beside its own, so that nothing is written over
   * it.
   *
   * @return its new name
   */
  public static Path putAside(Path path) throws IOException {
    String name = path.getFileName().toString();
    int dot = name.lastIndexOf('.');
    String stem = dot < 0 ? name : name.substring(0, dot);
    String ending = dot < 0 ? "" : name.substring(dot);
    for (int n = 1; ; n++) {
      Path aside = path.resolveSibling(stem + "-not-used-" + n + ending);
      if (!Files.exists(aside, LinkOption.NOFOLLOW_LINKS)) {
        return Files.move(path, aside);
      }
    }
  }

  /**
   * Removes what programs that were killed in writing left behind in a folder.
   *
   * @param before what was last written after that may still be in work, and stays
   */
  public static void cleanUp(Path folder, Instant before) {
    try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, ".*" + ENDING)) {
      for (Path part : parts) {
        if (Files.getLastModifiedTime(part, LinkOption.NOFOLLOW_LINKS)
            .toInstant()
            .isBefore(before)) {
          Files.deleteIfExists(part);
        }
      }
    } catch (IOException e) {
      // They only take up room.
    }
  }
}
