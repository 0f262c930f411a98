package squeezewell.coach;

import java.util.List;
import java.util.OptionalLong;

/**
 * How a session is played back: from which moment, how fast, and whether it runs. It has no clock;
 * whoever asks tells the time, in nanoseconds since an instant of its own choice. A position is
 * always worked out from the last change, never by adding up, so playing does not drift. Immutable.
 *
 * @param endNanos the last position, session time, not negative
 * @param fromNanos the position at the last change, session time, 0 to {@code endNanos}
 * @param sinceNanos when the last change took effect, the asker's time; before it the position is
 *     {@code fromNanos}
 * @param speed one of {@link #SPEEDS}
 * @param playing whether it runs until it reaches the end
 */
public record Playback(long endNanos, long fromNanos, long sinceNanos, int speed, boolean playing) {
  /** How many times as fast as it was it can be played (our own choice). */
  public static final List<Integer> SPEEDS = List.of(1, 2, 4, 8);

  public Playback {
    if (endNanos < 0 || fromNanos < 0 || fromNanos > endNanos) {
      throw new IllegalArgumentException("position " + fromNanos + " of " + endNanos);
    }
    if (!SPEEDS.contains(speed)) {
      throw new IllegalArgumentException("speed is " + speed + "; allowed: " + SPEEDS);
    }
  }

  /** A session at its start, standing still. */
  public static Playback atStart(long endNanos) {
    return new Playback(endNanos, 0, 0, 1, false);
  }

  /** The position at an instant of the asker's time. */
  public long positionAt(long nowNanos) {
    long passed = Math.max(0, nowNanos - sinceNanos);
    // Compared before it is multiplied: the asker may come back after a long time.
    boolean over = passed >= (endNanos - fromNanos + speed - 1) / speed;
    if (!playing) {
      return fromNanos;
    }
    return over ? endNanos : fromNanos + passed * speed;
  }

  /** Whether it runs at an instant of the asker's time and has not reached the end. */
  public boolean runsAt(long nowNanos) {
    return playing && positionAt(nowNanos) < endNanos;
  }

  /**
   * When a position is reached, the asker's time, to the nearest nanosecond; empty for one that is
   * not reached by playing on.
   */
  public OptionalLong timeOf(long positionNanos) {
    return playing && positionNanos >= fromNanos && positionNanos <= endNanos
        ? OptionalLong.of(sinceNanos + scaled(positionNanos - fromNanos))
        : OptionalLong.empty();
  }

  /** How long a length of session time takes to play, to the nearest nanosecond. */
  public long scaled(long sessionNanos) {
    return (sessionNanos + speed / 2) / speed;
  }

  /** The same, running. At the end it starts anew. */
  public Playback play(long nowNanos) {
    long at = positionAt(nowNanos);
    return new Playback(endNanos, at >= endNanos ? 0 : at, nowNanos, speed, true);
  }

  /** The same, standing still. */
  public Playback pause(long nowNanos) {
    return new Playback(endNanos, positionAt(nowNanos), nowNanos, speed, false);
  }

  /** The same at another position; one outside the session counts as the nearest inside it. */
  public Playback seek(long positionNanos, long nowNanos) {
    long at = Math.max(0, Math.min(positionNanos, endNanos));
    return new Playback(endNanos, at, nowNanos, speed, playing);
  }

  /** The same at another of {@link #SPEEDS}. */
  public Playback at(int newSpeed, long nowNanos) {
    return new Playback(endNanos, positionAt(nowNanos), nowNanos, newSpeed, playing);
  }

  /** The next speed up; the same at the fastest. */
  public int faster() {
    return SPEEDS.get(Math.min(SPEEDS.indexOf(speed) + 1, SPEEDS.size() - 1));
  }

  /** The next speed down; the same at the slowest. */
  public int slower() {
    return SPEEDS.get(Math.max(SPEEDS.indexOf(speed) - 1, 0));
  }
}
