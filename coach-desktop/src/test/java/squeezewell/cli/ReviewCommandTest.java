package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.report.Caution;
import squeezewell.session.EventType;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.storage.FileJournal;

class ReviewCommandTest {
  private static final String HEAD = "at_s,what,detail\n";
  private static final String HOSTILE =
      "\"><img src=x onerror=alert(1)><script>alert(2)</script>'&";

  @TempDir Path folder;

  /** 20 breaths every 6 s in 2 min; the file holds 120 s and 3 s for the last notes, 16 bits. */
  @Test
  void aReplayIsWrittenAsSound() throws Exception {
    Path wav = folder.resolve("replay.wav");
    review(everySixSeconds(20), "--minutes", "2", "--replay-wav", wav.toString());
    assertThat(Files.size(wav)).isEqualTo(44 + 123L * 48_000 * 2);
    CliRun again =
        CliRun.of("review", folder.resolve("list.csv").toString(), "--replay-wav", wav.toString());
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("--replay-wav").contains("--force");
  }

  @Test
  void aListOnEveryPromptIsWithoutFault() throws Exception {
    JsonObject json = review(everySixSeconds(20), "--minutes", "2", "--json").json();
    // Worked by hand: 20 breaths at 0, 6, ... 114 s against prompts at the same instants.
    assertThat(json.getAsJsonObject("breaths").get("count").getAsInt()).isEqualTo(20);
    assertThat(number(json, "rate", "overallPerMinute")).isEqualTo(10);
    assertThat(number(json, "interval", "count")).isEqualTo(19);
    assertThat(number(json, "interval", "meanSeconds")).isEqualTo(6);
    assertThat(number(json, "interval", "medianSeconds")).isEqualTo(6);
    assertThat(number(json, "interval", "sdSeconds")).isZero();
    assertThat(number(json, "interval", "inRangeFraction")).isEqualTo(1);
    assertThat(number(json, "prompts", "given")).isEqualTo(20);
    assertThat(number(json, "prompts", "met")).isEqualTo(20);
    assertThat(number(json, "prompts", "missed")).isZero();
    assertThat(number(json, "prompts", "extra")).isZero();
    assertThat(number(json, "asynchrony", "meanSeconds")).isZero();
    assertThat(number(json, "asynchrony", "sdSeconds")).isZero();
    assertThat(number(json, "gap", "longestSeconds")).isEqualTo(6);
    assertThat(json.getAsJsonObject("inspiration").get("meanSeconds").isJsonNull()).isTrue();
    assertThat(json.getAsJsonArray("findings")).isNotEmpty();
    for (JsonElement finding : json.getAsJsonArray("findings")) {
      assertThat(finding.getAsJsonObject().keySet()).contains("code", "severity", "text");
      assertThat(finding.getAsJsonObject().get("severity").getAsString()).isEqualTo("good");
    }
  }

  @Test
  void theLengthOfAListComesFromItsEnd() throws Exception {
    // The last breath at 114 s stands for 6 s, so the list lasts 120 s.
    String list = everySixSeconds(20);
    assertThat(review(list, "--json").out())
        .isEqualTo(review(list, "--minutes", "2", "--json").out());
    // Its own finish comes first; an event after the last breath's 6 s extends it.
    assertThat(practised(HEAD + "0,breath,\n6,breath,\n9,finish,\n")).isEqualTo(9);
    assertThat(practised(HEAD + "0,breath,\n6,breath,\n30,finding,chest rise\n")).isEqualTo(30);
    // 10 s of it were paused: 40 s + 6 s - 10 s.
    assertThat(practised(HEAD + "0,breath,\n6,breath,\n8,pause,\n18,resume,\n40,breath,\n"))
        .isEqualTo(36);
  }

