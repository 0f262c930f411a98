package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.audio.CueTrack;
import squeezewell.audio.SoundLevels;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.report.BreathCsv;
import squeezewell.report.Caution;
import squeezewell.report.ReviewHtml;
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
  private static final int REPLAY_RATE = 48_000;

  @Mixin PracticeOptions practice = new PracticeOptions();
  @Mixin HomeOption home = new HomeOption();

  @Parameters(paramLabel = "FILE", description = "A session (.jsonl) or an event list (.csv).")
  String file = "";

  @Option(names = "--json", description = "Print JSON for a program to read.")
  boolean json;

  @Option(
      names = "--html",
      paramLabel = "FILE",
      description = "Also write the debrief as one page that opens offline.")
  String html = "";

  @Option(
      names = "--csv",
      paramLabel = "FILE",
      description = "Also write the breaths, one a row, for a spreadsheet.")
  String csv = "";

  @Option(
      names = "--replay-wav",
      paramLabel = "FILE",
      description = "Also write the prompts and what was done as a sound file (WAV).")
  String replayWav = "";

  @Option(names = "--force", description = "Replace files that are there already.")
  boolean force;

  ReviewCommand(Surroundings around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException, IOException {
    Path source = ProtocolCommand.path("FILE", file);
    Optional<OutputFile> page = output("--html", html, source);
    Optional<OutputFile> table = output("--csv", csv, source);
    if (page.isPresent() && table.isPresent()) {
      page.get().mustDifferFrom("--csv", table.get().path());
    }
    Optional<OutputFile> wav = output("--replay-wav", replayWav, source);
    if (wav.isPresent() && page.isPresent()) {
      wav.get().mustDifferFrom("--html", page.get().path());
    }
    if (wav.isPresent() && table.isPresent()) {
      wav.get().mustDifferFrom("--csv", table.get().path());
    }
    Session session = session(source);
    Optional<CueTrack> track = wav.isPresent() ? Optional.of(track(session)) : Optional.empty();
    Review review = Reviewer.review(session);
    if (!json) {
      around.print(new TextRibbon(review, around.showsBlocks()).text());
      around.print("");
    }
    Debrief.print(around, review, json);
    if (page.isPresent()) {
      page.get().write(ReviewHtml.of(session.header(), review, around.wallClock().getZone()));
      around.say("written: " + page.get().path());
    }
    if (table.isPresent()) {
      table.get().write(BreathCsv.of(review));
      around.say("written: " + table.get().path());
    }
    if (wav.isPresent()) {
      track.get().write(wav.get().path(), force, done -> {});
      around.say("written: " + wav.get().path());
    }
    return DONE;
  }

  private static CueTrack track(Session session) throws BadInputException {
    try {
      return CueTrack.replay(session, REPLAY_RATE, SoundLevels.defaults());
    } catch (IllegalArgumentException e) {
      throw BadInputException.fault("--replay-wav", "", e.getMessage());
    }
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

  private Optional<OutputFile> output(String option, String text, Path source)
      throws BadInputException {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    OutputFile output = OutputFile.of(option, text, force);
    output.mustDifferFrom("FILE", source);
    return Optional.of(output);
  }
}
