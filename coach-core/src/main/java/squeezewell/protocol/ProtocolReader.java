package squeezewell.protocol;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
  private static final BigDecimal NANOS_PER_SECOND = BigDecimal.valueOf(1_000_000_000L);

  private final Map<String, JsonValue> sources;

  private ProtocolReader(Map<String, JsonValue> sources) {
    this.sources = sources;
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
    ProtocolReader reader = new ProtocolReader(sources(top));
    List<Guidance> guidance = new ArrayList<>();
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
      reader.addPatient(patient, group, guidance);
    }
    return new Protocol(
        id,
        top.text("title", 80),
        top.text("organisation", 120),
        (int) top.integer("year", 1950, 2100),
        top.flagOr("local", false),
        guidance);
  }

  private static Map<String, JsonValue> sources(JsonValue top) throws BadInputException {
    JsonValue table = top.field("sources", "an object of named sources");
    Map<String, JsonValue> sources = new HashMap<>();
    for (String name : table.names()) {
      sources.put(name, table.field(name, "an object with organisation, title, year, section"));
    }
    return sources;
  }

  private void addPatient(JsonValue patient, PatientGroup group, List<Guidance> guidance)
      throws BadInputException {
    Limits limits = limits(patient.field("limits", "an object of limits"));
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
      guidance.add(new Guidance(group, situation, rescuers, rhythm(entry), limits));
    }
  }

  private Rhythm rhythm(JsonValue entry) throws BadInputException {
    switch (entry.choice("kind", List.of(RhythmKind.values()), RhythmKind::id)) {
      case STEADY_BREATHS:
        return new Rhythm.SteadyBreaths(breaths(entry));
      case CONTINUOUS_COMPRESSIONS:
        return new Rhythm.ContinuousCompressions(compressions(entry), breaths(entry));
      case COMPRESSION_CYCLE:
        return cycle(entry);
      default:
        throw new IllegalStateException("a kind of rhythm without a reader");
    }
  }

  private BreathPlan breaths(JsonValue entry) throws BadInputException {
    JsonValue interval = entry.field("breathInterval", "an object with target, low, high, unit");
    long target = seconds(interval, "target", "0.5", "60");
    long low = seconds(interval, "low", "0.5", "60");
    long high = seconds(interval, "high", "0.5", "60");
    ordered(interval, "low", low <= target, "at most the target");
    ordered(interval, "high", high >= target, "at least the target");
    JsonValue inspiration = entry.field("inspiration", "an object with value and unit");
    long inspirationNanos = seconds(inspiration, "value", "0.1", "5");
    ordered(inspiration, "value", inspirationNanos < low, "shorter than the shortest interval");
    return new BreathPlan(
        new Tempo(target, 1),
        low,
        high,
        inspirationNanos,
        citation(interval, "source", "confidence"),
        citation(interval, "rangeSource", "rangeConfidence"),
        citation(inspiration, "source", "confidence"));
  }

  private CompressionPlan compressions(JsonValue entry) throws BadInputException {
    JsonValue rate = entry.field("compressionRate", "an object with target, low, high, unit");
    unit(rate, "/min");
    BigDecimal target = perMinute(rate, "target");
    BigDecimal low = perMinute(rate, "low");
    BigDecimal high = perMinute(rate, "high");
    ordered(rate, "low", low.compareTo(target) <= 0, "at most the target");
    ordered(rate, "high", high.compareTo(target) >= 0, "at least the target");
    return new CompressionPlan(
        Tempo.perMinute(target),
        low.doubleValue(),
        high.doubleValue(),
        citation(rate, "source", "confidence"),
        citation(rate, "rangeSource", "rangeConfidence"));
  }

  private Rhythm cycle(JsonValue entry) throws BadInputException {
    JsonValue cycle = entry.field("cycle", "an object with compressions and breaths");
    int compressions = (int) cycle.integer("compressions", 1, 100);
    int breaths = (int) cycle.integer("breaths", 1, 10);
    JsonValue pause = entry.field("pause", "an object with value and unit");
    long pauseNanos = seconds(pause, "value", "0.1", "30");
    JsonValue limit = entry.field("pauseLimit", "an object with value and unit");
    long limitNanos = seconds(limit, "value", "0.1", "60");
    JsonValue inspiration = entry.field("inspiration", "an object with value and unit");
    long inspirationNanos = seconds(inspiration, "value", "0.1", "5");
    ordered(
        inspiration,
        "value",
        inspirationNanos * breaths <= pauseNanos,
        "so short that all the breaths fit into the pause");
    ordered(limit, "value", limitNanos >= pauseNanos, "at least the planned pause");
    return new Rhythm.CompressionCycle(
        compressions(entry),
        compressions,
        breaths,
        pauseNanos,
        limitNanos,
        inspirationNanos,
        citation(cycle, "source", "confidence"),
        citation(pause, "source", "confidence"),
        citation(limit, "source", "confidence"),
        citation(inspiration, "source", "confidence"));
  }

  private Limits limits(JsonValue limits) throws BadInputException {
    Limit every = limit(limits, "pulseCheckEvery", "10", "3600");
    Limit notice = limit(limits, "pulseCheckNotice", "1", "60");
    Limit shortest = limit(limits, "pulseCheckShortest", "1", "60");
    Limit longest = limit(limits, "pulseCheckLongest", "1", "60");
    Limit suction = limit(limits, "suctionLongest", "1", "60");
    Limit suctionNotice = limit(limits, "suctionNotice", "0.5", "30");
    Limit gap = limit(limits, "gapLongest", "1", "120");
    ordered(
        limits.field("pulseCheckNotice", ""),
        "value",
        notice.nanos() <= every.nanos() / 2,
        "at most half of pulseCheckEvery");
    ordered(
        limits.field("pulseCheckShortest", ""),
        "value",
        shortest.nanos() <= longest.nanos(),
        "at most pulseCheckLongest");
    ordered(
        limits.field("suctionNotice", ""),
        "value",
        suctionNotice.nanos() < suction.nanos(),
        "under suctionLongest");
    return new Limits(every, notice, shortest, longest, suction, suctionNotice, gap);
  }

  private Limit limit(JsonValue limits, String name, String least, String most)
      throws BadInputException {
    JsonValue value = limits.field(name, "an object with value, unit, source and confidence");
    return new Limit(seconds(value, "value", least, most), citation(value, "source", "confidence"));
  }

  private Citation citation(JsonValue value, String sourceField, String confidenceField)
      throws BadInputException {
    String allowed = "the name of an entry under \"sources\"";
    JsonValue name = value.field(sourceField, allowed);
    JsonValue source = sources.get(value.text(sourceField, 60));
    if (source == null) {
      throw name.wrong(allowed);
    }
    return new Citation(
        source.text("organisation", 120),
        source.text("title", 300),
        (int) source.integer("year", 1950, 2100),
        source.text("section", 300),
        value.choice(confidenceField, List.of(Confidence.values()), Confidence::id));
  }

  private static long seconds(JsonValue value, String field, String least, String most)
      throws BadInputException {
    unit(value, "s");
    BigDecimal seconds = value.number(field, new BigDecimal(least), new BigDecimal(most), "s");
    decimals(value, field, seconds, 3);
    return seconds.multiply(NANOS_PER_SECOND).longValueExact();
  }

  private static BigDecimal perMinute(JsonValue value, String field) throws BadInputException {
    BigDecimal rate = value.number(field, BigDecimal.valueOf(30), BigDecimal.valueOf(240), "/min");
    decimals(value, field, rate, 3);
    return rate;
  }

  private static void decimals(JsonValue value, String field, BigDecimal number, int most)
      throws BadInputException {
    if (number.stripTrailingZeros().scale() > most) {
      throw value.field(field, "").wrong("a number with at most " + most + " decimals");
    }
  }

  private static void unit(JsonValue value, String unit) throws BadInputException {
    value.choice("unit", List.of(unit), u -> u);
  }

  private static void ordered(JsonValue value, String field, boolean ok, String allowed)
      throws BadInputException {
    if (!ok) {
      throw value.field(field, allowed).wrong(allowed);
    }
  }

  private static String place(JsonValue value, String field) {
    return value.path().isEmpty() ? field : value.path() + "." + field;
  }
}
