package squeezewell.session;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.Control;
import squeezewell.input.FileWord;
import squeezewell.protocol.PatientChange;

/** What happened, with what belongs to it. {@code EventCodec} says how each stands in a file. */
public sealed interface Fact {
  /** The longest text of a fact, in characters. */
  int LONGEST_TEXT = 2_000;

  /** Which of the words of a session it is. */
  EventType type();

  /** What it changes about the prompts by itself, findings left out; empty if nothing. */
  default Optional<Control.Kind> control() {
    return type().control();
  }

  /** Something of which the word says all. */
  record Plain(EventType type) implements Fact {}

  /**
   * A squeeze began or ended.
   *
   * @param millilitres the volume delivered; empty if it was not measured
   */
  record Squeeze(EventType type, OptionalDouble millilitres) implements Fact {
    public Squeeze {
      require(type == EventType.BREATH || type == EventType.BREATH_END, type);
    }

    /** A squeeze whose volume was not measured. */
    public Squeeze(EventType type) {
      this(type, OptionalDouble.empty());
    }
  }

  /**
   * A check ended.
   *
   * @param answer what ended it; empty if that is not told
   */
  record CheckEnd(Optional<CheckAnswer> answer) implements Fact {
    @Override
    public EventType type() {
      return EventType.PULSE_CHECK_END;
    }
  }

  /**
   * Suction began.
   *
   * @param compressing whether the chest is compressed meanwhile without a break
   */
  record Suction(boolean compressing) implements Fact {
    @Override
    public EventType type() {
      return EventType.SUCTION;
    }

    @Override
    public Optional<Control.Kind> control() {
      return compressing ? Optional.of(Control.Kind.SUCTION_COMPRESSING) : type().control();
    }
  }

  /**
   * Suction ended.
   *
   * @param slip whether there was none: a finding was taken back
   */
  record SuctionEnd(boolean slip) implements Fact {
    @Override
    public EventType type() {
      return EventType.SUCTION_END;
    }

    @Override
    public Optional<Control.Kind> control() {
      return slip ? Optional.of(Control.Kind.SUCTION_UNDONE) : type().control();
    }
  }

  /** Something was found in the patient. */
  record Found(PatientChange finding) implements Fact {
    public Found {
      Objects.requireNonNull(finding, "finding");
    }

    @Override
    public EventType type() {
      return EventType.FINDING;
    }
  }

  /**
   * An earlier event, or the last finding, was a slip.
   *
   * @param event its number
   */
  record Correction(EventType type, int event) implements Fact {
    public Correction {
      require(type == EventType.RETRACT || type == EventType.FINDING_UNDONE, type);
    }
  }

  /**
   * Breaths are prompted from now on, or are not, or the level of fading changed.
   *
   * @param level the level of fading, 0 to 5; empty where prompts do not fade
   * @param cause why
   */
  record Prompts(EventType type, OptionalInt level, Cause cause) implements Fact {
    /** Why the prompts changed. */
    public enum Cause {
      /** The blocks of fading followed each other as planned, or it is not said. */
      PLANNED(""),
      /** A practice without prompts, as a test. */
      TEST("test"),
      /** The rhythm was lost. */
      RESCUE("rescue"),
      /** A wait grew too long. */
      GAP("gap");

      private final String word;

      Cause(String word) {
        this.word = word;
      }

      /** The word used in files; empty for {@link #PLANNED}. */
      String word() {
        return word;
      }
    }

    public Prompts {
      require(changesPrompts(type), type);
      Objects.requireNonNull(cause, "cause");
    }

    private static boolean changesPrompts(EventType type) {
      return type == EventType.PROMPTS_OFF
          || type == EventType.PROMPTS_ON
          || type == EventType.PROMPTS_AT_ONCE;
    }

    /** A practice that is not prompted, as a test. */
    public static Prompts test() {
      return new Prompts(EventType.PROMPTS_OFF, OptionalInt.empty(), Cause.TEST);
    }
  }

  /**
   * The program stood still.
   *
   * @param lengthNanos for how long, whole tenths of a second; empty if the file does not say
   */
  record Stall(OptionalLong lengthNanos) implements Fact {
    static final long TENTH_NANOS = 100_000_000L;

