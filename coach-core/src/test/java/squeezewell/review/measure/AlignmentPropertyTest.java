package squeezewell.review.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;

/** What must hold of every pairing, and the cheapest found by trying all of them. */
class AlignmentPropertyTest {
  private static final long MILLI = 1_000_000L;

  /** A problem with a penalty of its own for each prompt and breath, and a lag. */
  static final class Problem {
    private final long[] prompts;
    private final long[] breaths;
    private final long[] missing;
    private final long[] extra;
    private final long lag;

    Problem(long[] prompts, long[] breaths, long[] missing, long[] extra, long lag) {
      this.prompts = prompts;
      this.breaths = breaths;
      this.missing = missing;
      this.extra = extra;
      this.lag = lag;
    }

    @Override
    public String toString() {
      return Arrays.toString(prompts)
          + Arrays.toString(breaths)
          + Arrays.toString(missing)
          + Arrays.toString(extra)
          + lag;
    }
  }

  @Property(tries = 4_000)
  void noOtherPairingIsCheaper(@ForAll("smallProblems") Problem problem) {
    Alignment found = match(problem);
    long[] best = {Long.MAX_VALUE, Long.MAX_VALUE};
    tryAll(problem, 0, 0, 0, 0, best);
    assertThat(found.costNanos()).isEqualTo(best[0]);
    assertThat(squares(found, problem.lag)).isEqualTo(best[1]);
  }

  @Property
  void everyPromptAndBreathIsUsedOnceAndInOrder(@ForAll("problems") Problem problem) {
    Alignment found = match(problem);
    List<Alignment.Pair> pairs = found.pairs();
    assertThat(pairs.size() + found.unpairedPrompts().size()).isEqualTo(problem.prompts.length);
    assertThat(pairs.size() + found.unpairedBreaths().size()).isEqualTo(problem.breaths.length);
    long cost = 0;
    for (int k = 0; k < pairs.size(); k++) {
      Alignment.Pair pair = pairs.get(k);
      if (k > 0) {
        assertThat(pair.prompt()).isGreaterThan(pairs.get(k - 1).prompt());
        assertThat(pair.breath()).isGreaterThan(pairs.get(k - 1).breath());
      }
      assertThat(pair.errorNanos())
          .isEqualTo(problem.breaths[pair.breath()] - problem.prompts[pair.prompt()]);
      cost += Math.abs(pair.errorNanos() - problem.lag);
    }
    cost += found.unpairedPrompts().stream().mapToLong(i -> problem.missing[i]).sum();
    cost += found.unpairedBreaths().stream().mapToLong(j -> problem.extra[j]).sum();
    assertThat(found.costNanos()).isEqualTo(cost);
  }

  @Property
  void movingBothInTimeChangesNothing(
      @ForAll("problems") Problem p, @ForAll @LongRange(min = -50_000, max = 50_000) long by) {
    Alignment moved =
        new Matcher(shift(p.prompts, by), shift(p.breaths, by), p.missing, p.extra).match(p.lag);
    assertThat(moved).isEqualTo(match(p));
    assertThat(Alignment.of(shift(p.prompts, by), shift(p.breaths, by)))
        .isEqualTo(Alignment.of(p.prompts, p.breaths));
  }

  @Property
  void movingTheBreathsByTheLagChangesNothingButTheErrors(
      @ForAll("problems") Problem p, @ForAll @LongRange(min = -3_000, max = 3_000) long by) {
    Alignment still = new Matcher(p.prompts, p.breaths, p.missing, p.extra).match(0);
    Alignment moved =
        new Matcher(p.prompts, shift(p.breaths, by), p.missing, p.extra).match(by * MILLI);
    assertThat(moved.costNanos()).isEqualTo(still.costNanos());
    assertThat(moved.unpairedPrompts()).isEqualTo(still.unpairedPrompts());
    assertThat(moved.unpairedBreaths()).isEqualTo(still.unpairedBreaths());
  }

  @Property
  void reversingTimeKeepsTheCost(@ForAll("problems") Problem p) {
    Matcher reversed =
        new Matcher(
            reverse(p.prompts, -1),
            reverse(p.breaths, -1),
            reverse(p.missing, 1),
            reverse(p.extra, 1));
    assertThat(reversed.match(-p.lag).costNanos()).isEqualTo(match(p).costNanos());
  }

  @Property
  void threeTimesTheTimesIsThreeTimesTheCost(@ForAll("problems") Problem p) {
    Matcher scaled =
        new Matcher(times3(p.prompts), times3(p.breaths), times3(p.missing), times3(p.extra));
    assertThat(scaled.match(3 * p.lag).costNanos()).isEqualTo(3 * match(p).costNanos());
  }

