package squeezewell.session;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.cue.CheckAnswer;
import squeezewell.input.BadInputException;
import squeezewell.input.FileWord;
import squeezewell.input.JsonValue;
import squeezewell.protocol.PatientChange;

/**
 * Facts as a file holds them: as the fields of a line (format 2), and as the one text that format 1
 * and event lists have for all. Nothing else knows either.
 */
final class EventCodec {
  /** No bag for a human being holds as much (our own bound). */
  static final int MOST_MILLILITRES = 5_000;

  private static final Pattern VOLUME = Pattern.compile("(\\d{1,5}(?:\\.\\d{1,3})?) ?mL");
  private static final Pattern LEVEL = Pattern.compile("level ([0-5])\\b(?:, (\\w+))?.*");
  private static final Pattern SECONDS = Pattern.compile("(\\d{1,9})(?:\\.(\\d))?\\d* s");
  private static final Pattern NUMBER = Pattern.compile("[1-9]\\d{0,8}");
  private static final List<CheckAnswer> ANSWERS = List.of(CheckAnswer.values());
  private static final String BY = "by";
  private static final String COMPRESSING = "compressing";
  private static final String SLIP = "slip";
  private static final String COMMAND = "command";
  private static final String CLOCK = "clock";
  private static final List<Fact.Prompts.Cause> CAUSES = List.of(Fact.Prompts.Cause.values());

  private EventCodec() {}

  /** A fact of format 2. */
  static Fact read(EventType type, JsonValue line) throws BadInputException {
    return switch (type) {
      case BREATH, BREATH_END -> new Fact.Squeeze(type, millilitres(line));
      case PULSE_CHECK_END ->
          new Fact.CheckEnd(
              line.has(BY)
                  ? Optional.of(line.choice(BY, ANSWERS, CheckAnswer::word))
                  : Optional.empty());
      case SUCTION -> new Fact.Suction(line.flagOr(COMPRESSING, false));
      case SUCTION_END -> new Fact.SuctionEnd(line.flagOr(SLIP, false));
      case FINDING ->
          new Fact.Found(
              line.choice("finding", List.of(PatientChange.values()), PatientChange::word));
      case RETRACT, FINDING_UNDONE ->
          new Fact.Correction(type, (int) line.integer("event", 1, Integer.MAX_VALUE));
      case PROMPTS_OFF, PROMPTS_ON, PROMPTS_AT_ONCE ->
          new Fact.Prompts(
              type,
              line.has("level")
                  ? OptionalInt.of((int) line.integer("level", 0, 5))
                  : OptionalInt.empty(),
              line.has("why")
                  ? line.choice("why", CAUSES, Fact.Prompts.Cause::word)
                  : Fact.Prompts.Cause.PLANNED);
      case HOLE -> stall(line);
      case STATION -> new Fact.StationSet(line.field("setup", "the station that is run").compact());
      case STATION_BEGIN, STATION_END ->
          new Fact.Turn(type, line.choice(BY, List.of(COMMAND, CLOCK), w -> w).equals(COMMAND));
      case TASK_START,
          TASK_DONE,
          TASK_UNDONE,
          ORDER,
          EXAMINER,
          EXAMINER_FINDING,
          EXAMINER_CLEARED,
          WAY_CHOSEN,
          REMARK ->
          new Fact.Told(type, line.freeText(type.textField().get(), Fact.LONGEST_TEXT));
      case MARK_CHANGED -> markChange(line);
      default -> new Fact.Plain(type);
    };
  }

  private static OptionalDouble millilitres(JsonValue line) throws BadInputException {
    return line.has("millilitres")
        ? OptionalDouble.of(
            line.number("millilitres", BigDecimal.ZERO, BigDecimal.valueOf(MOST_MILLILITRES), "mL")
                .doubleValue())
        : OptionalDouble.empty();
  }

