package squeezewell.review;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import squeezewell.TestPlans;
import squeezewell.coach.Coach;
import squeezewell.coach.ScriptedFinding;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** Prints how long the review of a one-hour session takes, warm; see docs/measurements.md. */
final class ReviewTiming {
  private static final int WARM_UP = 40;
  private static final int RUNS = 41;

  private ReviewTiming() {}

  public static void main(String[] args) {
    Protocol edition = TestPlans.edition("aha-2020");
    print("an adult, one breath every 6 s", session(edition, PatientGroup.ADULT, List.of()));
    print("a newborn, 50 breaths a minute", session(edition, PatientGroup.NEWBORN, List.of()));
    print(
        "an adult, pulse lost and back five times", session(edition, PatientGroup.ADULT, script()));
    print("an adult, 120 changes", session(edition, PatientGroup.ADULT, changes()));
    print("the same, local protocol", session(local(edition), PatientGroup.ADULT, changes()));
  }

  private static Protocol local(Protocol edition) {
    return ProtocolDraft.copyOf(edition, GuidelineLibrary.baseOf(edition), Set.of(), 2026)
        .with(ProtocolDetail.ORGANISATION, "Example EMS")
        .with(0, ProtocolValue.BREATH_INTERVAL, "5.5")
        .protocol();
  }

  private static List<ScriptedFinding> changes() {
    List<ScriptedFinding> script = new ArrayList<>();
    for (int k = 1; k <= 120; k++) {
      script.add(
          new ScriptedFinding(
              k * (TestPlans.HOUR / 121),
              k % 2 == 1 ? PatientChange.BREATHING_SLOW : PatientChange.BREATHING_STOPPED));
    }
    return script;
  }

  private static List<ScriptedFinding> script() {
    List<ScriptedFinding> script = new ArrayList<>();
    for (int k = 0; k < 5; k++) {
      long from = (5 + 10L * k) * TestPlans.MINUTE;
      script.add(new ScriptedFinding(from, PatientChange.PULSE_LOST));
      script.add(new ScriptedFinding(from + 5 * TestPlans.MINUTE, PatientChange.PULSE_BACK));
    }
    return script;
  }

  private static Session session(
      Protocol edition, PatientGroup patient, List<ScriptedFinding> script) {
    Situation situation =
        patient == PatientGroup.NEWBORN
            ? Situation.NEWBORN_VENTILATION
            : Situation.PULSE_NO_BREATHING;
    Guidance guidance = edition.find(patient, situation).orElseThrow();
    PracticePlan plan = PracticePlan.of(edition, guidance, 0, TestPlans.HOUR, 0);
    List<SessionEvent> events = new ArrayList<>();
    Journal journal =
        new Journal() {
          @Override
          public void append(SessionEvent event) {
            events.add(event);
          }

          @Override
          public void close() {
            // Nothing is open.
          }
        };
    Coach coach = new Coach(plan, journal, List.of());
    new VirtualTrainee(1, TraineeFault.NONE).practise(coach, new ManualClock(), script);
    Instant start = Instant.parse("2026-01-31T12:00:00Z");
    return new Session(
        new SessionHeader(start, SessionHeader.Origin.VIRTUAL, "", edition, plan),
        events,
        List.of());
  }

  private static void print(String what, Session session) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long checksum = 0;
    double[] clock = new double[RUNS];
    double[] processor = new double[RUNS];
    for (int run = -WARM_UP; run < RUNS; run++) {
      long from = System.nanoTime();
      long processorFrom = threads.getCurrentThreadCpuTime();
      // A session remembers what it has sorted out, so each run gets one of its own.
      Session fresh = new Session(session.header(), session.events(), session.notes());
      checksum += Reviewer.review(fresh).breaths().size();
      if (run >= 0) {
        clock[run] = (System.nanoTime() - from) / 1e6;
        processor[run] = (threads.getCurrentThreadCpuTime() - processorFrom) / 1e6;
      }
    }
    Arrays.sort(clock);
    Arrays.sort(processor);
    System.out.printf(
        "%s: %d events, by the clock median %.1f ms, slowest %.1f; processor %.1f, %.1f (%d)%n",
        what,
        session.events().size(),
        clock[RUNS / 2],
        clock[RUNS - 1],
        processor[RUNS / 2],
        processor[RUNS - 1],
        checksum);
  }
}
