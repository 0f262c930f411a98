package squeezewell.audio;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;
import squeezewell.session.MonotonicClock;

/**
 * Plays a practice on the machine's sound device for {@link LiveSoundTest}, in a JVM of its own.
 * Prints what happens, one line each. Arguments: seconds to play; length of the count-in, seconds.
 */
public final class LivePlayer {
  private LivePlayer() {}

  public static void main(String[] arguments) throws InterruptedException {
    double seconds = Double.parseDouble(arguments[0]);
    MonotonicClock clock = MonotonicClock.startNow();
    long length = Math.round(seconds * Plans.SECOND);
    PracticePlan plan = plan(length, Integer.parseInt(arguments[1]));
    SoundLevels levels = SoundLevels.defaults().withMuted(SoundKind.VOICE, true);
    try (SoundOutput output =
        new SoundOutput(
            clock, levels, new JavaSoundDevice(), status -> print(clock, "STATUS", status))) {
      DryWatch watch = DryWatch.start(output, clock);
      output.scheduleChanged(CueSchedule.of(plan));
      Thread.sleep(plan.countInNanos() / 1_000_000);
      long cpuBefore = cpuNanos();
      long from = clock.nanos();
      Thread.sleep(length / 1_000_000 + DryWatch.TAIL_MILLIS);
      print(clock, "CPU", (cpuNanos() - cpuBefore) / (double) (clock.nanos() - from));
      SoundFeed feed = output.engine().feed();
      print(clock, "HOLES", feed == null ? -1 : feed.holes());
      print(clock, "CORRECTIONS", feed == null ? -1 : feed.corrections());
      watch.end().forEach(System.out::println);
    }
    print(clock, "END", "");
  }

  /** What is played: breaths every 6 s. */
  static PracticePlan plan(long lengthNanos, int countInSeconds) {
    return Plans.adult(
        "aha-2020",
        Situation.PULSE_NO_BREATHING,
        countInSeconds * Plans.SECOND,
        lengthNanos,
        SoundOutput.LEAD_NANOS);
  }

  private static long cpuNanos() {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    for (ThreadInfo info : threads.getThreadInfo(threads.getAllThreadIds())) {
      if (info != null && info.getThreadName().equals("squeezewell-sound")) {
        return threads.getThreadCpuTime(info.getThreadId());
      }
    }
    throw new IllegalStateException("there is no sound thread");
  }

  private static void print(MonotonicClock clock, String what, Object value) {
    System.out.println(clock.nanos() / 1_000_000 + " " + what + " " + value);
    System.out.flush();
  }
}
