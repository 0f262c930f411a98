package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class BookCommandTest {
  @TempDir Path folder;

  @Test
  void anEmptyHomeHasNoSessions() {
    CliRun run = CliRun.of("book", "--home", folder.toString());
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("No sessions yet");
    assertThat(CliRun.of("book", "--json", "--home", folder.toString()).json().get("sessions"))
        .isEqualTo(new JsonArray());
  }

  @Test
  void sessionsAreListedNewestFirstAndUnreadableOnesWithTheirReason() throws Exception {
    demo("none");
    demo("fast");
    Path bad = folder.resolve("sessions/2026/02/2026-02-01_080000.jsonl");
    Files.createDirectories(bad.getParent());
    Files.writeString(bad, "{\"format\":\"squeezewell-session\",\"version\":9}\n");
    String out = CliRun.of("book", "--home", folder.toString()).out();
    assertThat(out)
        .containsSubsequence(
            "2026-02-01_080000.jsonl  can't be read",
            "version is 9; allowed: at most 2",
            "5:00  AHA 2025, adult  (virtual trainee)",
            "Too fast",
            "10.0 a minute, in range");
    assertThat(bad).exists();
  }

  @Test
  void aPracticeThatWasEndedEarlySaysSo() throws Exception {
    demo("none");
    try (Stream<Path> files = Files.walk(folder)) {
      Path file = files.filter(f -> f.toString().endsWith(".jsonl")).findFirst().orElseThrow();
      List<String> lines = Files.readAllLines(file);
      // The header and the first breaths: the program was stopped.
      Files.write(file, lines.subList(0, 20));
      assertThat(CliRun.of("book", "--home", folder.toString()).out())
          .containsPattern("0:\\d\\d of 5:00, cut off  AHA 2025");
      String last = lines.get(19);
      String at = last.replaceAll(".*\"at\":(\\d+).*", "$1");
      Files.writeString(
          file, "{\"n\":20,\"at\":" + at + ",\"what\":\"finish\"}\n", StandardOpenOption.APPEND);
      assertThat(CliRun.of("book", "--home", folder.toString()).out())
          .containsPattern("0:\\d\\d of 5:00, ended early  AHA 2025");
    }
  }

  @Test
  void theSameListIsThereForPrograms() throws Exception {
    demo("fast");
    Files.writeString(folder.resolve("sessions/odd.jsonl"), "");
    JsonArray sessions =
        CliRun.of("book", "--json", "--home", folder.toString()).json().getAsJsonArray("sessions");
    assertThat(sessions).hasSize(2);
    JsonObject odd = sessions.get(0).getAsJsonObject();
    assertThat(odd.get("file").getAsString()).endsWith("odd.jsonl");
    assertThat(odd.get("problem").getAsString()).contains("the file is empty");
    JsonObject good = sessions.get(1).getAsJsonObject();
    assertThat(good.get("problem").isJsonNull()).isTrue();
    assertThat(good.get("startedAt").getAsString()).isEqualTo("2026-01-31T12:00:00Z");
    assertThat(good.get("origin").getAsString()).isEqualTo("virtual");
    assertThat(good.get("practisedSeconds").getAsInt()).isEqualTo(300);
    assertThat(good.get("ratePerMinute").getAsDouble()).isBetween(28.0, 32.0);
  }

  @Test
  void aFileInTheWayIsNoHomeWithoutSessions() throws Exception {
    Path file = Files.writeString(folder.resolve("notes.txt"), "x");
    Path sessions = Files.writeString(folder.resolve("sessions"), "x");
    for (Path home : new Path[] {file, file.resolve("below")}) {
      CliRun run = CliRun.of("book", "--home", home.toString());
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      assertThat(run.err())
          .contains("the home folder is " + home)
          .contains("allowed: a folder")
          .doesNotContain("Exception");
    }
    CliRun run = CliRun.of("book", "--home", folder.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(sessions + ": a file stands where the sessions go");
  }

  private void demo(String fault) {
    assertThat(CliRun.of("demo", "--fault", fault, "--home", folder.toString()).code()).isZero();
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aFileNameCanNotSteerTheTerminal() throws Exception {
    Path sessions = Files.createDirectories(folder.resolve("sessions"));
    Files.createFile(sessions.resolve("a\u001B[31m\u202Eb.jsonl"));
    CliRun run = CliRun.of("book", "--home", folder.toString());
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("a?[31m?b.jsonl").doesNotContain("\u001B", "\u202E");
  }
}
