package squeezewell.live;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.session.FileJournal;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * A journal that also remembers what went through it, so that there is a debrief even when the file
 * could not be written.
 */
public final class KeptSession implements Journal {
  private final SessionHeader header;
  private final Journal file;
  private final Optional<Path> path;
  private final String trouble;
  private final List<SessionEvent> events = new ArrayList<>();

  private KeptSession(SessionHeader header, Journal file, Optional<Path> path, String trouble) {
    this.header = header;
    this.file = file;
    this.path = path;
    this.trouble = trouble;
  }

  /** Starts a file for a session. If that fails, the session is only remembered. */
  public static KeptSession create(Path path, SessionHeader header) {
    try {
      return new KeptSession(header, FileJournal.create(path, header), Optional.of(path), "");
    } catch (IOException e) {
      return new KeptSession(
          header,
          Journal.none(),
          Optional.empty(),
          "This practice is not being saved: " + e.getMessage());
    }
  }

  @Override
  public void append(SessionEvent event) throws IOException {
    synchronized (events) {
      events.add(event);
    }
    file.append(event);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }

  /** What went through so far. */
  public Session session() {
    synchronized (events) {
      return new Session(header, events, List.of());
    }
  }

  /** Where it is kept; empty if it could not be. */
  public Optional<Path> path() {
    return path;
  }

  /** Why it is not kept; empty if it is. */
  public String trouble() {
    return trouble;
  }
}
