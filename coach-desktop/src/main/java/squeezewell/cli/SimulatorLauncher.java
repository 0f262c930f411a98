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
   * @throws CannotException if the window can't be opened
   * @throws BadInputException if the settings can't be read; they are left as they are
   */
  void open(HomeFolder home) throws CannotException, BadInputException;
}
