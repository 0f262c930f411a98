package squeezewell.desktop;

import java.awt.Component;
import java.util.concurrent.ExecutionException;
import java.util.function.Consumer;
import javax.swing.SwingWorker;
import squeezewell.input.BadInputException;

/** Does what may take a moment and may fail, away from the event thread. */
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
    new SwingWorker<T, Void>() {
      @Override
      protected T doInBackground() throws BadInputException {
        return work.get();
      }

      @Override
      protected void done() {
        try {
          then.accept(get());
        } catch (ExecutionException e) {
          Dialogs.tell(
              over, "This practice can't be shown", String.valueOf(e.getCause().getMessage()));
          otherwise.run();
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
        }
      }
    }.execute();
  }
}
