package squeezewell.review;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * Prints how much processor time the review of a file takes in which findings stand far closer than
 * anybody notes them, by number of changes; see docs/measurements.md.
 */
final class ForgedTiming {
  private static final int RUNS = 3;

  private ForgedTiming() {}

  /**
   * Prints both tables, or one.
   *
   * @param args {@code changes} or {@code silences} for one of them
   */
  public static void main(String[] args) {
    String only = args.length == 0 ? "" : args[0];
    if (!only.equals("silences")) {
      printChanges();
    }
    if (!only.equals("changes")) {
      printSilences();
    }
  }

  private static void printChanges() {
    for (int changes : new int[] {1_000, 2_000, 4_000, 8_000}) {
      Session lost = session(changes, PatientChange.PULSE_LOST, PatientChange.PULSE_BACK);
      Session slow =
          session(changes, PatientChange.BREATHING_SLOW, PatientChange.BREATHING_STOPPED);
      System.out.printf(
          "%d changes: pulse lost and back %.0f ms, breathing slow and stopped %.0f ms%n",
          changes, millis(lost), millis(slow));
    }
  }

  private static void printSilences() {
    for (int silences : new int[] {1_000, 2_000, 4_000, 8_000}) {
      System.out.printf("%d silences: %.0f ms%n", silences, millis(silent(silences)));
    }
  }

  /** Prompts that go off and on again, two breaths in each silence. */
  private static Session silent(int silences) {
    PracticePlan plan = TestPlans.everySixSeconds(4 * TestPlans.HOUR).with(Prompting.FADING);
    List<SessionEvent> events = new ArrayList<>();
    long apart = 4 * TestPlans.HOUR / (silences + 1);
    for (int k = 0; k < silences; k++) {
      long at = (k + 1) * apart;
      events.add(SessionEvent.of(events.size() + 1, at, EventType.PROMPTS_OFF, "level 1"));
      events.add(SessionEvent.of(events.size() + 1, at + apart / 4, EventType.BREATH, ""));
      events.add(SessionEvent.of(events.size() + 1, at + apart / 3, EventType.BREATH, ""));
      events.add(
          SessionEvent.of(events.size() + 1, at + apart / 2, EventType.PROMPTS_ON, "level 1"));
    }
    return new Session(TestPlans.header(plan), events, List.of());
  }

  private static Session session(int changes, PatientChange one, PatientChange other) {
    Protocol edition = TestPlans.edition("aha-2020");
    Guidance guidance =
        edition.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 2).orElseThrow();
    PracticePlan plan = PracticePlan.of(edition, guidance, 0, 4 * TestPlans.HOUR, 0);
    List<SessionEvent> events = new ArrayList<>();
    long apart = 4 * TestPlans.HOUR / (changes + 1);
    for (int k = 0; k < changes; k++) {
      long at = (k + 1) * apart;
      String word = (k % 2 == 0 ? one : other).word();
      events.add(SessionEvent.of(events.size() + 1, at, EventType.FINDING, word));
      events.add(SessionEvent.of(events.size() + 1, at + apart / 3, EventType.BREATH, ""));
      events.add(SessionEvent.of(events.size() + 1, at + apart / 2, EventType.COMPRESSION, ""));
    }
    return new Session(TestPlans.header(plan), events, List.of());
  }

  /** Processor time, which other programs beside it do not lengthen much. */
  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static double millis(Session session) {
    double[] millis = new double[RUNS];
    for (int run = 0; run < RUNS; run++) {
      long from = cpuNanos();
      Reviewer.review(session);
      millis[run] = (cpuNanos() - from) / 1e6;
    }
    Arrays.sort(millis);
    return millis[RUNS / 2];
  }
}
