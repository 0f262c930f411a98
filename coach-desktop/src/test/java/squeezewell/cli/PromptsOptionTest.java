package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.session.EventType;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

class PromptsOptionTest {
  private static final long SECOND = 1_000_000_000L;

  @TempDir Path folder;

  private static JsonObject demo(String... more) {
    String[] words = new String[more.length + 2];
    words[0] = "demo";
    words[1] = "--json";
    System.arraycopy(more, 0, words, 2, more.length);
    return CliRun.of(words).json();
  }

  @Test
  void oneWhoKeepsTheRhythmGetsFewerAndFewerPrompts() {
    for (String seed : List.of("1", "2", "3")) {
      JsonObject review = demo("--prompts", "fading", "--minutes", "12", "--seed", seed);
      JsonObject unprompted = review.getAsJsonObject("unprompted");
      assertThat(unprompted.get("highestLevel").getAsInt()).isGreaterThanOrEqualTo(3);
      assertThat(unprompted.get("meanSeconds").getAsDouble()).isBetween(5.7, 6.3);
      assertThat(unprompted.get("test").isJsonNull()).isTrue();
      JsonObject prompts = review.getAsJsonObject("prompts");
      assertThat(
              prompts.get("met").getAsInt()
                  + prompts.get("extra").getAsInt()
                  + prompts.get("unprompted").getAsInt())
          .isEqualTo(review.getAsJsonObject("breaths").get("count").getAsInt());
      assertThat(prompts.get("missed").getAsInt()).isZero();
      assertThat(prompts.get("extra").getAsInt()).isZero();
      assertThat(review.getAsJsonArray("silenceList").size())
          .isEqualTo(unprompted.get("silences").getAsInt());
    }
  }

  @Test
  void oneWhoLosesItKeepsThePromptsAndIsTold() {
    for (String seed : List.of("1", "2", "3")) {
      JsonObject review =
          demo("--prompts", "fading", "--minutes", "12", "--seed", seed, "--fault", "loses-rhythm");
      JsonObject unprompted = review.getAsJsonObject("unprompted");
      assertThat(unprompted.get("highestLevel").getAsInt()).isEqualTo(1);
      assertThat(unprompted.get("inRangeCount").getAsInt()).isZero();
      JsonArray findings = review.getAsJsonArray("findings");
      assertThat(findings.get(0).getAsJsonObject().get("code").getAsString())
          .isEqualTo("unprompted-fast");
    }
  }

  @Test
  void aTestIsPassedOrFailed() {
    for (String seed : List.of("1", "2", "3")) {
      JsonObject kept = demo("--prompts", "none", "--minutes", "2", "--seed", seed);
      JsonObject test = kept.getAsJsonObject("unprompted").getAsJsonObject("test");
      assertThat(test.get("outcome").getAsString()).isEqualTo("pass");
      assertThat(kept.getAsJsonObject("verdict").get("outcome").getAsString()).isEqualTo("held");
      assertThat(kept.getAsJsonObject("prompts").get("given").getAsInt()).isZero();
      assertThat(kept.getAsJsonObject("asynchrony").get("meanSeconds").isJsonNull()).isTrue();
      JsonObject lost =
          demo("--prompts", "none", "--minutes", "2", "--seed", seed, "--fault", "loses-rhythm")
              .getAsJsonObject("unprompted")
              .getAsJsonObject("test");
      assertThat(lost.get("outcome").getAsString()).isEqualTo("fail");
      assertThat(lost.get("reasons").getAsJsonArray()).isNotEmpty();
    }
  }

  @Test
  void thePracticeIsKeptWithItsDecisions() throws Exception {
    CliRun run =
        CliRun.of("demo", "--prompts", "fading", "--minutes", "8", "--home", folder.toString());
    Path file = Path.of(run.err().replaceFirst("(?s).*kept: (.*?)\\R.*", "$1"));
    Session session = SessionReader.read(file);
    assertThat(session.header().plan().prompting()).isEqualTo(Prompting.FADING);
    assertThat(session.events())
        .extracting(e -> e.what() + " " + e.detail())
        .contains("PROMPTS_OFF level 1");
    assertThat(session.schedule().silences()).isNotEmpty();
    assertThat(run.out()).contains("without prompts").contains("range, unprompted");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    CliRun csv = CliRun.of("review", file.toString(), "--csv", folder.resolve("b.csv").toString());
    assertThat(csv.code()).isZero();
    assertThat(folder.resolve("b.csv")).content().contains(",no\r\n").contains(",yes\r\n");
    CliRun html =
        CliRun.of("review", file.toString(), "--html", folder.resolve("b.html").toString());
    assertThat(html.code()).isZero();
    assertThat(folder.resolve("b.html"))
        .content()
        .contains("no prompts")
        .contains("without prompts");
    CliRun figures =
        CliRun.of("review", file.toString(), "--metrics-csv", folder.resolve("m.csv").toString());
    assertThat(figures.code()).isZero();
    assertThat(folder.resolve("m.csv"))
        .content()
        .containsPattern("whole,unprompted\\.inRangeCount,\\d+,1,\\d+");
    assertThat(folder.resolve("m.csv")).content().contains("whole,unprompted.test,,");
  }