  private static Fact markChange(JsonValue line) throws BadInputException {
    Fact.MarkChange.Change change =
        line.choice("change", List.of(Fact.MarkChange.Change.values()), FileWord::word);
    long earlier = 0;
    if (change == Fact.MarkChange.Change.EARLIER) {
      BigDecimal most = BigDecimal.valueOf(Fact.MarkChange.LONGEST_NANOS, 9);
      earlier =
          line.number("seconds", BigDecimal.valueOf(1, 3), most, "s").movePointRight(9).longValue();
    }
    return new Fact.MarkChange(
        line.text("task", 40),
        change,
        earlier,
        line.has("words") ? line.freeText("words", Fact.LONGEST_TEXT) : "");
  }

  private static Fact stall(JsonValue line) throws BadInputException {
    return line.has("seconds")
        ? Fact.Stall.of(
            line.number("seconds", BigDecimal.ZERO, BigDecimal.valueOf(999_999_999), "s")
                .movePointRight(9)
                .longValue())
        : new Fact.Stall(OptionalLong.empty());
  }

  /** Writes what {@link #read} reads. */
  static void write(JsonWriter json, Fact fact) throws IOException {
    if (fact instanceof Fact.Squeeze squeeze && squeeze.millilitres().isPresent()) {
      json.name("millilitres").value(decimal(squeeze));
    } else if (fact instanceof Fact.CheckEnd end && end.answer().isPresent()) {
      json.name(BY).value(end.answer().get().word());
    } else if (fact instanceof Fact.Suction suction && suction.compressing()) {
      json.name(COMPRESSING).value(true);
    } else if (fact instanceof Fact.SuctionEnd end && end.slip()) {
      json.name(SLIP).value(true);
    } else if (fact instanceof Fact.Found found) {
      json.name("finding").value(found.finding().word());
    } else if (fact instanceof Fact.Correction correction) {
      json.name("event").value(correction.event());
    } else if (fact instanceof Fact.Prompts prompts) {
      if (prompts.level().isPresent()) {
        json.name("level").value(prompts.level().getAsInt());
      }
      if (prompts.cause() != Fact.Prompts.Cause.PLANNED) {
        json.name("why").value(prompts.cause().word());
      }
    } else if (fact instanceof Fact.Stall stall && stall.lengthNanos().isPresent()) {
      json.name("seconds").value(seconds(stall));
    } else if (fact instanceof Fact.StationSet station) {
      json.name("setup").jsonValue(station.setup());
    } else if (fact instanceof Fact.Turn turn) {
      json.name(BY).value(turn.byCommand() ? COMMAND : CLOCK);
    } else if (fact instanceof Fact.MarkChange change) {
      json.name("task").value(change.task());
      json.name("change").value(change.change().word());
      if (change.earlierNanos() > 0) {
        json.name("seconds")
            .value(BigDecimal.valueOf(change.earlierNanos(), 9).stripTrailingZeros());
      }
      if (!change.words().isEmpty()) {
        json.name("words").value(change.words());
      }
    } else if (fact instanceof Fact.Told told) {
      json.name(told.type().textField().get()).value(told.text());
    }
  }

  /**
   * A fact of format 1 or of an event list. What a text does not tell is left out, and a finding
   * that is none of ours is a remark; a correction without a number names event 0.
   */
  static Fact parse(EventType type, String detail) {
    String text = detail.trim();
    switch (type) {
      case BREATH:
      case BREATH_END:
        Matcher volume = VOLUME.matcher(text);
        return volume.matches()
            ? new Fact.Squeeze(type, OptionalDouble.of(Double.parseDouble(volume.group(1))))
            : new Fact.Squeeze(type);
      case PULSE_CHECK_END:
        return new Fact.CheckEnd(ANSWERS.stream().filter(a -> a.word().equals(text)).findFirst());
      case SUCTION:
        return new Fact.Suction(detail.equals(COMPRESSING));
      case SUCTION_END:
        return new Fact.SuctionEnd(detail.equals(SLIP));
      case FINDING:
        Optional<PatientChange> finding = PatientChange.of(detail);
        return finding.isPresent()
            ? new Fact.Found(finding.get())
            : new Fact.Told(EventType.REMARK, detail);
      case RETRACT:
      case FINDING_UNDONE:
        return new Fact.Correction(
            type, NUMBER.matcher(detail).matches() ? Integer.parseInt(detail) : 0);
      case PROMPTS_OFF:
      case PROMPTS_ON:
      case PROMPTS_AT_ONCE:
        return prompts(type, detail);
      case HOLE:
        return stall(text);
      case STATION:
        return new Fact.StationSet(detail);
      case STATION_BEGIN:
      case STATION_END:
        return new Fact.Turn(type, detail.equals(COMMAND));
      case MARK_CHANGED:
        Optional<Fact.MarkChange> change = Fact.MarkChange.parse(detail);
        return change.isPresent() ? change.get() : new Fact.Told(EventType.REMARK, detail);
      default:
        return type.textField().isPresent() ? new Fact.Told(type, detail) : new Fact.Plain(type);
    }
  }