    /** A stall of a length, rounded to tenths of a second. */
    public static Stall of(long nanos) {
      return new Stall(OptionalLong.of((nanos + TENTH_NANOS / 2) / TENTH_NANOS * TENTH_NANOS));
    }

    @Override
    public EventType type() {
      return EventType.HOLE;
    }
  }

  /**
   * A station is run.
   *
   * @param setup what was settled for it and the station itself, as JSON that the station reads
   */
  record StationSet(String setup) implements Fact {
    static final int LONGEST = 44_000;

    public StationSet {
      require(setup.length() <= LONGEST, setup.length() + " characters");
    }

    @Override
    public EventType type() {
      return EventType.STATION;
    }
  }

  /**
   * The exercise of a station begins, or the station is over.
   *
   * @param byCommand whether a person did it; else the clock
   */
  record Turn(EventType type, boolean byCommand) implements Fact {
    public Turn {
      require(type == EventType.STATION_BEGIN || type == EventType.STATION_END, type);
    }
  }

  /**
   * Something of a station that a text tells.
   *
   * @param text the identifier of a task, an order or a finding, a way as {@code branch=option}, or
   *     words; at most {@link Fact#LONGEST_TEXT} characters
   */
  record Told(EventType type, String text) implements Fact {
    public Told {
      require(type.textField().isPresent(), type);
      require(text.length() <= LONGEST_TEXT, text.length() + " characters");
    }
  }

  /**
   * The examiner changed the mark of a task, with the reason.
   *
   * @param task its identifier
   * @param change what was changed
   * @param earlierNanos by how much the mark is dated back, on the station's clock; 0 for any other
   *     change
   * @param words the reason, or the remark; empty if none was given
   */
  record MarkChange(String task, Change change, long earlierNanos, String words) implements Fact {
    /** The most that a mark can be dated back: the longest station. */
    public static final long LONGEST_NANOS = 3_600_000_000_000L;

    private static final Pattern TEXT =
        Pattern.compile(
            "(\\S{1,40}) (?:(withdrawn|late|improper|remark)"
                + "|earlier (\\d{1,4}(?:\\.\\d{1,3})?))(?: (.*))?");

    /** How a mark can be changed. */
    public enum Change implements FileWord {
      /** It counts no more. */
      WITHDRAWN,
      /** The task was done earlier than it was marked. */
      EARLIER,
      /** The task was done too late, whatever the clock says; a second time takes that back. */
      LATE,
      /** The task was not done properly; a second time takes that back. */
      IMPROPER,
      /** Nothing but words. */
      REMARK
    }

    public MarkChange {
      Objects.requireNonNull(change, "change");
      require(words.length() <= LONGEST_TEXT, words.length() + " characters");
      boolean earlier = change == Change.EARLIER;
      boolean fits = earlierNanos >= 0 && earlierNanos <= LONGEST_NANOS;
      require(fits && earlier == (earlierNanos > 0), earlierNanos + " ns");
    }

    @Override
    public EventType type() {
      return EventType.MARK_CHANGED;
    }

    /** What {@link #text} wrote; empty if it is nothing of that kind. */
    public static Optional<MarkChange> parse(String text) {
      Matcher matcher = TEXT.matcher(text);
      if (!matcher.matches() || text.length() > LONGEST_TEXT) {
        return Optional.empty();
      }
      boolean earlier = matcher.group(3) != null;
      long nanos =
          earlier ? new BigDecimal(matcher.group(3)).movePointRight(9).longValueExact() : 0;
      Change change =
          earlier ? Change.EARLIER : Change.valueOf(matcher.group(2).toUpperCase(Locale.ROOT));
      return nanos > LONGEST_NANOS || earlier != nanos > 0
          ? Optional.empty()
          : Optional.of(
              new MarkChange(
                  matcher.group(1),
                  change,
                  nanos,
                  matcher.group(4) == null ? "" : matcher.group(4).trim()));
    }

    /** As scripts and lists of events have it: task, change, seconds if dated back, words. */
    public String text() {
      String seconds =
          change == Change.EARLIER
              ? " " + BigDecimal.valueOf(earlierNanos, 9).stripTrailingZeros().toPlainString()
              : "";
      return task + " " + change.word() + seconds + (words.isEmpty() ? "" : " " + words);
    }
  }

  private static void require(boolean fits, Object what) {
    if (!fits) {
      throw new IllegalArgumentException("no such fact: " + what);
    }
  }
}
