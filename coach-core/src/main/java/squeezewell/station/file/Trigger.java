package squeezewell.station.file;

import squeezewell.input.FileWord;

/**
 * What sets off a step of the script.
 *
 * @param kind what kind of thing
 * @param id identifier of the task, order or finding; empty for a time
 * @param phase the phase in which a time is counted
 * @param nanos for a time: how long after the phase began, on the station's clock; else 0
 */
public record Trigger(Kind kind, String id, StationPhase phase, long nanos) {
  /** The kinds of trigger, with the field that names each in files. */
  public enum Kind implements FileWord {
    SECONDS,
    /** A task is done. */
    TASK,
    /** A timed or paced task is begun. */
    STARTED,
    ORDER,
    /** A finding comes. */
    FINDING,
    /** A finding goes. */
    CLEARED
  }
}
