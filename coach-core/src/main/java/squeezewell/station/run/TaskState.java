package squeezewell.station.run;

import java.util.Objects;
import java.util.OptionalLong;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskHold;
import squeezewell.station.file.TaskKind;

/**
 * How a task stands.
 *
 * @param task the task
 * @param progress how far it is
 * @param length how its length is judged
 * @param outOfOrder whether it was begun before what must come first
 * @param late whether it was begun, or still is not, after its time
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
    OptionalLong begunNanos,
    OptionalLong doneNanos,
    OptionalLong dueNanos,
    OptionalLong lengthNanos) {
  public TaskState {
    Objects.requireNonNull(task, "task");
    Objects.requireNonNull(progress, "progress");
    Objects.requireNonNull(length, "length");
  }

  /** How far a task is. */
  public enum Progress {
    /** It need not be done, or not as things are. */
    NOT_NEEDED("not needed"),
    /** To be done; no time runs. */
    OPEN("open"),
    /** To be done; its time runs. */
    DUE("due"),
    /** To be done; its time is over. */
    LATE("late"),
    /** Begun and not done. */
    RUNNING("running"),
    DONE("done"),
    /** The station ended without it. */
    MISSED("missed");

    private final String word;

    Progress(String word) {
      this.word = word;
    }

    /** The word shown to people. */
    public String word() {
      return word;
    }
  }

  /** How the length of a task is judged. */
  public enum Length {
    /** It has no length, is not done, still grows, or nobody said when it began. */
    NOT_JUDGED("not judged"),
    /** A finding ended it before it was long enough, which is not the trainee's fault. */
    CUT_SHORT("cut short"),
    GOOD("good"),
    SHORT("too short"),
    LONG("too long");

    private final String word;

    Length(String word) {
      this.word = word;
    }

    /** The word shown to people. */
    public String word() {
      return word;
    }
  }

  /** The one word for a list: what is wrong with it comes before that it is done. */
  public String word() {
    if (progress == Progress.DONE) {
      if (outOfOrder) {
        return "out of order";
      }
      if (length == Length.SHORT || length == Length.LONG) {
        return length.word();
      }
      return late ? "done late" : "done";
    }
    return progress.word();
  }

  /** Whether it holds the breaths up for that now. */
  public boolean isHolding(TaskHold hold) {
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
    return progress == Progress.DONE && word().equals("done");
  }
}
