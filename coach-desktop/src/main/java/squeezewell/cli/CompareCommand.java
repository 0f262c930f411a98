package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.input.BadInputException;
import squeezewell.report.ComparisonHtml;
import squeezewell.report.PlainText;
import squeezewell.report.PracticeLabel;
import squeezewell.review.Reviewer;
import squeezewell.review.compare.Comparison;
import squeezewell.review.compare.ComparisonJson;
import squeezewell.review.compare.ComparisonText;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.words.Wording;

/** Two practices side by side. */
@Command(name = "compare")
final class CompareCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(CompareCommand.class);
  private static final int WIDTH = 80;

  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin HomeOption home = new HomeOption();

  @Parameters(index = "0", paramLabel = "FILE_A", descriptionKey = "FILE_A")
  String fileA = "";

  @Parameters(index = "1", paramLabel = "FILE_B", descriptionKey = "FILE_B")
  String fileB = "";

  @Option(names = "--json")
  boolean json;

  @Option(names = "--html", paramLabel = "FILE")
  String html = "";

  @Option(names = "--force")
  boolean force;

  CompareCommand(CliContext around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException, IOException {
    Path sourceA = ProtocolCommand.path("FILE_A", fileA);
    Path sourceB = ProtocolCommand.path("FILE_B", fileB);
    OutputFile page = html.isEmpty() ? null : OutputFile.of("--html", html, force);
    if (page != null) {
      page.mustDifferFrom("FILE_A", sourceA);
      page.mustDifferFrom("FILE_B", sourceB);
    }
    if (!PracticeSource.isEventList(fileA) && !PracticeSource.isEventList(fileB)) {
      PracticeSource.refuseOptions(practice);
    }
    Session sessionA = PracticeSource.read(fileA, sourceA, practice, home, around);
    Session sessionB = PracticeSource.read(fileB, sourceB, practice, home, around);
    Review a = Reviewer.review(sessionA);
    Review b = Reviewer.review(sessionB);
    Comparison comparison = Comparison.of(a, b);
    String labelA = label(sourceA, sessionA);
    String labelB = label(sourceB, sessionB);
    if (json) {
      around.printJson(w -> ComparisonJson.write(comparison, labelA, a, labelB, b, w));
    } else {
      print(comparison, labelA, a, labelB, b);
    }
    if (page != null) {
      page.write(ComparisonHtml.of(comparison, labelA, a, labelB, b));
      around.say(WORDS.say("written", page.path()));
    }
    return DONE;
  }

  private void print(Comparison comparison, String labelA, Review a, String labelB, Review b) {
    around.print(ComparisonText.sentence(comparison));
    around.print(practice("A", labelA, a));
    around.print(practice("B", labelB, b));
    around.print(ComparisonText.body(comparison) + CAUTION);
  }

  private String practice(String letter, String label, Review review) {
    StringBuilder text = new StringBuilder();
    text.append(fitted(letter + ": " + label)).append('\n');
    review
        .notes()
        .forEach(
            note -> text.append(TextWrap.wrap(WORDS.say("note", note), WIDTH, "   ")).append('\n'));
    return text.append(new TextRibbon(review, around.showsBlocks()).text()).append('\n').toString();
  }

  private static String fitted(String line) {
    int[] signs = line.codePoints().toArray();
    return signs.length <= WIDTH ? line : new String(signs, 0, WIDTH - 1) + "…";
  }

  /** The name of the file, and who practised when. */
  private String label(Path file, Session session) {
    ZoneId zone = around.wallClock().getZone();
    return PlainText.of(file.getFileName() + ", " + PracticeLabel.of(session.header(), zone));
  }
}
