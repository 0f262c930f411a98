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
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.session.Breath;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/**
 * A two-minute practice in the real window, by real keys and a real mouse button that another
 * process holds at known instants, with the keyboard repeating. What the program recorded and what
 * its debrief says are compared with what was sent.
 */
class WindowPracticeIT {
  private static final double ACCURACY_SECONDS = 0.020;

  @TempDir Path folder;

  private record Hold(double downSeconds, double upSeconds) {}

  private record SentHold(RealWindow.Sent down, RealWindow.Sent up) {}

  @Test
  void whatIsHeldIsWhatIsRecordedAndReviewed() throws Exception {
    try (RealWindow window = RealWindow.open(folder)) {
      Files.writeString(folder.resolve("settings.json"), RealWindow.settings());
      window.start();
      // Enter reads the caution, then starts the practice.
      window.tapUntil("return", () -> window.session().isPresent());
      Path file = window.session().orElseThrow();
      Instant began = RealWindow.startOf(file);

      List<SentHold> keys = new ArrayList<>();
      SplittableRandom random = new SplittableRandom(7);
      double at = 3.2;
      double checkAt = 0;
      double checkUntil = 0;
      while (at < 121.5) {
        // From the middle on the mouse button holds the pad; before, the space bar.
        String key = keys.size() % 3 == 2 ? "pad" : "space";
        RealWindow.Sent down = window.send(RealWindow.after(began, at), "down", key);
        RealWindow.Sent up =
            window.send(RealWindow.after(began, at + 0.7 + random.nextDouble() * 0.6), "up", key);
        keys.add(new SentHold(down, up));
        if (checkAt == 0 && at > 55) {
          window.shot(Path.of("target", "window-live.png"));
          checkAt =
              RealWindow.seconds(
                  began, window.send(RealWindow.after(began, at + 4), "down", "p").to());
          window.send(RealWindow.after(began, at + 4.1), "up", "p");
          checkUntil = at + 11;
          at = checkUntil;
        } else {
          at += 4.6 + random.nextDouble() * 2.8;
        }
      }
      RealWindow.waitFor(Duration.between(Instant.now(), RealWindow.after(began, 125)));
      window.shot(Path.of("target", "window-debrief.png"));
      printCost(window.program());

      Session session = SessionReader.read(file);
      List<Breath> breaths = session.breaths();
      assertThat(session.finished()).isTrue();
      assertThat(breaths).hasSameSizeAs(keys);
      List<Hold> sent = new ArrayList<>();
      double worst = 0;
      for (int i = 0; i < keys.size(); i++) {
        double start = breaths.get(i).startNanos() / 1e9;
        double end = breaths.get(i).endNanos().orElseThrow() / 1e9;
        Hold hold =
            new Hold(
                keys.get(i).down().nearest(began, start), keys.get(i).up().nearest(began, end));
        worst = Math.max(worst, Math.abs(start - hold.downSeconds()));
        worst = Math.max(worst, Math.abs(end - hold.upSeconds()));
        sent.add(hold);
      }
      System.out.printf(
          "window practice: %d holds, worst distance between sent and recorded %.1f ms%n",
          sent.size(), worst * 1_000);
      assertThat(worst).isLessThan(ACCURACY_SECONDS);
      assertThat(session.events().stream().filter(e -> e.what() == EventType.PULSE_CHECK))
          .singleElement()
          .satisfies(
              e -> assertThat(e.atNanos() / 1e9).isBetween(checkAt(sent) - 8, checkAt(sent)));

      compareWithReview(
          JsonParser.parseString(window.run("review", "--json", file.toString())).getAsJsonObject(),
          sent,
          checkAt,
          checkUntil,
          Session.zeroNanos(session.header().plan(), breaths) / 1e9);
    }
  }

  /** The first squeeze after the check is the one that ended it. */
  private static double checkAt(List<Hold> sent) {
    double longest = 0;
    double at = 0;
    for (int i = 1; i < sent.size(); i++) {
      double gap = sent.get(i).downSeconds() - sent.get(i - 1).downSeconds();
      if (gap > longest) {
        longest = gap;
        at = sent.get(i).downSeconds();
      }
    }
    return at;
  }

  /** Figures worked out here from the instants that were sent, by their definitions alone. */
  private static void compareWithReview(
      JsonObject review, List<Hold> sent, double checkAt, double checkUntil, double zero) {
    List<Double> intervals = new ArrayList<>();
    double squeezed = 0;
    for (int i = 0; i < sent.size(); i++) {
      squeezed += sent.get(i).upSeconds() - sent.get(i).downSeconds();
      if (i > 0) {
        double from = sent.get(i - 1).downSeconds();
        double to = sent.get(i).downSeconds();
        boolean cut = from < checkAt && to > checkAt;
        if (!cut) {
          intervals.add(to - from);
        }
      }
    }
    double mean = intervals.stream().mapToDouble(v -> v).average().orElseThrow();
    double squares = intervals.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum();
    double sd = Math.sqrt(squares / (intervals.size() - 1));
    List<Double> sorted = intervals.stream().sorted().toList();
    int n = sorted.size();
    double median = (sorted.get((n - 1) / 2) + sorted.get(n / 2)) / 2;

    JsonObject interval = review.getAsJsonObject("interval");
    assertThat(review.getAsJsonObject("breaths").get("count").getAsInt()).isEqualTo(sent.size());
    assertThat(interval.get("count").getAsInt()).isEqualTo(n);
    assertThat(interval.get("meanSeconds").getAsDouble()).isCloseTo(mean, within(0.005));
    assertThat(interval.get("medianSeconds").getAsDouble()).isCloseTo(median, within(0.02));
    assertThat(interval.get("sdSeconds").getAsDouble()).isCloseTo(sd, within(0.01));
    assertThat(review.getAsJsonObject("rate").get("overallPerMinute").getAsDouble())
        .isCloseTo(60 / mean, within(0.01));
    assertThat(review.getAsJsonObject("inspiration").get("meanSeconds").getAsDouble())
        .isCloseTo(squeezed / sent.size(), within(0.01));
    JsonObject check = review.getAsJsonArray("pulseChecks").get(0).getAsJsonObject();
    assertThat(check.get("startedSeconds").getAsDouble())
        .isCloseTo(checkAt - zero, within(ACCURACY_SECONDS));
    assertThat(check.get("lengthSeconds").getAsDouble())
        .isCloseTo(checkUntil - checkAt, within(2 * ACCURACY_SECONDS));
  }

  private static void printCost(Process program) throws Exception {
    Duration used = LongPractice.used(program);
    Duration lived = Duration.between(program.info().startInstant().orElseThrow(), Instant.now());
    System.out.printf(
        "window practice: %d MB resident, %.1f s of processor in %.0f s%n",
        LongPractice.residentMegabytes(program), used.toMillis() / 1e3, lived.toMillis() / 1e3);
  }
}
