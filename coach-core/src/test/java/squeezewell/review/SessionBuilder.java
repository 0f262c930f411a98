package squeezewell.review;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** Builds sessions of an adult who needs one breath every 6 s, from times in seconds. */
public final class SessionBuilder {
  private record Entry(long atNanos, int order, EventType what, String detail) {}

  private final List<Entry> entries = new ArrayList<>();
  private final double lengthSeconds;
  private Situation situation = Situation.PULSE_NO_BREATHING;
  private SessionHeader.Origin origin = SessionHeader.Origin.EVENT_LIST;
  private double countInSeconds;
  private Prompting prompting = Prompting.THROUGHOUT;
  private Protocol protocol = GuidelineLibrary.editions().get(0);
  private PatientGroup patient = PatientGroup.ADULT;

  private SessionBuilder(double lengthSeconds) {
    this.lengthSeconds = lengthSeconds;
  }

  public static SessionBuilder ofSeconds(double lengthSeconds) {
    return new SessionBuilder(lengthSeconds);
  }

  public static long nanos(double seconds) {
    return Math.round(seconds * 1e9);
  }

  public SessionBuilder live() {
    origin = SessionHeader.Origin.LIVE;
    return this;
  }

  SessionBuilder countIn(double seconds) {
    countInSeconds = seconds;
    return this;
  }

  /** A test without prompts; the practice lasts as long as the session still. */
  public SessionBuilder test() {
    prompting = Prompting.NONE;
    return event(0, EventType.PROMPTS_OFF, "test");
  }

  public SessionBuilder in(Situation where) {
    situation = where;
    return this;
  }

  /** Breaths whose end is not known. */
  public SessionBuilder breaths(double... seconds) {
    for (double at : seconds) {
      event(at, EventType.BREATH, "");
    }
    return this;
  }

  /** Breaths from {@code first} to {@code last}, both included. */
  public SessionBuilder breathsEvery(double step, double first, double last) {
    int count = (int) Math.round((last - first) / step) + 1;
    for (int k = 0; k < count; k++) {
      breaths(first + k * step);
    }
    return this;
  }

  /** So many compressions, {@code step} seconds apart, from {@code first} on. */
  public SessionBuilder compressions(int count, double first, double step) {
    for (int k = 0; k < count; k++) {
      event(first + k * step, EventType.COMPRESSION, "");
    }
    return this;
  }

  public SessionBuilder squeeze(double at, double length, String volume) {
    event(at, EventType.BREATH, "");
    return event(at + length, EventType.BREATH_END, volume);
  }

  public SessionBuilder pulseCheck(double from, double to) {
    event(from, EventType.PULSE_CHECK, "");
    return event(to, EventType.PULSE_CHECK_END, "");
  }

  public SessionBuilder suction(double from, double to) {
    event(from, EventType.SUCTION, "");
    return event(to, EventType.SUCTION_END, "");
  }

  SessionBuilder pause(double from, double to) {
    event(from, EventType.PAUSE, "");
    return event(to, EventType.RESUME, "");
  }

  public SessionBuilder finding(double at, PatientChange finding) {
    return event(at, EventType.FINDING, finding.word());
  }

  /** Takes back the last finding before. */
  public SessionBuilder undone(double at) {
    return event(at, EventType.FINDING_UNDONE, "");
  }

  public SessionBuilder by(Protocol chosen, PatientGroup group) {
    protocol = chosen;
    patient = group;
    return this;
  }

  public SessionBuilder event(double at, EventType what, String detail) {
    entries.add(new Entry(nanos(at), entries.size(), what, detail));
    return this;
  }

  public Session build() {
    List<Entry> sorted = new ArrayList<>(entries);
    sorted.sort(Comparator.comparingLong(Entry::atNanos).thenComparingInt(Entry::order));
    List<SessionEvent> events = new ArrayList<>();
    Deque<Integer> found = new ArrayDeque<>();
    for (Entry entry : sorted) {
      int number = events.size() + 1;
      String detail = entry.detail();
      if (entry.what() == EventType.FINDING) {
        found.push(number);
      } else if (entry.what() == EventType.FINDING_UNDONE && !found.isEmpty()) {
        detail = Integer.toString(found.pop());
      }
      events.add(SessionEvent.of(number, entry.atNanos(), entry.what(), detail));
    }
    Guidance guidance = protocol.find(patient, situation, 2).orElseThrow();
    PracticePlan plan =
        PracticePlan.of(protocol, guidance, nanos(countInSeconds), nanos(lengthSeconds), 0);
    plan =
        new PracticePlan(
            plan.guidance(),
            plan.alternatives(),
            plan.countInNanos(),
            plan.lengthNanos(),
            plan.leadNanos(),
            prompting);
    return new Session(
        new SessionHeader(Instant.parse("2026-01-31T12:00:00Z"), origin, "", protocol, plan),
        events,
        List.of());
  }

  public Review review() {
    return Reviewer.review(build());
  }
}
