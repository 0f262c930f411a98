package squeezewell.cue;

import java.util.function.IntToLongFunction;

/** Finds places among values that never fall from one to the next, by halving. Pure. */
public final class InOrder {
  private InOrder() {}

  /**
   * How many values lie before a limit, which is also the place of the first that does not.
   *
   * @param size how many values there are
   * @param value the value at a place from 0 to {@code size - 1}; never falls
   */
  public static int countBefore(int size, IntToLongFunction value, long limit) {
    int low = 0;
    int high = size;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (value.applyAsLong(middle) < limit) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** How many values lie before a limit or on it; otherwise as {@link #countBefore}. */
  public static int countUpTo(int size, IntToLongFunction value, long limit) {
    return limit == Long.MAX_VALUE ? size : countBefore(size, value, limit + 1);
  }
}
