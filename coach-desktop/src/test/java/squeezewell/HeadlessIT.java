package squeezewell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The runnable jar as a person without a display starts it. */
class HeadlessIT {
  @TempDir Path home;

  @Test
  void withoutADisplayTheJarRunsTheAcceleratedPracticeAndSaysSo() throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-jar",
            System.getProperty("squeezewell.jar"),
            "--home",
            home.toString());
    builder.environment().remove("DISPLAY");
    Path out = home.resolve("out.txt");
    Path err = home.resolve("err.txt");
    Process process = builder.redirectOutput(out.toFile()).redirectError(err.toFile()).start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    String said =
        Files.readString(out, StandardCharsets.UTF_8)
            + Files.readString(err, StandardCharsets.UTF_8);
    assertThat(process.exitValue()).as(said).isZero();
    assertThat(said)
        .containsIgnoringCase("no display")
        .contains("virtual trainee")
        .contains("Not a medical device");
  }
}
