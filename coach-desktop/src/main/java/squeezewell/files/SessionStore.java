package squeezewell.files;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import squeezewell.input.BadInputException;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionFormat;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.trainee.PastPractice;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Wording;

/** The past sessions of a home. It reads and never deletes; a change of a mark it adds. */
public final class SessionStore {
  private static final Pattern NAME =
      Pattern.compile("(\\d{4}-\\d{2}-\\d{2}_\\d{6})(?:-(\\d{1,6}))?(?:-[0-9a-f]{8})?\\.jsonl");

  private static final Duration CLOCKS_DIFFER = Duration.ofDays(1);

  private static final Wording WORDS = Wording.beside(SessionStore.class);

  private static final Comparator<Path> NEWEST_FIRST =
      Comparator.comparing(SessionStore::stem)
          .thenComparingInt(SessionStore::number)
          .thenComparing(Path::toString)
          .reversed();

  private final HomeFolder home;

  public SessionStore(HomeFolder home) {
    this.home = home;
  }

  /**
   * One file among the sessions.
   *
   * @param file where it is
   * @param session what it holds; empty if it can't be read
   * @param problem why it can't be read; empty if it can
   */
  public record Entry(Path file, Optional<Session> session, String problem) {}

  /**
   * The files, newest first, by the time in their names. Files are not opened.
   *
   * @throws BadInputException if the folder of sessions can't be listed
   */
  public List<Path> files() throws BadInputException {
    List<Path> files = new ArrayList<>();
    if (Files.notExists(home.sessions())) {
      return files;
    }
    if (!Files.exists(home.sessions())) {
      throw HomeFolder.fault(home.sessions(), WORDS.say("sessions-not-listed"));
    }
    if (!Files.isDirectory(home.sessions())) {
      throw HomeFolder.fault(home.sessions(), WORDS.say("file-in-the-way"));
    }
    try {
      Files.walkFileTree(
          home.sessions(),
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              if (file.getFileName().toString().endsWith(".jsonl")) {
                files.add(file);
              }
              return FileVisitResult.CONTINUE;
            }

            /** What can't be visited is kept too, so that it is listed with its reason. */
            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
              files.add(file);
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw HomeFolder.fault(home.sessions(), WORDS.say("not-listed", e.getMessage()));
    }
    files.sort(NEWEST_FIRST);
    return List.copyOf(files);
  }

  /**
   * All sessions, newest first. Each is read when the stream comes to it. One that can't be read is
   * there with its reason.
   *
   * @throws BadInputException if the folder of sessions can't be listed
   */
  public Stream<Entry> entries() throws BadInputException {
    return files().stream().map(this::entry);
  }

  /**
   * What the sessions say of rhythms held alone. Only the headers of others are read; what can't be
   * read is left out.
   *
   * @throws BadInputException if the folder of sessions can't be listed
   */
  public RecordBook book() throws BadInputException {
    return RecordBook.of(files().stream().flatMap(file -> past(file).stream()).toList());
  }

  /**
   * The same, as far as it can decide how the next practice begins: without sessions of a clock
   * that was wrong, dated over a day ahead.
   */
  public RecordBook bookUpTo(Instant now) throws BadInputException {
    return book().upTo(now.plus(CLOCKS_DIFFER));
  }

  private Optional<PastPractice> past(Path file) {
    try {
      SessionHeader header = SessionReader.readHeader(file);
      return PastPractice.tells(header)
          ? PastPractice.of(open(file))
          : PastPractice.of(header, Files.getLastModifiedTime(file).toInstant());
    } catch (BadInputException | IOException e) {
      // The list of past practices tells of it.
      return Optional.empty();
    }
  }

  /**
   * Reads one session.
   *
   * @throws BadInputException if the file is not a session that this version can use
   */
  public Session open(Path file) throws BadInputException {
    return SessionReader.read(file);
  }

  /**
   * Adds a change of a mark to the file of a finished session.
   *
   * @return the session with it
   * @throws BadInputException if the file is not there, is damaged or can't be written
   */
  public Session change(Session session, Fact.MarkChange change) throws BadInputException {
    for (Path file : files()) {
      if (startedAt(file).equals(Optional.of(session.header().startedAt()))) {
        Session kept = open(file);
        boolean same = kept.events().size() == session.events().size();
        if (!same || !kept.notes().isEmpty() || !kept.finished()) {
          throw HomeFolder.fault(file, WORDS.say("session-not-whole"));
        }
        List<SessionEvent> events = kept.events();
        long last = events.get(events.size() - 1).atNanos();
        String line = SessionFormat.line(new SessionEvent(events.size() + 1, last, change));
        try {
          Files.writeString(file, line, StandardOpenOption.APPEND, StandardOpenOption.SYNC);
        } catch (IOException e) {
          throw HomeFolder.fault(file, e.getMessage());
        }
        return open(file);
      }
    }
    throw HomeFolder.fault(home.sessions(), WORDS.say("session-not-kept"));
  }

  private static Optional<Instant> startedAt(Path file) {
    try {
      return Optional.of(SessionReader.readHeader(file).startedAt());
    } catch (BadInputException e) {
      return Optional.empty();
    }
  }

  private Entry entry(Path file) {
    try {
      return new Entry(file, Optional.of(open(file)), "");
    } catch (BadInputException e) {
      return new Entry(file, Optional.empty(), e.getMessage());
    }
  }

  private static String stem(Path file) {
    Matcher matcher = name(file);
    return matcher.matches() ? matcher.group(1) : file.getFileName().toString();
  }

  private static int number(Path file) {
    Matcher matcher = name(file);
    return matcher.matches() && matcher.group(2) != null ? Integer.parseInt(matcher.group(2)) : 1;
  }

  private static Matcher name(Path file) {
    return NAME.matcher(file.getFileName().toString());
  }
}
