package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CliTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--help",
        "demo --help",
        "drill --help",
        "render --help",
        "review --help",
        "protocol --help",
        "protocol list --help",
        "protocol show --help",
        "protocol check --help",
        "book --help",
        "oxygen --help"
      })
  void everyCommandHasHelpThatFitsATerminal(String words) {
    CliRun run = CliRun.of(words.split(" "));
    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("Usage: squeezewell");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(run.err()).isEmpty();
  }

  @Test
  void theHelpNamesEachCommandAndTheCaution() {
    assertThat(CliRun.of("--help").out())
        .contains("drill", "demo", "render", "review", "compare", "protocol", "book", "oxygen")
        .contains("manikins")
        .contains("Not a medical device")
        .contains("local protocols and medical direction")
        .contains("not use it in an emergency");
  }

  @Test
  void theVersionIsTold() {
    CliRun run = CliRun.of("--version");
    assertThat(run.code()).isZero();
    assertThat(run.out()).startsWith("Squeezewell ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nonsense",
        "--nonsense",
        "demo --seed x",
        "demo --seed 99999999999999999999",
        "demo --fault lazy",
        "demo --minutes 0",
        "demo --minutes -1",
        "demo --minutes 1441",
        "demo --minutes NaN",
        "demo --minutes 1e1",
        "demo --patient elephant",
        "demo --situation sleeping",
        "demo --protocol none-such",
        "demo --protocol aha-2025 --situation newborn-ventilation",
        "demo --minutes=",
        "demo spare",
        "demo --seed 1 --seed 2",
        "protocol",
        "protocol show",
        "protocol show none-such",
        "protocol check none-such.json",
        "review",
        "compare",
        "review none-such.jsonl",
        "review none-such.csv",
        "review none-such.txt",
        "render",
        "book spare",
        "oxygen"
      })
  void badUsageEndsWithTwoAndOneClearMessage(String words) {
    CliRun run = CliRun.of(words.split(" "));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("squeezewell: ");
    assertThat(run.err().lines().filter(line -> !line.startsWith("For help: "))).hasSize(1);
    assertThat(run.err()).doesNotContain("Exception").doesNotContain("\tat ");
  }

  @Test
  void aMessageNamesTheOptionTheValueAndWhatIsAllowed() {
    assertThat(CliRun.of("demo", "--minutes", "0").err().trim())
        .isEqualTo("squeezewell: --minutes is 0; allowed: a number above 0, at most 1440");
    assertThat(CliRun.of("demo", "--seed", "x").err())
        .contains("--seed is x; allowed: a whole number from -9223372036854775808");
    assertThat(CliRun.of("demo", "--fault", "lazy").err())
        .contains("--fault is lazy; allowed: one of none, fast, slows");
  }

  @Test
  void wordsFromOutsideCanNotMoveTheCursor() {
    CliRun run = CliRun.of("demo", "--fault", "a\u001B[2Jb\nc");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).doesNotContain("\u001B");
    assertThat(CliRun.of("\u001B[2J\n").err()).doesNotContain("\u001B");
  }

  @Test
  void withoutWordsTheWindowOpensOnTheHome() {
    CliRun run = CliRun.withDisplay("--home", folder.resolve("home").toString());
    assertThat(run.code()).isZero();
    assertThat(run.opened()).hasSize(1);
    assertThat(run.opened().get(0).root()).isEqualTo(folder.resolve("home"));
    assertThat(folder.resolve("home").resolve("sessions")).isDirectory();
  }

  @Test
  void withoutADisplayItSaysSoInOneLineAndShowsTheDemonstration() {
    CliRun run = CliRun.of("--home", folder.resolve("home").toString());
    assertThat(run.code()).isZero();
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).contains("no display");
    assertThat(run.out()).contains("virtual trainee").contains("Not a medical device");
    assertThat(run.opened()).isEmpty();
    assertThat(folder.resolve("home")).doesNotExist();
  }

  @Test
  void aHomeThatCanNotBeMadeIsBadInput() throws Exception {
    Path file = Files.createFile(folder.resolve("file"));
    CliRun run = CliRun.of("demo", "--home", file.resolve("home").toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains(file.toString()).contains("--home");
  }

  @Test
  void outputThatCanNotBeWrittenIsAFailure() {
    Writer full =
        new Writer() {
          @Override
          public void write(char[] chars, int from, int count) throws IOException {
            throw new IOException("the disk is full");
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    StringWriter err = new StringWriter();
    int code =
        Cli.run(
            new String[] {"protocol", "list"},
            new CliContext(
                new PrintWriter(full),
                new PrintWriter(err),
                InputStream.nullInputStream(),
                false,
                true,
                StandardCharsets.UTF_8,
                Clock.systemUTC(),
                home -> true));
    assertThat(code).isEqualTo(1);
    assertThat(err.toString()).contains("output could not be written");
  }

  @Test
  void aTerminalThatShowsOnlyAsciiGetsOnlyAscii() {
    for (String words : new String[] {"demo", "demo --json", "protocol show aha-2025"}) {
      CliRun run = CliRun.with(true, StandardCharsets.US_ASCII, words.split(" "));
      assertThat(run.code()).isZero();
      assertThat(run.out().chars()).as(words).allMatch(c -> c < 0x7F);
    }
  }

  @Test
  void textFitsATerminal() {
    for (String words : new String[] {"demo", "demo --minutes 40", "protocol list"}) {
      assertThat(CliRun.of(words.split(" ")).out().lines())
          .as(words)
          .allMatch(line -> line.length() <= 80);
    }
  }

  @Test
  void readingMakesNoFiles() throws Exception {
    String home = folder.resolve("home").toString();
    for (String words : new String[] {"book", "protocol list", "protocol show erc-2021"}) {
      String[] all = (words + " --home").split(" ");
      String[] more = Stream.concat(Stream.of(all), Stream.of(home)).toArray(String[]::new);
      assertThat(CliRun.of(more).code()).isZero();
    }
    assertThat(folder.resolve("home")).doesNotExist();
  }
}
