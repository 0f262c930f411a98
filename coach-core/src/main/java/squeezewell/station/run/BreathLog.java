package squeezewell.station.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import squeezewell.protocol.PatientState;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationRule;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TaskKind;

/**
 * Keeps the recorded breaths and compressions of a station with what held of the patient, and
 * judges them by its rules. All times on the station's clock.
 *
 * <p>One definition holds for all: a gap is the time from the end of a squeeze, or its start where
 * the end is not known, to the start of the next. A check or suction that a task is takes no more
 * out of it than the task may last, and a patient who breathes well takes all of it out.
 */
final class BreathLog {
  /** A hold without a bound of its own is excused for so long: suction of an adult at most. */
  private static final long LONGEST_HOLD_NANOS = 15_000_000_000L;

  private static final double MINUTE = 60e9;

  private final Station station;
  private final TaskMarks tasks;
  private final List<Given> given = new ArrayList<>();
  private final List<Stretch> patients = new ArrayList<>();
  private final Map<String, List<long[]>> findings = new HashMap<>();

  /** A breath or compression, with its end, and what held when it began. */
  private record Given(long from, long to, boolean breath, Set<String> holding) {}

  private record Stretch(long from, PatientState patient) {}

  BreathLog(Station station, TaskMarks tasks) {
    this.station = station;
    this.tasks = tasks;
  }

  /** A squeeze, or else a compression, began. */
  void given(long clock, boolean breath, Set<String> holding) {
    given.add(new Given(clock, clock, breath, Set.copyOf(holding)));
  }

  /** The last squeeze ended; false if there is none. */
  boolean breathEnd(long clock) {
    for (int i = given.size() - 1; i >= 0; i--) {
      Given last = given.get(i);
      if (last.breath()) {
        given.set(i, new Given(last.from(), Math.max(last.from(), clock), true, last.holding()));
        return true;
      }
    }
    return false;
  }

  /** The last squeeze was a slip; false if there is none. */
  boolean retract() {
    for (int i = given.size() - 1; i >= 0; i--) {
      if (given.get(i).breath()) {
        given.remove(i);
        return true;
      }
    }
    return false;
  }

  /** From now on the patient is so. */
  void patient(long clock, PatientState patient) {
    patients.add(new Stretch(clock, patient));
  }

  void raised(String findingId, long clock) {
    findings
        .computeIfAbsent(findingId, id -> new ArrayList<>())
        .add(new long[] {clock, Long.MAX_VALUE});
  }

  void cleared(String findingId, long clock) {
    List<long[]> spans = findings.get(findingId);
    spans.get(spans.size() - 1)[1] = clock;
  }

  /**
   * Whether breaths were to be given but nobody recorded any, so that nothing is known of them:
   * whoever marks "breathing" by hand has no pad.
   */
  boolean isUnrecorded() {
    return given.isEmpty()
        && station.tasks().stream()
            .anyMatch(task -> task.kind() == TaskKind.PACED && tasks.isBegun(task.id()));
  }

  /** When a rule about breaths was first broken; empty if it was not, or nothing is known. */
  OptionalLong broken(StationRule rule, long clock) {
    if (isUnrecorded() || patients.isEmpty()) {
      return OptionalLong.empty();
    }
    return switch (rule.kind()) {
      case RATE -> rate(rule);
      case INTERRUPTION -> interruption(rule, clock);
      case BREATH_WHILE -> breathWhile(rule);
      case NO_BREATH -> nothing(rule, clock, true);
      case NO_COMPRESSION -> nothing(rule, clock, false);
      case BREATHS_WITHOUT -> breathsWithout(rule);
      default -> throw new IllegalArgumentException("not about breaths: " + rule);
    };
  }

  /**
   * Intervals without a hold, in rhythms without cycles, are strung together; a run of them that
   * lasts as long as the rule says is too fast or too slow.
   */
  private OptionalLong rate(StationRule rule) {
    List<long[]> run = new ArrayList<>();
    long sum = 0;
    Given before = null;
    for (Given each : given) {
      if (!each.breath()) {
        continue;
      }
      if (before != null && isInterval(rule, before.from(), each.from())) {
        long length = each.from() - before.from();
        run.add(new long[] {length});
        sum += length;
        while (sum - run.get(0)[0] >= rule.bounds().nanos().getAsLong()) {
          sum -= run.remove(0)[0];
        }
        double perMinute = run.size() * MINUTE / sum;
        boolean wrong =
            perMinute > rule.bounds().high().orElse(Double.MAX_VALUE)
                || perMinute < rule.bounds().low().orElse(0);
        if (wrong && sum >= rule.bounds().nanos().getAsLong()) {
          return OptionalLong.of(each.from());
        }
      }
      before = each;
    }
    return OptionalLong.empty();
  }

  private boolean isInterval(StationRule rule, long from, long to) {
    boolean cycles =
        VentilationMode.of(patientAt(from)) == VentilationMode.CYCLES
            || VentilationMode.of(patientAt(to)) == VentilationMode.CYCLES;
    return !cycles && due(rule, from, to) == to - from;
  }

  private OptionalLong interruption(StationRule rule, long clock) {
    long most = rule.bounds().nanos().getAsLong();
    long until = Long.MAX_VALUE;
    for (Given each : given) {
      if (!isCare(each)) {
        continue;
      }
      if (until < each.from()) {
        long at = upAt(rule, until, most, each.from());
        if (at < each.from()) {
          return OptionalLong.of(at);
        }
      }
      until = each.to();
    }
    long at = until < clock ? upAt(rule, until, most, clock) : clock;
    return at < clock ? OptionalLong.of(at) : OptionalLong.empty();
  }

