package squeezewell.live;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import squeezewell.session.FileJournal;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * A journal that also remembers what went through it, so that there is a debrief even when the file
 * could not be written. It takes every event: what can't be written now is written with the next
 * event, or at the end. Until then {@link #trouble} says so.
 *
 * <p>One thread appends and closes; any thread may ask.
 */
public final class KeptSession implements Journal {
  private final SessionHeader header;
  private final Journal file;
  private final Optional<Path> path;
  private final List<SessionEvent> events = new ArrayList<>();
  private final Deque<SessionEvent> unsaved = new ArrayDeque<>();
  private volatile String trouble;

  private KeptSession(SessionHeader header, Journal file, Optional<Path> path, String trouble) {
    this.header = header;
    this.file = file;
    this.path = path;
    this.trouble = trouble;
  }

  /** Starts a file for a session. If that fails, the session is only remembered. */
  public static KeptSession create(Path path, SessionHeader header) {
    try {
      return in(FileJournal.create(path, header), path, header);
    } catch (IOException e) {
      return new KeptSession(header, Journal.none(), Optional.empty(), notSaved(e));
    }
  }

  /** A session that is kept in a journal of that path. */
  static KeptSession in(Journal file, Path path, SessionHeader header) {
    return new KeptSession(header, file, Optional.of(path), "");
  }

  @Override
  public void append(SessionEvent event) {
    synchronized (events) {
      events.add(event);
    }
    unsaved.add(event);
    save();
  }

  /** Writes what could not be written before, in order: a file has no gaps. */
  private void save() {
    try {
      while (!unsaved.isEmpty()) {
        file.append(unsaved.peek());
        unsaved.remove();
      }
      if (path.isPresent()) {
        trouble = "";
      }
    } catch (IOException e) {
      trouble = notSaved(e);
    }
  }

  @Override
  public void close() {
    save();
    try {
      file.close();
    } catch (IOException e) {
      trouble = notSaved(e);
    }
  }

  private static String notSaved(IOException e) {
    return "This practice is not being saved: " + e.getMessage();
  }

  /** What went through so far, with a note if it is not all kept. */
  public Session session() {
    String said = trouble;
    synchronized (events) {
      return new Session(header, events, said.isEmpty() ? List.of() : List.of(said));
    }
  }

  /** Where it is kept; empty if no file could be made. */
  public Optional<Path> path() {
    return path;
  }

  /** Why it is not all kept; empty if it is. */
  public String trouble() {
    return trouble;
  }
}
