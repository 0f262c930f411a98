package squeezewell.desktop;

import java.awt.Component;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import squeezewell.input.BadInputException;

/**
 * Does what may take a moment and may fail, away from the event thread. A {@code SwingWorker} tells
 * of its end up to 33 ms late, since it gathers what ended; here somebody waits for it.
 */
final class Background {
  private Background() {}

  /** What may take a moment and may fail. */
  interface Work<T> {
    T get() throws BadInputException;
  }

  /**
   * Does it, then shows what came of it on the event thread; says what went wrong.
   *
   * @param over where that is said
   * @param otherwise what follows if it went wrong
   */
  static <T> void run(Component over, Work<T> work, Consumer<T> then, Runnable otherwise) {
    Thread thread =
        new Thread(
            () -> SwingUtilities.invokeLater(ended(over, work, then, otherwise)), "for a screen");
    thread.setDaemon(true);
    thread.start();
  }

  /** A fault of the program is told too: whoever waits must not wait for ever. */
  private static <T> Runnable ended(
      Component over, Work<T> work, Consumer<T> then, Runnable otherwise) {
    try {
      T result = work.get();
      return () -> then.accept(result);
    } catch (BadInputException | RuntimeException | Error e) {
      return () -> {
        Dialogs.tell(over, "This practice can't be shown", String.valueOf(e.getMessage()));
        otherwise.run();
      };
    }
  }
}
