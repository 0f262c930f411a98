package squeezewell.station.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;
import squeezewell.input.Nearest;

/** Reads what stands in several places of a station file, and gathers what is wrong with it. */
final class StationFields {
  /** The longest words of a task, finding or line, in characters. */
  static final int LONGEST_WORDS = 300;

  private static final int LONGEST_ID = 40;
  private static final int MOST = 100;
  private static final BigDecimal NANOS = BigDecimal.valueOf(1_000_000_000L);

  private final FaultList faults;
  private final Identifiers findings;
  private final Identifiers tasks;

  /**
   * @param findings what findings are called in the file
   * @param tasks what tasks are called in the file
   * @param faults where faults go
   */
  StationFields(Identifiers findings, Identifiers tasks, FaultList faults) {
    this.findings = findings;
    this.tasks = tasks;
    this.faults = faults;
  }

  Trigger trigger(JsonValue when) throws BadInputException {
    List<Trigger.Kind> given = new ArrayList<>();
    for (Trigger.Kind kind : Trigger.Kind.values()) {
      if (when.has(kind.word())) {
        given.add(kind);
      }
    }
    if (given.size() != 1) {
      throw when.wrong("just one of seconds, task, started, order, finding, cleared");
    }
    Trigger.Kind kind = given.get(0);
    if (kind != Trigger.Kind.TIME) {
      return new Trigger(kind, id(when, kind.word()), StationPhase.EXERCISE, 0);
    }
    return new Trigger(kind, "", readPhase(when), nanos(when, "seconds", 0, 3_600));
  }

  Optional<TimeLimit> limit(JsonValue value) {
    return faults.take(
        () -> {
          if (!value.has("limit")) {
            return Optional.empty();
          }
          JsonValue limit = value.field("limit", "");
          long nanos = nanos(limit, "seconds", 1, 3_600);
          if (limit.has("fromTask") && limit.has("fromFinding")) {
            throw limit.wrong("either fromTask or fromFinding, or neither");
          }
          if (limit.has("fromTask")) {
            return Optional.of(new TimeLimit(nanos, TimeLimit.Anchor.TASK, id(limit, "fromTask")));
          }
          if (limit.has("fromFinding")) {
            return Optional.of(
                new TimeLimit(nanos, TimeLimit.Anchor.FINDING, id(limit, "fromFinding")));
          }
          return Optional.of(new TimeLimit(nanos, TimeLimit.Anchor.EXERCISE, ""));
        },
        Optional.empty());
  }

  Optional<BranchOption> only(JsonValue value) {
    return faults.take(
        () -> {
          if (!value.has("only")) {
            return Optional.empty();
          }
          JsonValue only = value.field("only", "");
          return Optional.of(new BranchOption(id(only, "branch"), id(only, "option")));
        },
        Optional.empty());
  }

  /** The part of the station; the exercise where that is left out. */
  StationPhase phase(JsonValue value) {
    return faults.take(() -> readPhase(value), StationPhase.EXERCISE);
  }

  private static StationPhase readPhase(JsonValue value) throws BadInputException {
    return value.has("phase")
        ? value.choice(
            "phase", List.of(StationPhase.PREPARATION, StationPhase.EXERCISE), StationPhase::word)
        : StationPhase.EXERCISE;
  }

  /** One of several words; empty where it is left out. */
  <T> Optional<T> choice(
      JsonValue value, String name, List<T> choices, Function<T, String> wordOf) {
    return faults.take(
        () -> value.has(name) ? Optional.of(value.choice(name, choices, wordOf)) : Optional.empty(),
        Optional.empty());
  }

  String words(JsonValue value, String name) {
    return words(value, name, LONGEST_WORDS);
  }

  String words(JsonValue value, String name, int longest) {
    return faults.take(() -> value.text(name, longest), "");
  }

  boolean flag(JsonValue value, String name) {
    return faults.take(() -> value.flagOr(name, false), false);
  }

  boolean has(JsonValue value, String name) {
    return faults.take(() -> value.has(name), false);
  }

  String reference(JsonValue value, String name) {
    return faults.take(() -> value.has(name) ? id(value, name) : "", "");
  }

  List<String> ids(JsonValue value, String name) {
    return faults.take(
        () -> {
          if (!value.has(name)) {
            return List.of();
          }
          List<String> ids = new ArrayList<>();
          for (JsonValue entry : value.list(name, 0, "a list of identifiers")) {
            String text = known(entry);
            if ((!text.isEmpty() && ids.contains(text)) || ids.size() >= MOST) {
              throw entry.wrong("each identifier once, at most " + MOST);
            }
            ids.add(text);
          }
          return ids;
        },
        List.of());
  }

  /** The identifier that an entry names; empty if it may be one that could not be read. */
  private String known(JsonValue entry) throws BadInputException {
    List<String> all = new ArrayList<>(findings.given());
    all.addAll(tasks.given());
    for (String known : all) {
      if (entry.isText(known)) {
        return known;
      }
    }
    String text = text(entry);
    boolean isText = !text.equals(entry.describe());
    if (isText && (findings.mayHave(text) || tasks.mayHave(text))) {
      return "";
    }
    throw entry.wrong("the id of a task or finding of this file" + Nearest.question(text, all));
  }

  private static String text(JsonValue entry) {
    // A text is described in quotation marks.
    return entry.describe().replace("\"", "");
  }

  static String id(JsonValue value) throws BadInputException {
    return id(value, "id");
  }

  static String id(JsonValue value, String name) throws BadInputException {
    String text = value.text(name, LONGEST_ID);
    if (!text.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw value.field(name, "").wrong("lower-case letters, digits and single hyphens");
    }
    return text;
  }

  long seconds(JsonValue value, String name, int least, int most, int otherwise) {
    return faults.take(
        () ->
            value.has(name) ? nanos(value, name, least, most) : otherwise * NANOS.longValueExact(),
        otherwise * NANOS.longValueExact());
  }

  OptionalLong optionalSeconds(JsonValue value, String name) {
    return faults.take(
        () ->
            value.has(name) ? OptionalLong.of(nanos(value, name, 1, 3_600)) : OptionalLong.empty(),
        OptionalLong.empty());
  }

  static long nanos(JsonValue value, String name, int least, int most) throws BadInputException {
    BigDecimal seconds =
        value.number(name, BigDecimal.valueOf(least), BigDecimal.valueOf(most), "s");
    if (seconds.stripTrailingZeros().scale() > 3) {
      throw value.field(name, "").wrong("seconds with at most 3 decimals");
    }
    return seconds.multiply(NANOS).longValueExact();
  }
}
