package squeezewell.session;

import java.io.Closeable;
import java.io.IOException;
import java.util.function.Consumer;

/** Takes the facts of a session as they happen. What {@link #append} returned from is kept. */
public interface Journal extends Closeable {
  /**
   * Adds one event.
   *
   * @throws IOException if it could not be kept; then no part of it is, and the same event may be
   *     given again
   */
  void append(SessionEvent event) throws IOException;

  /** A journal that keeps nothing, for demonstrations. */
  static Journal none() {
    return to(event -> {});
  }

  /** A journal that hands each event on and has no file. */
  static Journal to(Consumer<SessionEvent> events) {
    return new Journal() {
      @Override
      public void append(SessionEvent event) {
        events.accept(event);
      }

      @Override
      public void close() {
        // Nothing is open.
      }
    };
  }
}
