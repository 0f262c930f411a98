package squeezewell.cli;

import picocli.CommandLine.Option;
import squeezewell.files.HomeFolder;
import squeezewell.input.BadInputException;

/** {@code --home}. */
final class HomeOption {
  @Option(
      names = "--home",
      paramLabel = "DIR",
      description =
          "Folder of protocols, sessions and settings. If it is not given: the environment variable "
              + HomeFolder.VARIABLE
              + ", else this system's usual place.")
  String folder = "";

  HomeFolder home() throws BadInputException {
    return HomeFolder.resolve(folder);
  }

  boolean isGiven() {
    return !folder.isEmpty();
  }
}
