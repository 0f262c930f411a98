package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/** When the system refuses to let the file grow, the practice goes on and the file stays whole. */
class JournalSurvivesFullDiskTest {
  @TempDir Path folder;

  @Test
  void aLineThatDoesNotFitIsCutOffAgain() throws Exception {
    assumeTrue(
        Files.isExecutable(Path.of("/bin/sh")), "needs a POSIX shell to limit a file's size");
    Path file = folder.resolve("full.jsonl");
    Process process =
        new ProcessBuilder(
                "/bin/sh",
                "-c",
                // 64 blocks, of 512 bytes by POSIX; some shells count 1,024.
                "ulimit -f 64; exec \"$0\" -XX:-UsePerfData -cp \"$1\" \"$2\" \"$3\"",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                System.getProperty("java.class.path"),
                FullDiskPractice.class.getName(),
                file.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    String said =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).trim();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(said).matches("\\d+ true This practice is not being saved: .+");
    int taken = Integer.parseInt(said.substring(0, said.indexOf(' ')));
    assertThat(taken).isGreaterThan(100);
    Session session = SessionReader.read(file);
    assertThat(session.events()).hasSize(taken);
    assertThat(session.notes()).as("no torn line is left behind").isEmpty();
    assertThat(Files.size(file)).isBetween(20_000L, 65_536L);
  }
}
