package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import de.siegmar.fastcsv.reader.CsvReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import squeezewell.report.Caution;
import squeezewell.report.ReportKind;
import squeezewell.report.Reports;
import squeezewell.report.XapiRules;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.storage.FileJournal;

/**
 * Whatever a person or a file says (name of the trainee, title and publisher of a local protocol,
 * its sources, remarks), every export takes it as text and nothing else.
 */
class HostileTextTest {
  static final List<String> TEXTS =
      List.of(
          "<script>alert(1)</script>",
          "\"><img src=x onerror=alert(1)>",
          "' onload='alert(1)",
          "]]></style></svg><svg onload=alert(1)>",
          "&lt;b&gt; &amp; &#x3C;script&#x3E;",
          "<!--",
          "=cmd|' /C calc'!A0",
          "+1+1",
          "-1+1",
          "@SUM(1)",
          "\t=1+1",
          "x\r\n=1+1",
          "a,b;c\"d\"\"e",
          "name \u202Egnp.exe\u202C",
          "\u2066\u2067isolated\u2069 \u200F\u200E",
          "\u0627\u0644\u0639\u0631\u0628\u064A\u0629 \u05E2\u05D1\u05E8\u05D9\u05EA \u4E2D\u6587",
          "bell \u0007 null \u0000 escape \u001B[2J delete \u007F next \u0085",
          "line\u2028paragraph\u2029end",
          "no character \uFFFE \uFFFF \uFDD0",
          "\uD83D\uDE00\uD83C\uDFFD emoji",
          "%s %n %d {0} ${jndi:ldap://x} $(id) `id`",
          "x".repeat(1_000_000),
          "wide words ".repeat(100_000),
          "\uFDFD".repeat(10_000));

  static final List<String> EXPORTS =
      List.of("text", "json", "html", "csv", "metrics-csv", "png", "xapi");

  @TempDir Path folder;

  static Stream<Arguments> exportsAndTexts() {
    return EXPORTS.stream().flatMap(e -> TEXTS.stream().map(t -> Arguments.of(e, named(t))));
  }

  static Object named(String text) {
    return Named.of(
        text.length() > 60 ? text.length() + " x " + text.substring(0, 5) : escaped(text), text);
  }

  static String escaped(String text) {
    return JsonText.ascii(text).replaceAll("\\p{Cntrl}", "^");
  }

  @ParameterizedTest(name = "{0}: {1}")
  @MethodSource("exportsAndTexts")
  void everyExportTakesItAsText(String export, String text) throws Exception {
    switch (export) {
      case "text" -> text(run(text).out());
      case "json" -> json(run(text, "--json").out());
      case "html" -> html(written(export, text), written(export, "plain"));
      case "csv", "metrics-csv" -> csv(written(export, text), written(export, "plain"));
      case "png" -> png(file(export, text));
      case "xapi" -> xapi(written(export, text));
      default -> throw new IllegalArgumentException(export);
    }
  }

