package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.cue.Prompting;
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

  @Override
  public Integer call() throws BadInputException, IOException {
    Path sourceA = OutputFile.path("FILE_A", fileA);
    Path sourceB = OutputFile.path("FILE_B", fileB);
    OutputFile page = html.isEmpty() ? null : OutputFile.of("--html", html, force);
    if (page != null) {
      page.mustDifferFrom("FILE_A", sourceA);
      page.mustDifferFrom("FILE_B", sourceB);
    }
    if (!PracticeSource.isEventList(fileA) && !PracticeSource.isEventList(fileB)) {
      PracticeSource.refuseOptions(practice);
    }
    Session sessionA = session(fileA, sourceA);
    Session sessionB = session(fileB, sourceB);
    Review a = Reviewer.review(sessionA);
    Review b = Reviewer.review(sessionB);
    Comparison comparison = Comparison.of(a, b);
    String labelA = label(sourceA, sessionA);
    String labelB = label(sourceB, sessionB);
    if (json) {
      around.printJson(w -> ComparisonJson.write(comparison, labelA, a, labelB, b, w));
    } else {
      around.print(ComparisonText.sentence(comparison));
      print("A", labelA, a);
      print("B", labelB, b);
      around.print(ComparisonText.body(comparison) + CAUTION);
    }
    if (page != null) {
      page.write(ComparisonHtml.of(comparison, labelA, a, labelB, b));
      around.say(WORDS.say("written", page.path()));
    }
    return DONE;
  }

  private Session session(String file, Path source) throws BadInputException {
    return PracticeSource.read(file, source, practice, Prompting.THROUGHOUT, home, around);
  }

  private void print(String letter, String label, Review review) {
    around.print(fitted(letter + ": " + label));
    for (String note : review.notes()) {
      around.print(CliContext.wrap(WORDS.say("note", note), WIDTH, "   "));
    }
    around.print(new TextRibbon(review, around.showsBlocks()).text() + "\n");
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