  private static Fact prompts(EventType type, String detail) {
    Matcher level = LEVEL.matcher(detail);
    boolean fades = level.matches();
    String why = fades ? String.valueOf(level.group(2)) : detail;
    Fact.Prompts.Cause cause = Fact.Prompts.Cause.PLANNED;
    for (Fact.Prompts.Cause each : CAUSES) {
      cause = each.word().equals(why) ? each : cause;
    }
    return new Fact.Prompts(
        type,
        fades ? OptionalInt.of(Integer.parseInt(level.group(1))) : OptionalInt.empty(),
        cause);
  }

  private static Fact stall(String text) {
    Matcher seconds = SECONDS.matcher(text);
    if (!seconds.matches()) {
      return new Fact.Stall(OptionalLong.empty());
    }
    long tenths = Long.parseLong(seconds.group(1)) * 10;
    tenths += seconds.group(2) == null ? 0 : Long.parseLong(seconds.group(2));
    return new Fact.Stall(OptionalLong.of(tenths * Fact.Stall.TENTH_NANOS));
  }

  /** What {@link #parse} takes: the text of a fact in format 1; empty if its word says all. */
  static String text(Fact fact) {
    if (fact instanceof Fact.Squeeze squeeze && squeeze.millilitres().isPresent()) {
      return decimal(squeeze).toPlainString() + " mL";
    } else if (fact instanceof Fact.CheckEnd end && end.answer().isPresent()) {
      return end.answer().get().word();
    } else if (fact instanceof Fact.Suction suction && suction.compressing()) {
      return COMPRESSING;
    } else if (fact instanceof Fact.SuctionEnd end && end.slip()) {
      return SLIP;
    } else if (fact instanceof Fact.Found found) {
      return found.finding().word();
    } else if (fact instanceof Fact.Correction correction) {
      return Integer.toString(correction.event());
    } else if (fact instanceof Fact.Prompts prompts) {
      String why = prompts.cause().word();
      return prompts.level().isPresent()
          ? "level " + prompts.level().getAsInt() + (why.isEmpty() ? "" : ", " + why)
          : why;
    } else if (fact instanceof Fact.Stall stall && stall.lengthNanos().isPresent()) {
      return seconds(stall).toPlainString() + " s";
    } else if (fact instanceof Fact.StationSet station) {
      return station.setup();
    } else if (fact instanceof Fact.Turn turn) {
      return turn.byCommand() ? COMMAND : CLOCK;
    } else if (fact instanceof Fact.MarkChange change) {
      return change.text();
    } else if (fact instanceof Fact.Told told) {
      return told.text();
    }
    return "";
  }

  private static BigDecimal decimal(Fact.Squeeze squeeze) {
    BigDecimal volume = BigDecimal.valueOf(squeeze.millilitres().getAsDouble());
    return new BigDecimal(volume.stripTrailingZeros().toPlainString());
  }

  private static BigDecimal seconds(Fact.Stall stall) {
    return BigDecimal.valueOf(stall.lengthNanos().getAsLong() / Fact.Stall.TENTH_NANOS, 1);
  }
}
