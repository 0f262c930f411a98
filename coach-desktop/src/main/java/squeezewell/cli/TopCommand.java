package squeezewell.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.files.HomeFolder;
import squeezewell.report.Caution;

/** {@code squeezewell} without words: the simulator, or the demonstration where it can't open. */
@Command(
    name = "squeezewell",
    description = {
      "Keeps the rhythm while you practise squeezing a bag-valve mask on a manikin,",
      "and shows afterwards how it went. Works offline.",
      "Without words it opens the simulator.",
      ""
    },
    versionProvider = TopCommand.Version.class,
    synopsisSubcommandLabel = "[COMMAND]",
    footer = {
      "",
      "Ends with 0 (done), 1 (could not do it) or 2 (bad usage or bad input).",
      "",
      Caution.LINE_1,
      Caution.LINE_2,
      Caution.LINE_3
    })
final class TopCommand extends CliCommand {
  @Mixin HomeOption home = new HomeOption();

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version and stop.")
  boolean version;

  TopCommand(Surroundings around) {
    super(around);
  }

  @Override
  public Integer call() throws Exception {
    HomeFolder folder = home.home();
    if (around.headless()) {
      around.say("There is no display for the window, so here is a demonstration instead.");
      return new DemoCommand(around).call();
    }
    around.simulator().open(folder.make());
    return DONE;
  }

  /** The version that the build wrote into the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = TopCommand.class.getPackage().getImplementationVersion();
      return new String[] {"Squeezewell " + (version == null ? "(not packaged)" : version)};
    }
  }
}
