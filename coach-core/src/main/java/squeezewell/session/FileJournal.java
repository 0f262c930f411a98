package squeezewell.session;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;

/**
 * A journal in a file of its own, one JSON object a line. Each event is handed to the operating
 * system before {@link #append} returns, so a process that is killed loses none; {@link #close}
 * also forces the file to the disk. Not thread-safe: one thread writes.
 */
public final class FileJournal implements Journal {
  // Not a channel: an interrupt of the writing thread would close that for good.
  private final RandomAccessFile out;
  private final Path file;
  private long goodBytes;
  private boolean closed;

  private FileJournal(RandomAccessFile out, Path file) {
    this.out = out;
    this.file = file;
  }

  /**
   * Makes a new file and writes the header.
   *
   * @param file must not exist; missing folders are made
   * @throws IOException if the file exists or can't be written
   * @throws IllegalArgumentException if the header could not be read back, such as when its
   *     protocol holds values that no protocol file may hold
   */
  public static FileJournal create(Path file, SessionHeader header) throws IOException {
    String line = SessionFormat.line(header);
    requireReadable(header, line);
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    Files.createFile(file);
    RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw");
    FileJournal journal = new FileJournal(out, file);
    try {
      journal.write(line);
    } catch (IOException e) {
      out.close();
      // Without a header it is no session, and would only stand in the list as one that is broken.
      Files.deleteIfExists(file);
      throw e;
    }
    return journal;
  }

  private static void requireReadable(SessionHeader header, String line) {
    try {
      SessionHeader again = SessionFormat.header(Json.readText("header", line));
      if (!again.equals(header)) {
        throw new IllegalArgumentException("the header would not be read back as it is: " + line);
      }
    } catch (BadInputException e) {
      throw new IllegalArgumentException("the header can't be read back", e);
    }
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
    if (!closed) {
      closed = true;
      try (RandomAccessFile closing = out) {
        closing.getFD().sync();
      }
    }
  }

  /** Writes a whole line or, if that fails, leaves no part of it behind. */
  private void write(String line) throws IOException {
    byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
    try {
      // A failed line may have left a part behind that could not be cut off at once.
      if (out.length() != goodBytes) {
        out.setLength(goodBytes);
      }
      out.seek(goodBytes);
      out.write(bytes);
      goodBytes += bytes.length;
    } catch (IOException e) {
      cutBackTo(goodBytes, e);
      throw e;
    }
  }

  private void cutBackTo(long length, IOException cause) {
    try {
      out.setLength(length);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }
}
