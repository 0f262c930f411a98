package squeezewell.coach;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PatientCourse;
import squeezewell.cue.Segment;
import squeezewell.session.Breath;
import squeezewell.session.NotedFinding;

/**
 * A practice at one moment, for screens. Immutable.
 *
 * @param schedule the prompts, past and to come
 * @param breaths the breaths so far, in order; the last may still be going on
 * @param recentCompressions the last compressions, in order, at most {@link #RECENT}
 * @param compressionCount how many compressions there were
 * @param squeezing whether a squeeze is going on
 * @param lastIntervalNanos from the squeeze before the last to the last, when nothing held up
 *     breathing between them; empty otherwise
 * @param findings what was found so far, in order, slips that were taken back included
 * @param fadingLevel the level of fading, 0 to 5; empty where prompts do not fade
 * @param soundLost whether sound has stopped
 * @param trouble what a person must know, such as a full disk; empty if all is well
 * @param finished whether the practice is over
 */
public record CoachState(
    CueSchedule schedule,
    List<Breath> breaths,
    List<Long> recentCompressions,
    int compressionCount,
    boolean squeezing,
    OptionalLong lastIntervalNanos,
    List<NotedFinding> findings,
    OptionalInt fadingLevel,
    boolean soundLost,
    String trouble,
    boolean finished) {
  /** How many compressions a screen can show: half a minute of them. */
  public static final int RECENT = 64;

  /** A finding can be taken back as a slip for so long. */
  public static final long UNDO_FINDING_NANOS = 5_000_000_000L;

  public CoachState {
    Objects.requireNonNull(schedule, "schedule");
    Objects.requireNonNull(trouble, "trouble");
    breaths = List.copyOf(breaths);
    recentCompressions = List.copyOf(recentCompressions);
    findings = List.copyOf(findings);
  }

  /** From the squeeze before the last to the last; empty if something held them apart. */
  static OptionalLong lastInterval(CueSchedule schedule, List<Breath> breaths) {
    if (breaths.size() < 2) {
      return OptionalLong.empty();
    }
    long from = breaths.get(breaths.size() - 2).startNanos();
    long to = breaths.get(breaths.size() - 1).startNanos();
    return schedule.unbroken(from, to) ? OptionalLong.of(to - from) : OptionalLong.empty();
  }

  /**
   * For how long breaths were asked for and none came; 0 while none is asked for. Before the first
   * breath it is 0 too where breaths are prompted, since one may practise without recording any.
   *
   * @param nowNanos session time
   */
  public long withoutBreathNanos(long nowNanos) {
    Segment segment = schedule.stretchAt(nowNanos);
    boolean silent = schedule.silentAt(nowNanos);
    if (segment.kind() != Segment.Kind.PACED || (breaths.isEmpty() && !silent)) {
      return 0;
    }
    long until = segment.startNanos();
    if (!breaths.isEmpty()) {
      Breath last = breaths.get(breaths.size() - 1);
      until = squeezing ? nowNanos : Math.max(until, last.endNanos().orElse(last.startNanos()));
      // Where prompts came back the stretch is new, and the wait is not.
      until = silent || squeezing ? until : waitFrom(until, last, segment);
    }
    return Math.max(0, nowNanos - until);
  }

  private long waitFrom(long until, Breath last, Segment segment) {
    long breathed = last.endNanos().orElse(last.startNanos());
    boolean goesOn = schedule.unbroken(last.startNanos(), segment.startNanos());
    return goesOn ? breathed : until;
  }

  /** Where findings have led by now. */
  public PatientCourse course() {
    if (findings.isEmpty()) {
      return PatientCourse.of(schedule.plan());
    }
    NotedFinding last = findings.get(findings.size() - 1);
    return last.undone() ? last.before() : last.after();
  }

  /**
   * The last finding, if it can still be taken back at an instant.
   *
   * @param nowNanos session time
   */
  public Optional<NotedFinding> undoable(long nowNanos) {
    return finished ? Optional.empty() : undoable(findings, nowNanos);
  }

  static Optional<NotedFinding> undoable(List<NotedFinding> findings, long nowNanos) {
    if (findings.isEmpty()) {
      return Optional.empty();
    }
    NotedFinding last = findings.get(findings.size() - 1);
    boolean open = !last.undone() && nowNanos - last.atNanos() <= UNDO_FINDING_NANOS;
    return open ? Optional.of(last) : Optional.empty();
  }

  /** This state with the practice over, and what a person must know of its end. */
  public CoachState ended(String finalTrouble) {
    return new CoachState(
        schedule,
        breaths,
        recentCompressions,
        compressionCount,
        false,
        lastIntervalNanos,
        findings,
        fadingLevel,
        soundLost,
        finalTrouble,
        true);
  }
}
