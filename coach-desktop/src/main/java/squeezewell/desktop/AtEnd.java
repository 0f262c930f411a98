package squeezewell.desktop;

import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;

/**
 * Tells once, on whatever thread, that something running is over.
 *
 * @param <S> what ran
 */
final class AtEnd<S> {
  private final Consumer<S> told;
  private final AtomicBoolean over = new AtomicBoolean();
  private volatile S running;

  AtEnd(Consumer<S> told) {
    this.told = told;
  }

  /** What it is about; to be known before it starts. */
  void of(S session) {
    running = session;
  }

  /** It has changed; told the first time that it has finished. */
  void changed(boolean finished) {
    if (finished && over.compareAndSet(false, true)) {
      told.accept(running);
    }
  }
}
