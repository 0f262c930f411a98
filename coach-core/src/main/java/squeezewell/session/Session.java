package squeezewell.session;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;

/** What was done in a practice: the facts, in order. Immutable. */
public final class Session {
  private final SessionHeader header;
  private final List<SessionEvent> events;
  private final List<String> notes;

  /** Found once, since nearly every question to a session is about them. */
  private final List<SessionEvent> standing;

  private final boolean finished;

  /**
   * A session.
   *
   * @param header what was fixed before
   * @param events all events, retracted ones included
   * @param notes what a reader should know about how the session was read, such as a torn last line
   */
  public Session(SessionHeader header, List<SessionEvent> events, List<String> notes) {
    this.header = Objects.requireNonNull(header, "header");
    this.events = List.copyOf(events);
    this.notes = List.copyOf(notes);
    standing = standing(this.events);
    finished = standing.stream().anyMatch(e -> e.what() == EventType.FINISH);
  }

  /** What was fixed before. */
  public SessionHeader header() {
    return header;
  }

  /** All events, in order, retracted ones included. */
  public List<SessionEvent> events() {
    return events;
  }

  /** What a reader should know about how the session was read, such as a torn last line. */
  public List<String> notes() {
    return notes;
  }

  /** The events that stand: without the retracted ones, their ends and the retractions. */
  public List<SessionEvent> standing() {
    return standing;
  }

  private static List<SessionEvent> standing(List<SessionEvent> events) {
    Set<Integer> retracted = new HashSet<>();
    for (SessionEvent event : events) {
      if (event.what() == EventType.RETRACT) {
        retracted.add(((Fact.Correction) event.fact()).event());
      }
    }
    if (retracted.isEmpty()) {
      return events;
    }
    List<SessionEvent> standing = new ArrayList<>();
    boolean dropEnd = false;
    for (SessionEvent event : events) {
      if (event.what() == EventType.BREATH) {
        dropEnd = retracted.contains(event.number());
      }
      boolean dropped =
          event.what() == EventType.RETRACT
              || retracted.contains(event.number())
              || (event.what() == EventType.BREATH_END && dropEnd);
      if (!dropped) {
        standing.add(event);
      }
    }
    return List.copyOf(standing);
  }

  /**
   * The breaths given, in order. When a squeeze has more than one end, the contact bounced and the
   * last end counts.
   */
  public List<Breath> breaths() {
    List<Breath> breaths = new ArrayList<>();
    for (SessionEvent event : standing) {
      if (event.fact() instanceof Fact.Squeeze squeeze) {
        OptionalDouble volume = squeeze.millilitres();
        if (event.what() == EventType.BREATH) {
          breaths.add(new Breath(event.atNanos(), OptionalLong.empty(), volume));
        } else if (!breaths.isEmpty()) {
          Breath last = breaths.remove(breaths.size() - 1);
          breaths.add(
              new Breath(
                  last.startNanos(),
                  OptionalLong.of(event.atNanos()),
                  volume.isPresent() ? volume : last.millilitres()));
        }
      }
    }
    return breaths;
  }

  /** When the chest was compressed, nanoseconds since the session began, in order. */
  public List<Long> compressions() {
    List<Long> instants = new ArrayList<>();
    for (SessionEvent event : standing) {
      if (event.what() == EventType.COMPRESSION) {
        instants.add(event.atNanos());
      }
    }
    return List.copyOf(instants);
  }

  /** What changed the prompts, in order. */
  public List<Control> controls() {
    return FindingWalk.through(header.plan(), standing).controls();
  }

  /** What was found, in order, slips that were taken back included. */
  public List<NotedFinding> findings() {
    return FindingWalk.through(header.plan(), standing).findings();
  }

  /** The prompts of this session. */
  public CueSchedule schedule() {
    return CueSchedule.of(header.plan(), controls());
  }

  /** Whether the session was brought to its end; if not, the program was stopped in the middle. */
  public boolean finished() {
    return finished;
  }

  /**
   * The instant up to which something is known: the finish or the planned end, whichever comes
   * first. A live session without either was cut off, and ends with its last event. An event list
   * is taken to cover its plan, since whoever wrote it down chose that length.
   */
  public long endNanos() {
    return endNanos(schedule());
  }

  /**
   * The same, where the prompts of this session are at hand: to lay them out takes the longest.
   *
   * @param schedule what {@link #schedule()} gave
   */
  public long endNanos(CueSchedule schedule) {
    OptionalLong planned = schedule.endNanos();
    long last = events.isEmpty() ? 0 : events.get(events.size() - 1).atNanos();
    if (finished || header.origin() == SessionHeader.Origin.EVENT_LIST) {
      return planned.orElse(last);
    }
    return Math.min(last, planned.orElse(last));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Session session
        && header.equals(session.header)
        && events.equals(session.events)
        && notes.equals(session.notes);
  }

  @Override
  public int hashCode() {
    return Objects.hash(header, events, notes);
  }

  @Override
  public String toString() {
    return "Session[header=" + header + ", events=" + events + ", notes=" + notes + "]";
  }
}
