package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/** What was acknowledged is in the file, however suddenly the process ends (SIGKILL). */
class JournalSurvivesKillTest {
  private static final int KILLS = 15;

  @TempDir Path folder;

  @Test
  void everyAcknowledgedEventOutlivesItsProcess() throws Exception {
    Random random = new Random(20_260_131);
    for (int run = 0; run < KILLS; run++) {
      Path file = folder.resolve("run-" + run + ".jsonl");
      int acknowledged = killAfter(1 + random.nextInt(2_000), file, run);
      Session session = SessionReader.read(file);
      assertThat(session.events()).hasSizeGreaterThanOrEqualTo(acknowledged);
      assertThat(session.notes()).hasSizeLessThanOrEqualTo(1);
      assertThat(session.finished()).as("run %s was killed in the middle", run).isFalse();
    }
  }

  /** Returns the number of the last event that the process acknowledged before it died. */
  private static int killAfter(int acknowledgements, Path file, int seed) throws Exception {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xshare:auto",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                KilledPractice.class.getName(),
                file.toString(),
                Integer.toString(seed))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    int last = 0;
    try (BufferedReader said =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = said.readLine(); line != null; line = said.readLine()) {
        int number = Integer.parseInt(line);
        // The last line may be torn: then its number is not the one that follows.
        if (number != last + 1) {
          break;
        }
        last = number;
        if (last == acknowledgements) {
          // By its handle: the process object would close the pipe with what is still in it.
          process.toHandle().destroyForcibly();
        }
      }
    } finally {
      process.destroyForcibly();
    }
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).as("it was killed").isNotZero();
    assertThat(last).isGreaterThanOrEqualTo(acknowledgements);
    return last;
  }
}
