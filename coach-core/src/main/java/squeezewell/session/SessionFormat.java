package squeezewell.session;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import squeezewell.cue.CueFader;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolReader;
import squeezewell.protocol.ProtocolWriter;
import squeezewell.protocol.Situation;

/** The lines of a session file, format version 2, as docs/formats.md describes it. */
public final class SessionFormat {
  static final String FORMAT = "squeezewell-session";
  static final int VERSION = 2;
  private static final List<EventType> ALL = List.of(EventType.values());

  /** A date beyond stops whoever reckons with days of a calendar. */
  private static final Instant EARLIEST = Instant.EPOCH;

  private static final Instant LATEST = Instant.parse("2200-01-01T00:00:00Z");

  private SessionFormat() {}

  /** The first line of a file, with its line feed. */
  public static String line(SessionHeader header) {
    return line(
        json -> {
          json.name("format").value(FORMAT);
          json.name("version").value(VERSION);
          json.name("startedAt").value(header.startedAt().toString());
          json.name("origin").value(header.origin().word());
          json.name("trainee").value(header.trainee());
          json.name("countInNanos").value(header.plan().countInNanos());
          json.name("lengthNanos").value(header.plan().lengthNanos());
          json.name("leadNanos").value(header.plan().leadNanos());
          if (header.plan().prompting() != Prompting.THROUGHOUT) {
            json.name("prompts").value(header.plan().prompting().word());
          }
          if (header.plan().startLevel() > 0) {
            json.name("startLevel").value(header.plan().startLevel());
          }
          int rescuers = header.plan().rescuers();
          if (rescuers != PracticePlan.usualRescuers(header.plan().guidance())) {
            json.name("rescuers").value(rescuers);
          }
          json.name("situation").value(header.plan().guidance().situation().id());
          json.name("protocol");
          ProtocolWriter.write(json, header.protocol());
        });
  }

  /** The line of an event, with its line feed. */
  public static String line(SessionEvent event) {
    return line(
        json -> {
          json.name("n").value(event.number());
          json.name("at").value(event.atNanos());
          json.name("what").value(event.what().word());
          EventCodec.write(json, event.fact());
        });
  }

  /** The version of a file with that header; one that this version can read. */
  static long version(JsonValue line) throws BadInputException {
    line.choice("format", List.of(FORMAT), f -> f);
    long version = line.integer("version", 1, Integer.MAX_VALUE);
    if (version > VERSION) {
      throw BadInputException.notAllowed(
          line.source(),
          "version",
          Long.toString(version),
          "at most " + VERSION + "; this file was made by a newer version of Squeezewell");
    }
    return version;
  }

  /**
   * What {@link #line(SessionHeader)} wrote, in this version or an older one.
   *
   * @throws BadInputException if it is not a header that this version can use
   */
  public static SessionHeader header(JsonValue line) throws BadInputException {
    version(line);
    Protocol protocol =
        ProtocolReader.read(line.field("protocol", "the protocol that was in force"));
    Guidance guidance = start(line, protocol);
    List<Guidance> others = new ArrayList<>(protocol.guidance());
    others.remove(guidance);
    Prompting prompting =
        line.has("prompts")
            ? line.choice("prompts", List.of(Prompting.values()), Prompting::word)
            : Prompting.THROUGHOUT;
    int highest = prompting == Prompting.FADING ? CueFader.HIGHEST_START : 0;
    PracticePlan plan =
        new PracticePlan(
            guidance,
            others,
            line.integer("countInNanos", 0, PracticePlan.LONGEST_COUNT_IN_NANOS),
            line.integer("lengthNanos", 1, PracticePlan.LONGEST_NANOS),
            line.integer("leadNanos", 0, Duration.ofSeconds(1).toNanos()),
            prompting,
            line.has("rescuers")
                ? (int) line.integer("rescuers", 1, PracticePlan.MOST_RESCUERS)
                : PracticePlan.usualRescuers(guidance),
            line.has("startLevel") ? (int) line.integer("startLevel", 0, highest) : 0);
    return new SessionHeader(
        instant(line, "startedAt"),
        line.choice("origin", List.of(SessionHeader.Origin.values()), SessionHeader.Origin::word),
        line.freeText("trainee", SessionHeader.LONGEST_TRAINEE),
        protocol,
        plan);
  }

  /** The entry that the practice began with, among those of one patient. */
  private static Guidance start(JsonValue line, Protocol protocol) throws BadInputException {
    Set<Situation> situations = EnumSet.noneOf(Situation.class);
    for (Guidance guidance : protocol.guidance()) {
      boolean again = !situations.add(guidance.situation());
      if (again || guidance.patient() != protocol.guidance().get(0).patient()) {
        throw line.field("protocol", "").wrong("one patient, and each situation once");
      }
    }
    if (protocol.guidance().size() == 1 && !line.has("situation")) {
      return protocol.guidance().get(0);
    }
    Situation situation = line.choice("situation", List.copyOf(situations), Situation::id);
    return protocol.guidance().stream().filter(g -> g.situation() == situation).findFirst().get();
  }

  /**
   * An event.
   *
   * @param version of the file that the line stands in
   */
  static SessionEvent event(JsonValue line, long version) throws BadInputException {
    int number = (int) line.integer("n", 1, Integer.MAX_VALUE);
    long at = line.integer("at", 0, SessionEvent.LATEST_NANOS);
    EventType type = line.choice("what", ALL, EventType::word);
    Fact fact =
        version > 1 ? EventCodec.read(type, line) : EventCodec.parse(type, detail(line, type));
    if (fact instanceof Fact.Correction correction
        && (correction.event() < 1 || correction.event() >= number)) {
      String allowed = "the number of an event before this one";
      throw line.field(version > 1 ? "event" : "detail", allowed).wrong(allowed);
    }
    return new SessionEvent(number, at, fact);
  }

  private static String detail(JsonValue line, EventType type) throws BadInputException {
    return line.freeText(
        "detail", type == EventType.STATION ? Fact.StationSet.LONGEST : Fact.LONGEST_TEXT);
  }

  private static Instant instant(JsonValue line, String name) throws BadInputException {
    String text = line.text(name, 40);
    try {
      Instant instant = Instant.parse(text);
      if (!instant.isBefore(EARLIEST) && instant.isBefore(LATEST)) {
        return instant;
      }
    } catch (DateTimeParseException e) {
      // As wrong as one out of bounds.
    }
    throw line.field(name, "").wrong("a time such as 2026-01-31T12:00:00Z, from 1970 to 2199");
  }

  private static String line(Body body) {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      json.beginObject();
      body.write(json);
      json.endObject();
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory can't be written", e);
    }
    return text + "\n";
  }

  private interface Body {
    void write(JsonWriter json) throws IOException;
  }
}
