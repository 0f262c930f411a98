package squeezewell.session;

import java.util.Arrays;
import java.util.Optional;
import squeezewell.cue.Control;

/** What can happen in a session. */
public enum What {
  /** A squeeze began. */
  BREATH("breath", null),
  /** The squeeze ended; the detail may hold the volume, such as {@code 450 mL}. */
  BREATH_END("breath-end", null),
  /** One chest compression. */
  COMPRESSION("compression", null),
  PULSE_CHECK("pulse-check", Control.Kind.PULSE_CHECK),
  PULSE_CHECK_END("pulse-check-end", Control.Kind.PULSE_CHECK_END),
  /** The detail {@link #COMPRESSING} says that the chest was to be compressed meanwhile. */
  SUCTION("suction", Control.Kind.SUCTION),
  /** The detail {@link #SLIP} says that there was none: a finding was taken back. */
  SUCTION_END("suction-end", Control.Kind.SUCTION_END),
  PAUSE("pause", Control.Kind.PAUSE),
  RESUME("resume", Control.Kind.RESUME),
  /**
   * Something was found; the detail is a word of {@link squeezewell.protocol.ClinicalFinding},
   * which may change the prompts. Other words are taken for a {@link #REMARK}.
   */
  FINDING("finding", null),
  /** The last finding was a slip; the detail is the number of its event. */
  FINDING_UNDONE("finding-undone", null),
  /** Breaths are no longer prompted; the detail says why, such as {@code level 2}. */
  PROMPTS_OFF("prompts-off", Control.Kind.PROMPTS_OFF),
  /** Breaths are prompted again, counted on from the breath given now; the detail says why. */
  PROMPTS_ON("prompts-on", Control.Kind.PROMPTS_ON),
  /** Breaths are prompted again, the first at once; the detail says why. */
  PROMPTS_AT_ONCE("prompts-at-once", Control.Kind.PROMPTS_AT_ONCE),
  /** The practice was ended, by the clock or by command. */
  FINISH("finish", Control.Kind.FINISH),
  /** The program stood still; the detail says for how long. No prompts were given meanwhile. */
  HOLE("hole", null),
  SOUND_LOST("sound-lost", null),
  SOUND_BACK("sound-back", null),
  /** An earlier event was a slip; the detail is its number. */
  RETRACT("retract", null),
  /** A station is run; the detail is what was settled for it, and the station itself, as JSON. */
  STATION("station", null),
  /** The exercise of a station begins; the detail is {@code clock} or {@code command}. */
  STATION_BEGIN("station-begin", null),
  /** The station is over; the detail is {@code clock} or {@code command}. */
  STATION_END("station-end", null),
  /** A task of a station was begun; the detail is its identifier, here and in the next two. */
  TASK_START("task-start", null),
  TASK_DONE("task-done", null),
  /** What was last done about the task was a slip. */
  TASK_UNDONE("task-undone", null),
  /** Something beside the tasks was done; the detail is the identifier of the order. */
  ORDER("order", null),
  /** The examiner of a station said something; the detail is the words. */
  EXAMINER("examiner", null),
  /** A person who examines made a finding come; the detail is its identifier or word. */
  EXAMINER_FINDING("examiner-finding", null),
  /** A person who examines made a finding go; the detail is its identifier. */
  EXAMINER_CLEARED("examiner-cleared", null),
  /** The instructor chose the way of a branch on the spot; the detail is {@code branch=option}. */
  WAY_CHOSEN("way-chosen", null),
  /** Something to be talked about afterwards; the detail is the words. */
  REMARK("remark", null),
  /** The clock of a station stands; the practice does too. */
  CLOCK_STOPPED("clock-stopped", null),
  CLOCK_RUNNING("clock-running", null);

  /** Detail of {@link #SUCTION}: compressions go on. */
  public static final String COMPRESSING = "compressing";

  /** Detail of {@link #SUCTION_END}: suction was a slip. */
  public static final String SLIP = "slip";

  private static final int STATION_DETAIL = 44_000;

  private final String word;
  private final Control.Kind control;

  What(String word, Control.Kind control) {
    this.word = word;
    this.control = control;
  }

  /** The word used in files. */
  public String word() {
    return word;
  }

  /** The longest detail a file may hold, in characters. */
  public int longestDetail() {
    return this == STATION ? STATION_DETAIL : SessionEvent.LONGEST_DETAIL;
  }

  /** Whether it is part of a station rather than of the practice in it. */
  public boolean isOfStation() {
    return compareTo(STATION) >= 0;
  }

  /** What it changes about the prompts by itself, findings left out; empty if nothing. */
  public Optional<Control.Kind> control(String detail) {
    if (this == SUCTION && detail.equals(COMPRESSING)) {
      return Optional.of(Control.Kind.SUCTION_COMPRESSING);
    }
    if (this == SUCTION_END && detail.equals(SLIP)) {
      return Optional.of(Control.Kind.SUCTION_UNDONE);
    }
    return Optional.ofNullable(control);
  }

  /** The event that writes down a change of the prompts that no finding makes. */
  public static What of(Control.Kind change) {
    return switch (change) {
      case SUCTION_COMPRESSING -> SUCTION;
      case SUCTION_UNDONE -> SUCTION_END;
      default ->
          Arrays.stream(values()).filter(w -> w.control == change).findFirst().get();
    };
  }

  /** The detail of that event. */
  public static String detail(Control.Kind change) {
    return switch (change) {
      case SUCTION_COMPRESSING -> COMPRESSING;
      case SUCTION_UNDONE -> SLIP;
      default -> "";
    };
  }

  /** The event of that word. */
  public static Optional<What> of(String word) {
    for (What what : values()) {
      if (what.word.equals(word)) {
        return Optional.of(what);
      }
    }
    return Optional.empty();
  }
}
