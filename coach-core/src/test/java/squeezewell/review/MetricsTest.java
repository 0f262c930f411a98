package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import squeezewell.review.measure.Metrics;
import squeezewell.review.measure.PulseCheckResult;
import squeezewell.review.say.Review;

/** Small sessions whose figures were worked by hand; the steps stand beside each. */
class MetricsTest {
  @Test
  void theRateIsTakenFromTheMeanIntervalNotFromTheMeanOfRates() {
    // Intervals 3 and 9 s: mean 6 s, so 10 a minute (the mean of 20 and 6.7 would be 13.3).
    // Neither lies in 5 to 7 s, so no time is in range.
    Metrics metrics = SessionBuilder.ofSeconds(12).breaths(0, 3, 12).review().metrics();
    assertThat(metrics.rate().overallPerMinute().getAsDouble()).isCloseTo(10, within(1e-9));
    assertThat(metrics.interval().timeInRangeFraction().getAsDouble()).isEqualTo(0.0);
  }

  @Test
  void aSessionWithoutABreathHasOneLongGapAndNoRate() {
    // 60 s without a breath; waiting up to 7 s costs nothing, so 53 of 53 s are out of range.
    Metrics metrics = SessionBuilder.ofSeconds(60).review().metrics();
    assertThat(metrics.rate().overallPerMinute()).isEmpty();
    assertThat(metrics.rate().countPerMinute().getAsDouble()).isEqualTo(0.0);
    assertThat(metrics.interval().timeInRangeFraction().getAsDouble()).isEqualTo(0.0);
    assertThat(metrics.gap().longestSeconds()).isEqualTo(60);
    assertThat(metrics.firstBreathSeconds()).isEmpty();
  }

  @Test
  void aSingleBreathHasNoInterval() {
    // Breath at 4 in 10 s: gaps 4 and 6 s, none over 7 s, so there is no time to share out.
    Metrics metrics = SessionBuilder.ofSeconds(10).breaths(4).review().metrics();
    assertThat(metrics.interval().count()).isZero();
    assertThat(metrics.interval().sdSeconds()).isEmpty();
    assertThat(metrics.gap().longestSeconds()).isEqualTo(6);
    assertThat(metrics.firstBreathSeconds().getAsDouble()).isEqualTo(4);
    assertThat(metrics.interval().timeInRangeFraction()).isEmpty();
  }

  @Test
  void twoBreathsHaveARateButNoSpreadAndNoDrift() {
    Metrics metrics = SessionBuilder.ofSeconds(12).breaths(2, 8).review().metrics();
    assertThat(metrics.rate().overallPerMinute().getAsDouble()).isCloseTo(10, within(1e-9));
    assertThat(metrics.interval().sdSeconds()).isEmpty();
    assertThat(metrics.interval().timeInRangeFraction().getAsDouble()).isEqualTo(1.0);
    assertThat(metrics.drift().percentPerMinute()).isEmpty();
  }

  @Test
  void aPulseCheckCutsTheIntervalsAndIsTakenOffTheGap() {
    // 19 breaths to 114 (18 intervals), check 116 to 124, 8 breaths from 129 (7 intervals).
    // Gap 114 to 129: 15 s, less the 8 s of the check 7 s. Due at 120, so 4 s early. All
    // intervals are 6 s, and 15 - 8 - 7 = 0 s of the stretch across the check is out of range.
    Metrics metrics =
        SessionBuilder.ofSeconds(174)
            .breathsEvery(6, 6, 114)
            .pulseCheck(116, 124)
            .breathsEvery(6, 129, 171)
            .review()
            .metrics();
    assertThat(metrics.interval().count()).isEqualTo(25);
    assertThat(metrics.rate().overallPerMinute().getAsDouble()).isCloseTo(10, within(1e-9));
    assertThat(metrics.gap().longestAtSeconds()).isEqualTo(114);
    assertThat(metrics.gap().longestSeconds()).isEqualTo(7);
    assertThat(metrics.interval().timeInRangeFraction().getAsDouble()).isEqualTo(1.0);
    assertThat(metrics.pulseChecks()).hasSize(1);
    PulseCheckResult check = metrics.pulseChecks().get(0);
    assertThat(check.dueSeconds()).hasValue(120);
    assertThat(check.lateSeconds()).hasValue(-4);
    assertThat(check.lengthSeconds()).hasValue(8);
    assertThat(check.outcome()).isEqualTo(PulseCheckResult.Outcome.ON_TIME);
    assertThat(check.lengthOutcome()).isEqualTo(PulseCheckResult.LengthOutcome.RIGHT);
  }

