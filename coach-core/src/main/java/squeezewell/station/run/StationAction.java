package squeezewell.station.run;

import java.util.Arrays;
import java.util.Optional;
import squeezewell.input.FileWord;
import squeezewell.session.EventType;
import squeezewell.session.Fact;

/** What can be done to a station. Its word stands in scripts; the event in journals. */
public enum StationAction implements FileWord {
  /** The exercise begins before the preparation's time is up. */
  BEGIN(EventType.STATION_BEGIN),
  /** A task begins. */
  START(EventType.TASK_START),
  /** A task is done. */
  DONE(EventType.TASK_DONE),
  /** What was last done about a task was a slip. */
  UNDO(EventType.TASK_UNDONE),
  /** Something that is not on the list of tasks is done. */
  ORDER(EventType.ORDER),
  /** An examiner makes a finding come. */
  INJECT(EventType.EXAMINER_FINDING),
  /** An examiner makes a finding go. */
  CLEAR(EventType.EXAMINER_CLEARED),
  /** The way of a branch is chosen on the spot. */
  CHOOSE(EventType.WAY_CHOSEN),
  REMARK(EventType.REMARK),
  STOP_CLOCK(EventType.CLOCK_STOPPED),
  RUN_CLOCK(EventType.CLOCK_RUNNING),
  END(EventType.STATION_END),
  /** The mark of a task is changed, even after the end. */
  MARK(EventType.MARK_CHANGED),
  /** A squeeze was recorded. */
  BREATH(EventType.BREATH),
  /** The end of a squeeze was recorded. */
  BREATH_END(EventType.BREATH_END),
  /** A compression was recorded. */
  COMPRESSION(EventType.COMPRESSION),
  /** The last squeeze was a slip. */
  RETRACT(EventType.RETRACT);

  private final EventType event;

  StationAction(EventType event) {
    this.event = event;
  }

  /** What a person tells by a word. */
  public static Optional<StationAction> of(String word) {
    return Arrays.stream(values())
        .filter(a -> !a.isRecorded() && a.word().equals(word))
        .findFirst();
  }

  /** What a fact says that was done; empty where nobody did anything to the station. */
  static Optional<StationAction> of(Fact fact) {
    boolean byItself = fact instanceof Fact.Turn turn && !turn.byCommand();
    return Arrays.stream(values()).filter(a -> a.event == fact.type() && !byItself).findFirst();
  }

  /** Whether it is a squeeze or a compression, which the practice writes down. */
  boolean isRecorded() {
    return compareTo(BREATH) >= 0;
  }

  /** The words that go with a fact that is one. */
  static String words(Fact fact) {
    if (fact instanceof Fact.MarkChange change) {
      return change.text();
    }
    return fact instanceof Fact.Told told ? told.text() : "";
  }

  /** Whether an identifier or words go with it. */
  public boolean hasWords() {
    return switch (this) {
      case BEGIN, STOP_CLOCK, RUN_CLOCK, END, BREATH, BREATH_END, COMPRESSION, RETRACT -> false;
      default -> true;
    };
  }

  /** How it is written down. */
  Fact fact(String words) {
    if (this == MARK) {
      return Fact.MarkChange.parse(words).get();
    }
    if (hasWords()) {
      return new Fact.Told(event, words);
    }
    boolean turns = this == BEGIN || this == END;
    return turns ? new Fact.Turn(event, true) : new Fact.Plain(event);
  }
}
