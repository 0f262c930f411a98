package squeezewell.station.file;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.input.FileWord;

/**
 * Something that spoils the station or has to be improved.
 *
 * @param id identifier
 * @param words for people
 * @param kind when it is broken
 * @param severity how much it counts
 * @param source the public rule that it follows; empty if the file names none
 * @param task identifier of the task, or of the order for {@link Kind#DONE_WHILE}; else empty
 * @param other identifier of the finding or of the other task, where the rule needs one; else empty
 * @param limit the time, or the instant from which breaths are counted, where the rule needs one
 * @param bounds the numbers of the rule and when it counts
 * @param only the way of a branch on which it exists; empty for all
 */
public record StationRule(
    String id,
    String words,
    Kind kind,
    Severity severity,
    String source,
    String task,
    String other,
    Optional<TimeLimit> limit,
    Bounds bounds,
    Optional<BranchOption> only)
    implements StationEntry {
  /** When a rule is broken. */
  public enum Kind implements FileWord {
    /** The task is needed and was not begun when the time was up, or by the end without a limit. */
    NOT_DONE,
    /** The task was begun, or the order given, while the finding held. */
    DONE_WHILE,
    /** The task was begun before the other one was. */
    BEFORE,
    /** The task lasted longer than it may. */
    TOO_LONG,
    /** The task was shorter than it must be. */
    TOO_SHORT,
    /** Breaths came too fast or too slowly over a stretch. */
    RATE,
    /** Once breaths had begun, none came for too long. */
    INTERRUPTION,
    /** Breaths were given while the finding held. */
    BREATH_WHILE,
    /** No breath came within the time. */
    NO_BREATH,
    /** No compression came within the time. */
    NO_COMPRESSION,
    /** So many breaths were given since the instant before the task was begun. */
    BREATHS_WITHOUT;

    /** Whether it is read from recorded breaths and compressions, not from marks. */
    public boolean readsBreaths() {
      return compareTo(RATE) >= 0;
    }
  }

  /** How much it counts. */
  public enum Severity implements FileWord {
    /** It alone spoils the station. */
    CRITICAL,
    /** It has to be improved. */
    IMPROVE
  }

  /**
   * The numbers of a rule.
   *
   * @param nanos how long a stretch, an interruption or a task is, on the station's clock; empty
   *     where the rule has none or the task's own bound counts
   * @param low breaths a minute under which a rate is too slow
   * @param high breaths a minute over which a rate is too fast
   * @param breaths how many breaths are too many
   * @param graceNanos how long after a finding came breaths do not count yet
   * @param holding identifiers of findings that must all hold for the rule to count
   * @param absent identifiers of findings of which none may hold for the rule to count
   */
  public record Bounds(
      OptionalLong nanos,
      OptionalDouble low,
      OptionalDouble high,
      int breaths,
      long graceNanos,
      List<String> holding,
      List<String> absent) {
    public Bounds {
      holding = List.copyOf(holding);
      absent = List.copyOf(absent);
    }
  }
}
