package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.cue.CueKind;
import squeezewell.files.Settings;
import squeezewell.files.SettingsFile;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolReader;
import squeezewell.review.judge.FindingCode;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;
import squeezewell.station.file.StationFile;
import squeezewell.station.file.StationReader;

/** The examples of docs/formats.md are good, and it leaves no field out. */
class FormatsDocTest {
  private static final Path DOC = Path.of("..", "docs", "formats.md");

  @TempDir Path folder;

  @Test
  void theProtocolIsGood() throws Exception {
    Protocol protocol = ProtocolReader.readText("example", example("protocol"));
    assertThat(protocol.guidance()).hasSize(2);
    everyKeyIsExplained(example("protocol"), Set.of("own"));
  }

  @Test
  void theSessionIsGood() throws Exception {
    Session session = SessionReader.read(write("session.jsonl", example("session") + "\n"));
    assertThat(session.breaths()).isNotEmpty();
    assertThat(session.finished()).isTrue();
    assertThat(session.notes()).isEmpty();
    for (EventType what : EventType.values()) {
      assertThat(doc()).contains("`" + what.word() + "`");
    }
  }

  @Test
  void theEventListGivesTheReview() throws Exception {
    Path list = write("list.csv", example("event list") + "\n");
    JsonObject real = CliRun.of("review", list.toString(), "--json").json();
    JsonObject shown = JsonParser.parseString(example("review")).getAsJsonObject();
    for (String cut : new String[] {"findings", "breathList", "promptList"}) {
      while (real.getAsJsonArray(cut).size() > 1) {
        real.getAsJsonArray(cut).remove(1);
      }
    }
    assertThat(shown).isEqualTo(real);
    everyKeyIsExplained(example("review"), Set.of());
  }

  @Test
  void everyCodeOfAFindingIsListedAndNoOther() throws Exception {
    String from = doc().substring(doc().indexOf("Codes of findings."));
    Matcher listed =
        Pattern.compile("`([a-z-]+)`").matcher(from.substring(0, from.indexOf("The review of")));
    Set<String> codes = new TreeSet<>();
    while (listed.find()) {
      assertThat(codes.add(listed.group(1))).as(listed.group(1)).isTrue();
    }
    assertThat(codes)
        .isEqualTo(
            Arrays.stream(FindingCode.values())
                .map(FindingCode::id)
                .collect(Collectors.toCollection(TreeSet::new)));
  }

  @Test
  void theCuesAreThoseThatAreRendered() throws Exception {
    Path cues = folder.resolve("cues.json");
    CliRun run =
        CliRun.of("render", "--no-count-in", "--minutes", "0.05", "--cues", cues.toString());
    assertThat(run.code()).isZero();
    assertThat(JsonParser.parseString(example("cues")))
        .isEqualTo(JsonParser.parseString(Files.readString(cues)));
    for (CueKind kind : CueKind.values()) {
      assertThat(doc()).contains("`" + kind.id() + "`");
    }
  }

  @Test
  void theSettingsAreGoodAndWrittenAsTheyWere() throws Exception {
    Path file = write("settings.json", example("settings"));
    Settings settings = new SettingsFile(file).read();
    assertThat(settings.trainee()).isEqualTo("Trainee 7");
    new SettingsFile(file).write(settings);
    assertThat(JsonParser.parseString(Files.readString(file)))
        .isEqualTo(JsonParser.parseString(example("settings")));
    everyKeyIsExplained(example("settings"), Set.of());
  }

  @Test
  void theOxygenIsThatOfTheCommand() throws Exception {
    CliRun run =
        CliRun.of("oxygen", "--cylinder", "E", "--pressure", "1200psi", "--flow", "4", "--json");
    assertThat(JsonParser.parseString(example("oxygen"))).isEqualTo(run.json());
    everyKeyIsExplained(example("oxygen"), Set.of());
  }

  /** Of a practice of each kind and of a file that can't be read: the table has these fields. */
  @Test
  void everyFieldOfThePastPracticesIsExplainedAndNoOther() throws Exception {
    String home = folder.toString();
    assertThat(CliRun.of("demo", "--home", home).code()).isZero();
    Path sessions = folder.resolve("sessions");
    String header = example("session").split("\n", -1)[0];
    assertThat(header).contains("\"origin\":\"live\"");
    write("sessions/live.jsonl", header + "\n");
    write(
        "sessions/fading.jsonl",
        header.replaceFirst("\"countInNanos\"", "\"prompts\":\"fading\",\"countInNanos\"") + "\n");
    write("sessions/torn.jsonl", "{");
    assertThat(sessions).isDirectory();
    Set<String> printed = new TreeSet<>();
    JsonObject book = CliRun.of("book", "--json", "--home", home).json();
    assertThat(book.keySet()).containsExactly("sessions");
    assertThat(book.getAsJsonArray("sessions")).hasSize(4);
    book.getAsJsonArray("sessions").forEach(s -> printed.addAll(s.getAsJsonObject().keySet()));
    Set<String> explained = new TreeSet<>();
    Matcher row = Pattern.compile("(?m)^\\| `([a-zA-Z]+)` \\|").matcher(section("Past practices"));
    while (row.find()) {
      explained.add(row.group(1));
    }
    assertThat(printed).isEqualTo(explained);
  }

