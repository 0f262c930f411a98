package squeezewell.station.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;

/**
 * The time of a running station: session time, the station's clock, which may be stopped, and what
 * falls due by itself on that clock.
 */
final class StationTime {
  private final PriorityQueue<Item> items =
      new PriorityQueue<>(
          Comparator.comparingLong(Item::clockNanos).thenComparingLong(Item::number));

  /** When the clock was stopped, on itself, and for how long. */
  private final List<long[]> stops = new ArrayList<>();

  private long now;
  private long stoppedNanos;
  private boolean stopped;
  private long stoppedAt;
  private long numbers;

  /** What falls due by itself, on the station's clock. */
  private record Item(long clockNanos, long number, Runnable action) {}

  /** Session time. */
  long now() {
    return now;
  }

  /** The station's clock. */
  long clock() {
    return clockAt(now);
  }

  boolean isStopped() {
    return stopped;
  }

  /** Lets something be done at a time on the station's clock. */
  void at(long clockNanos, Runnable action) {
    items.add(new Item(clockNanos, numbers++, action));
  }

  /** Lets time pass, up to and including an instant, or until all is over. */
  void advance(long toNanos, BooleanSupplier over) {
    while (!over.getAsBoolean()) {
      Item next = items.peek();
      if (next == null || next.clockNanos() > clockAt(Math.max(now, toNanos))) {
        break;
      }
      items.remove();
      now = Math.max(now, next.clockNanos() + stoppedNanos);
      next.action().run();
    }
    if (!over.getAsBoolean()) {
      now = Math.max(now, toNanos);
    }
  }

  /** Stops the clock; false if it stands. */
  boolean stop() {
    if (stopped) {
      return false;
    }
    stopped = true;
    stoppedAt = now;
    return true;
  }

  /** Lets the clock run; false if it does. */
  boolean run() {
    if (!stopped) {
      return false;
    }
    stops.add(new long[] {clock(), now - stoppedAt});
    stoppedNanos += now - stoppedAt;
    stopped = false;
    return true;
  }

  /** Session time at which something falls due next; empty if nothing will by itself. */
  OptionalLong nextDue() {
    return stopped || items.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(items.peek().clockNanos() + stoppedNanos);
  }

  /** Session time at a time of the station's clock; the earlier one where the clock stood. */
  long sessionAt(long clockNanos) {
    long at = clockNanos;
    for (long[] stop : stops) {
      at += stop[0] < clockNanos ? stop[1] : 0;
    }
    return at;
  }

  /** The station's clock at a session time since which it was neither stopped nor set going. */
  long clockAt(long sessionNanos) {
    return (stopped ? stoppedAt : sessionNanos) - stoppedNanos;
  }
}
