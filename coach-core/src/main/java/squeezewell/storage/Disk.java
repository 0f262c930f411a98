package squeezewell.storage;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;

/**
 * The few things that are asked of a file system, so that a test can put one in its place that
 * loses what was not forced.
 */
public interface Disk {
  /** The file system of this machine. */
  static Disk ofThisMachine() {
    return new MachineDisk();
  }

  /**
   * Makes a new file; missing folders are made.
   *
   * @param rights of the new file
   * @throws java.nio.file.FileAlreadyExistsException if something is there
   * @throws IOException if it can't be made
   */
  OpenFile create(Path path, Rights rights) throws IOException;

  /** Gives a file another name in the same folder, in place of a file that has it. */
  void replace(Path from, Path to) throws IOException;

  /** Gives a file another name in the same folder; fails if something has it. */
  void rename(Path from, Path to) throws IOException;

  /** Forces the names in a folder to the disk, as far as the system can. */
  void forceFolder(Path folder) throws IOException;

  /** Removes a file if it is there. */
  void delete(Path path) throws IOException;

  /** Who may read a new file. */
  enum Rights {
    /** Its owner alone: it may hold the name of a person. */
    OWNER,
    /** Whoever the system says. */
    USUAL
  }

  /** A file that is open for writing. Only {@link #force} may be called from another thread. */
  interface OpenFile extends Closeable {
    long length() throws IOException;

    /** Cuts the file off. */
    void setLength(long length) throws IOException;

    /** Writes bytes at a place. */
    void write(long at, byte[] bytes) throws IOException;

    /** Forces what was written to the disk. */
    void force() throws IOException;
  }
}
