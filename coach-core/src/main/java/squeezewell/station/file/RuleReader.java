package squeezewell.station.file;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.input.FileWord;
import squeezewell.input.JsonValue;

/** Reads what spoils a station or has to be improved. */
final class RuleReader {
  private static final int LONGEST_SECONDS = 600;
  private static final int DEFAULT_RATE_SECONDS = 60;
  private static final int DEFAULT_GRACE_SECONDS = 3;
  private static final int MOST_BREATHS = 100;

  /** Over the fastest inflations that any edition has, 60 a minute, with room for a slip of it. */
  private static final BigDecimal FASTEST = BigDecimal.valueOf(150);

  private RuleReader() {}

  /** An entry of the list of critical faults, as version 1 has it. */
  static StationRule critical(StationFields fault) {
    return read(fault, StationRule.Severity.CRITICAL, false);
  }

  /** An entry of the list of rules. */
  static StationRule rule(StationFields rule) {
    StationRule.Severity severity =
        rule.take(
            () ->
                rule.value()
                    .choice("severity", List.of(StationRule.Severity.values()), FileWord::word),
            StationRule.Severity.CRITICAL);
    return read(rule, severity, true);
  }

  private static StationRule read(
      StationFields rule, StationRule.Severity severity, boolean fullRules) {
    JsonValue value = rule.value();
    value.allow(Arrays.asList("task", "order", "other", "finding"));
    List<StationRule.Kind> allowed = new ArrayList<>(List.of(StationRule.Kind.values()));
    if (!fullRules) {
      allowed.removeIf(StationRule.Kind::readsBreaths);
    }
    StationRule.Kind kind =
        rule.take(() -> value.choice("rule", allowed, FileWord::word), StationRule.Kind.TOO_LONG);
    boolean whileIt = kind == StationRule.Kind.DONE_WHILE;
    String task = "";
    if (!kind.readsBreaths() || kind == StationRule.Kind.BREATHS_WITHOUT) {
      boolean byOrder = whileIt && rule.take(() -> value.has("order"), false);
      task = rule.id(byOrder ? "order" : "task");
    }
    String other = "";
    if (whileIt || kind == StationRule.Kind.BREATH_WHILE) {
      other = rule.id("finding");
    } else if (kind == StationRule.Kind.BEFORE) {
      other = rule.id("other");
    }
    return new StationRule(
        rule.id(),
        rule.words("words"),
        kind,
        severity,
        rule.optional("source", () -> value.text("source", StationFields.LONGEST_WORDS)).orElse(""),
        task,
        other,
        limit(rule, kind, fullRules),
        bounds(rule, kind, fullRules),
        rule.only());
  }

  private static Optional<TimeLimit> limit(
      StationFields rule, StationRule.Kind kind, boolean fullRules) {
    if (kind == StationRule.Kind.BREATHS_WITHOUT) {
      return Optional.of(rule.since());
    }
    Optional<TimeLimit> limit = rule.limit();
    boolean waits = kind == StationRule.Kind.NO_BREATH || kind == StationRule.Kind.NO_COMPRESSION;
    boolean needs = waits || (kind == StationRule.Kind.NOT_DONE && !fullRules);
    if (needs && !limit.isPresent()) {
      rule.breaks("the rule " + kind.word() + " needs a limit");
    } else if (limit.isPresent() && !waits && kind != StationRule.Kind.NOT_DONE) {
      rule.breaks(
          fullRules
              ? "a limit belongs to the rules not-done, no-breath and no-compression only"
              : "a limit belongs to the rule not-done, and only there");
    }
    return limit;
  }

  private static StationRule.Bounds bounds(
      StationFields rule, StationRule.Kind kind, boolean fullRules) {
    OptionalLong nanos = OptionalLong.empty();
    OptionalDouble low = OptionalDouble.empty();
    OptionalDouble high = OptionalDouble.empty();
    int breaths = 1;
    long grace = 0;
    switch (kind) {
      case TOO_LONG, TOO_SHORT -> {
        if (fullRules) {
          nanos = rule.seconds("seconds");
        }
      }
      case RATE -> {
        nanos = OptionalLong.of(rule.seconds("seconds", 10, LONGEST_SECONDS, DEFAULT_RATE_SECONDS));
        low = perMinute(rule, "lowPerMinute");
        high = perMinute(rule, "highPerMinute");
        if (!low.isPresent() && !high.isPresent()) {
          rule.breaks("a rate needs lowPerMinute, highPerMinute or both");
        } else if (low.isPresent() && high.isPresent() && low.getAsDouble() >= high.getAsDouble()) {
          rule.breaks("lowPerMinute must be less than highPerMinute");
        }
      }
      case INTERRUPTION -> {
        nanos = rule.seconds("seconds");
        if (!nanos.isPresent()) {
          rule.breaks("an interruption needs seconds");
        }
      }
      case BREATH_WHILE -> {
        grace = rule.seconds("graceSeconds", 0, 60, DEFAULT_GRACE_SECONDS);
        breaths = breaths(rule).orElse(1);
      }
      case BREATHS_WITHOUT -> {
        Optional<Integer> most = breaths(rule);
        breaths = most.orElse(1);
        if (!most.isPresent()) {
          rule.breaks("the rule breaths-without needs breaths");
        }
      }
      default -> {
        // The rule has no number but that of its limit.
      }
    }
    return new StationRule.Bounds(
        nanos,
        low,
        high,
        breaths,
        grace,
        kind.readsBreaths() ? rule.ids("while") : List.of(),
        kind.readsBreaths() ? rule.ids("unless") : List.of());
  }

  private static OptionalDouble perMinute(StationFields rule, String name) {
    return rule.optional(
            name, () -> rule.value().number(name, BigDecimal.ONE, FASTEST, "breaths/min"))
        .map(rate -> OptionalDouble.of(rate.doubleValue()))
        .orElse(OptionalDouble.empty());
  }

  private static Optional<Integer> breaths(StationFields rule) {
    return rule.optional("breaths", () -> (int) rule.value().integer("breaths", 1, MOST_BREATHS));
  }
}
