package squeezewell.audio;

import java.util.ArrayList;
import java.util.List;
import squeezewell.session.SessionClock;

/**
 * Notes, while sound plays, when the device ran dry, when the mapping was corrected and when the
 * buffer grew, so that a measurement can leave out what a busy machine spoilt.
 */
final class DryWatch {
  static final String DRY = "DRY";
  static final String CORRECTED = "CORRECTED";
  static final String WIDENED = "WIDENED";

  /** How long to watch on: a device's own silence is only noticed seconds later. */
  static final long TAIL_MILLIS = 5_000;

  private static final long LOOK_MILLIS = 2;
  private static final long TELL_AGAIN_NANOS = 50_000_000L;

  private final SoundEngine engine;
  private final SessionClock clock;
  private final List<String> lines = new ArrayList<>();
  private final Thread thread = new Thread(this::watch, "dry-watch");
  private long toldNanos = Long.MIN_VALUE / 2;
  private volatile boolean ended;

  private DryWatch(SoundEngine engine, SessionClock clock) {
    this.engine = engine;
    this.clock = clock;
  }

  static DryWatch start(SoundOutput output, SessionClock clock) {
    DryWatch watch = new DryWatch(output.engine(), clock);
    watch.thread.setDaemon(true);
    watch.thread.start();
    return watch;
  }

  private void watch() {
    SoundFeed feed = null;
    int holes = 0;
    int corrections = 0;
    while (!ended) {
      SoundFeed now = engine.feed();
      if (now != feed) {
        if (feed != null) {
          tell(now == null ? DRY : WIDENED);
        }
        holes = 0;
        corrections = 0;
        feed = now;
      }
      if (feed != null) {
        if (feed.holes() != holes) {
          tell(DRY);
        } else if (!feed.playing() && clock.nanos() - toldNanos > TELL_AGAIN_NANOS) {
          // A line that was just opened has not settled yet; that counts as dry.
          tell(DRY);
        }
        if (feed.corrections() != corrections) {
          tell(CORRECTED);
        }
        holes = feed.holes();
        corrections = feed.corrections();
      }
      try {
        Thread.sleep(LOOK_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private void tell(String word) {
    toldNanos = clock.nanos();
    lines.add(word + " " + toldNanos);
  }

  /** Ends the watch. One line for each disturbance, nanoseconds of the session. */
  List<String> end() {
    ended = true;
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return List.copyOf(lines);
  }
}
