package squeezewell.session;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A journal in a file of its own, one JSON object a line. Each event is handed to the operating
 * system before {@link #append} returns, so a process that is killed loses none; {@link #close}
 * also forces the file to the disk. Not thread-safe: one thread writes.
 */
public final class FileJournal implements Journal {
  private final FileChannel channel;
  private final Path file;

  private FileJournal(FileChannel channel, Path file) {
    this.channel = channel;
    this.file = file;
  }

  /**
   * Makes a new file and writes the header.
   *
   * @param file must not exist; missing folders are made
   * @throws IOException if the file exists or can't be written
   */
  public static FileJournal create(Path file, SessionHeader header) throws IOException {
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    FileJournal journal = new FileJournal(channel, file);
    try {
      journal.write(SessionFormat.line(header));
    } catch (IOException e) {
      channel.close();
      throw e;
    }
    return journal;
  }

  @Override
  public void append(SessionEvent event) throws IOException {
    write(SessionFormat.line(event));
  }

  /** Where the session is kept. */
  public Path file() {
    return file;
  }

  @Override
  public void close() throws IOException {
    if (channel.isOpen()) {
      channel.force(true);
      channel.close();
    }
  }

  private void write(String line) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.UTF_8));
    while (bytes.hasRemaining()) {
      channel.write(bytes);
    }
  }
}