  /** 22 breaths at 6 s: the first one at or after 120 s is the 21st, with 20 intervals. */
  @Test
  void aListCanBeATestWithoutPrompts() throws Exception {
    JsonObject json = review(everySixSeconds(22), "--prompts", "none", "--json").json();
    JsonObject test = json.getAsJsonObject("unprompted").getAsJsonObject("test");
    assertThat(test.get("outcome").getAsString()).isEqualTo("pass");
    assertThat(number(json, "prompts", "missed")).isZero();
    assertThat(number(json, "interval", "count")).isEqualTo(21);
    assertThat(review(everySixSeconds(22), "--json").json().get("unprompted").isJsonNull())
        .isTrue();
    // Where the list itself says when prompts went off, that counts: breaths at 12 and 18 s.
    JsonObject fading =
        review(
                HEAD
                    + "0,breath,\n6,breath,\n6,prompts-off,level 1\n12,breath,\n18,breath,\n"
                    + "18,prompts-on,level 1\n24,breath,\n",
                "--prompts",
                "fading",
                "--json")
            .json();
    assertThat(number(fading, "unprompted", "breathCount")).isEqualTo(2);
    assertThat(number(fading, "unprompted", "highestLevel")).isEqualTo(1);
  }

  @Test
  void howFarAListWasPromptedMustFit() throws Exception {
    CliRun word = review(everySixSeconds(3), "--prompts", "some");
    assertThat(word.code()).isEqualTo(2);
    assertThat(word.err()).contains("--prompts").contains("one of throughout, fading, none");
    CliRun arrest =
        review(everySixSeconds(3), "--situation", "arrest-no-advanced-airway", "--prompts", "none");
    assertThat(arrest.code()).isEqualTo(2);
    assertThat(arrest.err()).contains("throughout where the chest is compressed");
    CliRun session = CliRun.of("review", folder.resolve("s.jsonl").toString(), "--prompts", "none");
    assertThat(session.code()).isEqualTo(2);
    assertThat(session.err()).contains("--prompts").contains("event list");
  }

  @Test
  void theSpreadIsThatOfTheIntervals() throws Exception {
    // Breaths at 0 5 11 18 23 29 36 s: intervals 5 6 7 5 6 7, mean 6, squared distances 1 0 1 1 0
    // 1, so the standard deviation (n - 1) is the root of 4 / 5, 0.894427.
    JsonObject json =
        review(
                HEAD
                    + "0,breath,\n5,breath,\n11,breath,\n18,breath,\n23,breath,\n29,breath,\n36,breath,\n",
                "--json")
            .json();
    assertThat(number(json, "interval", "meanSeconds")).isEqualTo(6);
    assertThat(number(json, "interval", "sdSeconds")).isCloseTo(0.894427, within(1e-6));
    assertThat(number(json, "interval", "inRangeFraction")).isEqualTo(1);
  }

  @Test
  void checksSuctionAndSqueezesAreTimed() throws Exception {
    StringBuilder list = new StringBuilder(HEAD);
    for (int at = 0; at <= 114; at += 6) {
      list.append(at).append(",breath,\n").append(at + 1).append(".2,breath-end,450 mL\n");
    }
    list.append("122,pulse-check,\n129.5,pulse-check-end,\n130,breath,\n131.2,breath-end,\n");
    list.append("133,suction,\n150,suction-end,\n150.5,breath,\n151.7,breath-end,\n");
    JsonObject json = review(list.toString(), "--json").json();
    JsonObject check = json.getAsJsonArray("pulseChecks").get(0).getAsJsonObject();
    assertThat(check.get("dueSeconds").getAsDouble()).isEqualTo(120);
    assertThat(check.get("startedSeconds").getAsDouble()).isEqualTo(122);
    assertThat(check.get("lengthSeconds").getAsDouble()).isEqualTo(7.5);
    JsonObject suction = json.getAsJsonArray("suctions").get(0).getAsJsonObject();
    assertThat(suction.get("startedSeconds").getAsDouble()).isEqualTo(133);
    assertThat(suction.get("lengthSeconds").getAsDouble()).isEqualTo(17);
    assertThat(suction.get("withinLimit").getAsBoolean()).isFalse();
    assertThat(number(json, "inspiration", "count")).isEqualTo(22);
    assertThat(number(json, "inspiration", "meanSeconds")).isCloseTo(1.2, within(1e-9));
  }

