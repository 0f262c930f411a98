package squeezewell.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.files.HomeFolder;
import squeezewell.words.Wording;

/** {@code squeezewell} without words: the simulator, or the demonstration where it can't open. */
@Command(
    name = "squeezewell",
    versionProvider = TopCommand.Version.class,
    synopsisSubcommandLabel = "[COMMAND]",
    subcommands = {
      DrillCommand.class,
      DemoCommand.class,
      RenderCommand.class,
      ReviewCommand.class,
      CompareCommand.class,
      ProtocolCommand.class,
      BookCommand.class,
      OxygenCommand.class,
      StationCommand.class
    })
final class TopCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(TopCommand.class);

  @Mixin HomeOption home = new HomeOption();

  @Option(
      names = {"-V", "--version"},
      versionHelp = true)
  boolean version;

  @Override
  public Integer call() throws Exception {
    HomeFolder folder = home.home();
    if (!around.headless()) {
      folder.makeIfPossible().ifPresent(around::say);
      if (around.simulator().open(folder)) {
        return DONE;
      }
    }
    around.say(WORDS.say("no-display"));
    DemoCommand demonstration = new DemoCommand();
    demonstration.around = around;
    return demonstration.call();
  }

  /** The version that the build wrote into the jar. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      String version = TopCommand.class.getPackage().getImplementationVersion();
      return new String[] {
        version == null ? WORDS.say("version.none") : WORDS.say("version", version)
      };
    }
  }
}
