package squeezewell.station.run;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import squeezewell.coach.Command;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;

/**
 * What a station with 10,000 actions in it costs, in processor time: an action, a frame (time
 * passes and the state is made anew), the question whether the last tap can be taken back, and
 * working the result out from the journal. Run it with {@code java
 * squeezewell.station.run.StationCost}.
 */
public final class StationCost {
  private static final int ACTIONS = 10_000;
  private static final int TIMES = 5;

  /** So that all fits into the two minutes of preparation and the five of exercise. */
  private static final long STEP_NANOS = 40_000_000L;

  private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

  private final List<squeezewell.session.SessionEvent> events = new ArrayList<>();
  private final long[] action = new long[ACTIONS];
  private final long[] frame = new long[ACTIONS];
  private final long[] undo = new long[ACTIONS];

  private StationCost() {}

  public static void main(String[] args) throws Exception {
    for (int i = 0; i < TIMES; i++) {
      StationCost cost = new StationCost();
      cost.run();
      // The first ones also warm the program up.
      if (i == TIMES - 1) {
        cost.print();
      }
    }
  }

  private void run() throws Exception {
    Station station = StationLibrary.stations().get(0);
    StationPractice practice =
        new StationPractice(
            station,
            StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), 1),
            StationRunPropertyTest.plan(station),
            new StationRunPropertyTest.InMemory(events),
            List.<squeezewell.coach.CueOutput>of());
    long at = 0;
    practice.begin(at);
    for (int i = 0; i < ACTIONS; i++) {
      at = (i + 1) * STEP_NANOS;
      if (at >= station.exerciseNanos()) {
        at = station.exerciseNanos() - 1;
      }
      long from = CPU.getCurrentThreadCpuTime();
      act(practice, i, at);
      long done = CPU.getCurrentThreadCpuTime();
      practice.advance(at);
      practice.state();
      long framed = CPU.getCurrentThreadCpuTime();
      practice.canUndo("suction", at);
      action[i] = done - from;
      frame[i] = framed - done;
      undo[i] = CPU.getCurrentThreadCpuTime() - framed;
    }
    practice.end(at);
  }

  /** A breath, a finding that comes and goes, a remark, an order, a tap and its taking back. */
  private static void act(StationPractice practice, int i, long at) {
    switch (i % 10) {
      case 0 -> practice.command(Command.SQUEEZE, at);
      case 1 -> practice.command(Command.SQUEEZE_END, at);
      case 2 -> practice.inject("fluid", at);
      case 3, 9 -> practice.order("repeat-report", at);
      case 4 -> practice.clear("fluid", at);
      case 5 -> practice.done("suction", at);
      case 6 -> practice.undo("suction", at);
      default -> practice.remark("remark " + i, at);
    }
  }

  private void print() throws Exception {
    print("an action", action);
    print("a frame", frame);
    print("whether a tap can be taken back", undo);
    long from = CPU.getCurrentThreadCpuTime();
    StationResult result = StationResult.of(events);
    System.out.printf(
        "the result from the journal of %d facts: %.0f ms; %d remarks%n",
        events.size(),
        (CPU.getCurrentThreadCpuTime() - from) / 1e6,
        result.state().remarks().size());
  }

  private static void print(String what, long[] nanos) {
    long[] first = Arrays.copyOf(nanos, 1_000);
    long[] last = Arrays.copyOfRange(nanos, ACTIONS - 1_000, ACTIONS);
    Arrays.sort(first);
    Arrays.sort(last);
    System.out.printf(
        "%s: first 1,000 median %.3f ms, slowest %.3f; last 1,000 median %.3f ms, slowest %.3f%n",
        what, first[500] / 1e6, first[999] / 1e6, last[500] / 1e6, last[999] / 1e6);
  }
}
