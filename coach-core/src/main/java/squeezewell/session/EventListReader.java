package squeezewell.session;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRow;
import de.siegmar.fastcsv.reader.MalformedCsvException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.cue.PracticePlan;
import squeezewell.input.BadInputException;
import squeezewell.input.InputFile;

/**
 * Reads event lists: CSV with the header {@code at_s,what,detail} and rows in order of time, as
 * docs/formats.md describes them.
 */
public final class EventListReader {
  private static final List<String> COLUMNS = List.of("at_s", "what", "detail");
  private static final long LARGEST_FILE = 16_000_000;
  private static final BigDecimal LATEST_SECONDS =
      BigDecimal.valueOf(PracticePlan.LONGEST_NANOS, 9);

  private EventListReader() {}

  /**
   * Reads an event list.
   *
   * @param file the list
   * @param header what the events are to be compared with
   * @throws BadInputException if the file is not such a list; the message names the row
   */
  public static Session read(Path file, SessionHeader header) throws BadInputException {
    String source = file.toString();
    try {
      InputFile.require(file, LARGEST_FILE);
      try (Reader reader = withoutByteOrderMark(file);
          CsvReader csv = CsvReader.builder().skipEmptyRows(true).build(reader)) {
        return new Session(header, events(source, csv), List.of());
      }
    } catch (CharacterCodingException e) {
      throw notUtf8(source);
    } catch (UncheckedIOException e) {
      throw e.getCause() instanceof CharacterCodingException
          ? notUtf8(source)
          : BadInputException.fault(
              source, "", "not well-formed CSV (a quote without its end?); allowed: rows of text");
    } catch (MalformedCsvException e) {
      throw BadInputException.fault(source, "", "not well-formed CSV: " + e.getMessage());
    } catch (IOException e) {
      throw BadInputException.fault(source, "", "the file can't be read (" + e.getMessage() + ")");
    }
  }

  private static BadInputException notUtf8(String source) {
    return BadInputException.fault(source, "", "the text is not UTF-8; allowed: UTF-8");
  }

  private static Reader withoutByteOrderMark(Path file) throws IOException {
    BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8);
    reader.mark(1);
    if (reader.read() != '\uFEFF') {
      reader.reset();
    }
    return reader;
  }

  private static List<SessionEvent> events(String source, CsvReader csv) throws BadInputException {
    List<SessionEvent> events = new ArrayList<>();
    boolean headed = false;
    for (CsvRow row : csv) {
      String place = "row " + row.getOriginalLineNumber();
      if (!headed) {
        requireColumns(source, place, row);
        headed = true;
        continue;
      }
      SessionEvent event = event(source, place, row, events.size() + 1);
      if (!events.isEmpty() && event.atNanos() < events.get(events.size() - 1).atNanos()) {
        throw BadInputException.notAllowed(
            source,
            place + ", column at_s",
            row.getField(0),
            "at least the time of the row before, since rows stand in order of time");
      }
      events.add(event);
    }
    if (!headed) {
      throw BadInputException.missing(source, "row 1", String.join(",", COLUMNS));
    }
    return events;
  }

  private static void requireColumns(String source, String place, CsvRow row)
      throws BadInputException {
    List<String> fields = row.getFields().stream().map(String::trim).collect(Collectors.toList());
    if (!fields.equals(COLUMNS) && !fields.equals(COLUMNS.subList(0, 2))) {
      throw BadInputException.notAllowed(
          source, place, String.join(",", row.getFields()), String.join(",", COLUMNS));
    }
  }

  private static SessionEvent event(String source, String place, CsvRow row, int number)
      throws BadInputException {
    if (row.getFieldCount() < 2 || row.getFieldCount() > COLUMNS.size()) {
      throw BadInputException.notAllowed(
          source, place, row.getFieldCount() + " columns", "the columns at_s,what,detail");
    }
    String word = row.getField(1).trim();
    EventType type =
        EventType.of(word)
            .filter(EventListReader::allowed)
            .orElseThrow(
                () ->
                    BadInputException.notAllowed(
                        source, place + ", column what", word, "one of " + words()));
    String detail = row.getFieldCount() > 2 ? row.getField(2).trim() : "";
    if (detail.length() > Fact.LONGEST_TEXT) {
      throw BadInputException.notAllowed(
          source,
          place + ", column detail",
          detail,
          "at most " + Fact.LONGEST_TEXT + " characters");
    }
    SessionEvent event =
        SessionEvent.of(number, nanos(source, place, row.getField(0).trim()), type, detail);
    boolean tooMuch =
        event.fact() instanceof Fact.Squeeze squeeze
            && squeeze.millilitres().orElse(0) > EventCodec.MOST_MILLILITRES;
    if (tooMuch) {
      throw BadInputException.notAllowed(
          source,
          place + ", column detail",
          detail,
          "a volume of at most " + EventCodec.MOST_MILLILITRES + " mL");
    }
    return event;
  }

  private static long nanos(String source, String place, String text) throws BadInputException {
    String allowed = "seconds from 0 to " + LATEST_SECONDS.stripTrailingZeros().toPlainString();
    if (!text.matches("\\d{1,6}(\\.\\d{1,12})?")) {
      throw BadInputException.notAllowed(source, place + ", column at_s", text, allowed);
    }
    BigDecimal seconds = new BigDecimal(text);
    if (seconds.compareTo(LATEST_SECONDS) > 0) {
      throw BadInputException.notAllowed(source, place + ", column at_s", text, allowed);
    }
    return seconds.movePointRight(9).longValue();
  }

  /** Numbers of events are not known to whoever writes a list, and it knows no stations. */
  private static boolean allowed(EventType type) {
    boolean corrects = type == EventType.RETRACT || type == EventType.FINDING_UNDONE;
    return type == EventType.REMARK || (!corrects && !type.isOfStation());
  }

  private static String words() {
    return Stream.of(EventType.values())
        .filter(EventListReader::allowed)
        .map(EventType::word)
        .sorted()
        .collect(Collectors.joining(", "));
  }
}
