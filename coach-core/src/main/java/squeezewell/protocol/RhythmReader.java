package squeezewell.protocol;

import java.math.BigDecimal;
import java.util.List;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;

/** Reads a rhythm of a protocol file. */
final class RhythmReader {
  private final ProtocolValues values;

  RhythmReader(ProtocolValues values) {
    this.values = values;
  }

  Rhythm rhythm(JsonValue entry) throws BadInputException {
    switch (entry.choice("kind", List.of(RhythmKind.values()), RhythmKind::id)) {
      case STEADY_BREATHS:
        return new Rhythm.SteadyBreaths(breaths(entry));
      case CONTINUOUS_COMPRESSIONS:
        return new Rhythm.ContinuousCompressions(compressions(entry), breaths(entry));
      case COMPRESSION_CYCLE:
        return cycle(entry);
      default:
        throw new IllegalStateException("a kind of rhythm without a reader");
    }
  }

  private BreathPlan breaths(JsonValue entry) throws BadInputException {
    JsonValue interval = entry.field("breathInterval", "an object with target, low, high, unit");
    long target = ProtocolValues.seconds(interval, "target", "0.5", "60");
    long low = ProtocolValues.seconds(interval, "low", "0.5", "60");
    long high = ProtocolValues.seconds(interval, "high", "0.5", "60");
    ProtocolValues.ordered(interval, "low", low <= target, "at most the target");
    ProtocolValues.ordered(interval, "high", high >= target, "at least the target");
    JsonValue inspiration = entry.field("inspiration", "an object with value and unit");
    long inspirationNanos = ProtocolValues.seconds(inspiration, "value", "0.1", "5");
    ProtocolValues.ordered(
        inspiration, "value", inspirationNanos < low, "shorter than the shortest interval");
    return new BreathPlan(
        new Tempo(target, 1),
        low,
        high,
        inspirationNanos,
        values.citation(interval, "source", "confidence"),
        values.citation(interval, "rangeSource", "rangeConfidence"),
        values.citation(inspiration, "source", "confidence"));
  }

  private CompressionPlan compressions(JsonValue entry) throws BadInputException {
    JsonValue rate = entry.field("compressionRate", "an object with target, low, high, unit");
    ProtocolValues.unit(rate, "/min");
    BigDecimal target = ProtocolValues.perMinute(rate, "target");
    BigDecimal low = ProtocolValues.perMinute(rate, "low");
    BigDecimal high = ProtocolValues.perMinute(rate, "high");
    ProtocolValues.ordered(rate, "low", low.compareTo(target) <= 0, "at most the target");
    ProtocolValues.ordered(rate, "high", high.compareTo(target) >= 0, "at least the target");
    return new CompressionPlan(
        Tempo.perMinute(target),
        low.doubleValue(),
        high.doubleValue(),
        values.citation(rate, "source", "confidence"),
        values.citation(rate, "rangeSource", "rangeConfidence"));
  }

  private Rhythm cycle(JsonValue entry) throws BadInputException {
    JsonValue cycle = entry.field("cycle", "an object with compressions and breaths");
    int compressions = (int) cycle.integer("compressions", 1, 100);
    int breaths = (int) cycle.integer("breaths", 1, 10);
    JsonValue pause = entry.field("pause", "an object with value and unit");
    long pauseNanos = ProtocolValues.seconds(pause, "value", "0.1", "30");
    JsonValue limit = entry.field("pauseLimit", "an object with value and unit");
    long limitNanos = ProtocolValues.seconds(limit, "value", "0.1", "60");
    JsonValue inspiration = entry.field("inspiration", "an object with value and unit");
    long inspirationNanos = ProtocolValues.seconds(inspiration, "value", "0.1", "5");
    ProtocolValues.ordered(
        inspiration,
        "value",
        inspirationNanos * breaths <= pauseNanos,
        "so short that all the breaths fit into the pause");
    ProtocolValues.ordered(limit, "value", limitNanos >= pauseNanos, "at least the planned pause");
    return new Rhythm.CompressionCycle(
        compressions(entry),
        compressions,
        breaths,
        pauseNanos,
        limitNanos,
        inspirationNanos,
        values.citation(cycle, "source", "confidence"),
        values.citation(pause, "source", "confidence"),
        values.citation(limit, "source", "confidence"),
        values.citation(inspiration, "source", "confidence"));
  }
}
