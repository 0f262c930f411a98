package squeezewell.station.run;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import squeezewell.input.BadInputException;
import squeezewell.input.Json;
import squeezewell.input.JsonValue;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationReader;

/**
 * What is settled before a station begins.
 *
 * @param mode who is there
 * @param timedSteps whether steps that a time sets off are taken by themselves; an instructor who
 *     wants to lead alone turns them off
 * @param choices the way taken at each branch of the station
 */
public record StationSetup(StationMode mode, boolean timedSteps, List<BranchOption> choices) {
  public StationSetup {
    Objects.requireNonNull(mode, "mode");
    choices = List.copyOf(choices);
  }

  /**
   * Settles what was left to chance. The same seed takes the same ways.
   *
   * @param chosen ways that the instructor chose; the other branches are left to chance
   * @throws BadInputException if the station has no such branch or way
   */
  public static StationSetup of(
      Station station, StationMode mode, List<BranchOption> chosen, long seed)
      throws BadInputException {
    Map<String, String> wanted = new LinkedHashMap<>();
    for (BranchOption choice : chosen) {
      require(station, choice);
      wanted.put(choice.branch(), choice.option());
    }
    Random random = new Random(seed);
    List<BranchOption> choices = new ArrayList<>();
    for (StationBranch branch : station.branches()) {
      // Drawn even where it is not used, so that one choice does not change the chance of another.
      String drawn = draw(branch, random);
      choices.add(new BranchOption(branch.id(), wanted.getOrDefault(branch.id(), drawn)));
    }
    return new StationSetup(mode, true, choices);
  }

  /** The same, with steps that a time sets off taken or not. */
  public StationSetup withTimedSteps(boolean taken) {
    return new StationSetup(mode, taken, choices);
  }

  /** The same, with another way taken at one branch. */
  StationSetup with(BranchOption way) {
    List<BranchOption> next = new ArrayList<>();
    for (BranchOption choice : choices) {
      next.add(choice.branch().equals(way.branch()) ? way : choice);
    }
    return new StationSetup(mode, timedSteps, next);
  }

  /** Whether that is the way taken. */
  public boolean takes(BranchOption way) {
    return choices.contains(way);
  }

  private static String draw(StationBranch branch, Random random) {
    int all = branch.ways().stream().mapToInt(StationBranch.Way::weight).sum();
    int left = random.nextInt(all);
    for (StationBranch.Way way : branch.ways()) {
      left -= way.weight();
      if (left < 0) {
        return way.id();
      }
    }
    throw new IllegalStateException("a branch without a way");
  }

  private static void require(Station station, BranchOption choice) throws BadInputException {
    List<String> all = new ArrayList<>();
    for (StationBranch branch : station.branches()) {
      for (StationBranch.Way way : branch.ways()) {
        if (branch.id().equals(choice.branch()) && way.id().equals(choice.option())) {
          return;
        }
        all.add(branch.id() + "=" + way.id());
      }
    }
    throw BadInputException.notAllowed(
        "branch",
        "",
        choice.branch() + "=" + choice.option(),
        all.isEmpty()
            ? "nothing, since this station has no branches"
            : "one of " + String.join(", ", all));
  }

  /** The first fact of a station in a journal: what was settled, and the station itself. */
  String json(Station station) {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      json.beginObject();
      json.name("mode").value(mode.word());
      json.name("timedSteps").value(timedSteps);
      json.name("choices").beginArray();
      for (BranchOption choice : choices) {
        json.beginObject();
        json.name("branch").value(choice.branch());
        json.name("option").value(choice.option());
        json.endObject();
      }
      json.endArray();
      json.name("station").jsonValue(station.definition());
      json.endObject();
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory can't be written", e);
    }
    return text.toString();
  }

  /** What {@link #json} wrote. */
  static StationSetup read(String source, String json, Station station) throws BadInputException {
    JsonValue top = Json.readText(source, json);
    List<BranchOption> choices = new ArrayList<>();
    for (JsonValue choice : top.list("choices", 0, "a list of ways")) {
      BranchOption way = new BranchOption(choice.text("branch", 40), choice.text("option", 40));
      require(station, way);
      choices.add(way);
    }
    if (choices.size() != station.branches().size()) {
      throw top.field("choices", "").wrong("one way for each branch of the station");
    }
    return new StationSetup(
        top.choice("mode", List.of(StationMode.values()), StationMode::word),
        top.flagOr("timedSteps", true),
        choices);
  }

  /** The station that stands in what {@link #json} wrote. */
  static Station station(String source, String json) throws BadInputException {
    JsonValue top = Json.readText(source, json);
    return StationReader.readText(
        source, top.field("station", "the station that was run").compact());
  }
}
