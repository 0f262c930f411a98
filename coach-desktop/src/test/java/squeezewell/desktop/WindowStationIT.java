package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.awt.Point;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;
import squeezewell.station.file.Station;

/**
 * A whole station in the real window, once by real keys alone and once by a real mouse alone, each
 * to a pass. It is the built-in station of fluid in the mouth with its times stretched, so that a
 * busy machine is never late, and its least lengths shortened, so that the test is. Each step waits
 * until the session file holds the one before.
 */
class WindowStationIT {
  /** What a pass has to hold, in the order in which the station's file lists it. */
  private static final List<String> IN_ORDER =
      List.of(
          "task-done protect",
          "task-done check-kit",
          "station-begin command",
          "task-done scene",
          "task-done response",
          "task-start pulse",
          "task-done pulse",
          "task-done help",
          "task-done open",
          "task-start suction",
          "task-done suction",
          "task-done size-oral",
          "task-done oral",
          "task-start ventilate",
          "task-done oxygen",
          "task-done ventilate",
          "task-start recheck",
          "task-done recheck",
          "station-end command");

  private static final Duration HELD = Duration.ofMillis(600);
  private static final Duration LET_GO = Duration.ofMillis(700);

  /** A little longer than the 2 s under which a check was not made. */
  private static final Duration CHECK = Duration.ofMillis(2_200);

  private static final Set<String> OF_BREATHS =
      Set.of(
          "rate", "interruption", "breath-while", "no-breath", "no-compression", "breaths-without");

  @TempDir Path home;

  @BeforeEach
  void aHomeWithTheStation() throws IOException {
    Files.writeString(home.resolve("settings.json"), RealWindow.settings());
    Files.createDirectories(home.resolve("stations"));
    Files.writeString(home.resolve("stations/short.json"), shortened());
  }

  private static String shortened() throws IOException {
    JsonObject station;
    try (InputStream in =
        Objects.requireNonNull(
            Station.class.getResourceAsStream("adult-secretions.json"), "adult-secretions")) {
      station =
          JsonParser.parseString(new String(in.readAllBytes(), StandardCharsets.UTF_8))
              .getAsJsonObject();
    }
    station.addProperty("id", "adult-secretions-short");
    station.addProperty("title", "Short rehearsal");
    station.addProperty("preparationSeconds", 600);
    station.addProperty("exerciseSeconds", 1_200);
    // Not by chance: fluid does not come back.
    station
        .getAsJsonArray("branches")
        .get(0)
        .getAsJsonObject()
        .getAsJsonArray("options")
        .get(1)
        .getAsJsonObject()
        .addProperty("weight", 0);
    // The second minute, with a partner, takes as long again and shows nothing new in a window.
    without(station, "tasks", "two-rescuers");
    without(station, "script", "hands-free");
    without(station, "findings", "second-rescuer");
    segment(station.getAsJsonArray("tasks"));
    // What is judged of breaths has tests of its own; here hands are slower or faster than asked.
    JsonArray rules = new JsonArray();
    for (JsonElement rule : station.getAsJsonArray("rules")) {
      if (!OF_BREATHS.contains(rule.getAsJsonObject().get("rule").getAsString())) {
        rules.add(rule);
      }
    }
    station.add("rules", rules);
    segment(rules);
    return station.toString();
  }

  private static void without(JsonObject station, String list, String id) {
    JsonArray kept = new JsonArray();
    for (JsonElement entry : station.getAsJsonArray(list)) {
      if (!entry.getAsJsonObject().get("id").getAsString().equals(id)) {
        kept.add(entry);
      }
    }
    station.add(list, kept);
  }

  private static void segment(JsonArray entries) {
    for (JsonElement entry : entries) {
      JsonObject each = entry.getAsJsonObject();
      if (each.has("limit")) {
        each.getAsJsonObject("limit").addProperty("seconds", 900);
      }
      if (each.has("seconds")) {
        boolean least = each.get("rule").getAsString().equals("too-short");
        each.addProperty("seconds", least ? 1 : 300);
      }
      if (each.has("mostSeconds")) {
        each.addProperty("mostSeconds", 300);
      }
      if (each.has("leastSeconds")) {
        boolean timed = each.has("kind") && each.get("kind").getAsString().equals("timed");
        each.addProperty("leastSeconds", timed ? 1 : 4);
      }
    }
  }

  @Test
  void aStationIsPassedByKeysAlone() throws Exception {
    try (RealWindow window = RealWindow.open(home)) {
      window.startAskable();
      window.await("I understand");
      window.tap("return");
      window.await("Start");
      window.chord("alt", "2");
      window.await("Start the station");
      // End takes the last station of the list, which is the home's own.
      window.tap("end");
      window.await("Short rehearsal");
      window.chord("alt", "t");
      window.await("Next: Put on gloves");
      window.shot(Path.of("target", "window-station-preparation.png"));
      int breaths = run(window, new ByKeys(window));
      window.shot(Path.of("target", "window-station-keys.png"));
      window.tap("end");
      window.await("Hold to finish");
      holdToFinish(window, "end");
      check(window, breaths);
    }
  }

  private static void holdToFinish(RealWindow window, String key) throws IOException {
    window.hold(key);
    RealWindow.waitFor(Duration.ofMillis(1_200));
    window.letGo(key);
  }

