package squeezewell.session;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import squeezewell.input.BadInputException;
import squeezewell.input.InputFile;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;

/**
 * Reads session files as far as they are good. What was torn off when the program was stopped, or
 * can't be used for another reason, is left out with all that follows it, and a note says so; the
 * file is never changed. Only a header that can't be used is an error.
 */
public final class SessionReader {
  /** A day of compressions and breaths without a break has some 200,000 (our own bound). */
  static final int MOST_LINES = 300_000;

  private static final long LARGEST_FILE = 64_000_000;
  private static final int LONGEST_LINE = 100_000;

  private final String source;
  private final List<SessionEvent> events = new ArrayList<>();
  private final ByteArrayOutputStream line = new ByteArrayOutputStream();
  private SessionHeader header;
  private long version;
  private int lines;

  /** The first line that can't be used; 0 if there is none so far. */
  private int badLine;

  private String badWords = "";

  /**
   * In the first files a finding was a free remark, whatever its words; none named its situation.
   */
  private boolean findingsAreRemarks;

  private SessionReader(String source) {
    this.source = source;
  }

  /**
   * Reads a session.
   *
   * @throws BadInputException if the file is not a session that this version can use
   */
  public static Session read(Path file) throws BadInputException {
    SessionReader reader = new SessionReader(file.toString());
    reader.readLines(file, false);
    return new Session(reader.requireHeader(), reader.events, reader.notes());
  }

  /**
   * Reads the header of a session alone, which is quick however long the session is.
   *
   * @throws BadInputException if the file does not begin with a header that this version can use
   */
  public static SessionHeader readHeader(Path file) throws BadInputException {
    SessionReader reader = new SessionReader(file.toString());
    reader.readLines(file, true);
    return reader.requireHeader();
  }

  private List<String> notes() {
    if (badLine > 0) {
      int more = lines - badLine + (line.size() > 0 ? 1 : 0);
      return List.of(
          badWords
              + ". That line"
              + (more == 0 ? " is" : " and " + more + " after it are")
              + " left out; everything before is good");
    }
    return line.size() == 0
        ? List.of()
        : List.of(
            "line "
                + (lines + 1)
                + " was torn off after "
                + line.size()
                + " bytes and is left out; everything before it is good");
  }

  private SessionHeader requireHeader() throws BadInputException {
    if (header == null) {
      throw BadInputException.fault(
          source,
          "line 1",
          line.size() == 0
              ? "the file is empty; allowed: a session"
              : "the header was never written to its end, so nothing can be read; allowed: a session");
    }
    return header;
  }

  /** Takes each whole line as it comes; what follows the last line feed stays in {@link #line}. */
  private void readLines(Path file, boolean headerOnly) throws BadInputException {
    byte[] block = new byte[8_192];
    try {
      InputFile.require(file, LARGEST_FILE);
      try (InputStream in = Files.newInputStream(file)) {
        for (int got = in.read(block); got >= 0; got = in.read(block)) {
          int from = 0;
          for (int i = 0; i < got; i++) {
            if (block[i] == '\n') {
              append(block, from, i);
              from = i + 1;
              endLine();
              if (headerOnly) {
                return;
              }
            }
          }
          append(block, from, got);
        }
      }
    } catch (IOException e) {
      throw BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")");
    }
  }

  private void append(byte[] block, int from, int to) throws BadInputException {
    if (line.size() + to - from <= LONGEST_LINE) {
      line.write(block, from, to - from);
    } else if (badLine == 0) {
      bad(
          BadInputException.notAllowed(
              place(),
              "",
              "over " + LONGEST_LINE + " bytes long",
              "lines of at most " + LONGEST_LINE + " bytes"));
    }
  }

  private void endLine() throws BadInputException {
    if (lines == MOST_LINES) {
      throw BadInputException.notAllowed(
          source,
          "",
          "over " + MOST_LINES + " lines",
          "at most " + MOST_LINES + " lines, more than a day of compressions has");
    }
    if (badLine == 0) {
      try {
        take(Json.readText(place(), text()));
      } catch (BadInputException e) {
        bad(e);
      }
    }
    lines++;
    line.reset();
  }

  private void bad(BadInputException fault) throws BadInputException {
    if (header == null) {
      throw fault;
    }
    badLine = lines + 1;
    badWords = fault.getMessage();
  }

  private void take(JsonValue value) throws BadInputException {
    if (header == null) {
      header = SessionFormat.header(value);
      version = SessionFormat.version(value);
      findingsAreRemarks = !value.has("situation");
      return;
    }
    SessionEvent event = SessionFormat.event(value, version);
    require(
        value,
        "n",
        event.number() == events.size() + 1,
        events.size() + 1 + ", since events are numbered without gaps");
    long before = events.isEmpty() ? 0 : events.get(events.size() - 1).atNanos();
    require(
        value,
        "at",
        event.atNanos() >= before,
        "at least " + before + ", the time of the line before");
    events.add(
        findingsAreRemarks && event.what() == EventType.FINDING
            ? SessionEvent.of(event.number(), event.atNanos(), EventType.REMARK, event.detail())
            : event);
  }

  private static void require(JsonValue value, String field, boolean fits, String allowed)
      throws BadInputException {
    if (!fits) {
      throw value.field(field, allowed).wrong(allowed);
    }
  }

  private String text() throws BadInputException {
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(line.toByteArray()))
          .toString();
    } catch (CharacterCodingException e) {
      throw BadInputException.fault(place(), "", "the text is not UTF-8");
    }
  }

  /** The header's faults end with an error that names the file; those of events with a note. */
  private String place() {
    return (header == null ? source + ": " : "") + "line " + (lines + 1);
  }
}
