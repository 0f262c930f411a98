package squeezewell.live;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/** Does something again and again, off the thread that paces, until it is stopped. */
@FunctionalInterface
interface Forcing {
  /** A power cut loses what happened since, so about a second is what is promised. */
  long EVERY_MILLIS = 1_000;

  /**
   * Begins.
   *
   * @return what stops it
   */
  Runnable begin(Runnable force);

  /** On a thread of its own. */
  static Forcing onAThread() {
    return force -> {
      ScheduledExecutorService thread =
          Executors.newSingleThreadScheduledExecutor(
              task -> {
                Thread made = new Thread(task, "squeezewell-disk");
                made.setDaemon(true);
                return made;
              });
      ScheduledFuture<?> forcing =
          thread.scheduleWithFixedDelay(force, EVERY_MILLIS, EVERY_MILLIS, TimeUnit.MILLISECONDS);
      return () -> {
        forcing.cancel(false);
        thread.shutdown();
      };
    };
  }
}
