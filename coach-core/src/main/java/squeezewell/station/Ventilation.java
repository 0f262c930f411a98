package squeezewell.station;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import squeezewell.protocol.ClinicalFinding;
import squeezewell.protocol.PatientState;

/** Adds up for how long breaths went on with each adjunct in each mode, as a station goes on. */
final class Ventilation {
  /**
   * So long after a squeeze breaths go on at most: the longest gap of an adult (our own choice).
   */
  static final long LONGEST_NANOS = 10_000_000_000L;

  /** As above, in a cycle: 30 compressions that nobody records may lie between (our own choice). */
  static final long LONGEST_IN_CYCLE_NANOS = 30_000_000_000L;

  private final Map<Kind, Long> times = new LinkedHashMap<>();
  private PatientState patient;
  private Adjunct placed = Adjunct.NONE;
  private long settledTo;
  private OptionalLong lastBreath = OptionalLong.empty();

  private record Kind(Adjunct adjunct, VentilationMode mode) {}

  Ventilation(Station station) {
    patient = PatientState.of(station.group(), station.situation());
  }

  /**
   * Counts the time since the last call. To be called before anything changes.
   *
   * @param clockNanos the station's clock
   * @param goesOn whether breaths went on for all that time, as far as the station knows
   */
  void settle(long clockNanos, boolean goesOn) {
    VentilationMode mode = VentilationMode.of(patient);
    long longest = mode == VentilationMode.CYCLES ? LONGEST_IN_CYCLE_NANOS : LONGEST_NANOS;
    long until =
        lastBreath.isPresent()
            ? Math.min(clockNanos, lastBreath.getAsLong() + longest)
            : clockNanos;
    if (goesOn && !patient.watching() && until > settledTo) {
      times.merge(new Kind(adjunct(), mode), until - settledTo, Long::sum);
    }
    settledTo = clockNanos;
  }

  /** A squeeze or compression was recorded; from the first one on they tell, not the tasks. */
  void breath(long clockNanos) {
    lastBreath = OptionalLong.of(clockNanos);
  }

  /** From now on breaths are given with that. */
  void place(Adjunct adjunct) {
    placed = adjunct;
  }

  /** From now on that is known of the patient. */
  void find(ClinicalFinding finding) {
    patient = patient.after(finding);
  }

  private Adjunct adjunct() {
    return patient.advancedAirway() ? Adjunct.ADVANCED_AIRWAY : placed;
  }

  /** All that was counted. */
  long nanos() {
    return times.values().stream().mapToLong(n -> n).sum();
  }

  /** All that was counted with an adjunct. */
  long nanos(Adjunct with) {
    return times.entrySet().stream()
        .filter(e -> e.getKey().adjunct() == with)
        .mapToLong(Map.Entry::getValue)
        .sum();
  }

  /** What was counted, in the order in which it first came. */
  List<VentilationTime> all() {
    List<VentilationTime> all = new ArrayList<>();
    times.forEach((k, nanos) -> all.add(new VentilationTime(k.adjunct(), k.mode(), nanos)));
    return all;
  }
}
