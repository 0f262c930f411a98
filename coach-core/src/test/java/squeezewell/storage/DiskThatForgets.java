package squeezewell.storage;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;

/**
 * A model of a disk with a power cut: of a file remains what was forced, and by chance some of what
 * was not, up to any byte, with zeros where the rest would be; of a name remains what it was when
 * its folder was last forced, and by chance what it is now.
 */
final class DiskThatForgets implements Disk {
  private static final class Content {
    byte[] now = {};
    byte[] forced = {};
  }

  private final Random random;
  private final Map<Path, Content> names = new HashMap<>();
  private final Map<Path, Content> forcedNames = new HashMap<>();
  private IOException failure;

  DiskThatForgets(Random random) {
    this.random = random;
  }

  /** Writes fail from now on after half of the bytes; null ends it. */
  void failWith(IOException fault) {
    failure = fault;
  }

  /** What stands in a file now. */
  byte[] content(Path path) {
    return names.get(path).now.clone();
  }

  /** Writes what a power cut leaves of this disk into a folder. */
  void cutInto(Path folder) throws IOException {
    Map<Path, Content> left = random.nextInt(4) == 0 ? names : forcedNames;
    for (Map.Entry<Path, Content> entry : left.entrySet()) {
      Content content = entry.getValue();
      byte[] bytes = content.forced.clone();
      if (content.now.length > bytes.length && random.nextBoolean()) {
        int more = random.nextInt(content.now.length - bytes.length + 1);
        int good = bytes.length + random.nextInt(more + 1);
        // Past the bytes that came to the disk, the length is longer and zeros stand there.
        bytes = Arrays.copyOf(Arrays.copyOf(content.now, good), content.forced.length + more);
      }
      Files.write(folder.resolve(entry.getKey().getFileName().toString()), bytes);
    }
  }

  @Override
  public OpenFile create(Path path, Rights rights) throws IOException {
    Content content = new Content();
    if (names.putIfAbsent(path, content) != null) {
      throw new FileAlreadyExistsException(path.toString());
    }
    return new OpenFile() {
      @Override
      public long length() {
        return content.now.length;
      }

      @Override
      public void setLength(long length) {
        content.now = Arrays.copyOf(content.now, (int) length);
      }

      @Override
      public void write(long at, byte[] bytes) throws IOException {
        int taken = failure == null ? bytes.length : bytes.length / 2;
        byte[] longer = Arrays.copyOf(content.now, Math.max(content.now.length, (int) at + taken));
        System.arraycopy(bytes, 0, longer, (int) at, taken);
        content.now = longer;
        if (failure != null) {
          throw failure;
        }
      }

      @Override
      public void force() {
        content.forced = content.now.clone();
      }

      @Override
      public void close() {
        // What was not forced is still not forced.
      }
    };
  }

  @Override
  public void replace(Path from, Path to) {
    names.put(to, names.remove(from));
  }

  @Override
  public void rename(Path from, Path to) throws IOException {
    if (names.containsKey(to)) {
      throw new FileAlreadyExistsException(to.toString());
    }
    replace(from, to);
  }

  @Override
  public void forceFolder(Path folder) {
    forcedNames.clear();
    forcedNames.putAll(names);
  }

  @Override
  public void delete(Path path) {
    names.remove(path);
  }
}
