package squeezewell.trainee;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** Sessions of a trainee, written by hand. */
final class PastSessions {
  private static final long SECOND = TestPlans.SECOND;
  static final Guidance ADULT = TestPlans.adult(Situation.PULSE_NO_BREATHING);

  private PastSessions() {}

  static Session fading(String at, String trainee, int startLevel, String... changes) {
    PracticePlan plan = plan("aha-2025", Prompting.FADING).withStartLevel(startLevel);
    List<SessionEvent> events = new ArrayList<>();
    for (int k = 0; k < changes.length; k++) {
      String[] words = changes[k].split(": ", -1);
      events.add(
          SessionEvent.of(
              k + 1, (10 + k) * SECOND, EventType.of(words[0]).orElseThrow(), words[1]));
    }
    return session(at, trainee, SessionHeader.Origin.LIVE, plan, events);
  }

  /** A test in which the breaths came at that interval: 2 min of 6 s pass, of 4 s do not. */
  static Session test(String at, String trainee, int intervalSeconds) {
    return test(at, trainee, intervalSeconds, SessionHeader.Origin.LIVE);
  }

  static Session test(String at, String trainee, int intervalSeconds, SessionHeader.Origin origin) {
    List<SessionEvent> events = new ArrayList<>();
    events.add(SessionEvent.of(1, 0, EventType.PROMPTS_OFF, "test"));
    for (int k = 0; k * intervalSeconds <= 126; k++) {
      long from = (1L + (long) k * intervalSeconds) * SECOND;
      events.add(SessionEvent.of(events.size() + 1, from, EventType.BREATH, ""));
    }
    events.add(SessionEvent.of(events.size() + 1, 130 * SECOND, EventType.FINISH, ""));
    return session(at, trainee, origin, plan("aha-2025", Prompting.NONE), events);
  }

  static PracticePlan plan(String edition, Prompting prompting) {
    Protocol protocol = TestPlans.edition(edition);
    Guidance guidance =
        protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow();
    return PracticePlan.of(protocol, guidance, 0, 2 * TestPlans.MINUTE, 0).with(prompting);
  }

  static Session session(
      String at,
      String trainee,
      SessionHeader.Origin origin,
      PracticePlan plan,
      List<SessionEvent> events) {
    return new Session(
        new SessionHeader(Instant.parse(at), origin, trainee, TestPlans.edition("aha-2025"), plan),
        events,
        List.of());
  }

  static RecordBook book(Session... sessions) {
    List<PastPractice> practices = new ArrayList<>();
    for (Session session : sessions) {
      PastPractice.of(session).ifPresent(practices::add);
    }
    return RecordBook.of(practices);
  }
}
