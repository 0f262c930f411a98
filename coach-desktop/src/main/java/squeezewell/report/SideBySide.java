package squeezewell.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Confidence;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limit;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.protocol.Situation;
import squeezewell.words.Quantities;

/**
 * The values of several editions for one patient and one situation, value by value.
 *
 * @param values in the order in which they matter
 */
public record SideBySide(List<Value> values) {
  public SideBySide {
    values = List.copyOf(values);
  }

  /**
   * One value in every edition that has it.
   *
   * @param name what it is
   * @param entries in the order of the editions
   */
  public record Value(String name, List<Entry> entries) {
    public Value {
      entries = List.copyOf(entries);
    }

    /** The value in one edition; empty if it has none. */
    public Optional<Entry> in(Protocol edition) {
      return entries.stream().filter(e -> e.protocol().equals(edition)).findFirst();
    }
  }

  /**
   * One value in one edition.
   *
   * @param protocol the edition
   * @param value the value with its unit
   * @param source where it comes from
   * @param change what it was in the edition before by the same organisation, or for a local
   *     protocol what it is in the edition that it is based on; empty if the same, or if there is
   *     none
   */
  public record Entry(Protocol protocol, String value, Citation source, String change) {}

  private record Shown(String value, Citation source) {}

  /** A situation with its number of rescuers, for choosing. */
  public record Choice(PatientGroup patient, Situation situation, int rescuers) {
    /** The words shown to people. */
    @Override
    public String toString() {
      return Guidance.words(patient, situation, rescuers);
    }
  }

  /** Everything that at least one edition covers, in the order of patients and situations. */
  public static List<Choice> choices(List<Protocol> editions) {
    List<Choice> found = new ArrayList<>();
    for (PatientGroup patient : PatientGroup.values()) {
      for (Situation situation : Situation.values()) {
        editions.stream()
            .flatMap(p -> p.guidance().stream())
            .filter(g -> g.patient() == patient && g.situation() == situation)
            .map(Guidance::rescuers)
            .distinct()
            .sorted()
            .forEach(rescuers -> found.add(new Choice(patient, situation, rescuers)));
      }
    }
    return found;
  }

  /** The values of one choice. */
  public static SideBySide of(List<Protocol> editions, Choice choice) {
    List<Value> values = new ArrayList<>();
    add(values, "One breath every", editions, choice, SideBySide::interval);
    add(values, "In range", editions, choice, SideBySide::range);
    add(values, "Squeeze for", editions, choice, SideBySide::squeeze);
    add(values, "Compressions and breaths", editions, choice, SideBySide::cycle);
    add(values, "Compressions a minute", editions, choice, SideBySide::compressions);
    add(values, "Pause for breaths, at most", editions, choice, SideBySide::pause);
    add(values, "Pulse check every", editions, choice, g -> limit(g.limits().pulseCheckEvery()));
    add(values, "Pulse check lasts", editions, choice, SideBySide::checkLength);
    add(values, "Suction at most", editions, choice, g -> limit(g.limits().suctionLongest()));
    return new SideBySide(values);
  }

  private static void add(
      List<Value> values,
      String name,
      List<Protocol> editions,
      Choice choice,
      Function<Guidance, Optional<Shown>> read) {
    List<Entry> cells = new ArrayList<>();
    for (Protocol protocol : editions) {
      protocol.guidance().stream()
          .filter(g -> g.patient() == choice.patient() && g.situation() == choice.situation())
          .filter(g -> g.rescuers() == choice.rescuers())
          .findFirst()
          .flatMap(read)
          .ifPresent(s -> cells.add(new Entry(protocol, s.value(), s.source(), "")));
    }
    if (cells.isEmpty()) {
      return;
    }
    List<Entry> entries = new ArrayList<>();
    for (Entry cell : cells) {
      entries.add(new Entry(cell.protocol(), cell.value(), cell.source(), change(cell, cells)));
    }
    values.add(new Value(name, entries));
  }

