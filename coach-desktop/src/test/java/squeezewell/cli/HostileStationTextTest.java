package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.report.Caution;
import squeezewell.report.StationHtml;
import squeezewell.review.Reviewer;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationReader;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationSetup;
import squeezewell.storage.FileJournal;

/**
 * Whatever a station's file, an instructor's remark or the trainee's name says, the sheet of a
 * station, its description and every export of its session take it as text and nothing else.
 */
class HostileStationTextTest {
  private static final long SECOND = 1_000_000_000L;

  @TempDir Path folder;

  static Stream<Object> texts() {
    return HostileTextTest.TEXTS.stream().map(HostileTextTest::named);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("texts")
  void theSheetTheDescriptionAndTheExportsTakeItAsText(String text) throws Exception {
    Session session = practised(text, folder.resolve("hostile.jsonl"));
    Session plain = practised("plain", folder.resolve("plain.jsonl"));
    String sheet = sheet(session);
    assertThat(HostileTextTest.elements(sheet))
        .isEqualTo(HostileTextTest.elements(sheet(plain)))
        .hasSizeGreaterThan(20);
    assertThat(sheet)
        .contains(Caution.TEXT)
        .doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]");
    for (String export : List.of("html", "csv", "metrics-csv", "png", "xapi")) {
      Path out = exported(export, "hostile");
      switch (export) {
        case "html" ->
            HostileTextTest.html(
                Files.readString(out), Files.readString(exported(export, "plain")));
        case "png" -> HostileTextTest.png(out);
        case "xapi" -> HostileTextTest.xapi(Files.readString(out));
        default ->
            HostileTextTest.csv(Files.readString(out), Files.readString(exported(export, "plain")));
      }
    }
    HostileTextTest.text(CliRun.of("review", folder.resolve("hostile.jsonl").toString()).out());
    Path file = folder.resolve("station.json");
    Files.writeString(file, definition(text).toString());
    for (String word : List.of("show", "check")) {
      CliRun said = CliRun.of("station", word, file.toString());
      assertThat(said.code()).as(said.err()).isZero();
      assertThat(said.out() + said.err())
          .isNotEmpty()
          .doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]");
    }
  }

  private Path exported(String export, String name) {
    Path out = folder.resolve(name + "." + export);
    CliRun run =
        CliRun.of(
            "review",
            folder.resolve(name + ".jsonl").toString(),
            "--" + export,
            out.toString(),
            "--force");
    assertThat(run.code()).as(run.err()).isZero();
    return out;
  }

  private static String sheet(Session session) throws Exception {
    return StationHtml.of(
        session.header(),
        StationResult.of(session.events()),
        Reviewer.review(session),
        ZoneOffset.UTC);
  }

  private static Session practised(String text, Path file) throws Exception {
    Station station = StationReader.readText("station", definition(text).toString());
    Protocol protocol = GuidelineLibrary.editions().get(0);
    PracticePlan plan =
        StationPractice.plan(
            station,
            protocol,
            protocol.find(station.group(), station.situation()).orElseThrow(),
            0);
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-01-31T12:00:00Z"),
            SessionHeader.Origin.LIVE,
            cut(text, SessionHeader.LONGEST_TRAINEE),
            protocol,
            plan);
    try (FileJournal journal = FileJournal.create(file, header)) {
      StationPractice practice =
          new StationPractice(
              station,
              StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), 1),
              plan,
              journal,
              List.of());
      practice.begin(2 * SECOND);
      practice.remark(cut(plain(text), 500), 4 * SECOND);
      practice.done("response", 5 * SECOND);
      practice.end(9 * SECOND);
    }
    return SessionReader.read(file);
  }

  /** A built-in station with the text wherever a file can say something in words. */
  private static JsonObject definition(String text) throws Exception {
    try (InputStream in =
        Station.class.getResourceAsStream("/squeezewell/station/file/adult-gag.json")) {
      JsonObject top =
          JsonParser.parseReader(new InputStreamReader(in, StandardCharsets.UTF_8))
              .getAsJsonObject();
      top.addProperty("title", cut(plain(text), 80));
      top.addProperty("setting", cut(plain(text), 300));
      top.getAsJsonObject("patient").addProperty("words", cut(plain(text), 300));
      for (String list : new ArrayList<>(List.of("tasks", "findings"))) {
        JsonObject first = top.getAsJsonArray(list).get(0).getAsJsonObject();
        first.addProperty("words", cut(plain(text), 300));
      }
      return top;
    }
  }

  /** A station's words hold no control signs: its reader refuses them. */
  private static String plain(String text) {
    return text.replaceAll("\\p{Cc}", " ").trim();
  }

  private static String cut(String text, int longest) {
    return text.length() > longest ? text.substring(0, longest) : text;
  }
}
