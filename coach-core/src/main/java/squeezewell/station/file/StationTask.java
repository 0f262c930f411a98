package squeezewell.station.file;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.cue.Segment;

/**
 * Something that the trainee has to do.
 *
 * @param id identifier
 * @param words what it is
 * @param doneWhen what counts as done
 * @param phase preparation or exercise
 * @param kind how it is done
 * @param after identifiers of tasks that must have been begun before
 * @param limit by when it has to be begun; a preparation task without one is due when the exercise
 *     begins
 * @param critical whether missing it is a critical fault
 * @param optional whether it need not be done; it may even be wrong to do it
 * @param ifFinding identifier of the finding that makes it needed; empty if it always is
 * @param only the way of a branch on which it exists; empty for all
 * @param leastNanos a timed task that is shorter is too short; of a paced task the time counts in
 *     which breaths went on, of one that places an adjunct all such time with it
 * @param mostNanos a timed or paced task that is longer is too long
 * @param hold what it holds the breaths up for
 * @param oxygen whether oxygen flows once it is done
 * @param adjunct what breaths are given with once it is done; empty if it changes nothing in that
 */
public record StationTask(
    String id,
    String words,
    String doneWhen,
    StationPhase phase,
    TaskKind kind,
    List<String> after,
    Optional<TimeLimit> limit,
    boolean critical,
    boolean optional,
    String ifFinding,
    Optional<BranchOption> only,
    OptionalLong leastNanos,
    OptionalLong mostNanos,
    Optional<Segment.Kind> hold,
    boolean oxygen,
    Optional<Adjunct> adjunct)
    implements StationEntry {
  public StationTask {
    after = List.copyOf(after);
  }

  /** Whether it has a beginning and an end. */
  public boolean lasts() {
    return kind != TaskKind.TAP;
  }

  /** Whether a least time has to be ventilated with what it places. */
  public boolean asksForBreaths() {
    return adjunct.isPresent() && leastNanos.isPresent();
  }

  @Override
  public String toString() {
    return "task " + id;
  }
}
