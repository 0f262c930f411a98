package squeezewell.station.file;

import java.util.ArrayList;
import java.util.List;
import squeezewell.input.BadInputException;

/** Gathers the faults of a file, so that a person learns of all of them at once. */
final class FaultList {
  /** A hostile file must not fill the memory with its faults. */
  private static final int MOST = 200;

  private final List<BadInputException> faults = new ArrayList<>();

  interface Reading<T> {
    T read() throws BadInputException;
  }

  /** The value read, or the other one, with the fault kept, if it can't be. */
  <T> T take(Reading<T> reading, T otherwise) {
    try {
      return reading.read();
    } catch (BadInputException e) {
      add(e);
      return otherwise;
    }
  }

  /** The value read, or the other one where it can't be: that fault is told somewhere else. */
  static <T> T silently(Reading<T> reading, T otherwise) {
    return new FaultList().take(reading, otherwise);
  }

  void add(BadInputException fault) {
    if (faults.size() < MOST) {
      faults.add(fault);
    }
  }

  List<BadInputException> all() {
    return List.copyOf(faults);
  }
}
