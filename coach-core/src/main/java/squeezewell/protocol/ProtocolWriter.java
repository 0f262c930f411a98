package squeezewell.protocol;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes protocols in the format that {@link ProtocolReader} reads. */
public final class ProtocolWriter {
  private final JsonWriter json;
  private final Map<Citation, String> sources = new LinkedHashMap<>();

  private ProtocolWriter(JsonWriter json) {
    this.json = json;
  }

  /**
   * Writes a protocol as one JSON object.
   *
   * @throws IOException if the writer's target fails
   */
  public static void write(JsonWriter json, Protocol protocol) throws IOException {
    new ProtocolWriter(json).protocol(protocol);
  }

  private void protocol(Protocol protocol) throws IOException {
    json.beginObject();
    json.name("format").value(ProtocolReader.FORMAT);
    json.name("version").value(ProtocolReader.VERSION);
    json.name("id").value(protocol.id());
    json.name("title").value(protocol.title());
    json.name("organisation").value(protocol.organisation());
    json.name("year").value(protocol.year());
    json.name("local").value(protocol.local());
    if (!protocol.basedOn().isEmpty()) {
      json.name("basedOn").value(protocol.basedOn());
    }
    if (protocol.approval().isPresent()) {
      approval(protocol.approval().get());
    }
    json.name("patients").beginArray();
    Map<PatientGroup, List<Guidance>> groups = new LinkedHashMap<>();
    for (Guidance guidance : protocol.guidance()) {
      groups.computeIfAbsent(guidance.patient(), g -> new ArrayList<>()).add(guidance);
    }
    for (Map.Entry<PatientGroup, List<Guidance>> group : groups.entrySet()) {
      patient(protocol, group.getKey(), group.getValue());
    }
    json.endArray();
    json.name("sources").beginObject();
    for (Map.Entry<Citation, String> source : sources.entrySet()) {
      Citation citation = source.getKey();
      json.name(source.getValue()).beginObject();
      json.name("organisation").value(citation.organisation());
      json.name("title").value(citation.title());
      json.name("year").value(citation.year());
      json.name("section").value(citation.section());
      json.endObject();
    }
    json.endObject();
    json.endObject();
  }

  private void approval(Approval approval) throws IOException {
    json.name("approval").beginObject();
    json.name("by").value(approval.by());
    json.name("on").value(approval.on().toString());
    if (!approval.note().isEmpty()) {
      json.name("note").value(approval.note());
    }
    json.endObject();
  }

  private void patient(Protocol protocol, PatientGroup group, List<Guidance> guidance)
      throws IOException {
    json.beginObject();
    json.name("group").value(group.id());
    for (AgeBand ages : protocol.ages()) {
      if (ages.group() == group) {
        ages(ages);
      }
    }
    Limits usual = guidance.get(0).limits();
    limits(usual);
    json.name("rhythms").beginArray();
    for (Guidance entry : guidance) {
      json.beginObject();
      json.name("situation").value(entry.situation().id());
      if (entry.rescuers() > 0) {
        json.name("rescuers").value(entry.rescuers());
      }
      rhythm(entry.rhythm());
      if (!entry.limits().equals(usual)) {
        limits(entry.limits());
      }
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  private void ages(AgeBand ages) throws IOException {
    json.name("ages").beginObject();
    json.name("words").value(ages.words());
    if (ages.judgement().isPresent()) {
      json.name("judgement").value(ages.judgement().get());
    }
    age("from", ages.from());
    if (ages.to().isPresent()) {
      age("to", ages.to().get());
    }
    source(ages.source(), "source", "confidence");
    json.endObject();
  }

  private void age(String name, AgeLimit limit) throws IOException {
    json.name(name).beginObject();
    json.name("value").value(limit.value());
    json.name("unit").value(limit.unit().id());
    source(limit.source(), "source", "confidence");
    json.endObject();
  }

  private void limits(Limits limits) throws IOException {
    json.name("limits").beginObject();
    limit("pulseCheckEvery", limits.pulseCheckEvery());
    limit("pulseCheckNotice", limits.pulseCheckNotice());
    limit("pulseCheckShortest", limits.pulseCheckShortest());
    limit("pulseCheckLongest", limits.pulseCheckLongest());
    limit("suctionLongest", limits.suctionLongest());
    limit("suctionNotice", limits.suctionNotice());
    limit("gapLongest", limits.gapLongest());
    json.endObject();
  }

  private void rhythm(Rhythm rhythm) throws IOException {
    json.name("kind").value(RhythmKind.of(rhythm).id());
    if (rhythm.compressions().isPresent()) {
      compressions(rhythm.compressions().get());
    }
    if (rhythm.steadyBreaths().isPresent()) {
      breaths(rhythm.steadyBreaths().get());
    }
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      json.name("cycle").beginObject();
      json.name("compressions").value(cycle.perCycle());
      json.name("breaths").value(cycle.breathsPerCycle());
      source(cycle.cycleSource(), "source", "confidence");
      json.endObject();
      length("pause", cycle.pauseNanos(), cycle.pauseSource());
      length("pauseLimit", cycle.pauseLimitNanos(), cycle.pauseLimitSource());
      length("inspiration", cycle.inspirationNanos(), cycle.inspirationSource());
    }
  }

  private void breaths(BreathPlan breaths) throws IOException {
    json.name("breathInterval").beginObject();
    json.name("target").value(seconds(breaths.interval().nanosAt(1)));
    json.name("low").value(seconds(breaths.lowNanos()));
    json.name("high").value(seconds(breaths.highNanos()));
    json.name("unit").value("s");
    source(breaths.intervalSource(), "source", "confidence");
    source(breaths.rangeSource(), "rangeSource", "rangeConfidence");
    json.endObject();
    length("inspiration", breaths.inspirationNanos(), breaths.inspirationSource());
  }

  private void compressions(CompressionPlan plan) throws IOException {
    json.name("compressionRate").beginObject();
    json.name("target").value(GuidanceValues.perMinute(plan.tempo()));
    json.name("low").value(ProtocolValue.plain(BigDecimal.valueOf(plan.lowPerMinute())));
    json.name("high").value(ProtocolValue.plain(BigDecimal.valueOf(plan.highPerMinute())));
    json.name("unit").value("/min");
    source(plan.source(), "source", "confidence");
    source(plan.rangeSource(), "rangeSource", "rangeConfidence");
    json.endObject();
  }

  private void limit(String name, Limit limit) throws IOException {
    length(name, limit.nanos(), limit.source());
  }

  private void length(String name, long nanos, Citation citation) throws IOException {
    json.name(name).beginObject();
    json.name("value").value(seconds(nanos));
    json.name("unit").value("s");
    source(citation, "source", "confidence");
    json.endObject();
  }

  private void source(Citation citation, String sourceField, String confidenceField)
      throws IOException {
    Citation document = citation.as(Confidence.PRIMARY);
    String key = sources.computeIfAbsent(document, d -> "source-" + (sources.size() + 1));
    json.name(sourceField).value(key);
    json.name(confidenceField).value(citation.confidence().id());
  }

  private static BigDecimal seconds(long nanos) {
    return ProtocolValue.plain(BigDecimal.valueOf(nanos, 9));
  }
}
