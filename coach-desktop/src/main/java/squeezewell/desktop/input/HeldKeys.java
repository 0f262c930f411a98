package squeezewell.desktop.input;

import java.util.HashSet;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.LongConsumer;

/**
 * Turns the presses and releases of keys into holds. A key that is held repeats: the system sends
 * further presses, some systems with a release before each. A release therefore counts only when no
 * press of the same key follows it at once. Several keys held together make one hold. Pure: it is
 * told the time.
 */
public final class HeldKeys {
  /**
   * A press this soon after a release of the same key is a repeat (our own choice: repeats were
   * seen within 1 ms of the release, a finger needs some 50 ms).
   */
  public static final long REPEAT_WITHIN_NANOS = 20_000_000L;

  private final LongConsumer began;
  private final LongConsumer ended;
  private final Set<Integer> down = new HashSet<>();
  private int releasedKey;
  private boolean releasePending;
  private long releasedAtNanos;

  /**
   * Nothing is held yet.
   *
   * @param began told at which instant a hold began
   * @param ended told at which instant it ended, which may lie a little in the past
   */
  public HeldKeys(LongConsumer began, LongConsumer ended) {
    this.began = Objects.requireNonNull(began, "began");
    this.ended = Objects.requireNonNull(ended, "ended");
  }

  /** Whether a key is held. */
  boolean isDown() {
    return !down.isEmpty();
  }

  /** A key went down, or repeats. */
  public void pressed(int key, long atNanos) {
    if (releasePending && releasedKey == key && atNanos - releasedAtNanos < REPEAT_WITHIN_NANOS) {
      releasePending = false;
      return;
    }
    settle(atNanos + REPEAT_WITHIN_NANOS);
    if (down.add(key) && down.size() == 1) {
      began.accept(atNanos);
    }
  }

  /** A key went up, or is about to repeat. */
  public void released(int key, long atNanos) {
    if (!down.contains(key)) {
      return;
    }
    settle(atNanos + REPEAT_WITHIN_NANOS);
    if (down.contains(key)) {
      releasePending = true;
      releasedKey = key;
      releasedAtNanos = atNanos;
    }
  }

  /**
   * Lets time pass: a release that no repeat has followed becomes the end of the hold.
   *
   * @return when to call again at the latest; empty if nothing is pending
   */
  public OptionalLong settle(long nowNanos) {
    if (releasePending && nowNanos - releasedAtNanos >= REPEAT_WITHIN_NANOS) {
      releasePending = false;
      down.remove(releasedKey);
      if (down.isEmpty()) {
        ended.accept(releasedAtNanos);
      }
    }
    return releasePending
        ? OptionalLong.of(releasedAtNanos + REPEAT_WITHIN_NANOS)
        : OptionalLong.empty();
  }

  /** Ends any hold, as when the window loses the keyboard and will see no release. */
  public void releaseAll(long atNanos) {
    boolean held = !down.isEmpty();
    long at = releasePending ? releasedAtNanos : atNanos;
    down.clear();
    releasePending = false;
    if (held) {
      ended.accept(at);
    }
  }
}