  @ParameterizedTest(name = "compare: {0}")
  @MethodSource("texts")
  void aComparisonTakesItAsText(String text) throws Exception {
    Path plain = Files.move(session("plain"), folder.resolve("plain.jsonl"));
    Path hostile = Files.move(session(text), folder.resolve("hostile.jsonl"));
    Path page = folder.resolve("page.html");
    CliRun compared =
        CliRun.of("compare", hostile.toString(), plain.toString(), "--html", page.toString());
    assertThat(compared.code()).as(compared.err()).isZero();
    text(compared.out());
    assertThat(compared.err()).doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}]");
    Path other = folder.resolve("other.html");
    Path copy = Files.move(session("other"), folder.resolve("other.jsonl"));
    CliRun.of("compare", copy.toString(), plain.toString(), "--html", other.toString());
    assertThat(elements(Files.readString(page)))
        .isEqualTo(elements(Files.readString(other)))
        .hasSizeGreaterThan(50);
    assertThat(Files.readString(page))
        .doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]");
    String json = CliRun.of("compare", plain.toString(), hostile.toString(), "--json").out();
    assertThat(json).matches("(?s)[\\x20-\\x7E\\n]*");
    assertThat(JsonParser.parseString(json).isJsonObject()).isTrue();
  }

  static Stream<Object> texts() {
    return TEXTS.stream().map(HostileTextTest::named);
  }

  @Test
  void aFileWhoseTextsAreLongerThanAllowedIsRefused() throws Exception {
    Path session = session("MARK");
    String line = Files.readString(session);
    for (String field : List.of("trainee", "title", "organisation")) {
      Path longer =
          Files.writeString(
              folder.resolve(field + ".jsonl"),
              line.replaceFirst(
                  "\"" + field + "\":\"MARK\"",
                  "\"" + field + "\":\"" + "x".repeat(1_000_000) + "\""));
      assertThat(Files.size(longer)).isGreaterThan(1_000_000);
      assertThat(CliRun.of("review", longer.toString()).code()).as(field).isEqualTo(2);
    }
    Path longer =
        Files.writeString(
            folder.resolve("words.jsonl"),
            line.replaceFirst("\"words\":\"MARK\"", "\"words\":\"" + "x".repeat(1_000_000) + "\""));
    assertThat(Files.size(longer)).isGreaterThan(1_000_000);
    assertThat(CliRun.of("review", longer.toString()).out())
        .contains("over 100000 bytes long")
        .doesNotContain("xxxxxxxx");
  }

  /**
   * No UTF-8 file can hold half of a surrogate pair, but JSON can escape it, and a field take it.
   */
  @Test
  void halfASurrogatePairIsRefusedInAFileAndHarmlessInMemory() throws Exception {
    Path file = session("MARK");
    Files.writeString(file, Files.readString(file).replace("MARK", "half \\ud800 pair"));
    assertThat(CliRun.of("review", file.toString()).code()).isEqualTo(2);
    Session session = Reports.saying("half \ud800 pair");
    Session plain = Reports.saying("plain");
    for (ReportKind kind : ReportKind.of(session)) {
      Path out = Files.write(folder.resolve("out" + kind.ending()), content(kind, session));
      if (kind == ReportKind.PICTURE) {
        png(out);
        continue;
      }
      String text = Files.readString(out);
      String other = new String(content(kind, plain), StandardCharsets.UTF_8);
      switch (kind) {
        case PAGE -> html(text, other);
        case STATEMENTS -> xapi(text);
        default -> csv(text, other);
      }
    }
  }

  private static byte[] content(ReportKind kind, Session session) {
    Review review = Reviewer.review(session);
    return kind.content(session, review, ZoneOffset.UTC);
  }

  /** Nothing that moves a terminal's cursor, turns its text or hides in it. */
  static void text(String out) {
    assertThat(out)
        .doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]")
        .contains("Not a medical device");
  }

  private static void json(String out) {
    assertThat(out).matches("(?s)[\\x20-\\x7E\\n]*");
    assertThat(JsonParser.parseString(out).getAsJsonObject().has("headline")).isTrue();
  }

  /** The page is well-formed XML too, so a strict reader says what is in it. */
  static void html(String page, String plain) throws Exception {
    assertThat(elements(page)).isEqualTo(elements(plain)).hasSizeGreaterThan(60);
    assertThat(page)
        .contains(Caution.TEXT)
        .doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]");
  }

  /** Every element with its attributes, in order. */
  static List<String> elements(String page) throws Exception {
    Element root =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new InputSource(new StringReader(page)))
            .getDocumentElement();
    List<String> found = new ArrayList<>();
    collect(root, found);
    return found;
  }

  private static void collect(Element element, List<String> found) {
    StringBuilder line = new StringBuilder(element.getTagName());
    for (int i = 0; i < element.getAttributes().getLength(); i++) {
      line.append(' ').append(element.getAttributes().item(i));
    }
    found.add(line.toString());
    for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
      if (child instanceof Element inner) {
        collect(inner, found);
      }
    }
  }

  /** No typed text is in a table, and no cell begins like a formula unless it is a number. */
  static void csv(String table, String plain) throws IOException {
    assertThat(table).isEqualTo(plain);
    try (CsvReader rows = CsvReader.builder().build(table)) {
      List<String> cells =
          rows.stream().flatMap(r -> r.getFields().stream()).collect(Collectors.toList());
      assertThat(cells)
          .hasSizeGreaterThan(5)
          .allSatisfy(
              cell ->
                  assertThat(cell)
                      .matches("|-?\\d+(\\.\\d+)?|[a-zA-Z][a-zA-Z0-9._/ -]*|%(/min)?|/min"));
    }
  }

  static void png(Path file) throws IOException {
    BufferedImage image = ImageIO.read(file.toFile());
    assertThat(image.getWidth()).isEqualTo(1240);
    assertThat(image.getHeight()).isBetween(1754, 6000);
  }

  static void xapi(String statements) {
    assertThat(statements)
        .doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}\\p{Cs}]")
        .doesNotContainPattern("\\\\u(d[89a-f]|00|20[2-6])");
    for (JsonElement statement : JsonParser.parseString(statements).getAsJsonArray()) {
      assertThat(XapiRules.faults(statement.getAsJsonObject())).isEmpty();
    }
  }

  private String written(String export, String text) throws Exception {
    return Files.readString(file(export, text));
  }

  private Path file(String export, String text) throws Exception {
    Path file = folder.resolve("out." + export);
    run(text, "--" + export, file.toString(), "--force");
    return file;
  }

  private CliRun run(String text, String... more) throws Exception {
    List<String> words = new ArrayList<>(List.of("review", session(text).toString()));
    words.addAll(List.of(more));
    CliRun run = CliRun.of(words.toArray(new String[0]));
    assertThat(run.code()).as(run.err()).isZero();
    return run;
  }

  private Path session(String text) throws Exception {
    Path file = folder.resolve("session.jsonl");
    Files.deleteIfExists(file);
    Session session = Reports.saying(text);
    try (FileJournal journal = FileJournal.create(file, session.header())) {
      session.events().forEach(e -> append(journal, e));
    }
    return file;
  }

  static void append(FileJournal journal, SessionEvent event) {
    try {
      journal.append(event);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