  private static String section(String title) throws IOException {
    String doc = doc();
    int from = doc.indexOf("\n## " + title);
    assertThat(from).as(title).isNotNegative();
    return doc.substring(from, doc.indexOf("\n## ", from + 1));
  }

  @Test
  void theFiguresOfTheEventListHaveTheRowsShownAndNoNameIsLeftOut() throws Exception {
    Path list = write("list.csv", example("event list") + "\n");
    Path table = folder.resolve("figures.csv");
    CliRun run = CliRun.of("review", list.toString(), "--metrics-csv", table.toString());
    assertThat(run.code()).as(run.err()).isZero();
    List<String> rows = Files.readAllLines(table);
    assertThat(rows).containsAll(List.of(example("figures").split("\n", -1)));
    for (String row : rows.subList(2, rows.size())) {
      String name = row.split(",", -1)[1];
      String field = name.substring(name.lastIndexOf('.') + 1);
      assertThat(doc()).as(name).containsPattern("`([a-zA-Z.]*\\.)?" + field + "`");
    }
  }

  @Test
  void everyPropertyOfAStatementIsExplained() throws Exception {
    Path list = write("list.csv", example("event list") + "\n");
    Path file = folder.resolve("xapi.json");
    assertThat(CliRun.of("review", list.toString(), "--xapi", file.toString()).code()).isZero();
    for (JsonElement statement : JsonParser.parseString(Files.readString(file)).getAsJsonArray()) {
      for (String key : statement.getAsJsonObject().keySet()) {
        assertThat(doc()).contains("\n| `" + key + "` |");
      }
      for (String part : new String[] {"result", "context"}) {
        for (String key : statement.getAsJsonObject().getAsJsonObject(part).keySet()) {
          assertThat(doc()).contains("`" + key + "`");
        }
      }
    }
  }

  @Test
  void theStationIsGoodAndHasAllFields() throws Exception {
    StationFile file = StationReader.checkText("example", example("station"));
    assertThat(file.faults()).isEmpty();
    assertThat(file.doubts()).isEmpty();
    everyKeyIsExplained(example("station"), Set.of());
    everyKeyIsExplained(
        CliRun.of("station", "run", "adult-gag", "--json").json().deepCopy().entrySet().stream()
            .filter(e -> !e.getKey().equals("ventilation"))
            .collect(JsonObject::new, (o, e) -> o.add(e.getKey(), e.getValue()), (a, b) -> {})
            .toString(),
        Set.of());
  }

  private static void everyKeyIsExplained(String json, Set<String> names) throws IOException {
    Set<String> keys = new TreeSet<>();
    collect(JsonParser.parseString(json), keys);
    keys.removeAll(names);
    String doc = doc();
    String path = "[a-zA-Z\\[\\].]*";
    assertThat(keys)
        .allSatisfy(
            key ->
                assertThat(doc)
                    .containsPattern("`(" + path + "\\.)?" + key + "(\\[\\])?(\\." + path + ")?`"));
  }

  private static void collect(JsonElement value, Set<String> keys) {
    if (value.isJsonObject()) {
      keys.addAll(value.getAsJsonObject().keySet());
      value.getAsJsonObject().entrySet().forEach(e -> collect(e.getValue(), keys));
    } else if (value.isJsonArray()) {
      value.getAsJsonArray().forEach(e -> collect(e, keys));
    }
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static String example(String name) throws IOException {
    Matcher matcher =
        Pattern.compile("<!-- example: " + name + " -->\n```[a-z]*\n(.*?)\n```", Pattern.DOTALL)
            .matcher(doc());
    assertThat(matcher.find()).as("an example of " + name).isTrue();
    return matcher.group(1);
  }

  private static String doc() throws IOException {
    return Files.readString(
        Stream.of(DOC, Path.of("docs", "formats.md"))
            .filter(Files::exists)
            .findFirst()
            .orElseThrow());
  }
}
