package squeezewell.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/** The real program, killed in the middle of a real practice. */
class KilledProgramIT {
  @TempDir Path home;

  @Test
  void everyBreathBeforeTheKillIsInTheFileAndThePracticeCanBeReviewed() throws Exception {
    try (RealWindow window = RealWindow.open(home)) {
      window.start();
      window.tapUntil("return", () -> window.session().isPresent());
      Path file = window.session().orElseThrow();
      Instant now = Instant.now();
      for (int i = 0; i < 3; i++) {
        window.send(now.plusMillis(1_000 + i * 1_500L), "down", "space");
        window.send(now.plusMillis(1_700 + i * 1_500L), "up", "space");
      }
      window.send(now.plusMillis(5_600), "down", "space");
      RealWindow.waitFor(Duration.between(Instant.now(), now.plusMillis(5_800)));
      window.program().destroyForcibly();
      assertThat(window.program().waitFor(10, TimeUnit.SECONDS)).isTrue();

      Session session = SessionReader.read(file);
      assertThat(session.finished()).isFalse();
      assertThat(session.breaths()).hasSize(4);
      assertThat(session.breaths().get(2).endNanos()).isPresent();
      assertThat(session.breaths().get(3).endNanos()).isEmpty();
      assertThat(window.run("review", file.toString())).contains("breaths            4");
    }
  }
}
