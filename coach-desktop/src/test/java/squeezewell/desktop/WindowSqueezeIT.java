package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.input.BadInputException;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/** The space bar squeezes whatever has the focus, in the real windows, by real keys. */
class WindowSqueezeIT {
  private static final int CONTROLS = 12;

  @TempDir Path home;

  @Test
  void onEveryControlOfThePractice() throws Exception {
    try (RealWindow window = RealWindow.open(home)) {
      Files.writeString(home.resolve("settings.json"), RealWindow.settings());
      window.start();
      window.tapUntil("return", () -> window.session().isPresent());
      Path file = window.session().orElseThrow();
      squeezeOnEach(window);
      finish(window);
      Session session = await(file);
      assertThat(session.breaths()).hasSize(CONTROLS);
      assertThat(session.events())
          .extracting(e -> e.what())
          .filteredOn(type -> type != EventType.SOUND_LOST)
          .containsOnly(EventType.BREATH, EventType.BREATH_END, EventType.FINISH);
    }
  }

  @Test
  void onEveryControlOfTheInstructorsConsoleAndNotInItsTextField() throws Exception {
    Files.writeString(home.resolve("settings.json"), RealWindow.settings());
    try (RealWindow window = RealWindow.open(home)) {
      window.startAskable();
      window.await("I understand");
      window.tap("return");
      window.await("Start");
      window.chord("alt", "2");
      window.await("Start the station");
      window.chord("alt", "w");
      window.tap("end");
      window.chord("alt", "t");
      window.click("Next: Put on gloves");
      window.click("Next: Check the kit");
      window.click("Begin the exercise");
      window.until("the exercise runs", () -> has(window, EventType.STATION_BEGIN));
      Path file = window.session().orElseThrow();
      window.click("Remark");
      window.tap("e");
      window.tap("space");
      window.tap("n");
      window.tap("return");
      window.until("the remark is kept", () -> has(window, EventType.REMARK));
      assertThat(SessionReader.read(file).breaths()).isEmpty();
      int before = SessionReader.read(file).events().size();
      squeezeOnEach(window);
      window.shot(Path.of("target", "window-console.png"));
      List<EventType> since =
          SessionReader.read(file).events().stream().skip(before).map(e -> e.what()).toList();
      assertThat(since.stream().filter(EventType.BREATH::equals)).hasSize(CONTROLS);
      assertThat(since)
          .doesNotContain(
              EventType.TASK_DONE,
              EventType.ORDER,
              EventType.EXAMINER_FINDING,
              EventType.WAY_CHOSEN,
              EventType.CLOCK_STOPPED,
              EventType.STATION_END);
    }
  }

  /** Goes from control to control, and squeezes on each. */
  private static void squeezeOnEach(RealWindow window) throws Exception {
    for (int i = 0; i < CONTROLS; i++) {
      window.hold("space");
      RealWindow.waitFor(Duration.ofMillis(300));
      window.letGo("space");
      RealWindow.waitFor(Duration.ofMillis(100));
      window.tap("tab");
      RealWindow.waitFor(Duration.ofMillis(100));
    }
  }

  private static void finish(RealWindow window) throws Exception {
    window.hold("end");
    RealWindow.waitFor(Duration.ofMillis(1_200));
    window.letGo("end");
  }

  private static boolean has(RealWindow window, EventType type) throws IOException {
    try {
      return window.session().isPresent()
          && SessionReader.read(window.session().get()).events().stream()
              .anyMatch(e -> e.what() == type);
    } catch (BadInputException e) {
      throw new IOException(e);
    }
  }

  private static Session await(Path file) throws Exception {
    for (int i = 0; i < 100 && !SessionReader.read(file).finished(); i++) {
      RealWindow.waitFor(Duration.ofMillis(50));
    }
    return SessionReader.read(file);
  }
}