  @Test
  void aStationIsPassedByMouseAlone() throws Exception {
    try (RealWindow window = RealWindow.open(home)) {
      window.startAskable();
      window.click("I understand");
      window.click("Stations");
      window.await("Start the station");
      Point list = window.await("Station");
      window.click("Station");
      // The home's own stand last; the wheel brings them.
      while (window.find("Short rehearsal").isEmpty()) {
        window.wheel(new Point(list.x, list.y + 120), 5);
      }
      window.click("Short rehearsal");
      window.click("Start the station");
      int breaths = run(window, new ByMouse(window));
      window.moveTo(window.await("Finish"));
      holdToFinish(window, "pad");
      check(window, breaths);
    }
  }

  /** What a person does, by one way of doing it. */
  private interface Hands {
    /** Does what is expected next. */
    void next(String named) throws IOException;

    void squeeze() throws IOException;

    void letGo() throws IOException;
  }

  private record ByKeys(RealWindow window) implements Hands {
    @Override
    public void next(String named) throws IOException {
      window.await(named);
      window.tap("n");
    }

    @Override
    public void squeeze() throws IOException {
      window.hold("space");
    }

    @Override
    public void letGo() throws IOException {
      window.letGo("space");
    }
  }

  private record ByMouse(RealWindow window) implements Hands {
    @Override
    public void next(String named) throws IOException {
      window.click(named);
    }

    @Override
    public void squeeze() throws IOException {
      window.moveTo(window.await("Breath pad"));
      window.hold("pad");
    }

    @Override
    public void letGo() throws IOException {
      window.letGo("pad");
    }
  }

  /** Does the whole station; returns how many breaths were given. */
  private int run(RealWindow window, Hands hands) throws IOException {
    next(window, hands, "Next: Put on gloves", "task-done protect");
    next(window, hands, "Next: Check the kit", "task-done check-kit");
    next(window, hands, "Begin the exercise", "station-begin command");
    next(window, hands, "Next: Make sure", "task-done scene");
    next(window, hands, "Next: Check for a response", "task-done response");
    lasting(window, hands, "Feel for a pulse", "pulse");
    next(window, hands, "Next: Send for further help", "task-done help");
    next(window, hands, "Next: Open the airway", "task-done open");
    lasting(window, hands, "Suction the mouth", "suction");
    next(window, hands, "Next: Measure an oral", "task-done size-oral");
    next(window, hands, "Next: Place the oral", "task-done oral");
    int breaths = breathe(window, hands);
    until(window, "task-start ventilate");
    next(window, hands, "Next: Connect oxygen", "task-done oxygen");
    // The breath after four seconds ends the task.
    while (!written().contains("task-done ventilate")) {
      assertThat(breaths).as("breaths until the task is done").isLessThan(60);
      breaths += breathe(window, hands);
    }
    lasting(window, hands, "Check the pulse again", "recheck");
    window.await("All is done: breathe on");
    return breaths;
  }

  private void next(RealWindow window, Hands hands, String named, String written)
      throws IOException {
    hands.next(named);
    until(window, written);
  }

  private void lasting(RealWindow window, Hands hands, String words, String id) throws IOException {
    next(window, hands, "Next: " + words, "task-start " + id);
    RealWindow.waitFor(CHECK);
    next(window, hands, "Now: " + words, "task-done " + id);
  }

  private int breathe(RealWindow window, Hands hands) throws IOException {
    int before = count("breath ");
    hands.squeeze();
    window.until("a breath begins", () -> count("breath ") > before);
    RealWindow.waitFor(HELD);
    hands.letGo();
    window.until("a breath ends", () -> count("breath-end ") > before);
    RealWindow.waitFor(LET_GO);
    return 1;
  }

  private int count(String beginning) throws IOException {
    return (int) written().stream().filter(w -> w.startsWith(beginning)).count();
  }

  private void until(RealWindow window, String fact) throws IOException {
    window.until(fact + " is written down", () -> written().contains(fact));
  }

  /** What the session file holds by now, each as its word and what it is about. */
  private List<String> written() throws IOException {
    List<String> written = new ArrayList<>();
    Path file = RealWindow.sessionIn(home).orElse(null);
    if (file == null) {
      return written;
    }
    String text = Files.readString(file);
    // What has no end of its line is still being written.
    String whole = text.substring(0, text.lastIndexOf('\n') + 1);
    for (String line : whole.lines().skip(1).toList()) {
      JsonObject event = JsonParser.parseString(line).getAsJsonObject();
      String of =
          Stream.of("task", "order", "finding", "by")
              .filter(event::has)
              .map(field -> event.get(field).getAsString())
              .findFirst()
              .orElse("");
      written.add(event.get("what").getAsString() + " " + of);
    }
    return written;
  }

  private void check(RealWindow window, int breaths) throws Exception {
    window.await("All tasks done, in order and in time");
    window.shot(Path.of("target", "window-station-result.png"));
    assertThat(written().stream().filter(IN_ORDER::contains).toList()).isEqualTo(IN_ORDER);
    Path file = RealWindow.sessionIn(home).orElseThrow();
    Session session = SessionReader.read(file);
    assertThat(session.finished()).isTrue();
    assertThat(session.breaths()).hasSize(breaths).hasSizeGreaterThanOrEqualTo(3);
    JsonObject review =
        JsonParser.parseString(window.run("review", "--json", file.toString())).getAsJsonObject();
    assertThat(review.getAsJsonObject("breaths").get("count").getAsInt()).isEqualTo(breaths);
    // The second check and nothing else held the breaths up.
    assertThat(review.getAsJsonArray("pulseChecks")).hasSize(1);
  }
}
