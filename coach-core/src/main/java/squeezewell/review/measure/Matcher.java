package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Finds the cheapest pairing of prompts and breaths that keeps their order. The cost is the sum of
 * the distances in the pairs and of the penalties of everything left over; with equal penalties it
 * is the spike-train distance of Victor and Purpura (1996), scaled. Solved by dynamic programming
 * over a band around the diagonal, so time and memory grow with the number of prompts, breaths and
 * possible pairs.
 *
 * <p>Equal costs are decided by the smaller sum of squared distances (in microseconds, so that the
 * sum fits), then in favour of the pair, then of the missed prompt.
 */
final class Matcher {
  private static final byte PAIR = 0;
  private static final byte MISSED = 1;
  private static final byte EXTRA = 2;
  private static final long NANOS_PER_MICRO = 1_000;

  private final long[] prompts;
  private final long[] breaths;
  private final long[] missing;
  private final long[] extra;
  private final long[] extraBefore;
  private final long gate;

  /**
   * @param prompts sorted
   * @param breaths sorted
   * @param missing cost of leaving each prompt without a breath, positive
   * @param extra cost of leaving each breath without a prompt, positive
   */
  Matcher(long[] prompts, long[] breaths, long[] missing, long[] extra) {
    this.prompts = prompts;
    this.breaths = breaths;
    this.missing = missing;
    this.extra = extra;
    extraBefore = new long[breaths.length + 1];
    for (int j = 0; j < breaths.length; j++) {
      extraBefore[j + 1] = extraBefore[j] + extra[j];
    }
    gate = Arrays.stream(missing).max().orElse(0) + Arrays.stream(extra).max().orElse(0);
  }

  /** The cheapest pairing if every breath is meant to come {@code offset} after its prompt. */
  Alignment match(long offset) {
    int n = prompts.length;
    int[] low = new int[n + 1];
    int[] high = new int[n + 1];
    int[] first = new int[n + 1];
    byte[] choices = new byte[4 * n + breaths.length + 4];
    Row previous = new Row(0, 0);
    int used = 0;
    for (int i = 1; i <= n; i++) {
      long centre = prompts[i - 1] + offset;
      low[i] = low[i - 1];
      while (low[i] < breaths.length && breaths[low[i]] <= centre - gate) {
        low[i]++;
      }
      high[i] = Math.max(high[i - 1], low[i]);
      while (high[i] < breaths.length && breaths[high[i]] < centre + gate) {
        high[i]++;
      }
      first[i] = used;
      used += high[i] - low[i] + 1;
      if (used > choices.length) {
        choices = Arrays.copyOf(choices, 2 * used);
      }
      Row row = new Row(low[i], high[i]);
      fill(row, previous, i - 1, centre, choices, first[i]);
      previous = row;
    }
    long cost = previous.costAt(breaths.length);
    return trace(offset, cost, low, high, first, choices);
  }

  private void fill(Row row, Row above, int prompt, long centre, byte[] choices, int first) {
    for (int j = row.low; j <= row.high; j++) {
      long cost = above.costAt(j) + missing[prompt];
      long squares = above.squaresAt(j);
      byte choice = MISSED;
      if (j > row.low) {
        long extraCost = row.costAt(j - 1) + extra[j - 1];
        if (isLess(extraCost, row.squaresAt(j - 1), cost, squares)) {
          cost = extraCost;
          squares = row.squaresAt(j - 1);
          choice = EXTRA;
        }
        long apart = Math.abs(breaths[j - 1] - centre);
        if (apart < missing[prompt] + extra[j - 1]) {
          long pairCost = above.costAt(j - 1) + apart;
          long micros = apart / NANOS_PER_MICRO;
          long pairSquares = above.squaresAt(j - 1) + micros * micros;
          if (!isLess(cost, squares, pairCost, pairSquares)) {
            cost = pairCost;
            squares = pairSquares;
            choice = PAIR;
          }
        }
      }
      row.set(j, cost, squares);
      choices[first + j - row.low] = choice;
    }
  }

  private static boolean isLess(long cost, long squares, long otherCost, long otherSquares) {
    return cost < otherCost || (cost == otherCost && squares < otherSquares);
  }

  private Alignment trace(
      long offset, long cost, int[] low, int[] high, int[] first, byte[] choices) {
    List<Alignment.Pair> pairs = new ArrayList<>();
    List<Integer> missed = new ArrayList<>();
    List<Integer> left = new ArrayList<>();
    int i = prompts.length;
    int j = breaths.length;
    while (i > 0 || j > 0) {
      byte choice = i == 0 || j > high[i] ? EXTRA : choices[first[i] + j - low[i]];
      switch (choice) {
        case PAIR -> {
          i--;
          j--;
          pairs.add(new Alignment.Pair(i, j, breaths[j] - prompts[i]));
        }
        case MISSED -> missed.add(--i);
        default -> left.add(--j);
      }
    }
    Collections.reverse(pairs);
    Collections.reverse(missed);
    Collections.reverse(left);
    return new Alignment(pairs, missed, left, offset, cost);
  }

  /** Cheapest cost of the prompts so far and the first j breaths; right of the band, all extra. */
  private final class Row {
    private final int low;
    private final int high;
    private final long[] costs;
    private final long[] squares;

    Row(int low, int high) {
      this.low = low;
      this.high = high;
      costs = new long[high - low + 1];
      squares = new long[high - low + 1];
    }

    void set(int j, long cost, long sumOfSquares) {
      costs[j - low] = cost;
      squares[j - low] = sumOfSquares;
    }

    long costAt(int j) {
      int inside = Math.min(j, high);
      return costs[inside - low] + extraBefore[j] - extraBefore[inside];
    }

    long squaresAt(int j) {
      return squares[Math.min(j, high) - low];
    }
  }
}
