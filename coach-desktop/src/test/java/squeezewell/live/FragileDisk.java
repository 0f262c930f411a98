package squeezewell.live;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import squeezewell.storage.Disk;

/** The machine's disk, which fails when it is told to. */
final class FragileDisk implements Disk {
  private final Disk disk = Disk.ofThisMachine();
  volatile IOException failure;
  volatile IOException forceFailure;
  final AtomicInteger forced = new AtomicInteger();
  final AtomicInteger open = new AtomicInteger();

  @Override
  public OpenFile create(Path path, Rights rights) throws IOException {
    OpenFile file = disk.create(path, rights);
    open.incrementAndGet();
    return new OpenFile() {
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
        if (failure != null) {
          throw failure;
        }
        file.write(at, bytes);
      }

      @Override
      public void force() throws IOException {
        if (forceFailure != null) {
          throw forceFailure;
        }
        forced.incrementAndGet();
        file.force();
      }

      @Override
      public void close() throws IOException {
        open.decrementAndGet();
        file.close();
      }
    };
  }

  @Override
  public void replace(Path from, Path to) throws IOException {
    disk.replace(from, to);
  }

  @Override
  public void rename(Path from, Path to) throws IOException {
    disk.rename(from, to);
  }

  @Override
  public void forceFolder(Path folder) throws IOException {
    disk.forceFolder(folder);
  }

  @Override
  public void delete(Path path) throws IOException {
    disk.delete(path);
  }
}
