package squeezewell.station.run;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientState;
import squeezewell.station.file.Adjunct;
import squeezewell.station.file.Station;

/**
 * Keeps when breaths went on, with which adjunct and in which mode, as a station goes on. All times
 * on the station's clock.
 */
final class Ventilation {
  /**
   * So long after a squeeze breaths go on at most: the longest gap of an adult (our own choice).
   */
  private static final long LONGEST_NANOS = 10_000_000_000L;

  /** As above, in a cycle: 30 compressions that nobody records may lie between (our own choice). */
  private static final long LONGEST_IN_CYCLE_NANOS = 30_000_000_000L;

  private final List<Segment> segments = new ArrayList<>();
  private final Covered covered = new Covered(LONGEST_NANOS);
  private final Covered coveredInCycle = new Covered(LONGEST_IN_CYCLE_NANOS);
  private PatientState patient;
  private Adjunct placed = Adjunct.NONE;
  private long settledTo;

  private record Kind(Adjunct adjunct, VentilationMode mode) {}

  /** Time in which breaths were to go on, as the tasks tell. */
  private record Segment(long from, long to, Kind kind) {}

  /** The time of which squeezes show that breaths went on; all before the first one. */
  private static final class Covered {
    private final long longest;
    private final List<long[]> spans = new ArrayList<>();

    Covered(long longest) {
      this.longest = longest;
    }

    void breath(long at) {
      long[] last = spans.isEmpty() ? new long[] {0, at} : spans.get(spans.size() - 1);
      if (spans.isEmpty()) {
        spans.add(last);
      }
      if (at > last[1]) {
        spans.add(new long[] {at, at + longest});
      } else {
        last[1] = at + longest;
      }
    }

    long of(long from, long to) {
      if (spans.isEmpty()) {
        return Math.max(0, to - from);
      }
      long sum = 0;
      for (long[] span : spans) {
        sum += Math.max(0, Math.min(to, span[1]) - Math.max(from, span[0]));
      }
      return sum;
    }
  }

  Ventilation(Station station) {
    patient = PatientState.of(station.group(), station.situation());
  }

  /**
   * Keeps the time since the last call. To be called before anything changes.
   *
   * @param clock the station's clock
   * @param goesOn whether breaths were to go on for all that time, as far as the tasks tell
   */
  void settle(long clock, boolean goesOn) {
    if (goesOn && !patient.watching() && clock > settledTo) {
      Kind kind =
          new Kind(
              patient.advancedAirway() ? Adjunct.ADVANCED_AIRWAY : placed,
              VentilationMode.of(patient));
      int last = segments.size() - 1;
      boolean onwards =
          last >= 0
              && segments.get(last).to() == settledTo
              && segments.get(last).kind().equals(kind);
      long from = onwards ? segments.remove(last).from() : settledTo;
      segments.add(new Segment(from, clock, kind));
    }
    settledTo = clock;
  }

  /** A squeeze or compression was recorded; it may be told a little late, but in order. */
  void breath(long clock) {
    covered.breath(clock);
    coveredInCycle.breath(clock);
  }

  /** From now on breaths are given with that. */
  void place(Adjunct adjunct) {
    placed = adjunct;
  }

  /** From now on that is known of the patient. */
  void find(PatientChange finding) {
    patient = patient.after(finding);
  }

  PatientState patient() {
    return patient;
  }

  /** For how long breaths went on between two times. */
  long nanos(long from, long to) {
    return sum(from, to, kind -> true);
  }

  /** For how long breaths went on with an adjunct since a time. */
  long nanosWith(Adjunct adjunct, long from) {
    return sum(from, settledTo, kind -> kind.adjunct() == adjunct);
  }

  private long sum(long from, long to, Predicate<Kind> which) {
    long sum = 0;
    for (Segment segment : segments) {
      if (which.test(segment.kind())) {
        sum += counted(segment, Math.max(from, segment.from()), Math.min(to, segment.to()));
      }
    }
    return sum;
  }

  private long counted(Segment segment, long from, long to) {
    boolean cycle = segment.kind().mode() == VentilationMode.CYCLES;
    return (cycle ? coveredInCycle : covered).of(from, to);
  }

  /** All of it, in the order in which each kind first came. */
  List<VentilationTime> all() {
    Map<Kind, Long> times = new LinkedHashMap<>();
    for (Segment segment : segments) {
      times.merge(segment.kind(), counted(segment, segment.from(), segment.to()), Long::sum);
    }
    List<VentilationTime> all = new ArrayList<>();
    times.forEach(
        (kind, nanos) -> {
          if (nanos > 0) {
            all.add(new VentilationTime(kind.adjunct(), kind.mode(), nanos));
          }
        });
    return all;
  }
}
