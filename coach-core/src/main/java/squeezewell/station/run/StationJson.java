package squeezewell.station.run;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalLong;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.StationRule;
import squeezewell.words.Quantities;

/** Writes a result as JSON, as docs/formats.md describes it. */
public final class StationJson {
  private StationJson() {}

  /** Writes the fields of a result into an object that is open. */
  public static void fields(StationResult result, JsonWriter json) throws IOException {
    StationState state = result.state();
    json.name("station").value(state.station().id());
    json.name("title").value(state.station().title());
    json.name("mode").value(state.setup().mode().word());
    json.name("ways").beginArray();
    for (BranchOption way : state.setup().choices()) {
      json.beginObject();
      json.name("branch").value(way.branch());
      json.name("option").value(way.option());
      json.endObject();
    }
    json.endArray();
    json.name("outcome").value(result.outcome().word());
    json.name("endedBy").value(state.end().map(StationState.End::word).orElse(null));
    json.name("preparationSeconds").value(seconds(result.preparationNanos()));
    json.name("exerciseSeconds").value(seconds(result.exerciseNanos()));
    json.name("stoppedSeconds").value(seconds(result.stoppedNanos()));
    faults(json, "criticalFaults", state.critical());
    faults(json, "toImprove", state.faults(StationRule.Severity.IMPROVE));
    json.name("breathsRecorded").value(!state.breathsUnrecorded());
    json.name("tasks").beginArray();
    for (TaskState task : state.tasks()) {
      json.beginObject();
      json.name("id").value(task.task().id());
      json.name("progress").value(task.progress().word());
      json.name("late").value(task.late());
      json.name("outOfOrder").value(task.outOfOrder());
      json.name("improper").value(task.improper());
      json.name("length").value(task.length().word());
      optional(json, "begunSeconds", task.begunNanos());
      optional(json, "doneSeconds", task.doneNanos());
      optional(json, "dueSeconds", task.dueNanos());
      optional(json, "lengthSeconds", task.lengthNanos());
      json.endObject();
    }
    json.endArray();
    json.name("ventilated").beginArray();
    for (VentilationTime time : state.ventilation()) {
      json.beginObject();
      json.name("adjunct").value(time.adjunct().word());
      json.name("mode").value(time.mode().word());
      json.name("seconds").value(seconds(time.nanos()));
      json.endObject();
    }
    json.endArray();
    json.name("lines").beginArray();
    for (StationState.Line line : state.lines()) {
      words(json, line.atNanos(), line.words());
    }
    json.endArray();
    json.name("remarks").beginArray();
    for (StationState.Remark remark : state.remarks()) {
      words(json, remark.atNanos(), remark.words());
    }
    json.endArray();
    json.name("markChanges").beginArray();
    for (StationState.Changed changed : state.changed()) {
      json.beginObject();
      json.name("atSeconds").value(seconds(changed.atNanos()));
      json.name("task").value(changed.change().task());
      json.name("change").value(changed.change().change().word());
      long earlier = changed.change().earlierNanos();
      optional(
          json, "earlierSeconds", earlier > 0 ? OptionalLong.of(earlier) : OptionalLong.empty());
      json.name("words").value(changed.change().words());
      json.endObject();
    }
    json.endArray();
    json.name("brought").beginArray();
    for (StationState.Brought brought : state.brought()) {
      json.beginObject();
      json.name("atSeconds").value(seconds(brought.atNanos()));
      json.name("words").value(brought.words());
      json.name("comes").value(brought.comes());
      json.endObject();
    }
    json.endArray();
    json.name("checksByKey").beginArray();
    for (StationResult.KeyedCheck check : result.keyed()) {
      json.beginObject();
      json.name("fromSeconds").value(seconds(check.fromNanos()));
      json.name("toSeconds").value(seconds(check.toNanos()));
      json.name("task").value(result.marked(check).map(t -> t.task().id()).orElse(null));
      json.endObject();
    }
    json.endArray();
    json.name("caution").value(StationText.PRACTICE_AID);
  }

  private static void faults(JsonWriter json, String name, List<StationState.Fault> faults)
      throws IOException {
    json.name(name).beginArray();
    for (StationState.Fault fault : faults) {
      json.beginObject();
      json.name("id").value(fault.id());
      json.name("words").value(fault.words());
      json.name("missed").value(fault.missed());
      json.name("source").value(fault.source().isEmpty() ? null : fault.source());
      json.name("atSeconds").value(seconds(fault.atNanos()));
      json.endObject();
    }
    json.endArray();
  }

  private static void words(JsonWriter json, long atNanos, String words) throws IOException {
    json.beginObject();
    json.name("atSeconds").value(seconds(atNanos));
    json.name("words").value(words);
    json.endObject();
  }

  private static void optional(JsonWriter json, String name, OptionalLong nanos)
      throws IOException {
    json.name(name);
    if (nanos.isPresent()) {
      json.value(seconds(nanos.getAsLong()));
    } else {
      json.nullValue();
    }
  }

  private static BigDecimal seconds(long nanos) {
    return Quantities.exactSeconds(nanos);
  }
}
