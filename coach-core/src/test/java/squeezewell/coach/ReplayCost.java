package squeezewell.coach;

import java.util.ArrayList;
import java.util.List;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * Measures what a frame of a replay costs: an hour with 600 breaths, 6,600 compressions and 30
 * checks, played at eight times its speed with 30 frames a second, and scrubbed. Not a test; the
 * command stands in docs/measurements.md.
 */
public final class ReplayCost {
  private static final long SECOND = TestPlans.SECOND;
  private static final long HOUR = TestPlans.HOUR;

  private ReplayCost() {}

  public static void main(String[] args) {
    Session session = hour();
    long sum = 0;
    for (int round = 0; round < 5; round++) {
      long start = System.nanoTime();
      Replay replay = new Replay(session);
      long made = System.nanoTime();
      int frames = 3_600 / 8 * 30;
      long worst = 0;
      for (int i = 0; i < frames; i++) {
        long before = System.nanoTime();
        sum += replay.stateAt(HOUR / frames * i).compressionCount();
        worst = Math.max(worst, System.nanoTime() - before);
      }
      long played = System.nanoTime();
      for (int i = 0; i < frames; i++) {
        sum += replay.stateAt(i * 7_919_191L * 997 % HOUR).compressionCount();
      }
      long scrubbed = System.nanoTime();
      System.out.printf(
          "taken apart in %.1f ms; a frame played %.1f us, worst %.0f us; scrubbed %.1f us (%d)%n",
          (made - start) / 1e6,
          (played - made) / 1e3 / frames,
          worst / 1e3,
          (scrubbed - played) / 1e3 / frames,
          sum & 1);
    }
  }

  private static Session hour() {
    List<Object[]> facts = new ArrayList<>();
    for (long k = 0; k < 600; k++) {
      facts.add(new Object[] {6 * k * SECOND, EventType.BREATH});
      facts.add(new Object[] {(6 * k + 1) * SECOND, EventType.BREATH_END});
    }
    for (long k = 0; k < 6_600; k++) {
      facts.add(new Object[] {k * 6 * SECOND / 11, EventType.COMPRESSION});
    }
    for (long k = 1; k <= 30; k++) {
      facts.add(new Object[] {k * 118 * SECOND, EventType.PULSE_CHECK});
      facts.add(new Object[] {(k * 118 + 7) * SECOND, EventType.PULSE_CHECK_END});
    }
    facts.sort((a, b) -> Long.compare((long) a[0], (long) b[0]));
    List<SessionEvent> events = new ArrayList<>();
    for (Object[] fact : facts) {
      events.add(SessionEvent.of(events.size() + 1, (long) fact[0], (EventType) fact[1], ""));
    }
    PracticePlan plan =
        new PracticePlan(TestPlans.adult(Situation.ARREST_ADVANCED_AIRWAY), 0, HOUR, 0);
    return new Session(TestPlans.header(plan), events, List.of());
  }
}
