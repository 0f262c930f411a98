package squeezewell.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import squeezewell.cue.PracticePlan;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.input.InputFile;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Protocol;
import squeezewell.report.StationSheet;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.run.StationJson;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationSetup;
import squeezewell.station.run.StationText;
import squeezewell.words.Wording;

/** {@code station run}: a station by a script, faster than time, then its result. */
@Command(name = "run")
final class StationRunCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(StationRunCommand.class);
  private static final long LARGEST_SCRIPT = 1_000_000;

  @Mixin HomeOption home = new HomeOption();

  @Parameters(paramLabel = "ID", descriptionKey = "ID")
  String id = "";

  @Option(names = "--script", paramLabel = "FILE")
  String script = "";

  @Option(names = "--mode", paramLabel = "NAME")
  StationMode mode = StationMode.INSTRUCTOR;

  @Option(names = "--seed", paramLabel = "N", converter = OptionTypes.Seed.class)
  long seed = 1;

  @Option(names = "--branch", paramLabel = "BRANCH=WAY")
  List<String> branches = new ArrayList<>();

  @Option(names = "--protocol", paramLabel = "ID")
  String protocol = "";

  @Option(names = "--json")
  boolean json;

  @Override
  Object[] footerValues() {
    return new Object[] {CAUTION, StationText.PRACTICE_AID};
  }

  @Override
  public Integer call() throws BadInputException, IOException, CommandFailedException {
    Station station = StationCommand.station(id);
    StationSetup setup = StationSetup.of(station, mode, ways(), seed);
    Protocol edition = edition(ProtocolStore.read(home.home()), station);
    Guidance guidance = edition.find(station.group(), station.situation()).get();
    PracticePlan plan = StationPractice.plan(station, edition, guidance, 0);
    StationScript done = StationScript.read(script.isEmpty() ? "--script" : script, scriptLines());
    SessionHeader header =
        new SessionHeader(
            around.wallClock().instant().truncatedTo(ChronoUnit.MILLIS),
            SessionHeader.Origin.VIRTUAL,
            WORDS.say("station.script", station.id()),
            edition,
            plan);
    Session session =
        VirtualPractice.run(
            header,
            home,
            around,
            journal -> {
              StationPractice practice =
                  new StationPractice(station, setup, plan, journal, List.of());
              done.run(practice, SessionEvent.LATEST_NANOS / 2).forEach(around::say);
              return practice.practice().trouble();
            });
    show(StationResult.of(session.events()), Reviewer.review(session));
    return DONE;
  }

  private void show(StationResult result, Review review) {
    if (json) {
      around.printJson(
          writer -> {
            writer.beginObject();
            StationJson.fields(result, writer);
            writer.name("ventilation");
            ReviewJson.write(review, writer);
            writer.endObject();
          });
      return;
    }
    around.print(StationText.of(result));
    around.print(WORDS.say("station.ventilation"));
    String breaths = StationSheet.breaths(result, review);
    if (!breaths.isEmpty()) {
      around.print(breaths);
    }
    around.print("");
    around.print(review, false);
  }

  private List<BranchOption> ways() throws BadInputException {
    List<BranchOption> ways = new ArrayList<>();
    for (String way : branches) {
      int at = way.indexOf('=');
      if (at < 1) {
        throw BadInputException.notAllowed("--branch", "", way, "a branch, = and one of its ways");
      }
      ways.add(new BranchOption(way.substring(0, at), way.substring(at + 1)));
    }
    return ways;
  }

  private Protocol edition(ProtocolStore store, Station station) throws BadInputException {
    List<Protocol> editions =
        protocol.isEmpty() ? store.protocols() : List.of(store.require("--protocol", protocol));
    for (Protocol edition : editions) {
      if (edition.find(station.group(), station.situation()).isPresent()) {
        return edition;
      }
    }
    throw BadInputException.notAllowed(
        "--protocol",
        "",
        protocol.isEmpty() ? "none" : protocol,
        "an edition that covers " + station.situation().id() + " for " + station.group().id());
  }

  private List<String> scriptLines() throws BadInputException, IOException {
    if (script.isEmpty()) {
      return List.of();
    }
    Path path = OutputFile.path("--script", script);
    InputFile.require(path, LARGEST_SCRIPT);
    try {
      return Files.readAllLines(path, StandardCharsets.UTF_8);
    } catch (CharacterCodingException e) {
      throw BadInputException.fault(script, "", "the text is not UTF-8");
    }
  }
}
