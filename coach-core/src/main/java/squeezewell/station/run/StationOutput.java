package squeezewell.station.run;

import squeezewell.protocol.PatientChange;
import squeezewell.session.Fact;
import squeezewell.station.file.StationTask;

/** Takes what a station gives out, in order of time. Called within the run's own methods. */
public interface StationOutput {
  /**
   * Something to be written down.
   *
   * @param fact what happened
   * @param atNanos when, session time
   */
  void fact(Fact fact, long atNanos);

  /**
   * The live practice is to learn of a finding.
   *
   * @param finding what was found
   * @param atNanos when, session time
   */
  default void find(PatientChange finding, long atNanos) {}

  /**
   * The last finding that the live practice was told of was a slip.
   *
   * @param atNanos when, session time
   */
  default void undoFinding(long atNanos) {}

  /** A timed or paced task was begun. */
  default void started(StationTask task, long atNanos) {}

  /** A task was done. */
  default void done(StationTask task, long atNanos) {}

  /** The station's clock was stopped or runs again. */
  default void clock(boolean stopped, long atNanos) {}

  /** The station is over. */
  default void ended(long atNanos) {}

  /** An output that drops everything. */
  static StationOutput none() {
    return (fact, atNanos) -> {};
  }
}
