package squeezewell.station.run;

import java.util.Locale;
import java.util.Objects;
import java.util.OptionalLong;
import squeezewell.cue.Segment;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;
import squeezewell.words.Wording;

/**
 * How a task stands.
 *
 * @param task the task
 * @param progress how far it is
 * @param length how its length is judged
 * @param outOfOrder whether it was begun before what must come first
 * @param late whether it was begun, or still is not, after its time
 * @param improper whether the examiner says that it was not done properly
 * @param begunNanos when it was begun, on the station's clock; empty if it was not
 * @param doneNanos when it was done, on the station's clock; empty if it was not
 * @param dueNanos by when it has to be begun, on the station's clock; empty if no time runs
 * @param lengthNanos how long it took, or so far; of a paced task the time in which breaths went
 *     on, of one that places an adjunct and asks for breaths with it all such time; empty if that
 *     is not known or it is another tap
 */
public record TaskState(
    StationTask task,
    Progress progress,
    Length length,
    boolean outOfOrder,
    boolean late,
    boolean improper,
    OptionalLong begunNanos,
    OptionalLong doneNanos,
    OptionalLong dueNanos,
    OptionalLong lengthNanos) {
  private static final Wording WORDS = Wording.beside(TaskState.class);

  public TaskState {
    Objects.requireNonNull(task, "task");
    Objects.requireNonNull(progress, "progress");
    Objects.requireNonNull(length, "length");
  }

  /** How far a task is. */
  public enum Progress {
    /** It need not be done, or not as things are. */
    NOT_NEEDED,
    /** To be done; no time runs. */
    OPEN,
    /** To be done; its time runs. */
    DUE,
    /** To be done; its time is over. */
    LATE,
    /** Begun and not done. */
    RUNNING,
    DONE,
    /** The station ended without it. */
    MISSED;

    /** The word shown to people, and in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** How the length of a task is judged. */
  public enum Length {
    /** It has no length, is not done, still grows, or nobody said when it began. */
    NOT_JUDGED,
    /** A finding ended it before it was long enough, which is not the trainee's fault. */
    CUT_SHORT,
    GOOD,
    TOO_SHORT,
    TOO_LONG;

    /** The word shown to people, and in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
  }

  /** The one word for a list: what is wrong with it comes before that it is done. */
  public String word() {
    if (progress != Progress.DONE) {
      return progress.word();
    }
    if (improper) {
      return WORDS.say("task.improper");
    }
    if (outOfOrder) {
      return WORDS.say("task.out-of-order");
    }
    if (isWrongLength()) {
      return length.word();
    }
    return late ? WORDS.say("task.done-late") : progress.word();
  }

  /** Whether it was too short or too long. */
  public boolean isWrongLength() {
    return length == Length.TOO_SHORT || length == Length.TOO_LONG;
  }

  /** Whether it is needed and was not begun. */
  boolean isToDo() {
    return progress == Progress.OPEN || progress == Progress.DUE || progress == Progress.LATE;
  }

  /** Whether it holds the breaths up for that now. */
  public boolean isHolding(Segment.Kind hold) {
    return progress == Progress.RUNNING && task.hold().filter(hold::equals).isPresent();
  }

  /** Whether it is a stretch of breaths that goes on and has not lasted long enough yet. */
  boolean isTooShort() {
    return task.kind() == TaskKind.PACED
        && progress == Progress.RUNNING
        && lengthNanos.orElse(0) < task.leastNanos().orElse(0);
  }

  /** For how long breaths still have to be given with what it placed; 0 if no longer. */
  public long breathsLeftNanos() {
    boolean waits =
        task.asksForBreaths() && progress == Progress.DONE && length == Length.NOT_JUDGED;
    return waits ? task.leastNanos().getAsLong() - lengthNanos().orElse(0) : 0;
  }

  /** Whether it was done, in order, in time and at a good length. */
  public boolean good() {
    return progress == Progress.DONE && !outOfOrder && !late && !improper && !isWrongLength();
  }
}
