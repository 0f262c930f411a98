package squeezewell.protocol;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;

/**
 * Reads protocol files, format version 1. Every value is checked for its type, its unit, its range
 * and its citation, and values are checked against each other. The format is described in
 * docs/formats.md.
 */
public final class ProtocolReader {
  public static final String FORMAT = "squeezewell-protocol";
  public static final int VERSION = 1;

  private static final long LARGEST_FILE = 1_000_000;

  private final ProtocolValues values;
  private final List<Guidance> guidance = new ArrayList<>();
  private final List<AgeBand> ages = new ArrayList<>();

  private ProtocolReader(ProtocolValues values) {
    this.values = values;
  }

  /**
   * Reads a file.
   *
   * @throws BadInputException if the file is not a protocol that this version can use
   */
  public static Protocol readFile(Path file) throws BadInputException {
    return read(Json.readFile(file, LARGEST_FILE));
  }

  /** Reads a text; {@code source} names it in messages. */
  public static Protocol readText(String source, String text) throws BadInputException {
    return read(Json.readText(source, text));
  }

  /** Reads a protocol that stands inside another file. */
  public static Protocol read(JsonValue top) throws BadInputException {
    top.choice("format", List.of(FORMAT), f -> f);
    long version = top.integer("version", 1, Integer.MAX_VALUE);
    if (version > VERSION) {
      throw BadInputException.notAllowed(
          top.source(),
          place(top, "version"),
          Long.toString(version),
          "at most " + VERSION + "; this file was made by a newer version of Squeezewell");
    }
    String id = top.text("id", 40);
    if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw BadInputException.notAllowed(
          top.source(), place(top, "id"), id, "lower-case letters, digits and single hyphens");
    }
    ProtocolReader reader = new ProtocolReader(new ProtocolValues(top));
    Set<PatientGroup> groups = new HashSet<>();
    for (JsonValue patient : top.list("patients", 1, "a list of at least one patient group")) {
      PatientGroup group =
          patient.choice("group", List.of(PatientGroup.values()), PatientGroup::id);
      if (!groups.add(group)) {
        throw BadInputException.fault(
            patient.source(),
            patient.path(),
            "the group " + group.id() + " stands there twice; allowed: once");
      }
      reader.addPatient(patient, group);
    }
    return new Protocol(
        id,
        top.text("title", 80),
        top.text("organisation", 120),
        (int) top.integer("year", 1950, 2100),
        top.flagOr("local", false),
        reader.guidance,
        reader.ages);
  }

  private void addPatient(JsonValue patient, PatientGroup group) throws BadInputException {
    if (patient.has("ages")) {
      ages.add(AgeBandReader.read(values, patient.field("ages", ""), group));
    }
    JsonValue usual = patient.field("limits", "an object of limits");
    Limits limits = LimitsReader.read(values, usual);
    RhythmReader rhythms = new RhythmReader(values);
    Set<String> seen = new HashSet<>();
    for (JsonValue entry : patient.list("rhythms", 1, "a list of at least one rhythm")) {
      Situation situation = entry.choice("situation", List.of(Situation.values()), Situation::id);
      int rescuers = entry.has("rescuers") ? (int) entry.integer("rescuers", 1, 4) : 0;
      if (!seen.add(situation.id() + rescuers)) {
        throw BadInputException.fault(
            entry.source(),
            entry.path(),
            "the situation "
                + situation.id()
                + " stands there twice for the same rescuers; allowed: once");
      }
      Limits own =
          entry.has("limits")
              ? LimitsReader.read(values, usual, entry.field("limits", ""))
              : limits;
      guidance.add(new Guidance(group, situation, rescuers, rhythms.rhythm(entry), own));
    }
  }

  private static String place(JsonValue value, String field) {
    return value.path().isEmpty() ? field : value.path() + "." + field;
  }
}
