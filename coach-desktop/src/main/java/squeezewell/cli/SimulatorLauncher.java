package squeezewell.cli;

import squeezewell.files.HomeFolder;

/** Opens the simulator's window. */
@FunctionalInterface
public interface SimulatorLauncher {
  /**
   * Opens the window and returns at once; the program goes on until the window is closed.
   *
   * @param home where the person's things are
   * @return false if there is no display that can be reached
   */
  boolean open(HomeFolder home);
}
