package squeezewell.station.run;

import squeezewell.session.Fact;

/**
 * What a person can do to a station. Every command returns whether it made sense; one that does not
 * changes nothing. Times are session time; one before that of an earlier call counts as that call's
 * time. What falls due at the very instant of a command comes before it.
 */
public interface StationCommands {
  /**
   * Does something.
   *
   * @param action what
   * @param words the identifier or words that go with it; empty if none do
   * @param nowNanos when
   */
  boolean act(StationAction action, String words, long nowNanos);

  /** Whether {@link #undo} would take back what was last done about a task. */
  boolean canUndo(String taskId, long nowNanos);

  /** The trainee is ready: the exercise begins before the preparation's time is up. */
  default boolean begin(long nowNanos) {
    return act(StationAction.BEGIN, "", nowNanos);
  }

  /** A timed or paced task begins; a paced one ends the paced one before it. */
  default boolean start(String taskId, long nowNanos) {
    return act(StationAction.START, taskId, nowNanos);
  }

  /** A task is done; one with a length that was never begun counts as done, its length unknown. */
  default boolean done(String taskId, long nowNanos) {
    return act(StationAction.DONE, taskId, nowNanos);
  }

  /**
   * Takes back what was last done about a task, its end or its beginning, within {@link
   * StationRun#UNDO_NANOS} of it. What followed from it is taken back too, save the examiner's
   * words, which were said.
   */
  default boolean undo(String taskId, long nowNanos) {
    return act(StationAction.UNDO, taskId, nowNanos);
  }

  /** Something that is not on the list of tasks is done. */
  default boolean order(String orderId, long nowNanos) {
    return act(StationAction.ORDER, orderId, nowNanos);
  }

  /**
   * An examiner makes a finding come.
   *
   * @param word the identifier of a finding of the station, or else the word of a {@link
   *     squeezewell.protocol.PatientChange}, which then changes the prompts only
   */
  default boolean inject(String word, long nowNanos) {
    return act(StationAction.INJECT, word, nowNanos);
  }

  /** An examiner makes a finding go. */
  default boolean clear(String findingId, long nowNanos) {
    return act(StationAction.CLEAR, findingId, nowNanos);
  }

  /**
   * Whoever leads the station chooses the way of a branch on the spot, until the branch is reached.
   *
   * @param way as {@link squeezewell.station.file.BranchOption#words} writes it
   */
  default boolean choose(String way, long nowNanos) {
    return act(StationAction.CHOOSE, way, nowNanos);
  }

  /** Something to be talked about afterwards. */
  default boolean remark(String words, long nowNanos) {
    return act(StationAction.REMARK, words, nowNanos);
  }

  /**
   * The examiner changes the mark of a task, even after the end.
   *
   * @param change what and why
   */
  default boolean mark(Fact.MarkChange change, long nowNanos) {
    return act(StationAction.MARK, change.text(), nowNanos);
  }

  /** The station's clock stands until {@link #runClock}. */
  default boolean stopClock(long nowNanos) {
    return act(StationAction.STOP_CLOCK, "", nowNanos);
  }

  /** The station's clock runs again. */
  default boolean runClock(long nowNanos) {
    return act(StationAction.RUN_CLOCK, "", nowNanos);
  }

  /** The station is over. */
  default boolean end(long nowNanos) {
    return act(StationAction.END, "", nowNanos);
  }
}
