package squeezewell.station.file;

import java.util.Objects;

/**
 * What sets off a step of the script.
 *
 * @param kind what kind of thing
 * @param id identifier of the task, order or finding; empty for a time
 * @param phase the phase in which a time is counted
 * @param nanos for a time: how long after the phase began, on the station's clock; else 0
 */
public record Trigger(Kind kind, String id, StationPhase phase, long nanos) {
  public Trigger {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(phase, "phase");
  }

  /** The kinds of trigger, with the field that names each in files. */
  public enum Kind {
    TIME("seconds"),
    /** A task is done. */
    TASK("task"),
    /** A timed or paced task is begun. */
    STARTED("started"),
    ORDER("order"),
    /** A finding comes. */
    FINDING("finding"),
    /** A finding goes. */
    CLEARED("cleared");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The field that names it in files. */
    public String word() {
      return word;
    }
  }
}
