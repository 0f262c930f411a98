package squeezewell.cli;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
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
import squeezewell.protocol.LocalLabel;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.words.Quantities;

/** What a guideline asks for, as JSON for programs: null for what it does not have. */
final class ProtocolJson {
  private ProtocolJson() {}

  /**
   * An edition as one object.
   *
   * @param base the guideline that it stems from
   */
  static Map<String, Object> of(Protocol protocol, Optional<Protocol> base) {
    Map<String, Object> json = head(protocol, base);
    json.put("ages", protocol.ages().stream().map(ProtocolJson::ages).toList());
    json.put("rhythms", protocol.guidance().stream().map(ProtocolJson::guidance).toList());
    return json;
  }

  /** What tells an edition from the others, and a local protocol from a guideline. */
  static Map<String, Object> head(Protocol protocol, Optional<Protocol> base) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("id", protocol.id());
    json.put("title", protocol.title());
    json.put("organisation", protocol.organisation());
    json.put("year", protocol.year());
    json.put("local", protocol.local());
    json.put("supersededBy", orNull(protocol.supersededBy()));
    json.put("basedOn", orNull(protocol.basedOn()));
    json.put("approval", protocol.approval().map(ProtocolJson::approval).orElse(null));
    Optional<LocalLabel> label = LocalLabel.of(protocol, base);
    json.put("differences", label.map(LocalLabel::differences).orElse(List.of()));
    return json;
  }

  private static String orNull(String text) {
    return text.isEmpty() ? null : text;
  }

  private static Map<String, Object> approval(Approval approval) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("by", approval.by());
    json.put("on", approval.on().toString());
    json.put("note", approval.note());
    return json;
  }

  private static Map<String, Object> ages(AgeBand ages) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("patient", ages.group().id());
    json.put("words", ages.words());
    json.put("judgement", ages.judgement().orElse(null));
    cite(json, "source", "confidence", ages.source());
    return json;
  }

  private static Map<String, Object> guidance(Guidance guidance) {
    Rhythm rhythm = guidance.rhythm();
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("patient", guidance.patient().id());
    json.put("situation", guidance.situation().id());
    json.put("rescuers", guidance.rescuers() == 0 ? null : guidance.rescuers());
    json.put("fromAge", guidance.fromAge().map(AgeLimit::words).orElse(null));
    json.put(
        "breathIntervalSeconds", rhythm.steadyBreaths().map(ProtocolJson::interval).orElse(null));
    json.put(
        "compressionsPerMinute", rhythm.compressions().map(c -> rates(c, rhythm)).orElse(null));
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      boolean events = cycle.byEvents();
      json.put("eventsPerMinute", events ? rate(cycle.compressing().tempo().perMinute()) : null);
      json.put("compressionsPerCycle", cycle.perCycle());
      json.put("breathsPerCycle", cycle.breathsPerCycle());
      json.put("inspirationSeconds", seconds(cycle.inspirationNanos()));
      json.put("pauseSeconds", seconds(cycle.pauseNanos()));
      json.put("pauseLimitSeconds", seconds(cycle.pauseLimitNanos()));
      cite(json, "source", "confidence", cycle.cycleSource());
      cite(json, "rangeSource", "rangeConfidence", cycle.pauseLimitSource());
      cite(json, "inspirationSource", "inspirationConfidence", cycle.inspirationSource());
    } else {
      BreathPlan breaths = rhythm.steadyBreaths().orElseThrow();
      json.put("eventsPerMinute", null);
      json.put("compressionsPerCycle", null);
      json.put("breathsPerCycle", null);
      json.put("inspirationSeconds", seconds(breaths.inspirationNanos()));
      json.put("pauseSeconds", null);
      json.put("pauseLimitSeconds", null);
      cite(json, "source", "confidence", published(breaths));
      cite(json, "rangeSource", "rangeConfidence", breaths.rangeSource());
      cite(json, "inspirationSource", "inspirationConfidence", breaths.inspirationSource());
    }
    Map<String, Object> limits = new LinkedHashMap<>();
    guidance.limits().all().forEach((value, limit) -> limits.put(value.object(), limit(limit)));
    json.put("limits", limits);
    return json;
  }

  /** The interval's own source, unless that is our choice within a range that was published. */
  private static Citation published(BreathPlan breaths) {
    return breaths.intervalSource().confidence() == Confidence.HOUSE
        ? breaths.rangeSource()
        : breaths.intervalSource();
  }

  private static Map<String, Object> interval(BreathPlan breaths) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("target", seconds(breaths.interval().nanosAt(1)));
    json.put("low", seconds(breaths.lowNanos()));
    json.put("high", seconds(breaths.highNanos()));
    json.put("tolerance", seconds(breaths.toleranceNanos()));
    return json;
  }

  private static Map<String, Object> rates(CompressionPlan compressions, Rhythm rhythm) {
    double share = rhythm.compressionShare();
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("target", rate(share * compressions.tempo().perMinute()));
    json.put("low", rate(share * compressions.lowPerMinute()));
    json.put("high", rate(share * compressions.highPerMinute()));
    return json;
  }

  private static Map<String, Object> limit(Limit limit) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("seconds", seconds(limit.nanos()));
    cite(json, "source", "confidence", limit.source());
    return json;
  }

  private static BigDecimal seconds(long nanos) {
    return Quantities.exactSeconds(nanos);
  }

  /** Without needless zeros, as the other numbers are written. */
  private static BigDecimal rate(double perMinute) {
    BigDecimal plain = BigDecimal.valueOf(perMinute).stripTrailingZeros();
    return plain.setScale(Math.max(0, plain.scale()));
  }

  private static void cite(
      Map<String, Object> json, String source, String confidence, Citation citation) {
    json.put(source, citation.document());
    json.put(confidence, citation.confidence().id());
  }
}
