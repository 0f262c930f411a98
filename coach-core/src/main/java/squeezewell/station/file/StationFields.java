package squeezewell.station.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.FileWord;
import squeezewell.input.JsonValue;
import squeezewell.input.Nearest;

/**
 * Reads the fields of one object of a station file. What can't be read is a fault, and counts as
 * left out.
 */
final class StationFields {
  /** The longest words of a task, finding or line, in characters. */
  static final int LONGEST_WORDS = 300;

  private static final int MOST = 100;
  private static final int LONGEST_SECONDS = 3_600;
  private static final long SECOND = 1_000_000_000L;

  private final JsonValue value;
  private final Identifiers named;
  private final Faults faults;

  /**
   * The fields of an object.
   *
   * @param named what findings and tasks are called in the file
   * @param faults where faults go
   */
  StationFields(JsonValue value, Identifiers named, Faults faults) {
    this.value = value;
    this.named = named;
    this.faults = faults;
  }

  JsonValue value() {
    return value;
  }

  /** The same for another object of the file. */
  StationFields of(JsonValue other) {
    return new StationFields(other, named, faults);
  }

  <T> T take(Faults.Reading<T> reading, T otherwise) {
    return faults.take(reading).orElse(otherwise);
  }

  /** What a field holds; empty where it is left out. */
  <T> Optional<T> optional(String name, Faults.Reading<T> reading) {
    return take(
        () -> value.has(name) ? Optional.of(reading.read()) : Optional.empty(), Optional.empty());
  }

  /** The object breaks a rule. */
  void breaks(String rule) {
    faults.add(BadInputException.fault(value.source(), value.path(), rule));
  }

  /** How many faults there are by now. */
  int faultCount() {
    return faults.all().size();
  }

  String id() {
    return id("id");
  }

  String id(String name) {
    return take(() -> Identifiers.read(value, name), "");
  }

  /** An identifier that may be left out. */
  String reference(String name) {
    return optional(name, () -> Identifiers.read(value, name)).orElse("");
  }

  String words(String name) {
    return words(name, LONGEST_WORDS);
  }

  String words(String name, int longest) {
    return take(() -> value.text(name, longest), "");
  }

  boolean flag(String name) {
    return take(() -> value.flagOr(name, false), false);
  }

  /** One of several words; empty where it is left out. */
  <T extends FileWord> Optional<T> choice(String name, T[] choices) {
    return optional(name, () -> value.choice(name, Arrays.asList(choices), FileWord::word));
  }

  /** Seconds as nanoseconds; empty where they are left out. */
  OptionalLong seconds(String name) {
    return optional(name, () -> nanos(value, name, 1, LONGEST_SECONDS))
        .map(OptionalLong::of)
        .orElse(OptionalLong.empty());
  }

  long seconds(String name, int least, int most, int otherwise) {
    return optional(name, () -> nanos(value, name, least, most)).orElse(otherwise * SECOND);
  }

  private static long nanos(JsonValue value, String name, int least, int most)
      throws BadInputException {
    BigDecimal seconds =
        value.number(name, BigDecimal.valueOf(least), BigDecimal.valueOf(most), "s");
    if (seconds.stripTrailingZeros().scale() > 3) {
      throw value.field(name, "").wrong("seconds with at most 3 decimals");
    }
    return seconds.multiply(BigDecimal.valueOf(SECOND)).longValueExact();
  }

  /** What sets a step off. */
  Trigger trigger() {
    return take(
        () -> readTrigger(value.field("when", "what sets the step off")),
        new Trigger(Trigger.Kind.SECONDS, "", StationPhase.EXERCISE, 0));
  }

