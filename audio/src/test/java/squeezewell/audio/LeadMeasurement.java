package squeezewell.audio;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import squeezewell.cue.Control;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Situation;
import squeezewell.session.MonotonicClock;

/**
 * Finds how long before a squeeze its command must come for it to be on time: practices that are
 * paused and resumed at odd moments, with several leads, recorded and measured. Needs the tools of
 * {@link PulseSandbox}; run like {@link PacerComparison}, without arguments.
 */
public final class LeadMeasurement {
  private static final double JUMP = 0.1;
  private static final int ROUNDS = 12;

  private LeadMeasurement() {}

  public static void main(String[] arguments) throws Exception {
    if (arguments.length == 1) {
      play(Long.parseLong(arguments[0]) * 1_000_000);
      return;
    }
    for (int leadMillis : new int[] {10, 20, 25, 30, 35, 40}) {
      measure(leadMillis);
    }
  }

  /** In the child: prints the instants of all squeezes that were asked for. */
  private static void play(long leadNanos) throws InterruptedException {
    MonotonicClock clock = MonotonicClock.startNow();
    PracticePlan plan =
        Plans.adult(
            "aha-2020",
            Situation.PULSE_NO_BREATHING,
            3 * Plans.SECOND,
            600 * Plans.SECOND,
            leadNanos);
    SoundLevels levels = SoundLevels.defaults();
    for (SoundKind kind : SoundKind.values()) {
      levels = levels.withMuted(kind, kind != SoundKind.SQUEEZE);
    }
    CueSchedule schedule = CueSchedule.of(plan);
    try (SoundOutput output = new SoundOutput(clock, levels, new JavaSoundDevice(), s -> {})) {
      output.scheduleChanged(schedule);
      Thread.sleep(10_500);
      for (int round = 0; round < ROUNDS; round++) {
        schedule = schedule.with(new Control(clock.nanos(), Control.Kind.PAUSE));
        output.scheduleChanged(schedule);
        Thread.sleep(300 + 7 * round);
        schedule = schedule.with(new Control(clock.nanos(), Control.Kind.RESUME));
        output.scheduleChanged(schedule);
        Thread.sleep(700);
      }
    }
    schedule.between(0, clock.nanos()).stream()
        .filter(c -> c.kind() == CueKind.SQUEEZE)
        .forEach(c -> System.out.println(c.atNanos()));
  }

  private static void measure(int leadMillis) throws Exception {
    Path folder = Files.createTempDirectory("squeezewell-lead");
    Path raw = folder.resolve("heard.raw");
    Path output = folder.resolve("out.txt");
    try (PulseSandbox sandbox = new PulseSandbox(folder)) {
      sandbox.record(raw);
      String lead = Integer.toString(leadMillis);
      PulseSandbox.await(sandbox.java(output, LeadMeasurement.class, lead), 60);
    }
    List<Long> asked = new ArrayList<>();
    for (String line : Files.readAllLines(output)) {
      asked.add(Frames.at(Long.parseLong(line), PulseSandbox.RATE));
    }
    List<Long> heard = Recording.onsets(raw, JUMP);
    if (heard.size() != asked.size()) {
      System.out.println("lead " + leadMillis + ": " + heard.size() + " of " + asked.size());
      return;
    }
    // The first two squeezes were planned long before; the others came by command.
    long usual = heard.get(1) - asked.get(1);
    List<Long> late = new ArrayList<>();
    for (int i = 2; i < heard.size(); i++) {
      late.add(heard.get(i) - asked.get(i) - usual);
    }
    System.out.printf(
        Locale.ROOT,
        "lead %d ms: %d squeezes by command, late by %.2f to %.2f ms%n",
        leadMillis,
        late.size(),
        Collections.min(late) * 1_000.0 / PulseSandbox.RATE,
        Collections.max(late) * 1_000.0 / PulseSandbox.RATE);
  }
}