  @Property
  void withOnePenaltyTheCostIsADistance(
      @ForAll("times") long[] a,
      @ForAll("times") long[] b,
      @ForAll("times") long[] c,
      @ForAll @LongRange(min = 150, max = 1_500) long penalty) {
    long ab = cost(a, b, penalty);
    assertThat(cost(a, a, penalty)).isZero();
    assertThat(cost(b, a, penalty)).isEqualTo(ab);
    assertThat(cost(a, c, penalty)).isLessThanOrEqualTo(ab + cost(b, c, penalty));
    assertThat(ab).isGreaterThanOrEqualTo(penalty * MILLI * Math.abs(a.length - b.length));
    assertThat(ab).isLessThanOrEqualTo(penalty * MILLI * (a.length + b.length));
    assertThat(cost(a, b, penalty + 100)).isGreaterThanOrEqualTo(ab);
  }

  @Property
  void noMorePairsThanTheLargestMatchingInTheSameWindow(
      @ForAll("times") long[] a,
      @ForAll("times") long[] b,
      @ForAll @LongRange(min = 150, max = 1_500) long penalty) {
    // Two pointers find the most pairs that are less than one window apart.
    int most = 0;
    int j = 0;
    for (int i = 0; i < a.length && j < b.length; ) {
      if (Math.abs(a[i] - b[j]) < 2 * penalty * MILLI) {
        most++;
        i++;
        j++;
      } else if (a[i] < b[j]) {
        i++;
      } else {
        j++;
      }
    }
    assertThat(AlignmentTest.match(a, b, penalty).pairs().size()).isLessThanOrEqualTo(most);
  }

  @Property
  void allowingForALagNeverCostsMore(@ForAll("times") long[] prompts, @ForAll("times") long[] b) {
    long[] missing = Penalties.ofMissing(prompts);
    long[] extra = Penalties.ofExtra(prompts, missing, b);
    assertThat(Alignment.of(prompts, b).costNanos())
        .isLessThanOrEqualTo(new Matcher(prompts, b, missing, extra).match(0).costNanos());
  }

  @Provide
  Arbitrary<long[]> times() {
    return times(12);
  }

  @Provide
  Arbitrary<Problem> smallProblems() {
    return problems(5);
  }

  @Provide
  Arbitrary<Problem> problems() {
    return problems(12);
  }

  private static Arbitrary<Problem> problems(int most) {
    Arbitrary<long[]> penalties = millis(150, 1_500).array(long[].class).ofSize(most);
    return Combinators.combine(
            times(most), times(most), penalties, penalties, millis(-1_000, 1_000))
        .as(
            (p, b, missing, extra, lag) ->
                new Problem(
                    p, b, Arrays.copyOf(missing, p.length), Arrays.copyOf(extra, b.length), lag));
  }

  private static Arbitrary<long[]> times(int most) {
    return millis(0, 20_000)
        .array(long[].class)
        .ofMaxSize(most)
        .map(
            t -> {
              long[] sorted = t.clone();
              Arrays.sort(sorted);
              return sorted;
            })
        .withoutEdgeCases();
  }

  /** Steps of 50 ms, so that ties are common. */
  private static Arbitrary<Long> millis(long least, long most) {
    return Arbitraries.longs().between(least / 50, most / 50).map(n -> n * 50 * MILLI);
  }

  private static Alignment match(Problem p) {
    return new Matcher(p.prompts, p.breaths, p.missing, p.extra).match(p.lag);
  }

  private static long cost(long[] a, long[] b, long penalty) {
    return AlignmentTest.match(a, b, penalty).costNanos();
  }

  private static long squares(Alignment found, long lag) {
    return found.pairs().stream().mapToLong(p -> square(Math.abs(p.errorNanos() - lag))).sum();
  }

  private static long square(long nanos) {
    return nanos / 1_000 * (nanos / 1_000);
  }

  private static void tryAll(Problem p, int i, int j, long cost, long squares, long[] best) {
    if (i == p.prompts.length && j == p.breaths.length) {
      if (cost < best[0] || (cost == best[0] && squares < best[1])) {
        best[0] = cost;
        best[1] = squares;
      }
      return;
    }
    if (i < p.prompts.length) {
      tryAll(p, i + 1, j, cost + p.missing[i], squares, best);
    }
    if (j < p.breaths.length) {
      tryAll(p, i, j + 1, cost + p.extra[j], squares, best);
    }
    if (i < p.prompts.length && j < p.breaths.length) {
      long apart = Math.abs(p.breaths[j] - p.prompts[i] - p.lag);
      if (apart < p.missing[i] + p.extra[j]) {
        tryAll(p, i + 1, j + 1, cost + apart, squares + square(apart), best);
      }
    }
  }

  private static long[] shift(long[] times, long byMillis) {
    return Arrays.stream(times).map(t -> t + byMillis * MILLI).toArray();
  }

  private static long[] times3(long[] values) {
    return Arrays.stream(values).map(v -> 3 * v).toArray();
  }

  private static long[] reverse(long[] values, int sign) {
    long[] reversed = new long[values.length];
    for (int i = 0; i < values.length; i++) {
      reversed[i] = sign * values[values.length - 1 - i];
    }
    return reversed;
  }
}