  private static Trigger readTrigger(JsonValue when) throws BadInputException {
    List<Trigger.Kind> given = new ArrayList<>();
    for (Trigger.Kind kind : Trigger.Kind.values()) {
      if (when.has(kind.word())) {
        given.add(kind);
      }
    }
    if (given.size() != 1) {
      throw when.wrong("just one of seconds, task, started, order, finding, cleared");
    }
    when.allow(List.of("phase"));
    Trigger.Kind kind = given.get(0);
    return kind == Trigger.Kind.SECONDS
        ? new Trigger(kind, "", readPhase(when), nanos(when, kind.word(), 0, LONGEST_SECONDS))
        : new Trigger(kind, Identifiers.read(when, kind.word()), StationPhase.EXERCISE, 0);
  }

  /** The part of the station; the exercise where that is left out. */
  StationPhase phase() {
    return take(() -> readPhase(value), StationPhase.EXERCISE);
  }

  private static StationPhase readPhase(JsonValue value) throws BadInputException {
    return value.has("phase")
        ? value.choice(
            "phase", List.of(StationPhase.PREPARATION, StationPhase.EXERCISE), FileWord::word)
        : StationPhase.EXERCISE;
  }

  Optional<TimeLimit> limit() {
    return optional("limit", () -> readLimit(value.field("limit", "")));
  }

  /** The instant from which something is counted; the start of the exercise if it is left out. */
  TimeLimit since() {
    return optional("since", () -> readInstant(value.field("since", ""), 0))
        .orElse(new TimeLimit(0, TimeLimit.Anchor.EXERCISE, "", ""));
  }

  private static TimeLimit readLimit(JsonValue limit) throws BadInputException {
    return readInstant(limit, nanos(limit, "seconds", 1, LONGEST_SECONDS));
  }

  private static TimeLimit readInstant(JsonValue instant, long nanos) throws BadInputException {
    List<TimeLimit.Anchor> given = new ArrayList<>();
    for (TimeLimit.Anchor anchor : TimeLimit.Anchor.values()) {
      if (anchor != TimeLimit.Anchor.EXERCISE && instant.has(anchor.field())) {
        given.add(anchor);
      }
    }
    if (given.size() > 1) {
      throw instant.wrong(
          "at most one of fromTask, fromStarted, fromStep, fromFinding, fromCleared, fromOrder");
    }
    boolean otherwise = instant.has("elseFromTask");
    if (otherwise && !given.contains(TimeLimit.Anchor.TASK)) {
      throw instant.wrong("elseFromTask only beside fromTask");
    }
    return given.isEmpty()
        ? new TimeLimit(nanos, TimeLimit.Anchor.EXERCISE, "", "")
        : new TimeLimit(
            nanos,
            given.get(0),
            Identifiers.read(instant, given.get(0).field()),
            otherwise ? Identifiers.read(instant, "elseFromTask") : "");
  }

  Optional<BranchOption> only() {
    return optional(
        "only",
        () -> {
          JsonValue only = value.field("only", "");
          return new BranchOption(
              Identifiers.read(only, "branch"), Identifiers.read(only, "option"));
        });
  }

  /** A list of identifiers of findings and tasks. */
  List<String> ids(String name) {
    return optional(name, () -> readIds(name)).orElse(List.of());
  }

  private List<String> readIds(String name) throws BadInputException {
    List<String> ids = new ArrayList<>();
    for (JsonValue entry : value.list(name, 0, "a list of identifiers")) {
      String text = known(entry);
      if ((!text.isEmpty() && ids.contains(text)) || ids.size() >= MOST) {
        throw entry.wrong("each identifier once, at most " + MOST);
      }
      ids.add(text);
    }
    return ids;
  }

  /** The identifier that an entry names; empty if it may be one that could not be read. */
  private String known(JsonValue entry) throws BadInputException {
    for (String known : named.given()) {
      if (entry.isText(known)) {
        return known;
      }
    }
    // A text is described in quotation marks.
    String text = entry.describe().replace("\"", "");
    if (!text.equals(entry.describe()) && named.mayHave(text)) {
      return "";
    }
    throw entry.wrong(
        "the id of a task or finding of this file" + Nearest.question(text, named.given()));
  }
}
