package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.InputSource;
import squeezewell.report.Reports;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.storage.FileJournal;

class CompareCommandTest {
  @TempDir Path folder;

  @Test
  void twoListsAreShownSideBySideWithinEightyColumns() throws Exception {
    CliRun run = CliRun.of("compare", list("a.csv", 3), list("b.csv", 6), "--minutes", "2");
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out())
        .startsWith("Outside the target in A: ")
        .contains("A: a.csv, from a list of events")
        .contains("intervals in range")
        .contains("19 of 19")
        .contains("+100 points");
    assertThat(run.out().split("\n", -1)).allMatch(line -> line.length() <= 80);
  }

  @Test
  void theJsonNamesEveryRowOfTheDocument() throws Exception {
    CliRun run =
        CliRun.of("compare", list("a.csv", 3), list("b.csv", 6), "--minutes", "2", "--json");
    assertThat(run.json().getAsJsonArray("rows")).hasSizeGreaterThanOrEqualTo(8);
    Path doc = Path.of("..", "docs", "formats.md");
    String text = Files.readString(Files.exists(doc) ? doc : Path.of("docs", "formats.md"));
    run.json()
        .getAsJsonArray("rows")
        .forEach(
            row ->
                assertThat(text)
                    .contains("`" + row.getAsJsonObject().get("code").getAsString() + "`"));
  }

  @Test
  void aPageIsNotReplacedUnasked() throws Exception {
    Path page = Files.writeString(folder.resolve("out.html"), "precious");
    String a = list("a.csv", 3);
    assertThat(CliRun.of("compare", a, a, "--html", page.toString()).code()).isEqualTo(2);
    assertThat(page).hasContent("precious");
    assertThat(CliRun.of("compare", a, a, "--html", a, "--force").code()).isEqualTo(2);
  }

  @Test
  void oneFileOrAFileThatIsNoneIsRefused() throws Exception {
    assertThat(CliRun.of("compare", list("a.csv", 3)).code()).isEqualTo(2);
    assertThat(CliRun.of("compare", list("a.csv", 3), "none.txt").code()).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "]]></style></svg><svg onload=alert(1)>",
        "bell \u0007 escape \u001B[2J \u202Egnp",
        "a\u2028b %s ${x}"
      })
  void hostileTextsAreTextEverywhere(String hostile) throws Exception {
    Path session = folder.resolve("one.jsonl");
    Session said = Reports.saying(hostile);
    try (FileJournal journal = FileJournal.create(session, said.header())) {
      for (SessionEvent event : said.events()) {
        journal.append(event);
      }
    }
    Path page = folder.resolve("out.html");
    CliRun run =
        CliRun.of("compare", session.toString(), session.toString(), "--html", page.toString());
    assertThat(run.code()).as(run.err()).isZero();
    assertThat(run.out()).doesNotContainPattern("[[\\p{Cc}&&[^\\n]]\\p{Cf}\\p{Zl}\\p{Zp}]");
    String html = Files.readString(page);
    assertThat(html)
        .doesNotContain("<script", "<img", "<svg onload")
        .doesNotContain("http://", "https://");
    DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(html)));
  }

  private String list(String name, int every) throws Exception {
    StringBuilder text = new StringBuilder("at_s,what,detail\n");
    for (int at = 0; at < 120; at += every) {
      text.append(at).append(",breath,\n");
    }
    return Files.writeString(folder.resolve(name), text).toString();
  }
}
