package squeezewell.station.file;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import squeezewell.input.BadInputException;
import squeezewell.input.JsonValue;
import squeezewell.input.Nearest;

/** Finds fields that this version does not know: from a newer one, or mistyped. */
final class UnknownFields {
  private static final List<String> TOP =
      Arrays.asList(
          "format",
          "version",
          "id",
          "title",
          "setting",
          "patient",
          "situation",
          "kit",
          "oxygen",
          "preparationSeconds",
          "exerciseSeconds",
          "findings",
          "branches",
          "orders",
          "tasks",
          "script",
          "criticalFaults");
  private static final List<String> LIMIT = Arrays.asList("seconds", "fromTask", "fromFinding");
  private static final List<String> ONLY = Arrays.asList("branch", "option");

  private final List<String> doubts = new ArrayList<>();

  private UnknownFields() {}

  /** A sentence for each; the file has been read before, so that its values have their types. */
  static List<String> of(JsonValue top) {
    UnknownFields fields = new UnknownFields();
    try {
      fields.walk(top);
    } catch (BadInputException e) {
      throw new IllegalStateException("a file that was read can't be walked through", e);
    }
    return fields.doubts;
  }

  private void walk(JsonValue top) throws BadInputException {
    known(top, TOP);
    Map<String, List<String>> lists = new LinkedHashMap<>();
    lists.put("kit", Arrays.asList("item"));
    lists.put(
        "findings", Arrays.asList("id", "words", "atStart", "lasting", "hidden", "stopsBreaths"));
    lists.put("orders", Arrays.asList("id", "words"));
    lists.put("branches", Arrays.asList("id", "words", "options"));
    lists.put(
        "tasks",
        Arrays.asList(
            "id",
            "words",
            "doneWhen",
            "phase",
            "kind",
            "after",
            "limit",
            "critical",
            "optional",
            "ifFinding",
            "only",
            "leastSeconds",
            "mostSeconds",
            "holds",
            "oxygen",
            "adjunct"));
    lists.put(
        "script",
        Arrays.asList(
            "id",
            "when",
            "delaySeconds",
            "while",
            "unless",
            "only",
            "says",
            "raises",
            "clears",
            "tells"));
    lists.put(
        "criticalFaults",
        Arrays.asList("id", "words", "rule", "task", "order", "other", "finding", "limit", "only"));
    inside(top, "patient", Arrays.asList("group", "words"));
    inside(top, "oxygen", Arrays.asList("cylinder", "pressure", "litresPerMinute"));
    for (Map.Entry<String, List<String>> list : lists.entrySet()) {
      if (top.has(list.getKey())) {
        for (JsonValue value : top.list(list.getKey(), 0, "")) {
          entry(value, list.getValue());
        }
      }
    }
  }

  private void entry(JsonValue value, List<String> names) throws BadInputException {
    known(value, names);
    if (names.contains("limit")) {
      inside(value, "limit", LIMIT);
    }
    if (names.contains("only")) {
      inside(value, "only", ONLY);
    }
    if (names.contains("when")) {
      inside(
          value,
          "when",
          Arrays.asList("seconds", "phase", "task", "started", "order", "finding", "cleared"));
    }
    if (names.contains("options")) {
      for (JsonValue way : value.list("options", 0, "")) {
        known(way, Arrays.asList("id", "words", "weight", "findings"));
      }
    }
  }

  private void inside(JsonValue value, String name, List<String> names) throws BadInputException {
    if (value.has(name)) {
      known(value.field(name, ""), names);
    }
  }

  private void known(JsonValue value, List<String> names) throws BadInputException {
    for (String name : value.names()) {
      if (!names.contains(name)) {
        String place = value.path().isEmpty() ? name : value.path() + "." + name;
        doubts.add(
            place
                + ": this version does not know the field, so it does nothing"
                + Nearest.question(name, names));
      }
    }
  }
}
