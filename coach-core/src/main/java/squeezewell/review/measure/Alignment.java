package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;

/**
 * Which breath answers which prompt. Pairs keep the order of both; every prompt and every breath is
 * in exactly one pair or one list of leftovers. In a review the breaths that could not be prompted
 * are in neither.
 *
 * @param pairs in order
 * @param unpairedPrompts indices of the prompts that no breath answers, in order
 * @param unpairedBreaths indices of the breaths that answer no prompt, in order
 * @param offsetNanos the constant lag that was allowed for while pairing; positive if the breaths
 *     come after the prompts. Errors are told without it
 * @param costNanos what the pairing costs
 */
public record Alignment(
    List<Pair> pairs,
    List<Integer> unpairedPrompts,
    List<Integer> unpairedBreaths,
    long offsetNanos,
    long costNanos) {
  /** Larger lags can't be told from an early answer to the next prompt (our own choice). */
  private static final double LARGEST_OFFSET = 0.45;

  public Alignment {
    pairs = List.copyOf(pairs);
    unpairedPrompts = List.copyOf(unpairedPrompts);
    unpairedBreaths = List.copyOf(unpairedBreaths);
  }

  /**
   * A prompt and the breath that answers it.
   *
   * @param prompt index of the prompt, from 0
   * @param breath index of the breath, from 0
   * @param errorNanos breath minus prompt; positive if the breath came late
   */
  public record Pair(int prompt, int breath, long errorNanos) {}

  /**
   * Pairs prompts and breaths at the least cost, and finds the constant lag for which that cost is
   * least, in turns until neither makes it smaller.
   *
   * @param prompts instants in nanoseconds, sorted
   * @param breaths instants in nanoseconds, sorted
   */
  public static Alignment of(long[] prompts, long[] breaths) {
    long[] missing = Penalties.ofMissing(prompts);
    return withLag(prompts, breaths, missing, Penalties.ofExtra(prompts, missing, breaths));
  }

  /** The same among more prompts and breaths: where its own begin, and which breaths they are. */
  Alignment moved(int firstPrompt, IntUnaryOperator breath, int firstBreath) {
    IntUnaryOperator named = k -> breath.applyAsInt(k + firstBreath);
    return new Alignment(
        pairs.stream()
            .map(
                p ->
                    new Pair(
                        p.prompt() + firstPrompt, named.applyAsInt(p.breath()), p.errorNanos()))
            .collect(Collectors.toList()),
        unpairedPrompts.stream().map(i -> i + firstPrompt).collect(Collectors.toList()),
        unpairedBreaths.stream().map(named::applyAsInt).collect(Collectors.toList()),
        offsetNanos,
        costNanos);
  }

  /** Stretches one after the other; the lag is that of the one with the most pairs. */
  static Alignment joined(List<Alignment> stretches) {
    if (stretches.size() == 1) {
      return stretches.get(0);
    }
    List<Pair> pairs = new ArrayList<>();
    List<Integer> prompts = new ArrayList<>();
    List<Integer> breaths = new ArrayList<>();
    long cost = 0;
    Alignment longest = stretches.get(0);
    for (Alignment one : stretches) {
      pairs.addAll(one.pairs);
      prompts.addAll(one.unpairedPrompts);
      breaths.addAll(one.unpairedBreaths);
      cost += one.costNanos;
      longest = one.pairs.size() > longest.pairs.size() ? one : longest;
    }
    return new Alignment(pairs, prompts, breaths, longest.offsetNanos, cost);
  }

  static Alignment withLag(long[] prompts, long[] breaths, long[] missing, long[] extra) {
    Matcher matcher = new Matcher(prompts, breaths, missing, extra);
    long most = largestOffset(prompts);
    Alignment best = descend(matcher, 0, most);
    PhaseLocking locking = PhaseLocking.of(prompts, breaths);
    if (locking.strength().orElse(0) >= PhaseLocking.LOCKED) {
      long start = Math.max(-most, Math.min(most, locking.offsetNanos()));
      Alignment other = descend(matcher, start, most);
      best = other.costNanos() < best.costNanos() ? other : best;
    }
    return best;
  }

  private static Alignment descend(Matcher matcher, long start, long most) {
    Alignment best = matcher.match(start);
    while (!best.pairs().isEmpty()) {
      long[] errors = best.pairs().stream().mapToLong(Pair::errorNanos).sorted().toArray();
      long median = errors[(errors.length - 1) / 2];
      Alignment next = matcher.match(Math.max(-most, Math.min(most, median)));
      if (next.costNanos() >= best.costNanos()) {
        break;
      }
      best = next;
    }
    return best;
  }

  private static long largestOffset(long[] prompts) {
    long shortest = Long.MAX_VALUE;
    for (int i = 1; i < prompts.length; i++) {
      shortest = Math.min(shortest, prompts[i] - prompts[i - 1]);
    }
    return prompts.length < 2 ? 0 : (long) (shortest * LARGEST_OFFSET);
  }
}
