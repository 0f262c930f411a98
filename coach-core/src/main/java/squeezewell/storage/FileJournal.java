package squeezewell.storage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionFormat;
import squeezewell.session.SessionHeader;

/**
 * A journal in a file of its own, one JSON object a line. Each event is handed to the operating
 * system before {@link #append} returns, so a process that is killed loses none. The header is
 * forced to the disk before {@link #create} returns, all events by {@link #close}, and those in
 * between whenever {@link #force} is called: about once a second, then a power cut loses no more
 * than that. One thread writes; any other may force.
 */
public final class FileJournal implements Journal {
  private final Disk.OpenFile out;
  private final Path file;
  private volatile long goodBytes;
  private volatile long forcedBytes;
  private boolean cutByOthers;
  private boolean closed;

  private FileJournal(Disk.OpenFile out, Path file) {
    this.out = out;
    this.file = file;
  }

  /** Makes a new file on this machine's disk and writes the header. */
  public static FileJournal create(Path file, SessionHeader header) throws IOException {
    return create(Disk.ofThisMachine(), file, header);
  }

  /**
   * Makes a new file, which only its owner can read, and writes the header.
   *
   * @param file must not exist; missing folders are made
   * @throws IOException if the file exists or can't be written
   * @throws IllegalArgumentException if the header could not be read back, such as when its
   *     protocol holds values that no protocol file may hold
   */
  public static FileJournal create(Disk disk, Path file, SessionHeader header) throws IOException {
    String line = SessionFormat.line(header);
    requireReadable(header, line);
    Disk.OpenFile out = disk.create(file, Disk.Rights.OWNER);
    FileJournal journal = new FileJournal(out, file);
    try {
      journal.write(line);
      journal.force();
      disk.forceFolder(file.toAbsolutePath().getParent());
    } catch (IOException e) {
      out.close();
      // Without a header it is no session, and would only stand in the list as one that is broken.
      disk.delete(file);
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

  /**
   * Forces what was appended to the disk, if that has not been done. May be called from any thread.
   *
   * @throws IOException if that fails; the next call tries again
   */
  public void force() throws IOException {
    long upTo = goodBytes;
    if (upTo > forcedBytes) {
      out.force();
      forcedBytes = upTo;
    }
  }

  /** Where the session is kept. */
  public Path file() {
    return file;
  }

  /** Whether the file is there and no other program made it longer or shorter. */
  public boolean isAsWritten() {
    try {
      return !cutByOthers && Files.size(file) == goodBytes;
    } catch (IOException e) {
      return false;
    }
  }

  @Override
  @SuppressWarnings("try") // the file is named only to be closed
  public void close() throws IOException {
    if (!closed) {
      closed = true;
      try {
        force();
      } finally {
        out.close();
      }
    }
  }

  /** Writes a whole line or, if that fails, leaves no part of it behind. */
  private void write(String line) throws IOException {
    byte[] bytes = line.getBytes(StandardCharsets.UTF_8);
    long end = goodBytes;
    try {
      // A failed line may have left a part behind that could not be cut off at once.
      long there = out.length();
      cutByOthers |= there < end;
      if (there > end) {
        out.setLength(end);
      }
      out.write(end, bytes);
      goodBytes = end + bytes.length;
    } catch (IOException e) {
      cutBackTo(end, e);
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
