package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReviewOutputsTest {
  private static final String LIST = "at_s,what,detail\n0,breath,\n6,breath,\n12,breath,\n";

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"--html", "--png", "--csv", "--metrics-csv", "--xapi"})
  void aFileThatIsThereIsKeptUnlessForced(String option) throws Exception {
    Path file = Files.writeString(folder.resolve("out"), "precious");
    CliRun refused = review(option, file.toString());
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains(option).contains("--force");
    assertThat(file).hasContent("precious");
    CliRun forced = review(option, file.toString(), "--force");
    assertThat(forced.code()).as(forced.err()).isZero();
    assertThat(Files.size(file)).isGreaterThan(50);
    assertThat(forced.err()).contains("written: " + file);
  }

  @ParameterizedTest
  @ValueSource(strings = {"--html", "--png", "--csv", "--metrics-csv"})
  void twoKindsNeverGoIntoOneFile(String option) throws Exception {
    Path file = folder.resolve("out");
    CliRun run = review(option, file.toString(), "--xapi", file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--xapi").contains("another file than that of " + option);
    assertThat(file).doesNotExist();
  }

  @Test
  void theAccountOfTheStatementsIsTheOneThatIsNamed() throws Exception {
    Path file = folder.resolve("out.json");
    CliRun run =
        review(
            "--xapi",
            file.toString(),
            "--xapi-home",
            "https://centre.example/",
            "--xapi-account",
            "1625378");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(
            JsonParser.parseString(Files.readString(file))
                .getAsJsonArray()
                .get(0)
                .getAsJsonObject()
                .getAsJsonObject("actor")
                .getAsJsonObject("account"))
        .isEqualTo(
            JsonParser.parseString(
                "{\"homePage\": \"https://centre.example/\", \"name\": \"1625378\"}"));
  }

  @Test
  void aHomePageThatIsNoneOrWithoutStatementsIsRefused() throws Exception {
    Path file = folder.resolve("out.json");
    CliRun bad = review("--xapi", file.toString(), "--xapi-home", "centre");
    assertThat(bad.code()).isEqualTo(2);
    assertThat(bad.err()).contains("--xapi-home is centre").contains("https://centre.example/");
    assertThat(file).doesNotExist();
    CliRun alone = review("--xapi-home", "https://centre.example/");
    assertThat(alone.code()).isEqualTo(2);
    assertThat(alone.err()).contains("--xapi");
  }

  @Test
  void aVirtualPracticeGetsNoStatements() throws Exception {
    assertThat(CliRun.of("demo", "--minutes", "1", "--home", folder.toString()).code()).isZero();
    Path session;
    try (var files = Files.walk(folder)) {
      session = files.filter(f -> f.toString().endsWith(".jsonl")).findFirst().orElseThrow();
    }
    Path file = folder.resolve("out.json");
    CliRun run = CliRun.of("review", session.toString(), "--xapi", file.toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--xapi").contains("virtual");
    assertThat(file).doesNotExist();
  }

  private CliRun review(String... more) throws Exception {
    Path list = Files.writeString(folder.resolve("list.csv"), LIST);
    List<String> words = new ArrayList<>(List.of("review", list.toString()));
    words.addAll(List.of(more));
    return CliRun.of(words.toArray(new String[0]));
  }
}
