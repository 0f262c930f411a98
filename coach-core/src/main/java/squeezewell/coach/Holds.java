package squeezewell.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PatientCourse;
import squeezewell.cue.Segment;
import squeezewell.session.EventType;
import squeezewell.session.Fact;

/**
 * What commands do to what holds the prompts up: checks, suction and pauses. Pure, so that the same
 * commands can be carried out again on a schedule without something that was a slip.
 */
final class Holds {
  /**
   * A squeeze this long into a check or suction ends it: the trainee goes on. A compression does
   * too.
   */
  static final long BREATHING_AGAIN_NANOS = 300_000_000L;

  private Holds() {}

  /**
   * A command that was carried out, and was no contact that bounced.
   *
   * @param command what
   * @param atNanos when, session time
   */
  record Told(Command command, long atNanos) {}

  /** What a command changes about the prompts, in order; nothing if it makes no sense. */
  static List<Fact> changes(
      Command command, CueSchedule schedule, PatientCourse course, long atNanos) {
    Segment now = schedule.stretchAt(atNanos);
    return switch (command) {
      case PULSE_CHECK -> beginning(Segment.Kind.PULSE_CHECK, now, course);
      case SUCTION -> beginning(Segment.Kind.SUCTION, now, course);
      case PAUSE -> beginning(Segment.Kind.PAUSED, now, course);
      case PULSE_CHECK_END -> endIf(now, Segment.Kind.PULSE_CHECK);
      case SUCTION_END -> endIf(now, Segment.Kind.SUCTION);
      case RESUME -> endIf(now, Segment.Kind.PAUSED);
      // Where somebody else clears the airway, compressions are what was asked for.
      case COMPRESS ->
          now.compressing() ? List.of() : goingOn(now, CheckAnswer.COMPRESSION, atNanos);
      // In a rhythm check only compressions go on; a squeeze there is written down, no more.
      case SQUEEZE, BREATH ->
          now.kind() == Segment.Kind.PULSE_CHECK
                  && schedule.inForceAt(atNanos).check() == CheckKind.RHYTHM
              ? List.of()
              : goingOn(now, CheckAnswer.SQUEEZE, atNanos);
      default -> List.of();
    };
  }

  private static List<Fact> goingOn(Segment now, CheckAnswer by, long atNanos) {
    boolean again = atNanos - now.startNanos() >= BREATHING_AGAIN_NANOS;
    return again && now.kind() != Segment.Kind.PAUSED ? end(now, Optional.of(by)) : List.of();
  }

  /** One hold ends where another begins. */
  static List<Fact> beginning(Segment.Kind kind, Segment now, PatientCourse course) {
    if (now.kind() == kind || now.kind() == Segment.Kind.ENDED) {
      return List.of();
    }
    List<Fact> changes = new ArrayList<>(end(now));
    if (kind == Segment.Kind.PULSE_CHECK) {
      changes.add(new Fact.Plain(EventType.PULSE_CHECK));
    } else if (kind == Segment.Kind.PAUSED) {
      changes.add(new Fact.Plain(EventType.PAUSE));
    } else if (kind == Segment.Kind.SUCTION) {
      changes.add(new Fact.Suction(course.compressesDuringSuction()));
    }
    return changes;
  }

  private static List<Fact> endIf(Segment now, Segment.Kind kind) {
    return now.kind() == kind ? end(now) : List.of();
  }

  /** Nothing where nothing is held up. */
  private static List<Fact> end(Segment now) {
    return end(now, Optional.empty());
  }

  private static List<Fact> end(Segment now, Optional<CheckAnswer> by) {
    return switch (now.kind()) {
      case PULSE_CHECK -> List.of(new Fact.CheckEnd(by));
      case SUCTION -> List.of(new Fact.SuctionEnd(false));
      case PAUSED -> List.of(new Fact.Plain(EventType.RESUME));
      default -> List.of();
    };
  }

  /** Whether a change holds the prompts up. */
  static boolean begins(Fact change) {
    return switch (change.type()) {
      case PULSE_CHECK, SUCTION, PAUSE -> true;
      default -> false;
    };
  }

  /**
   * Lays a schedule again: what it would be by now had the commands been told to it.
   *
   * @param schedule the schedule before all of them
   * @param course where findings had led by then
   */
  static CueSchedule laidAgain(CueSchedule schedule, PatientCourse course, List<Told> commands) {
    CueSchedule again = schedule;
    for (Told told : commands) {
      for (Fact change : changes(told.command(), again, course, told.atNanos())) {
        again = again.with(new Control(told.atNanos(), change.control().get()));
      }
    }
    return again;
  }

  /** What leads back to where a schedule stands: begun is ended, and ended is begun again. */
  static List<Fact> backTo(Segment.Kind kind, Segment now, PatientCourse course) {
    List<Fact> changes = beginning(kind, now, course);
    return changes.equals(List.of(new Fact.SuctionEnd(false)))
        ? List.of(new Fact.SuctionEnd(true))
        : changes;
  }
}
