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
import squeezewell.input.Json;

/**
 * Reads session files. A last line that was torn off when the program was stopped is dropped with a
 * note; any other fault is an error that names the line.
 */
public final class SessionReader {
  private static final long LARGEST_FILE = 64_000_000;
  private static final int LONGEST_LINE = 100_000;

  private SessionReader() {}

  /**
   * Reads a session.
   *
   * @throws BadInputException if the file is not a session that this version can use
   */
  public static Session read(Path file) throws BadInputException {
    String source = file.toString();
    List<byte[]> lines = lines(source, file);
    if (lines.isEmpty()) {
      throw BadInputException.fault(source, "line 1", "the file is empty; allowed: a session");
    }
    boolean torn = lines.get(lines.size() - 1).length > 0;
    byte[] tail = lines.remove(lines.size() - 1);
    if (lines.isEmpty()) {
      throw BadInputException.fault(
          source, "line 1", "the header was never written to its end; nothing can be read");
    }
    SessionHeader header =
        SessionFormat.header(Json.readText(place(source, 1), text(source, 1, lines.get(0))));
    List<SessionEvent> events = new ArrayList<>();
    for (int i = 1; i < lines.size(); i++) {
      events.add(event(source, i + 1, lines.get(i), events));
    }
    List<String> notes = new ArrayList<>();
    if (torn) {
      notes.add(
          "line "
              + (lines.size() + 1)
              + " was torn off after "
              + tail.length
              + " bytes and is left out; everything before it is good");
    }
    return new Session(header, events, notes);
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
    if (event.what() == What.RETRACT && !retracts(event, before)) {
      throw BadInputException.notAllowed(
          place, "detail", event.detail(), "the number of an event before this one");
    }
    return event;
  }

  private static boolean retracts(SessionEvent event, List<SessionEvent> before) {
    return event.detail().matches("[1-9]\\d{0,8}")
        && Integer.parseInt(event.detail()) <= before.size();
  }

  /** The lines of a file, without their line feeds; the last is what follows the last line feed. */
  private static List<byte[]> lines(String source, Path file) throws BadInputException {
    try {
      if (!Files.isRegularFile(file)) {
        throw BadInputException.fault(source, "", "there is no such file");
      }
      if (Files.size(file) > LARGEST_FILE) {
        throw BadInputException.notAllowed(
            source, "size", Files.size(file) + " bytes", "at most " + LARGEST_FILE + " bytes");
      }
      List<byte[]> lines = new ArrayList<>();
      if (Files.size(file) == 0) {
        return lines;
      }
      ByteArrayOutputStream line = new ByteArrayOutputStream();
      byte[] block = new byte[8_192];
      try (InputStream in = Files.newInputStream(file)) {
        for (int got = in.read(block); got >= 0; got = in.read(block)) {
          for (int i = 0; i < got; i++) {
            if (block[i] == '\n') {
              lines.add(line.toByteArray());
              line.reset();
            } else if (line.size() >= LONGEST_LINE) {
              throw BadInputException.notAllowed(
                  source,
                  "line " + (lines.size() + 1),
                  "over " + LONGEST_LINE + " bytes long",
                  "lines of at most " + LONGEST_LINE + " bytes");
            } else {
              line.write(block[i]);
            }
          }
        }
      }
      lines.add(line.toByteArray());
      return lines;
    } catch (IOException e) {
      throw BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")");
    }
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