  /** Compressions are what a patient without a pulse waits for just as well. */
  private boolean isCare(Given each) {
    return each.breath() || patientAt(each.from()).arrest();
  }

  private OptionalLong breathWhile(StationRule rule) {
    int number = 0;
    for (Given each : given) {
      boolean counts = each.breath() && each.holding().contains(rule.other());
      if (counts
          && counts(rule, each.from())
          && each.from() >= since(rule.other(), each.from()) + rule.bounds().graceNanos()
          && ++number >= rule.bounds().breaths()) {
        return OptionalLong.of(each.from());
      }
    }
    return OptionalLong.empty();
  }

  private OptionalLong breathsWithout(StationRule rule) {
    OptionalLong from = tasks.start(rule.limit().get());
    long begun = tasks.begun(rule.task()).orElse(Long.MAX_VALUE);
    int number = 0;
    for (Given each : given) {
      boolean after = from.isPresent() && each.from() >= from.getAsLong();
      if (after
          && each.breath()
          && each.from() < begun
          && counts(rule, each.from())
          && ++number >= rule.bounds().breaths()) {
        return OptionalLong.of(each.from());
      }
    }
    return OptionalLong.empty();
  }

  private OptionalLong nothing(StationRule rule, long clock, boolean breath) {
    OptionalLong start = tasks.start(rule.limit().get());
    if (!start.isPresent()) {
      return OptionalLong.empty();
    }
    long from = start.getAsLong();
    long most = rule.limit().get().nanos();
    // No check and no suction holds compressions up.
    long upAt = breath ? upAt(rule, from, most, clock) : from + most;
    boolean came =
        given.stream().anyMatch(g -> g.breath() == breath && g.from() >= from && g.from() <= upAt);
    boolean asked = upAt < clock && !came && counts(rule, from) && counts(rule, upAt);
    return asked ? OptionalLong.of(upAt) : OptionalLong.empty();
  }

  /** When so much of the time has passed in which breaths were due; the end if it has not. */
  private long upAt(StationRule rule, long from, long nanos, long end) {
    long low = Math.min(end, from + nanos);
    long high = end;
    if (due(rule, from, end) <= nanos) {
      return end;
    }
    while (low < high) {
      long middle = low + (high - low) / 2;
      if (due(rule, from, middle) >= nanos) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  /** For how long breaths were due between two times, and the rule counted. */
  private long due(StationRule rule, long from, long to) {
    List<long[]> out = new ArrayList<>();
    for (StationTask task : station.tasks()) {
      OptionalLong begun = tasks.begun(task.id());
      if (task.hold().isPresent() && begun.isPresent()) {
        long length = tasks.wholeLength(task.id(), to).orElse(0);
        long most = Math.min(length, task.mostNanos().orElse(LONGEST_HOLD_NANOS));
        out.add(new long[] {begun.getAsLong(), begun.getAsLong() + most});
      }
    }
    for (int i = 0; i < patients.size(); i++) {
      if (patients.get(i).patient().watching()) {
        long end = i + 1 < patients.size() ? patients.get(i + 1).from() : Long.MAX_VALUE;
        out.add(new long[] {patients.get(i).from(), end});
      }
    }
    for (String id : rule.bounds().absent()) {
      out.addAll(findings.getOrDefault(id, List.of()));
    }
    for (String id : rule.bounds().holding()) {
      long last = 0;
      for (long[] span : findings.getOrDefault(id, List.of())) {
        out.add(new long[] {last, span[0]});
        last = span[1];
      }
      out.add(new long[] {last, Long.MAX_VALUE});
    }
    return to - from - covered(out, from, to);
  }

  private static long covered(List<long[]> spans, long from, long to) {
    spans.sort((a, b) -> Long.compare(a[0], b[0]));
    long sum = 0;
    long until = from;
    for (long[] span : spans) {
      long start = Math.max(until, span[0]);
      long end = Math.min(to, span[1]);
      if (end > start) {
        sum += end - start;
        until = end;
      }
    }
    return sum;
  }

  /** Whether a rule counts at an instant. */
  private boolean counts(StationRule rule, long at) {
    return rule.bounds().holding().stream().allMatch(id -> holds(id, at))
        && rule.bounds().absent().stream().noneMatch(id -> holds(id, at));
  }

  /** What held at a time. */
  Set<String> holding(long clock) {
    Set<String> holding = new HashSet<>();
    findings.keySet().stream().filter(id -> holds(id, clock)).forEach(holding::add);
    return holding;
  }

  private boolean holds(String findingId, long at) {
    return findings.getOrDefault(findingId, List.of()).stream()
        .anyMatch(span -> span[0] <= at && at < span[1]);
  }

  private long since(String findingId, long at) {
    long since = at;
    for (long[] span : findings.getOrDefault(findingId, List.of())) {
      if (span[0] <= at) {
        since = span[0];
      }
    }
    return since;
  }

  private PatientState patientAt(long at) {
    PatientState patient = patients.get(0).patient();
    for (Stretch stretch : patients) {
      if (stretch.from() <= at) {
        patient = stretch.patient();
      }
    }
    return patient;
  }
}
