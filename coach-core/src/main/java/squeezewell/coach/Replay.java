package squeezewell.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.InOrder;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.session.Breath;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.NotedBreath;
import squeezewell.session.NotedFinding;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * A session that is over, as the states that its coach showed, for any moment of it. What lies
 * ahead of the moment is not in a state: no later control, finding or retraction. The session is
 * taken apart once; a question then costs a few searches by halves and a copy of the breaths so
 * far. Any thread may ask; the answers depend on the moment alone.
 */
public final class Replay {
  private final Session session;
  private final long endNanos;
  private final List<Control> controls;
  private final CueSchedule whole;
  private final List<NotedBreath> squeezes;
  private final List<Long> compressions;
  private final List<NotedFinding> findings;
  private final List<SessionEvent> sounds = new ArrayList<>();
  private final List<SessionEvent> prompts = new ArrayList<>();

  /** The schedule made last: while a session plays on, the next question needs the same one. */
  private volatile Known known;

  private record Known(int controls, CueSchedule schedule) {}

  /** Takes a session apart. */
  public Replay(Session session) {
    this.session = Objects.requireNonNull(session, "session");
    this.controls = session.controls();
    this.whole = session.schedule();
    this.endNanos = session.endNanos(whole);
    this.compressions = session.compressions();
    this.squeezes = session.squeezes();
    this.findings = session.findings();
    for (SessionEvent event : session.standing()) {
      if (event.what() == EventType.SOUND_LOST || event.what() == EventType.SOUND_BACK) {
        sounds.add(event);
      }
      if (event.fact() instanceof Fact.Prompts) {
        prompts.add(event);
      }
    }
    this.known = new Known(controls.size(), whole);
  }

  /** The session that is played. */
  public Session session() {
    return session;
  }

  /** Its last moment, nanoseconds since it began. */
  public long endNanos() {
    return endNanos;
  }

  /** The prompts of the whole session. */
  public CueSchedule schedule() {
    return whole;
  }

  /**
   * How the practice stood at a moment.
   *
   * @param atNanos nanoseconds since the session began; one outside the session counts as the
   *     nearest inside it
   */
  public CoachState stateAt(long atNanos) {
    long at = Math.max(0, Math.min(atNanos, endNanos));
    CueSchedule schedule = scheduleAt(at);
    List<Breath> breaths = new ArrayList<>();
    boolean squeezing = false;
    for (NotedBreath noted : squeezes) {
      Breath breath = noted.breath();
      if (breath.startNanos() > at) {
        break;
      }
      if (noted.takenBackNanos().orElse(Long.MAX_VALUE) > at) {
        squeezing = breath.endNanos().orElse(at) > at;
        breaths.add(
            squeezing
                ? new Breath(breath.startNanos(), OptionalLong.empty(), OptionalDouble.empty())
                : breath);
      }
    }
    int compressed = InOrder.countUpTo(compressions.size(), compressions::get, at);
    return new CoachState(
        schedule,
        breaths,
        compressions.subList(Math.max(0, compressed - CoachState.RECENT), compressed),
        compressed,
        squeezing,
        CoachState.lastInterval(schedule, breaths),
        findingsAt(at),
        fadingLevelAt(schedule, at),
        soundLostAt(at),
        "",
        at >= endNanos);
  }

  private CueSchedule scheduleAt(long at) {
    int count = InOrder.countUpTo(controls.size(), i -> controls.get(i).atNanos(), at);
    Known last = known;
    if (last.controls() != count) {
      last =
          new Known(
              count,
              count == controls.size()
                  ? whole
                  : CueSchedule.of(whole.plan(), controls.subList(0, count)));
      known = last;
    }
    return last.schedule();
  }

  private List<NotedFinding> findingsAt(long at) {
    List<NotedFinding> noted = new ArrayList<>();
    for (NotedFinding finding : findings) {
      if (finding.atNanos() <= at) {
        noted.add(finding.asOf(at));
      }
    }
    return noted;
  }

  /** What the journal tells of it: another rhythm begins again with the lowest level. */
  private OptionalInt fadingLevelAt(CueSchedule schedule, long at) {
    Guidance guidance = schedule.guidanceAt(at);
    boolean prompted = schedule.inForceAt(at).care().prompted();
    if (schedule.plan().prompting() != Prompting.FADING
        || !prompted
        || !Prompting.mayFallSilent(guidance)) {
      return OptionalInt.empty();
    }
    int level = schedule.plan().startLevel();
    long from = Long.MIN_VALUE;
    for (NotedFinding finding : findings) {
      if (finding.changesPrompts() && finding.atNanos() <= at) {
        level = 0;
        from =
            finding.undoneNanos().orElse(at) < at
                ? finding.undoneNanos().getAsLong()
                : finding.atNanos();
      }
    }
    for (SessionEvent event : prompts) {
      if (event.atNanos() >= from && event.atNanos() <= at) {
        level = ((Fact.Prompts) event.fact()).level().orElse(level);
      }
    }
    return OptionalInt.of(level);
  }

  private boolean soundLostAt(long at) {
    boolean lost = false;
    for (SessionEvent event : sounds) {
      if (event.atNanos() <= at) {
        lost = event.what() == EventType.SOUND_LOST;
      }
    }
    return lost;
  }
}
