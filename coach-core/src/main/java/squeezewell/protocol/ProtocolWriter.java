package squeezewell.protocol;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
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
    if (!protocol.supersededBy().isEmpty()) {
      json.name("supersededBy").value(protocol.supersededBy());
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
    limits(GuidanceValues.of(guidance.get(0)));
    json.name("rhythms").beginArray();
    for (Guidance entry : guidance) {
      json.beginObject();
      json.name("situation").value(entry.situation().id());
      if (entry.rescuers() > 0) {
        json.name("rescuers").value(entry.rescuers());
      }
      if (entry.fromAge().isPresent()) {
        age("fromAge", entry.fromAge().get());
      }
      json.name("kind").value(RhythmKind.of(entry.rhythm()).id());
      GuidanceValues values = GuidanceValues.of(entry);
      objects(values, false);
      if (!entry.limits().equals(usual)) {
        limits(values);
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

  private void limits(GuidanceValues values) throws IOException {
    json.name("limits").beginObject();
    objects(values, true);
    json.endObject();
  }

  /** The objects that hold the values of a rhythm, or its limits. */
  private void objects(GuidanceValues values, boolean limits) throws IOException {
    Map<String, List<ProtocolValue>> objects = new LinkedHashMap<>();
    values.numbers().keySet().stream()
        .filter(value -> value.isLimit() == limits)
        // Files have always named compressions before breaths.
        .sorted(Comparator.comparing(value -> !value.object().equals("compressionRate")))
        .forEach(v -> objects.computeIfAbsent(v.object(), o -> new ArrayList<>()).add(v));
    for (Map.Entry<String, List<ProtocolValue>> object : objects.entrySet()) {
      json.name(object.getKey()).beginObject();
      object(values, object.getValue());
      json.endObject();
    }
  }

  private void object(GuidanceValues values, List<ProtocolValue> fields) throws IOException {
    for (ProtocolValue field : fields) {
      if (!field.isOptional() || values.numbers().get(field).signum() != 0) {
        json.name(field.field()).value(values.numbers().get(field));
      }
    }
    String unit = fields.get(0).unit();
    if (!unit.isEmpty()) {
      json.name("unit").value(unit);
    }
    for (ProtocolValue field : fields) {
      if (field.sourceOf() == field) {
        source(values.source(field), field.sourceField(), field.confidenceField());
      }
    }
  }

  private void source(Citation citation, String sourceField, String confidenceField)
      throws IOException {
    Citation document = citation.as(Confidence.PRIMARY);
    String key = sources.computeIfAbsent(document, d -> "source-" + (sources.size() + 1));
    json.name(sourceField).value(key);
    json.name(confidenceField).value(citation.confidence().id());
  }
}
