package squeezewell.session;

import java.util.Optional;
import squeezewell.cue.Control;

/** What can happen in a session: the words of its files. {@link Fact} holds what goes with each. */
public enum EventType {
  /** A squeeze began. */
  BREATH("breath", null),
  /** The squeeze ended. */
  BREATH_END("breath-end", null),
  /** One chest compression. */
  COMPRESSION("compression", null),
  PULSE_CHECK("pulse-check", Control.Kind.PULSE_CHECK),
  PULSE_CHECK_END("pulse-check-end", Control.Kind.PULSE_CHECK_END),
  SUCTION("suction", Control.Kind.SUCTION),
  SUCTION_END("suction-end", Control.Kind.SUCTION_END),
  PAUSE("pause", Control.Kind.PAUSE),
  RESUME("resume", Control.Kind.RESUME),
  /** Something was found, which may change the prompts. */
  FINDING("finding", null),
  /** The last finding was a slip. */
  FINDING_UNDONE("finding-undone", null),
  /** Breaths are no longer prompted. */
  PROMPTS_OFF("prompts-off", Control.Kind.PROMPTS_OFF),
  /** Breaths are prompted again, counted on from the breath given now. */
  PROMPTS_ON("prompts-on", Control.Kind.PROMPTS_ON),
  /** Breaths are prompted again, the first at once. */
  PROMPTS_AT_ONCE("prompts-at-once", Control.Kind.PROMPTS_AT_ONCE),
  /** The practice was ended, by the clock or by command. */
  FINISH("finish", Control.Kind.FINISH),
  /** The program stood still. No prompts were given meanwhile. */
  HOLE("hole", null),
  SOUND_LOST("sound-lost", null),
  SOUND_BACK("sound-back", null),
  /** An earlier event was a slip. */
  RETRACT("retract", null),
  /** A station is run. */
  STATION("station", null),
  /** The exercise of a station begins. */
  STATION_BEGIN("station-begin", null),
  STATION_END("station-end", null),
  TASK_START("task-start", null),
  TASK_DONE("task-done", null),
  /** What was last done about the task was a slip. */
  TASK_UNDONE("task-undone", null),
  /** Something beside the tasks was done. */
  ORDER("order", null),
  /** The examiner of a station said something. */
  EXAMINER("examiner", null),
  /** A person who examines made a finding come. */
  EXAMINER_FINDING("examiner-finding", null),
  /** A person who examines made a finding go. */
  EXAMINER_CLEARED("examiner-cleared", null),
  /** The instructor chose the way of a branch on the spot. */
  WAY_CHOSEN("way-chosen", null),
  /** Something to be talked about afterwards. */
  REMARK("remark", null),
  /** The clock of a station stands; the practice does too. */
  CLOCK_STOPPED("clock-stopped", null),
  CLOCK_RUNNING("clock-running", null),
  /** The examiner changed a mark of a task, even after the end. */
  MARK_CHANGED("mark-changed", null);

  private final String word;
  private final Control.Kind control;

  EventType(String word, Control.Kind control) {
    this.word = word;
    this.control = control;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** Whether it is part of a station rather than of the practice in it. */
  public boolean isOfStation() {
    return compareTo(STATION) >= 0;
  }

  /** What it changes about the prompts where its fact says no more; empty if nothing. */
  Optional<Control.Kind> control() {
    return Optional.ofNullable(control);
  }

  /** The event of that word. */
  public static Optional<EventType> of(String word) {
    for (EventType type : values()) {
      if (type.word.equals(word)) {
        return Optional.of(type);
      }
    }
    return Optional.empty();
  }

  /** The field that holds the text of a {@link Fact.Told}; empty for all other types. */
  Optional<String> textField() {
    return switch (this) {
      case TASK_START, TASK_DONE, TASK_UNDONE -> Optional.of("task");
      case ORDER -> Optional.of("order");
      case EXAMINER, REMARK -> Optional.of("words");
      case EXAMINER_FINDING, EXAMINER_CLEARED -> Optional.of("finding");
      case WAY_CHOSEN -> Optional.of("way");
      default -> Optional.empty();
    };
  }
}
