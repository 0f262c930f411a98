package squeezewell.review.measure;

/**
 * What it costs to leave a prompt or a breath without a partner, in nanoseconds. A pair is worth
 * having only while the two are closer than both costs together, which is half a prompt interval.
 * The costs follow the prompts nearby, so that a change of rhythm needs no special case. (The
 * quarter and its limits are our own choice.)
 */
public final class Penalties {
  private static final long SMALLEST_NANOS = 150_000_000L;
  static final long LARGEST_NANOS = 1_500_000_000L;

  private Penalties() {}

  /** For each prompt a quarter of the distance to its nearer neighbour, within limits. */
  public static long[] ofMissing(long[] prompts) {
    long[] costs = new long[prompts.length];
    for (int i = 0; i < prompts.length; i++) {
      long nearer = Long.MAX_VALUE;
      if (i > 0) {
        nearer = prompts[i] - prompts[i - 1];
      }
      if (i + 1 < prompts.length) {
        nearer = Math.min(nearer, prompts[i + 1] - prompts[i]);
      }
      costs[i] = Math.min(LARGEST_NANOS, Math.max(SMALLEST_NANOS, nearer / 4));
    }
    return costs;
  }

  /** For each breath the cost of the prompt nearest to it, of the earlier one on a tie. */
  static long[] ofExtra(long[] prompts, long[] missing, long[] breaths) {
    long[] costs = new long[breaths.length];
    int nearest = 0;
    for (int j = 0; j < breaths.length; j++) {
      if (prompts.length == 0) {
        costs[j] = LARGEST_NANOS;
        continue;
      }
      while (nearest + 1 < prompts.length
          && Math.abs(prompts[nearest + 1] - breaths[j])
              < Math.abs(prompts[nearest] - breaths[j])) {
        nearest++;
      }
      costs[j] = missing[nearest];
    }
    return costs;
  }
}