  @Test
  void anOverlongPulseCheckIsExcusedForTenSecondsOnly() {
    // Check 17 to 29 lasts 12 s, 10 excused: 60 - 10 = 50 s. Net gaps 12 to 20: 8 - 3 = 5;
    // 20 to 31: 11 - 7 = 4; so none over 10 s. Intervals 6-12, 31-37, 37-43, 43-49, 49-55.
    Metrics metrics =
        SessionBuilder.ofSeconds(60)
            .breaths(6, 12, 20, 31, 37, 43, 49, 55)
            .pulseCheck(17, 29)
            .review()
            .metrics();
    assertThat(metrics.effectiveSeconds()).isEqualTo(50);
    assertThat(metrics.gap().overLimitCount()).isZero();
    assertThat(metrics.interval().count()).isEqualTo(5);
    assertThat(metrics.pulseChecks().get(0).breathsDuring()).isEqualTo(1);
    assertThat(metrics.pulseChecks().get(0).lengthOutcome())
        .isEqualTo(PulseCheckResult.LengthOutcome.TOO_LONG);
  }

  @Test
  void slowBreathsAreCountedAsTimeAndDeficit() {
    // 7 breaths 9 s apart from 3 s to 57 s, then each 6 s to 114 s. 6 intervals of 9 s are 0.9
    // min, and each is 9/7 - 1 = 2/7 of a breath too few: 12/7. The interval from 57 s to 60 s is
    // too fast: 0.05 min.
    Review review =
        SessionBuilder.ofSeconds(120).breathsEvery(9, 3, 60).breathsEvery(6, 60, 120).review();
    Metrics.Interval interval = review.metrics().interval();
    assertThat(interval.slowCount()).isEqualTo(6);
    assertThat(interval.slowMinutes()).isCloseTo(0.9, within(1e-9));
    assertThat(interval.deficitBreaths()).isCloseTo(12.0 / 7, within(1e-9));
    assertThat(interval.fastMinutes()).isCloseTo(0.05, within(1e-9));
  }

  @Test
  void fastBreathsAreCountedAsBurdenTimeAndExcess() {
    // 20 breaths 3 s apart, then 10 at 6 s. 19 intervals of 3 s are 0.95 min, and each is
    // 1 - 3/5 = 0.4 of a breath too many: 7.6. The rate over the last minute is above 12 from
    // second 33 (30 s known) to second 107 (at 108 it is 12 exactly): 75 s or 1.25 min.
    Review review =
        SessionBuilder.ofSeconds(120).breathsEvery(3, 3, 60).breathsEvery(6, 66, 120).review();
    Metrics metrics = review.metrics();
    assertThat(metrics.hyperventilationMinutes().getAsDouble()).isCloseTo(1.25, within(1e-9));
    assertThat(metrics.interval().fastMinutes()).isCloseTo(0.95, within(1e-9));
    assertThat(metrics.interval().excessBreaths()).isCloseTo(7.6, within(1e-9));
    assertThat(rateAt(review, 60)).isCloseTo(20, within(1e-9));
    assertThat(rateAt(review, 90)).isCloseTo(15, within(1e-9));
    assertThat(rateAt(review, 120)).isCloseTo(10, within(1e-9));
  }

  @Test
  void minuteVolumeComesFromTheBreathsThatBeginAnInterval() {
    // 400 and 600 mL over 12 s: 1 L in 0.2 min = 5 L/min. The last breath begins no interval.
    Metrics metrics =
        SessionBuilder.ofSeconds(18)
            .squeeze(0, 1.0, "400 mL")
            .squeeze(6, 1.1, "600 mL")
            .squeeze(12, 0.9, "500 mL")
            .review()
            .metrics();
    assertThat(metrics.volume().litresPerMinute().getAsDouble()).isCloseTo(5, within(1e-9));
    assertThat(metrics.volume().medianMillilitres()).hasValue(500);
    assertThat(metrics.inspiration().medianSeconds().getAsDouble()).isCloseTo(1, within(1e-9));
    assertThat(metrics.inspiration().goodFraction()).hasValue(1);
  }

  @Test
  void suctionOverItsLimitIsExcusedUpToTheLimit() {
    // Suction 5 to 25: 20 s, limit 15 s; 60 - 15 = 45 s.
    Metrics metrics = SessionBuilder.ofSeconds(60).suction(5, 25).review().metrics();
    assertThat(metrics.effectiveSeconds()).isEqualTo(45);
    assertThat(metrics.suctions().get(0).lengthSeconds()).isEqualTo(20);
    assertThat(metrics.suctions().get(0).withinLimit()).isFalse();
  }

  private static double rateAt(Review review, int second) {
    return review.rollingRate().stream()
        .filter(p -> p.atNanos() == second * 1_000_000_000L)
        .findFirst()
        .orElseThrow()
        .perMinute();
  }
}
