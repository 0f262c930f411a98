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
 * Reads session files. A last line that was torn off when the program was stopped is dropped with a
 * note; any other fault is an error that names the line.
 */
public final class SessionReader {
  private static final long LARGEST_FILE = 64_000_000;
  private static final int LONGEST_LINE = 100_000;

  private final String source;
  private final List<SessionEvent> events = new ArrayList<>();
  private SessionHeader header;

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
    return new SessionReader(file.toString()).readAll(file);
  }

  /**
   * Reads the header of a session alone, which is quick however long the session is.
   *
   * @throws BadInputException if the file does not begin with a header that this version can use
   */
  public static SessionHeader readHeader(Path file) throws BadInputException {
    SessionReader reader = new SessionReader(file.toString());
    byte[] tail = reader.readLines(file, true);
    return reader.requireHeader(tail);
  }

  private Session readAll(Path file) throws BadInputException {
    byte[] tail = readLines(file, false);
    requireHeader(tail);
    List<String> notes = new ArrayList<>();
    if (tail.length > 0) {
      notes.add(
          "line "
              + (events.size() + 2)
              + " was torn off after "
              + tail.length
              + " bytes and is left out; everything before it is good");
    }
    return new Session(header, events, notes);
  }

  private SessionHeader requireHeader(byte[] tail) throws BadInputException {
    if (header == null) {
      throw BadInputException.fault(
          source,
          "line 1",
          tail.length == 0
              ? "the file is empty; allowed: a session"
              : "the header was never written to its end, so nothing can be read; allowed: a session");
    }
    return header;
  }

  private void line(byte[] bytes) throws BadInputException {
    if (header == null) {
      JsonValue first = Json.readText(place(source, 1), text(source, 1, bytes));
      header = SessionFormat.header(first);
      findingsAreRemarks = !first.has("situation");
    } else {
      SessionEvent event = event(source, events.size() + 2, bytes, events);
      events.add(findingsAreRemarks ? withoutFinding(event) : event);
    }
  }

  private static SessionEvent withoutFinding(SessionEvent event) {
    return event.what() == What.FINDING
        ? new SessionEvent(event.number(), event.atNanos(), What.REMARK, event.detail())
        : event;
  }

  private static SessionEvent event(
      String source, int line, byte[] bytes, List<SessionEvent> before) throws BadInputException {
    String place = place(source, line);
    SessionEvent event = SessionFormat.event(Json.readText(place, text(source, line, bytes)));
    if (event.number() != before.size() + 1) {
      throw BadInputException.notAllowed(
          place,
          "n",
          Integer.toString(event.number()),
          (before.size() + 1) + ", since events are numbered without gaps");
    }
    if (!before.isEmpty() && event.atNanos() < before.get(before.size() - 1).atNanos()) {
      throw BadInputException.notAllowed(
          place,
          "at",
          Long.toString(event.atNanos()),
          "at least " + before.get(before.size() - 1).atNanos() + ", the time of the line before");
    }
    boolean corrects = event.what() == What.RETRACT || event.what() == What.FINDING_UNDONE;
    if (corrects && !namesOneOf(event, before)) {
      throw BadInputException.notAllowed(
          place, "detail", event.detail(), "the number of an event before this one");
    }
    return event;
  }

  private static boolean namesOneOf(SessionEvent event, List<SessionEvent> before) {
    return event.detail().matches("[1-9]\\d{0,8}")
        && Integer.parseInt(event.detail()) <= before.size();
  }

  /**
   * Takes each whole line as it comes; returns what follows the last line feed.
   *
   * @param headerOnly whether to stop after the first line
   */
  private byte[] readLines(Path file, boolean headerOnly) throws BadInputException {
    try {
      InputFile.require(file, LARGEST_FILE);
      int lines = 0;
      ByteArrayOutputStream line = new ByteArrayOutputStream();
      byte[] block = new byte[8_192];
      try (InputStream in = Files.newInputStream(file)) {
        for (int got = in.read(block); got >= 0; got = in.read(block)) {
          int from = 0;
          for (int i = 0; i < got; i++) {
            if (block[i] == '\n') {
              append(line, block, from, i, lines);
              from = i + 1;
              lines++;
              line(line.toByteArray());
              line.reset();
              if (headerOnly) {
                return new byte[0];
              }
            }
          }
          append(line, block, from, got, lines);
        }
      }
      return line.toByteArray();
    } catch (IOException e) {
      throw BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")");
    }
  }

  private void append(ByteArrayOutputStream line, byte[] block, int from, int to, int lines)
      throws BadInputException {
    if (line.size() + to - from > LONGEST_LINE) {
      throw BadInputException.notAllowed(
          source,
          "line " + (lines + 1),
          "over " + LONGEST_LINE + " bytes long",
          "lines of at most " + LONGEST_LINE + " bytes");
    }
    line.write(block, from, to - from);
  }

  private static String text(String source, int line, byte[] bytes) throws BadInputException {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw BadInputException.fault(place(source, line), "", "the text is not UTF-8");
    }
  }

  private static String place(String source, int line) {
    return source + ": line " + line;
  }
}
