package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.report.Caution;
import squeezewell.review.Review;
import squeezewell.review.Reviewer;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/** The debrief of a session or of an event list. */
@Command(
    name = "review",
    description = {
      "Show the debrief of a session (.jsonl) or of an event list (.csv).",
      "For an event list the options say what was asked;",
      "without --minutes it lasts to the end of the list."
    },
    footer = {"", Caution.LINE_1, Caution.LINE_2, Caution.LINE_3})
final class ReviewCommand extends CliCommand {
  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin HomeOption home = new HomeOption();

  @Parameters(paramLabel = "FILE", description = "A session (.jsonl) or an event list (.csv).")
  String file = "";

  @Option(names = "--json", description = "Print JSON for a program to read.")
  boolean json;

  @Mixin ReviewOutputs outputs = new ReviewOutputs();

  ReviewCommand(Surroundings around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException, IOException {
    Path source = ProtocolCommand.path("FILE", file);
    List<OutputFile> files = outputs.files(source);
    Session session = session(source);
    outputs.check(session);
    Review review = Reviewer.review(session);
    if (!json) {
      around.print(new TextRibbon(review, around.showsBlocks()).text());
      around.print("");
    }
    Debrief.print(around, review, json);
    for (OutputFile file : files) {
      outputs.write(file, session, review, around.wallClock().getZone());
      around.say("written: " + file.path());
    }
    return DONE;
  }

  private Session session(Path source) throws BadInputException {
    String name = file.toLowerCase(Locale.ROOT);
    if (name.endsWith(".csv")) {
      return EventListSource.read(
          source, practice, practice.choice(ProtocolStore.read(home.home()), around::say));
    }
    if (!name.endsWith(".jsonl")) {
      throw BadInputException.notAllowed(
          "FILE", "", file, "a session, ending in .jsonl, or an event list, ending in .csv");
    }
    if (practice.anyGiven()) {
      throw BadInputException.fault(
          "--protocol, --patient, --age, --weight, --situation, --rescuers, --minutes",
          "",
          "a session says itself what was asked; allowed: these options with an event list");
    }
    return SessionReader.read(source);
  }
}
