package squeezewell;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Confidence;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Limit;
import squeezewell.protocol.Limits;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolValue;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.protocol.Tempo;
import squeezewell.session.SessionHeader;

/** Plans and protocols for tests. */
public final class TestPlans {
  public static final long MILLI = 1_000_000L;
  public static final long SECOND = 1_000_000_000L;
  public static final long MINUTE = 60 * SECOND;
  public static final long HOUR = 60 * MINUTE;

  public static final Citation CITATION =
      new Citation("A body", "A text", 2026, "A part", Confidence.HOUSE);

  private TestPlans() {}

  /** The built-in edition of that identifier. */
  public static Protocol edition(String id) {
    return GuidelineLibrary.editions().stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  /** An adult in the given situation by the edition of 2025. */
  public static Guidance adult(Situation situation) {
    return edition("aha-2025").find(PatientGroup.ADULT, situation).orElseThrow();
  }

  /** One breath every 6 s without count-in and lead. */
  public static PracticePlan everySixSeconds(long lengthNanos) {
    return new PracticePlan(adult(Situation.PULSE_NO_BREATHING), 0, lengthNanos, 0);
  }

  public static Limits limits(String everySeconds, String noticeSeconds) {
    return new Limits(
        Map.of(
            ProtocolValue.PULSE_CHECK_EVERY, limit(everySeconds),
            ProtocolValue.PULSE_CHECK_NOTICE, limit(noticeSeconds),
            ProtocolValue.PULSE_CHECK_SHORTEST, limit("5"),
            ProtocolValue.PULSE_CHECK_LONGEST, limit("10"),
            ProtocolValue.SUCTION_LONGEST, limit("15"),
            ProtocolValue.SUCTION_NOTICE, limit("5"),
            ProtocolValue.GAP_LONGEST, limit("10")));
  }

  public static Limits usualLimits() {
    return limits("120", "10");
  }

  public static Guidance guidance(Rhythm rhythm, Limits limits) {
    return new Guidance(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0, rhythm, limits);
  }

  public static Rhythm steady(String interval, String inspiration) {
    return new Rhythm.SteadyBreaths(breaths(interval, inspiration));
  }

  public static Rhythm continuous(String perMinute, String interval, String inspiration) {
    return new Rhythm.ContinuousCompressions(
        compressions(perMinute), breaths(interval, inspiration));
  }

  public static Rhythm cycle(
      String perMinute, int compressions, int breaths, String pause, String inspiration) {
    return new Rhythm.CompressionCycle(
        compressions(perMinute),
        compressions,
        breaths,
        nanos(pause),
        10 * SECOND,
        nanos(inspiration),
        CITATION,
        CITATION,
        CITATION,
        CITATION);
  }

  /** Every kind of rhythm that training knows, the newborn's included. */
  public static List<Rhythm> rhythms() {
    return List.of(
        steady("6", "1"),
        steady("5.5", "1"),
        steady("2.5", "1"),
        steady("1.2", "0.4"),
        continuous("110", "6", "1"),
        cycle("110", 30, 2, "4", "1"),
        cycle("110", 15, 2, "4", "1"),
        cycle("120", 3, 1, "0.5", "0.5"));
  }

  public static Protocol protocol(Guidance guidance) {
    return new Protocol("a-protocol", "A protocol", "A body", 2026, true, List.of(guidance));
  }

  public static SessionHeader header(PracticePlan plan) {
    return new SessionHeader(
        Instant.parse("2026-01-31T12:00:00Z"),
        SessionHeader.Origin.VIRTUAL,
        "A. Trainee",
        protocol(plan.guidance()),
        plan);
  }

  public static long nanos(String seconds) {
    return new BigDecimal(seconds).movePointRight(9).longValueExact();
  }

  private static Limit limit(String seconds) {
    return new Limit(nanos(seconds), CITATION);
  }

  private static BreathPlan breaths(String interval, String inspiration) {
    long target = nanos(interval);
    return new BreathPlan(
        Tempo.everySeconds(new BigDecimal(interval)),
        target,
        target,
        nanos(inspiration),
        CITATION,
        CITATION,
        CITATION);
  }

  private static CompressionPlan compressions(String perMinute) {
    return new CompressionPlan(
        Tempo.perMinute(new BigDecimal(perMinute)), 100, 120, CITATION, CITATION);
  }
}
