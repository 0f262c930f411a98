package squeezewell.storage;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayDeque;
import java.util.Deque;

/** The file system of the machine. */
final class MachineDisk implements Disk {
  private static final FileAttribute<?>[] USUAL = {};
  private static final boolean POSIX =
      FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

  @Override
  public OpenFile create(Path path, Rights rights) throws IOException {
    makeFolders(path.toAbsolutePath().getParent());
    Files.createFile(
        path,
        POSIX && rights == Rights.OWNER
            ? new FileAttribute<?>[] {
              PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
            }
            : USUAL);
    return new MachineFile(new RandomAccessFile(path.toFile(), "rw"));
  }

  /** A folder that is new is forced with the folder that it stands in. */
  private void makeFolders(Path folder) throws IOException {
    Deque<Path> missing = new ArrayDeque<>();
    for (Path each = folder; each != null && !Files.exists(each); each = each.getParent()) {
      missing.push(each);
    }
    Files.createDirectories(folder);
    for (Path each : missing) {
      forceFolder(each.getParent());
    }
  }

  @Override
  public void replace(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  @Override
  public void rename(Path from, Path to) throws IOException {
    if (Files.exists(to, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileAlreadyExistsException(to.toString());
    }
    Files.move(from, to);
  }

  @Override
  public void forceFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Some systems open no folders, and keep their names safe by themselves.
    }
  }

  @Override
  public void delete(Path path) throws IOException {
    Files.deleteIfExists(path);
  }

  /** Not a channel: an interrupt of the writing thread would close that for good. */
  private static final class MachineFile implements OpenFile {
    private final RandomAccessFile file;

    MachineFile(RandomAccessFile file) {
      this.file = file;
    }

    @Override
    public long length() throws IOException {
      return file.length();
    }

    @Override
    public void setLength(long length) throws IOException {
      file.setLength(length);
    }

    @Override
    public void write(long at, byte[] bytes) throws IOException {
      file.seek(at);
      file.write(bytes);
    }

    @Override
    public void force() throws IOException {
      file.getFD().sync();
    }

    @Override
    public void close() throws IOException {
      file.close();
    }
  }
}
