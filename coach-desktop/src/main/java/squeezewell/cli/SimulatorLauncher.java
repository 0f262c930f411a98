package squeezewell.cli;

import squeezewell.files.HomeFolder;
import squeezewell.input.BadInputException;

/** Opens the simulator's window. */
@FunctionalInterface
public interface SimulatorLauncher {
  /**
   * Opens the window and returns at once; the program goes on until the window is closed.
   *
   * @param home where the person's things are
   * @throws BadInputException if what is in the home can't be used
   * @throws CannotException if the window can't be opened
   */
  void open(HomeFolder home) throws BadInputException, CannotException;
}
