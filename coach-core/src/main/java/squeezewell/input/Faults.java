package squeezewell.input;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Gathers the faults of one input, so that a person is told all of them and not only the first. The
 * same fault met twice counts once.
 */
public final class Faults {
  /** After so many nobody reads on, and a hostile file could go on for long. */
  public static final int MOST = 500;

  private final List<BadInputException> found = new ArrayList<>();
  private final Set<String> messages = new HashSet<>();

  /** Something that may find a fault. */
  public interface Reading<T> {
    T read() throws BadInputException;
  }

  /** What was read, or empty if that met a fault, which is then kept. */
  public <T> Optional<T> take(Reading<T> reading) {
    try {
      return Optional.of(reading.read());
    } catch (BadInputException e) {
      add(e);
      return Optional.empty();
    }
  }

  /** Keeps a fault, unless it is known or there are {@link #MOST} already. */
  public void add(BadInputException fault) {
    if (!isFull() && messages.add(fault.getMessage())) {
      found.add(fault);
    }
  }

  /** Whether no more are kept, so that there is no use in looking on. */
  public boolean isFull() {
    return found.size() >= MOST;
  }

  /** The faults in the order in which they were met. */
  public List<BadInputException> all() {
    return Collections.unmodifiableList(new ArrayList<>(found));
  }
}