  @Test
  void whatCanNotBeComputedIsNull() throws Exception {
    JsonObject json = review(HEAD + "3,breath,\n", "--minutes", "1", "--json").json();
    assertThat(json.getAsJsonObject("rate").get("overallPerMinute").isJsonNull()).isTrue();
    assertThat(json.getAsJsonObject("interval").get("sdSeconds").isJsonNull()).isTrue();
    assertThat(json.getAsJsonObject("drift").get("percentPerMinute").isJsonNull()).isTrue();
    assertThat(number(json, "breaths", "count")).isEqualTo(1);
  }

  @Test
  void theTextHasThePictureTheFiguresAndTheCaution() throws Exception {
    CliRun run = review(everySixSeconds(20));
    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains(" 0:00 ▾")
        .contains("19 of 19 intervals")
        .contains("AHA 2025")
        .contains("Not a medical device")
        .contains("Do not use it in an emergency");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5,breath,\\n4,breath, | row 3, column at_s is 4 | order of time",
        "-1,breath, | row 2, column at_s is -1 | seconds from 0 to 86400",
        "NaN,breath, | row 2, column at_s is NaN | seconds from 0",
        "1e3,breath, | row 2, column at_s is 1e3 | seconds from 0",
        "1,sneeze, | row 2, column what is sneeze | one of breath, breath-end",
        "1,breath,a,b,c | row 2 is 5 columns | at_s,what,detail",
      })
  void aBadRowIsNamedWithItsValueAndWhatIsAllowed(String rows, String place, String allowed)
      throws Exception {
    CliRun run = review(HEAD + rows.replace("\\n", "\n") + "\n", "--minutes", "1");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("list.csv").contains(place).contains(allowed);
  }

  @Test
  void anEmptyListIsFiveMinutesWithoutABreathUnlessItsLengthIsGiven() throws Exception {
    CliRun run = review(HEAD, "--json");
    assertThat(run.code()).as(run.err()).isZero();
    JsonObject json = run.json();
    assertThat(number(json, "asked", "practisedSeconds")).isEqualTo(300);
    assertThat(number(json, "breaths", "count")).isZero();
    assertThat(number(json, "prompts", "missed")).isEqualTo(50);
    assertThat(json.getAsJsonObject("rate").get("overallPerMinute").isJsonNull()).isTrue();
    assertThat(json.getAsJsonArray("notes").toString()).contains("--minutes");
    assertThat(review(HEAD, "--minutes", "1", "--json").json().getAsJsonArray("notes")).isEmpty();
    assertThat(review("").code()).isEqualTo(2);
  }

  @Test
  void aSessionNeedsNoOptionsAndTakesNone() throws Exception {
    Path session = session("Trainee A", GuidelineLibrary.editions().get(0));
    assertThat(CliRun.of("review", session.toString()).code()).isZero();
    CliRun refused = CliRun.of("review", session.toString(), "--minutes", "3");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("--minutes");
  }

  @Test
  void thePageIsWholeOfflineAndEscapesEveryText() throws Exception {
    Protocol built = GuidelineLibrary.editions().get(0);
    Protocol hostile = new Protocol("own-1", HOSTILE, HOSTILE, 2026, true, built.guidance());
    Path session = session(HOSTILE, hostile);
    Path page = folder.resolve("page.html");
    CliRun run = CliRun.of("review", session.toString(), "--html", page.toString());
    assertThat(run.code()).isZero();
    String html = Files.readString(page);
    assertThat(html)
        .startsWith("<!DOCTYPE html>")
        .endsWith("</html>\n")
        .doesNotContain("<script")
        .doesNotContain("<img")
        .doesNotContain("http:")
        .doesNotContain("https:")
        .contains("&lt;script&gt;alert(2)&lt;/script&gt;&#39;&amp;")
        .contains("<svg")
        .contains("#FAF7EF")
        .contains(Caution.TEXT);
  }

  @Test
  void everyTagOfThePageIsClosed() throws Exception {
    Path page = folder.resolve("page.html");
    review(everySixSeconds(20), "--html", page.toString());
    String html = Files.readString(page);
    for (String tag : List.of("html", "head", "body", "style", "svg", "figure", "table", "div")) {
      long opened = html.split("<" + tag + "[ >]", -1).length - 1L;
      long closed = html.split("</" + tag + ">", -1).length - 1L;
      assertThat(closed).as(tag).isEqualTo(opened).isPositive();
    }
  }

  @Test
  void theTableHoldsNothingThatASpreadsheetWouldRun() throws Exception {
    Path table = folder.resolve("breaths.csv");
    review(
        HEAD + "0.5,breath,=1+1\n1.5,breath-end,@SUM(1)\n5.9,breath,\n12,breath,450 mL\n",
        "--csv",
        table.toString());
    List<String> rows = Files.readAllLines(table);
    assertThat(rows)
        .containsExactly(
            "at_s,end_s,inspiration_s,interval_s,in_range,prompt_at_s,lateness_s,volume_mL,prompted",
            "0.5,1.5,1,,,0,0.5,,yes",
            "5.9,,,5.4,yes,6,-0.1,,yes",
            "12,,,6.1,yes,12,0,450,yes");
  }

  @Test
  void compressionsHaveATableAndStandInThePicture() throws Exception {
    // Worked by hand: 0.5 s is 120 a minute, the upper end of 100 to 120; 0.4 s is 150; 4 s is a
    // pause. The pulse is back at 6 s, and the compression at 6.2 s is one that nobody asked for.
    Path table = folder.resolve("compressions.csv");
    Path page = folder.resolve("page.html");
    String list =
        HEAD
            + "0,compression,\n0.5,compression,\n0.9,compression,\n4.9,compression,\n"
            + "6,finding,pulse-back\n6.2,compression,\n6.3,breath,\n12.1,breath,\n20,finish,\n";
    review(
        list,
        "--situation",
        "arrest-no-advanced-airway",
        "--compressions",
        table.toString(),
        "--html",
        page.toString());
    assertThat(Files.readAllLines(table))
        .containsExactly(
            "at_s,interval_s,pause,in_range",
            "0,,,",
            "0.5,0.5,no,yes",
            "0.9,0.4,no,no",
            "4.9,4,yes,",
            "6.2,,,");
    String html = Files.readString(page);
    assertThat(html)
        .contains("What was found", "Pulse is back. Stop compressing; go on with breaths.")
        .contains(
            "0:00 to 0:06: no pulse, no advanced airway", "0:06 to 0:20: pulse, not breathing")
        .contains("1, at 0:06", "font-weight=\"bold\">1</text>", "compressions a minute");
    assertThat(html.split("stroke-width=\"1.2\"", -1)).hasSize(2);
    // Five ticks in one path.
    String ticks = html.substring(html.indexOf("stroke-width=\"1.2\""));
    assertThat(ticks.substring(0, ticks.indexOf("/>")).split("M", -1)).hasSize(6);
    // One band, from the change on.
    assertThat(html.split("fill=\"#dcecef\"/>", -1)).hasSize(2);
  }

  @Test
  void thePageSaysThatItWasEndedEarly() throws Exception {
    Path page = folder.resolve("early.html");
    review(
        HEAD + "0,breath,\n6,breath,\n12,finish,\n", "--minutes", "5", "--html", page.toString());
    assertThat(Files.readString(page))
        .contains("0:12 of 5:00, adult", "The practice was ended early: 0:12 of 5:00.");
  }

  @Test
  void tooSoonAndTooLateDifferInThePictureAndInTheTable() throws Exception {
    // Asked is one breath every 5 to 7 s: the second comes after 3 s, the third after 9 s.
    String list = HEAD + "0,breath,\n3,breath,\n12,breath,\n";
    Path table = folder.resolve("table.csv");
    String out = review(list, "--csv", table.toString()).out();
    assertThat(out.lines().filter(line -> line.startsWith("      \u2588")))
        .containsExactly("      \u2588  \u25B2        \u25BC");
    assertThat(Files.readAllLines(table).subList(2, 4))
        .satisfiesExactly(
            fast -> assertThat(fast).startsWith("3,,,3,no,"),
            slow -> assertThat(slow).startsWith("12,,,9,no,"));
  }

  @Test
  void aFinishEndsAListWhateverTheLastBreathWouldStillStandFor() throws Exception {
    assertThat(practised(HEAD + "0,breath,\n6,breath,\n7,finish,\n")).isEqualTo(7);
    assertThat(practised(HEAD + "0,breath,\n6,breath,\n")).isEqualTo(12);
  }

  @Test
  void thePageTellsThatALineWasTornOff() throws Exception {
    Path session = session("", GuidelineLibrary.editions().get(0));
    Files.writeString(session, "{\"n\":7,", StandardOpenOption.APPEND);
    Path page = folder.resolve("torn.html");
    assertThat(CliRun.of("review", session.toString(), "--html", page.toString()).code()).isZero();
    assertThat(Files.readString(page)).contains("Note: line 8 was torn off after 7 bytes");
  }

  @Test
  void filesThatAreThereAreKeptUnlessForced() throws Exception {
    Path page = Files.writeString(folder.resolve("page.html"), "precious");
    CliRun refused = review(everySixSeconds(3), "--html", page.toString());
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("--html").contains("--force");
    assertThat(page).hasContent("precious");
    assertThat(review(everySixSeconds(3), "--html", page.toString(), "--force").code()).isZero();
    assertThat(Files.readString(page)).startsWith("<!DOCTYPE");
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void aDeviceIsNeverReplacedByAFile() throws Exception {
    CliRun run = review(everySixSeconds(3), "--csv", "/dev/null");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--csv is /dev/null", "an ordinary file");
  }

  @Test
  void theListItselfIsNeverWrittenOver() throws Exception {
    Path list = folder.resolve("list.csv");
    CliRun run = review(everySixSeconds(3), "--csv", list.toString(), "--force");
    assertThat(run.code()).isEqualTo(2);
    assertThat(list).hasContent(everySixSeconds(3));
    String page = folder.resolve("a.html").toString();
    assertThat(review(everySixSeconds(3), "--csv", page, "--html", page).code()).isEqualTo(2);
    assertThat(Path.of(page)).doesNotExist();
  }

  @Test
  void aListOfWhichNobodySaysHowItWasPromptedSaysWhatWasTakenForGranted() throws Exception {
    String note = "If nobody was prompted, add --prompts none.";
    assertThat(review(everySixSeconds(3), "--json").json().get("notes").toString()).contains(note);
    for (String word : List.of("throughout", "none", "fading")) {
      CliRun said = review(everySixSeconds(3), "--json", "--prompts", word);
      assertThat(said.json().get("notes").toString()).as(word).doesNotContain(note);
    }
    CliRun cycles =
        review(everySixSeconds(3), "--json", "--situation", "arrest-no-advanced-airway");
    assertThat(cycles.json().get("notes").toString()).doesNotContain(note);
  }

  private double practised(String list) throws Exception {
    Path page = folder.resolve("x.csv");
    CliRun run = review(list, "--json", "--csv", page.toString(), "--force");
    assertThat(run.code()).as(run.err()).isZero();
    return run.json().getAsJsonObject("asked").get("practisedSeconds").getAsDouble();
  }

  private CliRun review(String list, String... more) throws Exception {
    Path file = Files.writeString(folder.resolve("list.csv"), list);
    List<String> words = new ArrayList<>(List.of("review", file.toString()));
    words.addAll(List.of(more));
    return CliRun.of(words.toArray(new String[0]));
  }

  private static String everySixSeconds(int breaths) {
    return HEAD
        + IntStream.range(0, breaths)
            .mapToObj(k -> 6 * k + ",breath,\n")
            .collect(Collectors.joining());
  }

  private static double number(JsonObject json, String group, String name) {
    return json.getAsJsonObject(group).get(name).getAsDouble();
  }

  private Path session(String trainee, Protocol protocol) throws Exception {
    Guidance guidance = protocol.guidance().get(0);
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-01-31T12:00:00Z"),
            SessionHeader.Origin.LIVE,
            trainee,
            protocol,
            new PracticePlan(guidance, 0, 30_000_000_000L, 0));
    Path file = folder.resolve("session.jsonl");
    try (FileJournal journal = FileJournal.create(file, header)) {
      for (int n = 0; n < 5; n++) {
        journal.append(SessionEvent.of(n + 1, n * 6_000_000_000L, EventType.BREATH, HOSTILE));
      }
      journal.append(SessionEvent.of(6, 30_000_000_000L, EventType.FINISH, ""));
    }
    return file;
  }
}
