package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import squeezewell.coach.Coach;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;

/**
 * Plays a practice in which the pulse of a child is lost and comes back, at random moments, on the
 * machine's sound device for {@link LiveSwitchingTest}, in a JVM of its own. Prints what was
 * commanded and what was asked for, one line each, nanoseconds of the session. Arguments: how many
 * changes; seed; length of the count-in, seconds.
 */
public final class SwitchingPlayer {
  private static final long MILLI = 1_000_000L;

  /** How far the device may have been filled ahead when a command comes. */
  private static final long LOOK_AHEAD_NANOS = 45 * MILLI;

  private static final long TAIL_NANOS = 1_500 * MILLI;

  private SwitchingPlayer() {}

  public static void main(String[] arguments) {
    int changes = Integer.parseInt(arguments[0]);
    Random random = new Random(Long.parseLong(arguments[1]));
    long countIn = Integer.parseInt(arguments[2]) * Plans.SECOND;
    Protocol edition =
        GuidelineLibrary.editions().stream()
            .filter(p -> p.id().equals("aha-2020"))
            .findFirst()
            .orElseThrow();
    PracticePlan plan =
        PracticePlan.of(
            edition,
            Plans.guidance("aha-2020", PatientGroup.CHILD, Situation.PULSE_NO_BREATHING),
            countIn,
            600 * Plans.SECOND,
            SoundOutput.LEAD_NANOS);
    MonotonicClock clock = MonotonicClock.startNow();
    SoundLevels levels = SoundLevels.defaults().withMuted(SoundKind.VOICE, true);
    List<String> told = new ArrayList<>();
    try (SoundOutput output =
        new SoundOutput(
            clock, levels, new JavaSoundDevice(), s -> System.out.println("STATUS " + s))) {
      DryWatch watch = DryWatch.start(output, clock);
      Coach coach = new Coach(plan, Journal.none(), List.of(output));
      long next = countIn;
      for (int i = 0; i < changes; i++) {
        boolean lost = i % 2 == 0;
        // Without a pulse for longer than the 2.5 s between breaths, so that both start at once.
        next += (lost ? 700 : 2_520) * MILLI + random.nextInt(700_000) * 1_000L;
        run(coach, clock, next);
        CueSchedule before = coach.state().schedule();
        long at = clock.nanos();
        coach.find(lost ? PatientChange.PULSE_LOST : PatientChange.PULSE_BACK, at);
        told.add("COMMAND " + at);
        for (Cue cue : before.between(at, at + LOOK_AHEAD_NANOS)) {
          told.add("BEFORE " + cue.atNanos() + " " + cue.kind());
        }
      }
      long end = next + TAIL_NANOS;
      run(coach, clock, end);
      for (Cue cue : coach.state().schedule().between(countIn - 2 * Plans.SECOND, end)) {
        if (cue.kind() != CueKind.RHYTHM_CHANGED) {
          told.add("CUE " + cue.atNanos() + " " + cue.kind());
        }
      }
      LockSupport.parkNanos(DryWatch.TAIL_MILLIS * MILLI);
      SoundFeed feed = output.engine().feed();
      told.add("HOLES " + (feed == null ? -1 : feed.holes()));
      told.add("CORRECTIONS " + (feed == null ? -1 : feed.corrections()));
      told.addAll(watch.end());
    }
    told.forEach(System.out::println);
    System.out.println("END");
  }

  /** Drives the coach as a live practice does: at each cue's instant, without polling. */
  private static void run(Coach coach, MonotonicClock clock, long until) {
    long now = clock.nanos();
    while (now < until) {
      coach.advance(now);
      long due = Math.min(until, coach.nextDueNanos().orElse(until));
      LockSupport.parkNanos(Math.max(0, due - clock.nanos()));
      now = clock.nanos();
    }
  }
}
