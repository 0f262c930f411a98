package squeezewell.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import squeezewell.input.BadInputException;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationFile;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationReader;
import squeezewell.station.run.StationText;
import squeezewell.words.Wording;

/** Stations: the whole practical exercise. */
@Command(
    name = "station",
    synopsisSubcommandLabel = "(list | show | check | run)",
    subcommands = {
      StationCommand.ListCommand.class,
      StationCommand.ShowCommand.class,
      StationCommand.CheckCommand.class,
      StationRunCommand.class
    })
final class StationCommand extends CliCommand.Group {
  private static final Wording WORDS = Wording.beside(StationCommand.class);

  /** The built-in station of that identifier, or else the one in a file of that name. */
  static Station station(String word) throws BadInputException {
    if (word.endsWith(".json")) {
      return StationReader.readFile(OutputFile.path("ID", word));
    }
    List<Station> all = StationLibrary.stations();
    for (Station station : all) {
      if (station.id().equals(word)) {
        return station;
      }
    }
    String ids = all.stream().map(s -> s.id() + ", ").collect(Collectors.joining());
    throw BadInputException.notAllowed(
        "ID", "", word, "one of " + ids + "or a station file that ends in .json");
  }

  /** {@code station list}. */
  @Command(name = "list")
  static final class ListCommand extends CliCommand {
    @Override
    public Integer call() {
      for (Station station : StationLibrary.stations()) {
        around.print(WORDS.say("station.row", station.id(), station.group().id()));
        around.print("    " + station.title());
      }
      return DONE;
    }
  }

  /** {@code station show}. */
  @Command(name = "show")
  static final class ShowCommand extends CliCommand {
    @Parameters(paramLabel = "ID", descriptionKey = "ID")
    String id = "";

    @Override
    public Integer call() throws BadInputException {
      around.print(StationText.of(station(id)));
      return DONE;
    }
  }

  /** {@code station check}. */
  @Command(name = "check")
  static final class CheckCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", descriptionKey = "FILE")
    String file = "";

    @Override
    public Integer call() throws BadInputException {
      Path path = OutputFile.path("FILE", file);
      StationFile checked = StationReader.checkFile(path);
      for (BadInputException fault : checked.faults()) {
        around.say(WORDS.say("station.fault", fault.getMessage()));
        name(checked, fault.place());
        if (fault.getMessage().contains("not well-formed JSON")) {
          for (String line : WORDS.say("station.malformed").split("\n", -1)) {
            around.say("       " + line);
          }
        }
      }
      for (String doubt : checked.doubts()) {
        around.say(WORDS.say("station.doubt", file, doubt));
        name(checked, doubt.substring(0, Math.max(0, doubt.indexOf(':'))));
      }
      if (!checked.faults().isEmpty() || !checked.doubts().isEmpty()) {
        return BAD_INPUT;
      }
      around.print(WORDS.say("good", file));
      return DONE;
    }

    private void name(StationFile checked, String place) {
      checked.nameOf(place).ifPresent(n -> around.say("       " + WORDS.say("station.place", n)));
    }
  }
}
