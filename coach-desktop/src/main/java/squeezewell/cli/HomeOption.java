package squeezewell.cli;

import picocli.CommandLine.Option;
import squeezewell.files.HomeFolder;
import squeezewell.input.BadInputException;

/** {@code --home}. */
final class HomeOption {
  @Option(names = "--home", paramLabel = "DIR")
  String folder = "";

  HomeFolder home() throws BadInputException {
    return HomeFolder.resolve(folder);
  }

  boolean isGiven() {
    return !folder.isEmpty();
  }
}