  @Test
  void whereTheChestIsCompressedItIsRefusedWithTheReason() {
    CliRun run = CliRun.of("demo", "--situation", "arrest-advanced-airway", "--prompts", "fading");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--prompts").contains("throughout where the chest");
    CliRun word = CliRun.of("demo", "--prompts", "some");
    assertThat(word.code()).isEqualTo(2);
    assertThat(word.err()).contains("one of throughout, fading, none");
  }

  /** With level 3 the first silent breath comes after 3 prompted ones, with level 0 after 12. */
  @Test
  void fadingBeginsWithTheLevelThatWasGiven() {
    JsonObject anew = demo("--prompts", "fading", "--minutes", "1");
    assertThat(anew.get("unprompted").isJsonNull()).isTrue();
    JsonObject on = demo("--prompts", "fading", "--minutes", "2", "--start-level", "3");
    assertThat(on.getAsJsonObject("unprompted").get("silences").getAsInt()).isPositive();
    assertThat(on.getAsJsonObject("unprompted").get("highestLevel").getAsInt()).isEqualTo(3);
    for (String wrong : List.of("5", "-1", "x")) {
      CliRun run = CliRun.of("demo", "--prompts", "fading", "--start-level=" + wrong);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).contains("--start-level").contains("4");
    }
    CliRun none = CliRun.of("demo", "--prompts", "none", "--start-level", "1");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("--start-level").contains("only with --prompts fading");
  }

  @Test
  void theTerminalSaysThatThereAreNoPromptsAndCountsNothing() {
    CliRun.Screen paper = new CliRun.Screen();
    DrillScreen screen = new DrillScreen(paper.around(), true, () -> "");
    PracticePlan plan =
        new PracticePlan(
                GuidelineLibrary.editions().get(0).guidance().get(0), 3 * SECOND, 120 * SECOND, 0)
            .with(Prompting.NONE);
    Coach coach = new Coach(plan, Journal.none(), List.of(screen));
    coach.advance(0);
    assertThat(screen.status(coach.state(), SECOND)).startsWith("GET READY     2");
    coach.command(Command.BREATH, 4 * SECOND);
    String line = screen.status(coach.state(), 5 * SECOND);
    assertThat(line).isEqualTo("NO PROMPTS NOW: keep the rhythm  breaths 1  under 3 minutes left");
    assertThat(screen.status(coach.state(), 11 * SECOND)).isEqualTo(line);
    assertThat(screen.status(coach.state(), 16 * SECOND))
        .isEqualTo("SQUEEZE NOW: no breath for 0:12");
    assertThat(paper.text()).contains("No prompts from now on: keep the rhythm.");
  }

  @Test
  void theTerminalShowsTheLevelOfFadingWhereItsLineHasRoom() {
    DrillScreen screen = new DrillScreen(new CliRun.Screen().around(), true, () -> "");
    PracticePlan plan =
        new PracticePlan(
                GuidelineLibrary.editions().get(0).guidance().get(0), 3 * SECOND, 600 * SECOND, 0)
            .with(Prompting.FADING)
            .withStartLevel(2);
    Coach coach = new Coach(plan, Journal.none(), List.of(screen));
    coach.advance(0);
    coach.command(Command.BREATH, 4 * SECOND);
    assertThat(screen.status(coach.state(), 5 * SECOND)).endsWith("  level 2");
    coach.command(Command.SOUND_LOST, 6 * SECOND);
    assertThat(screen.status(coach.state(), 7 * SECOND)).contains("  no sound").hasSizeLessThan(80);
  }

  @Test
  void oldFilesAndOldSettingsArePromptedThroughout() {
    assertThat(EventType.PROMPTS_OFF.isOfStation()).isFalse();
    assertThat(squeezewell.files.Settings.defaults().lastChoice().prompting())
        .isEqualTo(Prompting.THROUGHOUT);
  }
}
