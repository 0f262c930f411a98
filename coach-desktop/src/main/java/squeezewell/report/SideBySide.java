package squeezewell.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
import squeezewell.words.Wording;

/**
 * The values of several editions for one patient and one situation, value by value.
 *
 * @param values in the order in which they matter
 */
public record SideBySide(List<Value> values) {
  private static final Wording WORDS = Wording.beside(SideBySide.class);

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
    Map<String, Function<Guidance, Optional<Shown>>> readers = new LinkedHashMap<>();
    readers.put("interval", g -> g.rhythm().steadyBreaths().map(SideBySide::published));
    readers.put(
        "range",
        g ->
            g.rhythm()
                .steadyBreaths()
                .map(b -> new Shown(seconds(b.lowNanos(), b.highNanos()), b.rangeSource())));
    readers.put("squeeze", SideBySide::squeeze);
    readers.put(
        "cycle",
        g ->
            cycle(g)
                .map(c -> new Shown(fromTo(c.perCycle(), c.breathsPerCycle()), c.cycleSource())));
    readers.put(
        "compressions",
        g -> g.rhythm().compressions().map(plan -> rate(plan, g.rhythm().compressionShare())));
    readers.put(
        "pause",
        g -> cycle(g).map(c -> new Shown(seconds(c.pauseLimitNanos()), c.pauseLimitSource())));
    readers.put("check-every", g -> limit(g.limits().pulseCheckEvery()));
    readers.put("check-length", SideBySide::checkLength);
    readers.put("suction", g -> limit(g.limits().suctionLongest()));
    List<Value> values = new ArrayList<>();
    readers.forEach(
        (key, reader) -> {
          List<Entry> entries = entries(editions, choice, reader);
          if (!entries.isEmpty()) {
            values.add(new Value(WORDS.say("value." + key), entries));
          }
        });
    return new SideBySide(values);
  }

  private static List<Entry> entries(
      List<Protocol> editions, Choice choice, Function<Guidance, Optional<Shown>> reader) {
    List<Entry> bare = new ArrayList<>();
    for (Protocol protocol : editions) {
      protocol.guidance().stream()
          .filter(g -> g.patient() == choice.patient() && g.situation() == choice.situation())
          .filter(g -> g.rescuers() == choice.rescuers())
          .findFirst()
          .flatMap(reader)
          .ifPresent(s -> bare.add(new Entry(protocol, s.value(), s.source(), "")));
    }
    return bare.stream()
        .map(e -> new Entry(e.protocol(), e.value(), e.source(), change(e, bare)))
        .toList();
  }

  /** The newest older edition by the same organisation, if it says something else. */
  private static String change(Entry cell, List<Entry> cells) {
    Protocol edition = cell.protocol();
    if (edition.local()) {
      return cells.stream()
          .filter(c -> c.protocol().id().equals(edition.basedOn()))
          .filter(c -> !c.value().equals(cell.value()))
          .findFirst()
          .map(SideBySide::differs)
          .orElse("");
    }
    return cells.stream()
        .filter(c -> !c.protocol().local() && c.protocol().year() < edition.year())
        .filter(c -> c.protocol().organisation().equals(edition.organisation()))
        .sorted(Comparator.comparingInt((Entry c) -> c.protocol().year()).reversed())
        .findFirst()
        .filter(c -> !c.value().equals(cell.value()))
        .map(c -> WORDS.say("value.changed", c.value(), Integer.toString(c.protocol().year())))
        .orElse("");
  }

  /** What the program chose itself is not laid at the guideline's door. */
  private static String differs(Entry base) {
    return base.source().confidence() == Confidence.HOUSE
        ? WORDS.say("value.differs.house", base.value())
        : WORDS.say("value.differs", base.value(), base.protocol().title());
  }

  /** What the guideline prints: a range where it prints one, else the single value. */
  private static Shown published(BreathPlan plan) {
    return plan.rangeIsPublished()
        ? new Shown(seconds(plan.lowNanos(), plan.highNanos()), plan.rangeSource())
        : new Shown(seconds(plan.interval().nanosAt(1)), plan.intervalSource());
  }

  private static Optional<Shown> squeeze(Guidance guidance) {
    return cycle(guidance)
        .map(c -> new Shown(seconds(c.inspirationNanos()), c.inspirationSource()))
        .or(
            () ->
                guidance
                    .rhythm()
                    .steadyBreaths()
                    .map(b -> new Shown(seconds(b.inspirationNanos()), b.inspirationSource())));
  }

  private static Optional<Rhythm.CompressionCycle> cycle(Guidance guidance) {
    return guidance.rhythm() instanceof Rhythm.CompressionCycle cycle
        ? Optional.of(cycle)
        : Optional.empty();
  }

  private static Shown rate(CompressionPlan plan, double share) {
    String low = Quantities.upTo(share * plan.lowPerMinute(), 1);
    String high = Quantities.upTo(share * plan.highPerMinute(), 1);
    return new Shown(low.equals(high) ? low : fromTo(low, high), plan.rangeSource());
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
        ? WORDS.say("value.minutes", nanos / 60_000_000_000L)
        : WORDS.say("value.seconds", Quantities.upTo(nanos / 1e9, 2));
  }

  private static String seconds(long low, long high) {
    return low == high
        ? seconds(low)
        : WORDS.say(
            "value.seconds", fromTo(Quantities.upTo(low / 1e9, 2), Quantities.upTo(high / 1e9, 2)));
  }

  private static String fromTo(Object low, Object high) {
    return WORDS.say("value.from-to", low, high);
  }
}
