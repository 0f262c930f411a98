package squeezewell.station.file;

import java.util.Optional;
import squeezewell.input.FileWord;

/**
 * Something that alone spoils the station.
 *
 * @param id identifier
 * @param words for people
 * @param rule when it is committed
 * @param task identifier of the task, or of the order for {@link Rule#DONE_WHILE}
 * @param other identifier of the finding or of the other task, where the rule needs one; else empty
 * @param limit the time, for {@link Rule#NOT_DONE}
 * @param only the way of a branch on which it exists; empty for all
 */
public record CriticalFault(
    String id,
    String words,
    Rule rule,
    String task,
    String other,
    Optional<TimeLimit> limit,
    Optional<BranchOption> only)
    implements StationEntry {
  /** When a fault is committed. */
  public enum Rule implements FileWord {
    /** The task is needed and was not begun when the time was up. */
    NOT_DONE,
    /** The task was begun, or the order given, while the finding held. */
    DONE_WHILE,
    /** The task was begun before the other one was. */
    BEFORE,
    /** The task lasted longer than it may. */
    TOO_LONG,
    /** The task was shorter than it must be. */
    TOO_SHORT
  }
}
