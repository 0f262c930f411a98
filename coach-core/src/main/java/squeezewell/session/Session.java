package squeezewell.session;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;

/** What was done in a practice: the facts, in order. Immutable. */
public final class Session {
  private final SessionHeader header;
  private final List<SessionEvent> events;
  private final List<String> notes;

  /** Found once, since nearly every question to a session is about them. */
  private final Map<Integer, Long> retracted;

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
    retracted = retracted(this.events);
    standing = laidAgain();
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

  /**
   * The instant that every clock shows as 0:00, in nanoseconds since the session began: the first
   * prompt; in a test without prompts the first breath. What comes in the count-in is before zero.
   *
   * @param breaths so far, in order
   */
  public static long zeroNanos(PracticePlan plan, List<Breath> breaths) {
    return plan.prompting() == Prompting.NONE && !breaths.isEmpty()
        ? breaths.get(0).startNanos()
        : plan.countInNanos();
  }

  /** What a reader should know about how the session was read, such as a torn last line. */
  public List<String> notes() {
    return notes;
  }

  /** The events that stand: without the retracted ones, their ends and the retractions. */
  public List<SessionEvent> standing() {
    return standing;
  }

  /** The numbers of events that were retracted, and when. */
  private static Map<Integer, Long> retracted(List<SessionEvent> events) {
    Map<Integer, Long> retracted = new HashMap<>();
    for (SessionEvent event : events) {
      if (event.what() == EventType.RETRACT) {
        retracted.put(((Fact.Correction) event.fact()).event(), event.atNanos());
      }
    }
    return retracted;
  }

  private List<SessionEvent> laidAgain() {
    if (retracted.isEmpty()) {
      return events;
    }
    List<SessionEvent> kept = new ArrayList<>();
    boolean dropEnd = false;
    for (SessionEvent event : events) {
      if (event.what() == EventType.BREATH) {
        dropEnd = retracted.containsKey(event.number());
      }
      boolean dropped =
          event.what() == EventType.RETRACT
              || retracted.containsKey(event.number())
              || (event.what() == EventType.BREATH_END && dropEnd);
      if (!dropped) {
        kept.add(event);
      }
    }
    return List.copyOf(kept);
  }

  /**
   * All breaths, in order, those that were taken back too. When a squeeze has more than one end,
   * the contact bounced and the last end counts.
   */
  public List<NotedBreath> squeezes() {
    List<NotedBreath> noted = new ArrayList<>();
    for (SessionEvent event : events) {
      if (!(event.fact() instanceof Fact.Squeeze squeeze)) {
        continue;
      }
      Long gone = retracted.get(event.number());
      OptionalDouble volume = squeeze.millilitres();
      if (event.what() == EventType.BREATH) {
        noted.add(
            new NotedBreath(
                new Breath(event.atNanos(), OptionalLong.empty(), volume),
                gone == null ? OptionalLong.empty() : OptionalLong.of(gone)));
      } else if (gone == null && !noted.isEmpty()) {
        NotedBreath last = noted.remove(noted.size() - 1);
        Breath begun = last.breath();
        noted.add(
            new NotedBreath(
                new Breath(
                    begun.startNanos(),
                    OptionalLong.of(event.atNanos()),
                    volume.isPresent() ? volume : begun.millilitres()),
                last.takenBackNanos()));
      }
    }
    return noted;
  }

  /** The breaths given, in order. */
  public List<Breath> breaths() {
    return squeezes().stream()
        .filter(noted -> !noted.takenBackNanos().isPresent())
        .map(NotedBreath::breath)
        .collect(Collectors.toList());
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