  /** The newest older edition by the same organisation, if it says something else. */
  private static String change(Entry cell, List<Entry> cells) {
    if (cell.protocol().local()) {
      return cells.stream()
          .filter(c -> c.protocol().id().equals(cell.protocol().basedOn()))
          .filter(c -> !c.value().equals(cell.value()))
          .map(c -> "Differs: " + c.value() + whose(c))
          .findFirst()
          .orElse("");
    }
    Entry before = null;
    for (Entry other : cells) {
      boolean older =
          !other.protocol().local()
              && other.protocol().organisation().equals(cell.protocol().organisation())
              && other.protocol().year() < cell.protocol().year();
      if (older && (before == null || other.protocol().year() > before.protocol().year())) {
        before = other;
      }
    }
    return before == null || before.value().equals(cell.value())
        ? ""
        : "Changed: " + before.value() + " in " + before.protocol().year();
  }

  /** What the program chose itself is not laid at the guideline's door. */
  private static String whose(Entry cell) {
    return cell.source().confidence() == Confidence.HOUSE
        ? " by this program's own choice"
        : " in " + cell.protocol().title();
  }

  private static Optional<Shown> interval(Guidance guidance) {
    return guidance.rhythm().steadyBreaths().map(SideBySide::published);
  }

  /** What the guideline prints: a range where it prints one, else the single value. */
  private static Shown published(BreathPlan plan) {
    return plan.rangeIsPublished()
        ? new Shown(seconds(plan.lowNanos(), plan.highNanos()), plan.rangeSource())
        : new Shown(seconds(plan.interval().nanosAt(1)), plan.intervalSource());
  }

  private static Optional<Shown> range(Guidance guidance) {
    return guidance
        .rhythm()
        .steadyBreaths()
        .map(b -> new Shown(seconds(b.lowNanos(), b.highNanos()), b.rangeSource()));
  }

  private static Optional<Shown> squeeze(Guidance guidance) {
    if (guidance.rhythm() instanceof Rhythm.CompressionCycle cycle) {
      return Optional.of(new Shown(seconds(cycle.inspirationNanos()), cycle.inspirationSource()));
    }
    return guidance
        .rhythm()
        .steadyBreaths()
        .map(b -> new Shown(seconds(b.inspirationNanos()), b.inspirationSource()));
  }

  private static Optional<Shown> cycle(Guidance guidance) {
    return guidance.rhythm() instanceof Rhythm.CompressionCycle cycle
        ? Optional.of(
            new Shown(cycle.perCycle() + " to " + cycle.breathsPerCycle(), cycle.cycleSource()))
        : Optional.empty();
  }

  private static Optional<Shown> pause(Guidance guidance) {
    return guidance.rhythm() instanceof Rhythm.CompressionCycle cycle
        ? Optional.of(new Shown(seconds(cycle.pauseLimitNanos()), cycle.pauseLimitSource()))
        : Optional.empty();
  }

  private static Optional<Shown> compressions(Guidance guidance) {
    return guidance
        .rhythm()
        .compressions()
        .map(plan -> rate(plan, guidance.rhythm().compressionShare()));
  }

  private static Shown rate(CompressionPlan plan, double share) {
    String low = Quantities.upTo(share * plan.lowPerMinute(), 1);
    String high = Quantities.upTo(share * plan.highPerMinute(), 1);
    return new Shown(low.equals(high) ? low : low + " to " + high, plan.rangeSource());
  }

  private static Optional<Shown> limit(Limit limit) {
    return Optional.of(new Shown(seconds(limit.nanos()), limit.source()));
  }

  private static Optional<Shown> checkLength(Guidance guidance) {
    Limit shortest = guidance.limits().pulseCheckShortest();
    Limit longest = guidance.limits().pulseCheckLongest();
    return Optional.of(new Shown(seconds(shortest.nanos(), longest.nanos()), longest.source()));
  }

  private static String seconds(long nanos) {
    return nanos >= 60_000_000_000L && nanos % 60_000_000_000L == 0
        ? nanos / 60_000_000_000L + " min"
        : Quantities.upTo(nanos / 1e9, 2) + " s";
  }

  private static String seconds(long low, long high) {
    return low == high
        ? seconds(low)
        : Quantities.upTo(low / 1e9, 2) + " to " + Quantities.upTo(high / 1e9, 2) + " s";
  }
}
