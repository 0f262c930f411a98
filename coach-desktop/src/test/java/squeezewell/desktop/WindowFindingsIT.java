package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionReader;

/**
 * Findings in the real window, by real keys that another process sends at known instants: a slip
 * that is taken back, a lost pulse, compressions, a pulse that comes back.
 */
class WindowFindingsIT {
  private static final double ACCURACY_SECONDS = 0.020;

  @TempDir Path folder;

  private record Sent(String key, RealWindow.Sent at) {}

  @Test
  void findingsChangeTheRhythmAtTheInstantOfTheirKey() throws Exception {
    try (RealWindow window = RealWindow.open(folder)) {
      Files.writeString(folder.resolve("settings.json"), RealWindow.settings());
      window.start();
      window.tapUntil("return", () -> window.session().isPresent());
      Path file = window.session().orElseThrow();
      Instant began = RealWindow.startOf(file);

      List<Sent> sent = new ArrayList<>();
      breathe(window, began, 3.1, sent);
      breathe(window, began, 9.2, sent);
      // A slip of the finger: no pulse, and back.
      tap(window, began, 11.0, "f", sent);
      tap(window, began, 11.6, "1", sent);
      tap(window, began, 13.0, "z", sent);
      breathe(window, began, 15.1, sent);
      tap(window, began, 17.0, "f", sent);
      window.shot(Path.of("target", "window-findings.png"));
      tap(window, began, 17.8, "1", sent);
      for (int k = 0; k < 12; k++) {
        tap(window, began, 18.3 + k * 0.55, "c", sent);
      }
      window.shot(Path.of("target", "window-compressing.png"));
      tap(window, began, 25.6, "f", sent);
      tap(window, began, 26.2, "1", sent);
      breathe(window, began, 26.6, sent);
      breathe(window, began, 32.3, sent);
      RealWindow.Sent end = window.send(RealWindow.after(began, 34), "down", "end");
      window.send(RealWindow.after(began, 35.5), "up", "end");
      // Held for a second, it ends.
      sent.add(
          new Sent("end", new RealWindow.Sent(end.from().plusSeconds(1), end.to().plusSeconds(1))));
      RealWindow.waitFor(Duration.between(Instant.now(), RealWindow.after(began, 38)));
      window.shot(Path.of("target", "window-findings-debrief.png"));

      Session session = SessionReader.read(file);
      List<SessionEvent> events =
          session.events().stream()
              .filter(
                  e ->
                      e.what() == EventType.BREATH
                          || e.what() == EventType.COMPRESSION
                          || e.what() == EventType.FINDING
                          || e.what() == EventType.FINDING_UNDONE
                          || e.what() == EventType.FINISH)
              .toList();
      List<Sent> told = sent.stream().filter(s -> !s.key().equals("f")).toList();
      assertThat(events).hasSameSizeAs(told);
      double worst = 0;
      for (int i = 0; i < told.size(); i++) {
        double recorded = events.get(i).atNanos() / 1e9;
        worst = Math.max(worst, Math.abs(recorded - told.get(i).at().nearest(began, recorded)));
      }
      System.out.printf(
          "window findings: %d keys, worst distance between sent and recorded %.1f ms%n",
          told.size(), worst * 1_000);
      assertThat(worst).isLessThan(ACCURACY_SECONDS);
      assertThat(session.findings())
          .extracting(f -> f.finding().word() + " " + f.undone())
          .containsExactly("pulse-lost true", "pulse-lost false", "pulse-back false");

      JsonObject review =
          JsonParser.parseString(window.run("review", "--json", file.toString())).getAsJsonObject();
      assertThat(review.getAsJsonObject("breaths").get("count").getAsInt()).isEqualTo(5);
      JsonObject compressions = review.getAsJsonObject("compressions");
      assertThat(compressions.get("count").getAsInt()).isEqualTo(12);
      assertThat(compressions.get("ratePerMinute").getAsDouble())
          .isCloseTo(rate(began, told), within(1.0));
    }
  }

  /** From the instants that were sent: 60 over the mean distance. */
  private static double rate(Instant began, List<Sent> sent) {
    List<Double> at =
        sent.stream()
            .filter(s -> s.key().equals("c"))
            .map(s -> RealWindow.seconds(began, s.at().to()))
            .toList();
    return 60 * (at.size() - 1) / (at.get(at.size() - 1) - at.get(0));
  }

  private static void breathe(RealWindow window, Instant began, double at, List<Sent> sent)
      throws Exception {
    sent.add(new Sent("space", window.send(RealWindow.after(began, at), "down", "space")));
    window.send(RealWindow.after(began, at + 0.9), "up", "space");
  }

  private static void tap(RealWindow window, Instant began, double at, String key, List<Sent> sent)
      throws Exception {
    sent.add(new Sent(key, window.send(RealWindow.after(began, at), "down", key)));
    window.send(RealWindow.after(began, at + 0.08), "up", key);
  }
}
