package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * The numbers of one guidance, taken apart: each value in its unit, and the citation of each group
 * of values that share one (kept at {@link ProtocolValue#sourceOf}). Immutable.
 */
final class GuidanceValues {
  private static final BigDecimal NANOS_PER_SECOND = BigDecimal.valueOf(1_000_000_000L);
  private static final BigDecimal NANOS_PER_MINUTE = BigDecimal.valueOf(60_000_000_000L);

  private final Map<ProtocolValue, BigDecimal> numbers;
  private final Map<ProtocolValue, Citation> sources;

  GuidanceValues(Map<ProtocolValue, BigDecimal> numbers, Map<ProtocolValue, Citation> sources) {
    this.numbers = numbers;
    this.sources = sources;
  }

  /** Takes a guidance apart. */
  static GuidanceValues of(Guidance guidance) {
    GuidanceValues made =
        new GuidanceValues(new EnumMap<>(ProtocolValue.class), new EnumMap<>(ProtocolValue.class));
    Rhythm rhythm = guidance.rhythm();
    rhythm.steadyBreaths().ifPresent(made::put);
    rhythm.compressions().ifPresent(made::put);
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      made.put(cycle);
    }
    guidance.limits().all().forEach(made::put);
    return made;
  }

  /** The numbers, each in its unit. */
  Map<ProtocolValue, BigDecimal> numbers() {
    return Collections.unmodifiableMap(numbers);
  }

  /** Where a value comes from. */
  Citation source(ProtocolValue value) {
    return sources.get(value.sourceOf());
  }

  /** Whether all is there that a guidance of that kind needs, and nothing breaks a rule. */
  boolean isWhole(RhythmKind kind) {
    for (ProtocolValue value : ProtocolValue.of(kind)) {
      if (!numbers.containsKey(value) || source(value) == null) {
        return false;
      }
    }
    for (ValueRule rule : ValueRule.values()) {
      if (rule.isBroken(numbers)) {
        return false;
      }
    }
    return true;
  }

  /** Puts a guidance together; everything must be whole. */
  Guidance guidance(
      PatientGroup patient,
      Situation situation,
      int rescuers,
      RhythmKind kind,
      Optional<AgeLimit> fromAge) {
    return new Guidance(patient, situation, rescuers, rhythm(kind), limits(), fromAge);
  }

  private Rhythm rhythm(RhythmKind kind) {
    switch (kind) {
      case STEADY_BREATHS:
        return new Rhythm.SteadyBreaths(breaths());
      case CONTINUOUS_COMPRESSIONS:
        return new Rhythm.ContinuousCompressions(compressions(), breaths());
      default:
        return new Rhythm.CompressionCycle(
            compressions(),
            numbers.get(ProtocolValue.CYCLE_COMPRESSIONS).intValueExact(),
            numbers.get(ProtocolValue.CYCLE_BREATHS).intValueExact(),
            nanos(ProtocolValue.PAUSE),
            nanos(ProtocolValue.PAUSE_LIMIT),
            nanos(ProtocolValue.INSPIRATION),
            source(ProtocolValue.CYCLE_COMPRESSIONS),
            source(ProtocolValue.PAUSE),
            source(ProtocolValue.PAUSE_LIMIT),
            source(ProtocolValue.INSPIRATION));
    }
  }

  private BreathPlan breaths() {
    return new BreathPlan(
        new Tempo(nanos(ProtocolValue.BREATH_INTERVAL), 1),
        nanos(ProtocolValue.BREATH_LOW),
        nanos(ProtocolValue.BREATH_HIGH),
        nanos(ProtocolValue.BREATH_TOLERANCE),
        nanos(ProtocolValue.INSPIRATION),
        source(ProtocolValue.BREATH_INTERVAL),
        source(ProtocolValue.BREATH_LOW),
        source(ProtocolValue.INSPIRATION));
  }

  private CompressionPlan compressions() {
    return new CompressionPlan(
        Tempo.perMinute(numbers.get(ProtocolValue.COMPRESSION_RATE)),
        numbers.get(ProtocolValue.COMPRESSION_LOW).doubleValue(),
        numbers.get(ProtocolValue.COMPRESSION_HIGH).doubleValue(),
        source(ProtocolValue.COMPRESSION_RATE),
        source(ProtocolValue.COMPRESSION_LOW));
  }

  private Limits limits() {
    Map<ProtocolValue, Limit> limits = new EnumMap<>(ProtocolValue.class);
    for (ProtocolValue value : ProtocolValue.values()) {
      if (value.isLimit()) {
        limits.put(value, new Limit(nanos(value), source(value)));
      }
    }
    return new Limits(limits);
  }

  private long nanos(ProtocolValue value) {
    return numbers.get(value).multiply(NANOS_PER_SECOND).longValueExact();
  }

  private void put(BreathPlan plan) {
    put(ProtocolValue.BREATH_INTERVAL, plan.interval().nanosAt(1), plan.intervalSource());
    put(ProtocolValue.BREATH_LOW, plan.lowNanos(), plan.rangeSource());
    put(ProtocolValue.BREATH_HIGH, plan.highNanos(), plan.rangeSource());
    put(ProtocolValue.BREATH_TOLERANCE, plan.toleranceNanos(), plan.intervalSource());
    put(ProtocolValue.INSPIRATION, plan.inspirationNanos(), plan.inspirationSource());
  }

  private void put(CompressionPlan plan) {
    put(ProtocolValue.COMPRESSION_RATE, perMinute(plan.tempo()), plan.source());
    put(ProtocolValue.COMPRESSION_LOW, BigDecimal.valueOf(plan.lowPerMinute()), plan.rangeSource());
    put(
        ProtocolValue.COMPRESSION_HIGH,
        BigDecimal.valueOf(plan.highPerMinute()),
        plan.rangeSource());
  }

  private void put(Rhythm.CompressionCycle cycle) {
    put(
        ProtocolValue.CYCLE_COMPRESSIONS,
        BigDecimal.valueOf(cycle.perCycle()),
        cycle.cycleSource());
    put(
        ProtocolValue.CYCLE_BREATHS,
        BigDecimal.valueOf(cycle.breathsPerCycle()),
        cycle.cycleSource());
    put(ProtocolValue.PAUSE, cycle.pauseNanos(), cycle.pauseSource());
    put(ProtocolValue.PAUSE_LIMIT, cycle.pauseLimitNanos(), cycle.pauseLimitSource());
    put(ProtocolValue.INSPIRATION, cycle.inspirationNanos(), cycle.inspirationSource());
  }

  private void put(ProtocolValue value, Limit limit) {
    put(value, limit.nanos(), limit.source());
  }

  private void put(ProtocolValue value, long nanos, Citation source) {
    put(value, BigDecimal.valueOf(nanos, 9), source);
  }

  private void put(ProtocolValue value, BigDecimal number, Citation source) {
    numbers.put(value, ProtocolValue.plain(number));
    sources.put(value.sourceOf(), source);
  }

  /** Exact where the tempo was made from a rate with a few decimals, as those of protocols are. */
  private static BigDecimal perMinute(Tempo tempo) {
    return ProtocolValue.plain(
        NANOS_PER_MINUTE
            .multiply(BigDecimal.valueOf(tempo.denominator()))
            .divide(BigDecimal.valueOf(tempo.numerator())));
  }
}
