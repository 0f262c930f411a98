package squeezewell;

import squeezewell.desktop.Simulator;
import squeezewell.files.HomeFolder;

/** Entry point of the runnable jar. */
public final class Main {
  private Main() {}

  public static void main(String[] args) throws Exception {
    Simulator.open(HomeFolder.resolve(args.length > 1 ? args[1] : null).make());
  }
}
