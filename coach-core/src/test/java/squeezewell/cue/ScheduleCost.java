package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import squeezewell.TestPlans;
import squeezewell.protocol.Rhythm;

/**
 * Measures what the calls cost that screens and sound make many times a second, for an hour with 30
 * pulse checks. Not a test, since time on a shared machine proves nothing; run it by hand:
 *
 * <pre>
 * mvn -B -q test-compile -pl coach-core
 * java -cp coach-core/target/test-classes:coach-core/target/classes squeezewell.cue.ScheduleCost
 * </pre>
 */
public final class ScheduleCost {
  private static final long SECOND = TestPlans.SECOND;
  private static final int CALLS = 400_000;

  private ScheduleCost() {}

  public static void main(String[] args) {
    for (Rhythm rhythm : TestPlans.rhythms()) {
      CueSchedule schedule = busyHour(rhythm);
      long[] nanos = new long[3];
      long sum = 0;
      for (int round = 0; round < 4; round++) {
        long start = System.nanoTime();
        for (int i = 0; i < CALLS; i++) {
          sum += schedule.momentAt(instant(i)).count();
        }
        long afterMoment = System.nanoTime();
        for (int i = 0; i < CALLS; i++) {
          long at = instant(i);
          sum += schedule.between(at, at + SECOND / 100).size();
        }
        long afterBetween = System.nanoTime();
        for (int i = 0; i < CALLS; i++) {
          sum += schedule.nextCueAt(instant(i)).orElse(0);
        }
        nanos[0] = (afterMoment - start) / CALLS;
        nanos[1] = (afterBetween - afterMoment) / CALLS;
        nanos[2] = (System.nanoTime() - afterBetween) / CALLS;
      }
      System.out.printf(
          "%-24s momentAt %5d ns, between 10 ms %5d ns, nextCueAt %5d ns (%d)%n",
          rhythm.getClass().getSimpleName(), nanos[0], nanos[1], nanos[2], sum & 1);
    }
  }

  private static long instant(int i) {
    return i * 7_919_191L * 997 % (3_600 * SECOND);
  }

  private static CueSchedule busyHour(Rhythm rhythm) {
    List<Control> controls = new ArrayList<>();
    for (int check = 1; check <= 30; check++) {
      long at = check * 118L * SECOND;
      controls.add(new Control(at, Control.Kind.PULSE_CHECK));
      controls.add(new Control(at + 7 * SECOND, Control.Kind.PULSE_CHECK_END));
    }
    return CueSchedule.of(
        new PracticePlan(TestPlans.guidance(rhythm, TestPlans.usualLimits()), 0, 3_600 * SECOND, 0),
        controls);
  }
}
