package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.words.Wording;

/** The debrief of a session or of an event list. */
@Command(name = "review")
final class ReviewCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(ReviewCommand.class);
  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin HomeOption home = new HomeOption();

  @Parameters(paramLabel = "FILE", descriptionKey = "FILE")
  String file = "";

  @Option(names = "--prompts", paramLabel = "WORD")
  Prompting prompts;

  @Option(names = "--json")
  boolean json;

  @Mixin ReviewOutputs outputs = new ReviewOutputs();

  @Override
  public Integer call() throws BadInputException, IOException {
    Path source = OutputFile.path("FILE", file);
    List<OutputFile> files = outputs.files(source);
    boolean self = file.toLowerCase(Locale.ROOT).endsWith(".jsonl");
    if (self) {
      PracticeSource.refuseOptions(practice);
      if (prompts != null) {
        throw BadInputException.fault(
            "--prompts",
            "",
            "a session says itself how far it was prompted; allowed with an event list");
      }
    }
    Prompting asked = prompts == null ? Prompting.THROUGHOUT : prompts;
    Session session = PracticeSource.read(file, source, practice, asked, home, around);
    if (!self && prompts == null) {
      session = withPromptsDoubted(session);
    }
    outputs.check(session);
    Review review = Reviewer.review(session);
    if (!json) {
      around.print(new TextRibbon(review, around.showsBlocks()).text());
      around.print("");
    }
    around.print(review, json);
    for (OutputFile file : files) {
      outputs.write(file, session, review, around.wallClock().getZone());
      around.say(WORDS.say("written", file.path()));
    }
    return DONE;
  }

  /** A breath that was counted by hand stands in no relation to prompts that nobody gave. */
  private static Session withPromptsDoubted(Session list) {
    if (list.breaths().isEmpty() || !Prompting.mayFallSilent(list.header().plan().guidance())) {
      return list;
    }
    List<String> notes = new ArrayList<>(list.notes());
    notes.add(WORDS.say("list.no-prompts"));
    return new Session(list.header(), list.events(), notes);
  }
}
