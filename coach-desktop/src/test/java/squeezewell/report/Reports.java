package squeezewell.report;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** Sessions for tests of the reports. */
public final class Reports {
  static final long SECOND = 1_000_000_000L;
  static final Instant START = Instant.parse("2026-01-31T12:00:00Z");
  static final ZoneOffset ZONE = ZoneOffset.UTC;

  private Reports() {}

  /** Two minutes, a breath of 1 s every so many seconds, asked is every 6 s. */
  static Session steady(double everySeconds) {
    return practice(edition(), SessionHeader.Origin.LIVE, "Trainee 7", everySeconds, "", "");
  }

  static Session steady(SessionHeader.Origin origin, String trainee) {
    return practice(edition(), origin, trainee, 6, "", "");
  }

  /** A pulse that is lost at 0:30 and the breaths of before; the rhythm changes. */
  static Session changing() {
    return practice(edition(), SessionHeader.Origin.LIVE, "Trainee 7", 6, "pulse-lost", "a remark");
  }

  /**
   * The same text wherever a person or a file can put one; in the protocol without control signs,
   * since its reader refuses those.
   */
  public static Session saying(String text) {
    return practice(
        local(text.replaceAll("\\p{Cc}", " ").trim()),
        SessionHeader.Origin.LIVE,
        cut(text, SessionHeader.LONGEST_TRAINEE),
        6,
        "",
        cut(text, Fact.LONGEST_TEXT));
  }

  /** A protocol that says the text in its title, its publisher and its sources. */
  static Protocol local(String text) {
    Citation said =
        new Citation(
            cut(text, 120),
            cut(text, 300),
            2026,
            cut(text, 300),
            adult().intervalSource().confidence());
    BreathPlan plan = adult();
    BreathPlan own =
        new BreathPlan(
            plan.interval(),
            plan.lowNanos(),
            plan.highNanos(),
            plan.inspirationNanos(),
            said,
            said,
            said);
    Guidance built = edition().find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow();
    Guidance guidance =
        new Guidance(
            built.patient(),
            built.situation(),
            built.rescuers(),
            new Rhythm.SteadyBreaths(own),
            built.limits());
    return new Protocol("own-1", cut(text, 80), cut(text, 120), 2026, true, List.of(guidance));
  }

  private static BreathPlan adult() {
    return edition()
        .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
        .orElseThrow()
        .rhythm()
        .steadyBreaths()
        .orElseThrow();
  }

  static String cut(String text, int longest) {
    return text.length() > longest ? text.substring(0, longest) : text;
  }

  static Protocol edition() {
    return GuidelineLibrary.editions().stream()
        .filter(p -> p.id().equals("aha-2025"))
        .findFirst()
        .orElseThrow();
  }

  private static Session practice(
      Protocol protocol,
      SessionHeader.Origin origin,
      String trainee,
      double everySeconds,
      String found,
      String remark) {
    Guidance guidance =
        protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow();
    List<Guidance> others =
        protocol.guidance().stream()
            .filter(g -> g.patient() == PatientGroup.ADULT && !g.equals(guidance))
            .collect(Collectors.toList());
    SessionHeader header =
        new SessionHeader(
            START,
            origin,
            trainee,
            protocol,
            new PracticePlan(guidance, others, 0, 120 * SECOND, 0));
    List<SessionEvent> events = new ArrayList<>();
    for (int k = 0; k * everySeconds < 119; k++) {
      long at = Math.round(k * everySeconds * SECOND);
      if (at == 30 * SECOND && !found.isEmpty()) {
        events.add(SessionEvent.of(events.size() + 1, at, EventType.FINDING, found));
      }
      events.add(SessionEvent.of(events.size() + 1, at, EventType.BREATH, remark));
      events.add(SessionEvent.of(events.size() + 1, at + SECOND, EventType.BREATH_END, ""));
    }
    if (!remark.isEmpty()) {
      events.add(SessionEvent.of(events.size() + 1, 119_500_000_000L, EventType.FINDING, remark));
    }
    events.add(SessionEvent.of(events.size() + 1, 120 * SECOND, EventType.FINISH, ""));
    return new Session(header, events, remark.isEmpty() ? List.of() : List.of(remark));
  }
}
