package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.protocol.AgeBand;
import squeezewell.protocol.AgeLimit;
import squeezewell.protocol.Approval;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Citation;
import squeezewell.protocol.CompressionPlan;
import squeezewell.protocol.Confidence;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limit;
import squeezewell.protocol.Limits;
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolValue;
import squeezewell.protocol.Rhythm;
import squeezewell.words.Quantities;

/** What a guideline asks for, as JSON for programs. */
final class ProtocolJson {
  private final JsonWriter json;

  private ProtocolJson(JsonWriter json) {
    this.json = json;
  }

  /**
   * Writes an edition as one object.
   *
   * @param base the guideline that it stems from
   */
  static void write(JsonWriter json, Protocol protocol, Optional<Protocol> base)
      throws IOException {
    new ProtocolJson(json).protocol(protocol, base);
  }

  private void protocol(Protocol protocol, Optional<Protocol> base) throws IOException {
    json.beginObject();
    json.name("id").value(protocol.id());
    json.name("title").value(protocol.title());
    json.name("organisation").value(protocol.organisation());
    json.name("year").value(protocol.year());
    json.name("local").value(protocol.local());
    json.name("supersededBy").value(supersededBy(protocol));
    local(json, protocol, base);
    json.name("ages").beginArray();
    for (AgeBand ages : protocol.ages()) {
      json.beginObject();
      json.name("patient").value(ages.group().id());
      json.name("words").value(ages.words());
      json.name("judgement").value(ages.judgement().orElse(null));
      citation("source", "confidence", ages.source());
      json.endObject();
    }
    json.endArray();
    json.name("rhythms").beginArray();
    for (Guidance guidance : protocol.guidance()) {
      guidance(guidance);
    }
    json.endArray();
    json.endObject();
  }

  /** Null for the latest edition. */
  static String supersededBy(Protocol protocol) {
    return protocol.supersededBy().isEmpty() ? null : protocol.supersededBy();
  }

  /** What tells a local protocol from a guideline; null and empty for a guideline. */
  static void local(JsonWriter json, Protocol protocol, Optional<Protocol> base)
      throws IOException {
    String basedOn = protocol.basedOn();
    json.name("basedOn").value(basedOn.isEmpty() ? null : basedOn);
    json.name("approval");
    Optional<Approval> approval = protocol.approval();
    if (approval.isPresent()) {
      json.beginObject();
      json.name("by").value(approval.get().by());
      json.name("on").value(approval.get().on().toString());
      json.name("note").value(approval.get().note());
      json.endObject();
    } else {
      json.nullValue();
    }
    json.name("differences").beginArray();
    for (String difference :
        LocalLabel.of(protocol, base).map(LocalLabel::differences).orElse(List.of())) {
      json.value(difference);
    }
    json.endArray();
  }

  private void guidance(Guidance guidance) throws IOException {
    Rhythm rhythm = guidance.rhythm();
    json.beginObject();
    json.name("patient").value(guidance.patient().id());
    json.name("situation").value(guidance.situation().id());
    json.name("rescuers").value(guidance.rescuers() == 0 ? null : (Integer) guidance.rescuers());
    json.name("fromAge").value(guidance.fromAge().map(AgeLimit::words).orElse(null));
    interval(rhythm.steadyBreaths());
    compressions(rhythm);
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      json.name("compressionsPerCycle").value(cycle.perCycle());
      json.name("breathsPerCycle").value(cycle.breathsPerCycle());
      seconds("inspirationSeconds", cycle.inspirationNanos());
      seconds("pauseSeconds", cycle.pauseNanos());
      seconds("pauseLimitSeconds", cycle.pauseLimitNanos());
      citation("source", "confidence", cycle.cycleSource());
      citation("rangeSource", "rangeConfidence", cycle.pauseLimitSource());
      citation("inspirationSource", "inspirationConfidence", cycle.inspirationSource());
    } else {
      BreathPlan breaths = rhythm.steadyBreaths().orElseThrow();
      json.name("compressionsPerCycle").nullValue();
      json.name("breathsPerCycle").nullValue();
      seconds("inspirationSeconds", breaths.inspirationNanos());
      json.name("pauseSeconds").nullValue();
      json.name("pauseLimitSeconds").nullValue();
      citation("source", "confidence", published(breaths));
      citation("rangeSource", "rangeConfidence", breaths.rangeSource());
      citation("inspirationSource", "inspirationConfidence", breaths.inspirationSource());
    }
    limits(guidance.limits());
    json.endObject();
  }

  /** The interval's own source, unless that is our choice within a range that was published. */
  private static Citation published(BreathPlan breaths) {
    return breaths.intervalSource().confidence() == Confidence.HOUSE
        ? breaths.rangeSource()
        : breaths.intervalSource();
  }

  private void interval(Optional<BreathPlan> breaths) throws IOException {
    json.name("breathIntervalSeconds");
    if (breaths.isEmpty()) {
      json.nullValue();
      return;
    }
    json.beginObject();
    seconds("target", breaths.get().interval().nanosAt(1));
    seconds("low", breaths.get().lowNanos());
    seconds("high", breaths.get().highNanos());
    seconds("tolerance", breaths.get().toleranceNanos());
    json.endObject();
  }

  private void compressions(Rhythm rhythm) throws IOException {
    Optional<CompressionPlan> compressions = rhythm.compressions();
    json.name("compressionsPerMinute");
    if (compressions.isEmpty()) {
      json.nullValue();
    } else {
      double share = rhythm.compressionShare();
      json.beginObject();
      rate("target", share * compressions.get().tempo().perMinute());
      rate("low", share * compressions.get().lowPerMinute());
      rate("high", share * compressions.get().highPerMinute());
      json.endObject();
    }
    json.name("eventsPerMinute");
    if (rhythm instanceof Rhythm.CompressionCycle cycle && cycle.byEvents()) {
      rate(cycle.compressing().tempo().perMinute());
    } else {
      json.nullValue();
    }
  }

  private void limits(Limits limits) throws IOException {
    json.name("limits").beginObject();
    for (Map.Entry<ProtocolValue, Limit> limit : limits.all().entrySet()) {
      limit(limit.getKey().object(), limit.getValue());
    }
    json.endObject();
  }

  private void limit(String name, Limit limit) throws IOException {
    json.name(name).beginObject();
    seconds("seconds", limit.nanos());
    citation("source", "confidence", limit.source());
    json.endObject();
  }

  private void seconds(String name, long nanos) throws IOException {
    json.name(name).value(Quantities.exactSeconds(nanos));
  }

  /** Without needless zeros, as the other numbers are written. */
  private void rate(String name, double perMinute) throws IOException {
    json.name(name);
    rate(perMinute);
  }

  private void rate(double perMinute) throws IOException {
    BigDecimal plain = BigDecimal.valueOf(perMinute).stripTrailingZeros();
    json.value(plain.setScale(Math.max(0, plain.scale())));
  }

  private void citation(String source, String confidence, Citation citation) throws IOException {
    json.name(source).value(citation.document());
    json.name(confidence).value(citation.confidence().id());
  }
}
