package squeezewell.desktop.screens;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** Practices for the tests of the screens. */
public final class Practices {
  public static final long SECOND = 1_000_000_000L;

  private Practices() {}

  public static Protocol protocol() {
    return protocol("aha-2020");
  }

  public static Protocol protocol(String id) {
    return GuidelineLibrary.editions().stream()
        .filter(p -> p.id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  public static PracticePlan plan(long countInSeconds, long minutes) {
    return plan(
        protocol(), PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, countInSeconds, minutes);
  }

  public static PracticePlan plan(
      Protocol protocol,
      PatientGroup patient,
      Situation situation,
      long countInSeconds,
      long minutes) {
    return PracticePlan.of(
        protocol,
        protocol.find(patient, situation).orElseThrow(),
        countInSeconds * SECOND,
        minutes * 60 * SECOND,
        0);
  }

  public static Coach coach(long countInSeconds, long minutes) {
    return new Coach(plan(countInSeconds, minutes), Journal.none(), List.of());
  }

  /** Two minutes with a breath of one second at each of the given seconds. */
  public static Review review(double... starts) {
    return review(protocol(), plan(0, 2), starts);
  }

  /** A pulse that is lost at 1:00 of two minutes, 30 compressions from then on, ended at 1:30. */
  public static Review lostPulse() {
    List<SessionEvent> events = new ArrayList<>();
    PracticePlan plan = plan(0, 2);
    Coach coach = new Coach(plan, Journal.to(events::add), List.of());
    for (long k = 0; k < 10; k++) {
      passUntil(coach, k * 6 * SECOND);
      coach.command(Command.SQUEEZE, k * 6 * SECOND);
      coach.command(Command.SQUEEZE_END, (k * 6 + 1) * SECOND);
    }
    // A cue at the very instant would move the finding after it.
    passUntil(coach, 60 * SECOND - 1);
    coach.find(PatientChange.PULSE_LOST, 60 * SECOND);
    for (long k = 0; k < 30; k++) {
      passUntil(coach, 60 * SECOND + k * SECOND / 2);
      coach.command(Command.COMPRESS, 60 * SECOND + k * SECOND / 2);
    }
    passUntil(coach, 90 * SECOND);
    coach.command(Command.FINISH, 90 * SECOND);
    return review(protocol(), plan, events);
  }

  /** The same with another plan. */
  public static Review review(Protocol protocol, PracticePlan plan, double... starts) {
    List<SessionEvent> events = new ArrayList<>();
    Journal journal = Journal.to(events::add);
    Coach coach = new Coach(plan, journal, List.of());
    for (double start : starts) {
      long at = Math.round(start * 1e9);
      passUntil(coach, at);
      coach.command(Command.SQUEEZE, at);
      coach.command(Command.SQUEEZE_END, at + SECOND);
    }
    passUntil(coach, 121 * SECOND);
    return review(protocol, plan, events);
  }

  private static Review review(Protocol protocol, PracticePlan plan, List<SessionEvent> events) {
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-03-01T09:00:00Z"), SessionHeader.Origin.LIVE, "", protocol, plan);
    return Reviewer.review(new Session(header, events, List.of()));
  }

  /** A program that stands still for long would be written down as a hole. */
  private static void passUntil(Coach coach, long until) {
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() <= until) {
      coach.advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
  }

  /** Starts every so many seconds, from 0 to under 120 s. */
  public static double[] every(double seconds) {
    List<Double> starts = new ArrayList<>();
    for (int k = 0; k * seconds < 119; k++) {
      starts.add(k * seconds);
    }
    return starts.stream().mapToDouble(v -> v).toArray();
  }
}
