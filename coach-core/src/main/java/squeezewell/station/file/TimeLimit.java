package squeezewell.station.file;

import squeezewell.input.FileWord;

/**
 * By when something has to be begun.
 *
 * @param nanos how long after the anchor, nanoseconds on the station's clock; positive, or 0 for
 *     the instant alone
 * @param from what starts the time
 * @param id identifier of the task, step, finding or order; empty for the exercise
 * @param otherwise for a task: the task whose end starts the time while the first is not begun;
 *     empty for none
 */
public record TimeLimit(long nanos, Anchor from, String id, String otherwise) {
  /** What a time is counted from, each time the first of its kind. */
  public enum Anchor implements FileWord {
    /** The start of the exercise. */
    EXERCISE,
    /** The moment at which a task is done. */
    TASK,
    /** The moment at which a task is begun. */
    STARTED,
    /** The moment at which a step of the script is taken, so the examiner's words. */
    STEP,
    /** The moment at which a finding first comes. */
    FINDING,
    /** The moment at which a finding first goes. */
    CLEARED,
    /** The moment at which an order is given. */
    ORDER;

    /** The field that names it in files, such as {@code fromTask}. */
    String field() {
      return "from" + name().charAt(0) + word().substring(1);
    }
  }
}
