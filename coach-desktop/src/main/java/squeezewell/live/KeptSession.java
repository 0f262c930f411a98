package squeezewell.live;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import squeezewell.session.Journal;
import squeezewell.session.SavingTrouble;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.storage.Disk;
import squeezewell.storage.FileJournal;

/**
 * A journal that also remembers what went through it, so that there is a debrief even when the file
 * could not be written. It takes every event: what can't be written now is written with the next
 * event, or at the end. Until then {@link #trouble} says so. What is written is forced to the disk
 * about once a second. At the end the file is looked at: if it is gone or another program changed
 * it, it is written anew from memory under another name.
 *
 * <p>One thread appends and closes; any thread may ask.
 */
public final class KeptSession implements Journal {
  private final SessionHeader header;
  private final Disk disk;
  private final Supplier<Path> names;
  private final Runnable stopForcing;
  private final List<SessionEvent> events = new ArrayList<>();
  private final Deque<SessionEvent> unsaved = new ArrayDeque<>();
  private Journal file = Journal.none();
  private volatile Optional<Path> path = Optional.empty();
  private volatile String trouble = "";
  private volatile String forceTrouble = "";
  private boolean closed;

  private KeptSession(SessionHeader header, Disk disk, Supplier<Path> names, Forcing forcing) {
    this.header = header;
    this.disk = disk;
    this.names = names;
    openAnew();
    stopForcing =
        file instanceof FileJournal journal ? forcing.begin(() -> force(journal)) : () -> {};
  }

  /**
   * Starts a file for a session. If that fails, the session is only remembered.
   *
   * @param names gives a name that no other file has, another each time
   */
  public static KeptSession create(Supplier<Path> names, SessionHeader header) {
    return create(Disk.ofThisMachine(), names, header, Forcing.onAThread());
  }

  /** The same, on a given disk, forced as is said. */
  static KeptSession create(
      Disk disk, Supplier<Path> names, SessionHeader header, Forcing forcing) {
    return new KeptSession(header, disk, names, forcing);
  }

  private void openAnew() {
    Path name = names.get();
    try {
      file = FileJournal.create(disk, name, header);
      path = Optional.of(name);
      trouble = "";
    } catch (IOException e) {
      file = Journal.none();
      path = Optional.empty();
      trouble = SavingTrouble.notSaved(e);
    }
  }

  private void force(FileJournal journal) {
    try {
      journal.force();
      forceTrouble = "";
    } catch (IOException e) {
      forceTrouble = SavingTrouble.notSaved(e);
    }
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
      trouble = SavingTrouble.notSaved(e);
    }
  }

  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    stopForcing.run();
    save();
    closeFile();
    if (!(file instanceof FileJournal journal) || !journal.isAsWritten()) {
      unsaved.clear();
      openAnew();
      unsaved.addAll(events);
      save();
      closeFile();
    }
  }

  private void closeFile() {
    try {
      file.close();
      forceTrouble = "";
    } catch (IOException e) {
      trouble = SavingTrouble.notSaved(e);
    }
  }

  /** What went through so far, with a note if it is not all kept. */
  public Session session() {
    String said = trouble();
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
    return trouble.isEmpty() ? forceTrouble : trouble;
  }
}
