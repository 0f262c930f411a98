package squeezewell.review.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** Pairings worked by hand. Times in milliseconds; the penalty is 1.5 s unless said otherwise. */
class AlignmentTest {
  private static final long PENALTY = 1_500;

  @Test
  void breathsALittleLateMeetTheirPrompts() {
    // 0.4 + 0.5 + 0.3 + 0.4 = 1.6 s
    Alignment found = match(times(0, 6000, 12000, 18000), times(400, 6500, 12300, 18400), PENALTY);
    assertThat(found.costNanos()).isEqualTo(millis(1600));
    assertThat(found.pairs())
        .containsExactly(pair(0, 0, 400), pair(1, 1, 500), pair(2, 2, 300), pair(3, 3, 400));
  }

  @Test
  void aBreathHalfAnIntervalOffMeetsNothing() {
    // 9.0 is 3.0 s from the prompts at 6 and 12, not less than 1.5 + 1.5: one missed, one extra.
    // 0.3 + 0.2 + 0.1 + 1.5 + 1.5 = 3.6 s
    Alignment found = match(times(0, 6000, 12000, 18000), times(300, 6200, 9000, 18100), PENALTY);
    assertThat(found.costNanos()).isEqualTo(millis(3600));
    assertThat(found.unpairedPrompts()).containsExactly(2);
    assertThat(found.unpairedBreaths()).containsExactly(2);
  }

  @Test
  void ofTwoBreathsTheNearerMeetsThePrompt() {
    // 6.2 and 12.1 pair: 0.2 + 0.1; prompt 0 and breath 5.5 are left: 1.5 + 1.5. Sum 3.3 s.
    Alignment found = match(times(0, 6000, 12000), times(5500, 6200, 12100), PENALTY);
    assertThat(found.costNanos()).isEqualTo(millis(3300));
    assertThat(found.pairs()).containsExactly(pair(1, 1, 200), pair(2, 2, 100));
    assertThat(found.unpairedPrompts()).containsExactly(0);
    assertThat(found.unpairedBreaths()).containsExactly(0);
  }

  @Test
  void aFasterTempoLeavesOneBreathOver() {
    // Breaths every 5 s, prompts every 6 s, over 30 s: errors 0 1 2 . 2 1 0 and one extra (15 s):
    // 6 + 1.5 = 7.5 s.
    long[] prompts = LongStream.rangeClosed(0, 5).map(k -> millis(6000 * k)).toArray();
    long[] breaths = LongStream.rangeClosed(0, 6).map(k -> millis(5000 * k)).toArray();
    Alignment found = match(prompts, breaths, PENALTY);
    assertThat(found.costNanos()).isEqualTo(millis(7500));
    assertThat(found.unpairedBreaths()).containsExactly(3);
    assertThat(found.pairs()).hasSize(6);
  }

  @Test
  void aChangeOfRhythmNeedsNoSpecialCase() {
    // Lags 0.3 0.4 0.2 0.9 0.3 0.2 0.4: median 0.3; 0 + 0.1 + 0.1 + 0.6 + 0 + 0.1 + 0.1 = 1.0 s
    Alignment found =
        Alignment.of(
            times(0, 6000, 12000, 18000, 20500, 23000, 25500),
            times(300, 6400, 12200, 18900, 20800, 23200, 25900));
    assertThat(found.offsetNanos()).isEqualTo(millis(300));
    assertThat(found.costNanos()).isEqualTo(millis(1000));
    assertThat(found.pairs()).hasSize(7);
  }

  @Test
  void aConstantLagIsFoundWithThePairing() {
    // Prompts every 1.2 s, breaths 0.5 s later: 6 x 0.5 = 3.0 s without a lag, 0 with 0.5 s.
    long[] prompts = LongStream.rangeClosed(0, 5).map(k -> millis(1200 * k)).toArray();
    long[] breaths = Arrays.stream(prompts).map(p -> p + millis(500)).toArray();
    Alignment still = match(prompts, breaths, 300);
    assertThat(still.costNanos()).isEqualTo(millis(3000));
    assertThat(still.pairs()).hasSize(6);
    Alignment found = Alignment.of(prompts, breaths);
    assertThat(found.offsetNanos()).isEqualTo(millis(500));
    assertThat(found.costNanos()).isZero();
    assertThat(found.pairs()).allMatch(p -> p.errorNanos() == millis(500));
  }

  @Test
  void whatHasNoPartnerCostsItsPenalty() {
    assertThat(match(times(), times(), PENALTY).costNanos()).isZero();
    assertThat(match(times(0, 6000), times(), PENALTY).costNanos()).isEqualTo(millis(3000));
    assertThat(match(times(), times(1000, 2000, 3000), 900).costNanos()).isEqualTo(millis(2700));
    assertThat(Alignment.of(times(), times(1000)).unpairedBreaths()).containsExactly(0);
  }

  @Test
  void halfAnIntervalAwayIsTooFar() {
    assertThat(match(times(0), times(2999), PENALTY).pairs()).hasSize(1);
    assertThat(match(times(0), times(3000), PENALTY).pairs()).isEmpty();
  }

  @Test
  void penaltiesAreAQuarterOfTheDistanceToTheNearerPromptWithinLimits() {
    // Distances 6 and 2.5 s: quarters 1.5 and 0.625 s; 0.4 s gives 0.1, raised to 0.15 s.
    assertThat(Penalties.ofMissing(times(0, 6000, 8500, 8900)))
        .containsExactly(millis(1500), millis(625), millis(150), millis(150));
    assertThat(Penalties.ofMissing(times(0, 30000))).containsOnly(millis(1500));
  }

  static Alignment match(long[] prompts, long[] breaths, long penaltyMillis) {
    long[] missing = new long[prompts.length];
    long[] extra = new long[breaths.length];
    Arrays.fill(missing, millis(penaltyMillis));
    Arrays.fill(extra, millis(penaltyMillis));
    return new Matcher(prompts, breaths, missing, extra).match(0);
  }

  private static Alignment.Pair pair(int prompt, int breath, long errorMillis) {
    return new Alignment.Pair(prompt, breath, millis(errorMillis));
  }

  private static long[] times(long... millis) {
    return Arrays.stream(millis).map(AlignmentTest::millis).toArray();
  }

  static long millis(long millis) {
    return millis * 1_000_000;
  }
}
