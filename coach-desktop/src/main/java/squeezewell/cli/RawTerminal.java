package squeezewell.cli;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A Unix terminal that hands over each key at once and does not show it. Made with the standard
 * {@code stty} command; {@link #close} puts back what was set before.
 */
final class RawTerminal implements AutoCloseable {
  private static final File TERMINAL = new File("/dev/tty");
  private static final int WAIT_SECONDS = 2;

  private final String before;

  private RawTerminal(String before) {
    this.before = before;
  }

  /** Sets the terminal; empty if there is none or it can't be set. Keys that stop stay in force. */
  static Optional<RawTerminal> open() {
    Optional<String> before = stty("-g");
    if (before.isEmpty() || stty("-icanon", "-echo", "min", "1", "time", "0").isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new RawTerminal(before.get().trim()));
  }

  @Override
  public void close() {
    stty(before);
  }

  private static Optional<String> stty(String... words) {
    if (!TERMINAL.canRead()) {
      return Optional.empty();
    }
    List<String> command = new ArrayList<>(List.of("stty"));
    command.addAll(List.of(words));
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectInput(TERMINAL)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      byte[] said = process.getInputStream().readAllBytes();
      boolean done = process.waitFor(WAIT_SECONDS, TimeUnit.SECONDS) && process.exitValue() == 0;
      return done ? Optional.of(new String(said, StandardCharsets.US_ASCII)) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
