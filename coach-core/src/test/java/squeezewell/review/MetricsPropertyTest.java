package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;

/** What must hold of the figures of every session. */
class MetricsPropertyTest {
  private static final double LENGTH = 200;

  @Property(tries = 200)
  void thePartsAddUp(@ForAll @IntRange(max = 1_000_000) int seed) {
    Review review = withHolds(breaths(seed), seed).review();
    Metrics metrics = review.metrics();
    metrics
        .prompts()
        .ifPresent(
            prompts -> {
              assertThat(prompts.met() + prompts.extra()).isEqualTo(metrics.breathCount());
              assertThat(prompts.met() + prompts.missed() + prompts.forgiven())
                  .isEqualTo(prompts.given());
            });
    Metrics.Interval interval = metrics.interval();
    assertThat(interval.inRangeCount() + interval.fastCount() + interval.slowCount())
        .isEqualTo(interval.count());
    interval.inRangeFraction().ifPresent(f -> assertThat(f).isBetween(0.0, 1.0));
    interval.timeInRangeFraction().ifPresent(f -> assertThat(f).isBetween(0.0, 1.0));
    assertThat(metrics.gap().longestSeconds()).isLessThanOrEqualTo(metrics.gap().longestSeconds());
    assertThat(review.findings()).hasSizeBetween(1, 6);
    assertThat(review.findings())
        .isSortedAccordingTo((a, b) -> a.severity().compareTo(b.severity()));
  }

  @Property(tries = 200)
  void theMeanOfRatesIsNeverBelowTheRate(@ForAll @IntRange(max = 1_000_000) int seed) {
    Review review = session(breaths(seed)).review();
    List<Double> rates =
        review.intervals().stream().map(i -> 60 / i.seconds()).collect(Collectors.toList());
    double mean = rates.stream().mapToDouble(r -> r).average().orElse(0);
    review
        .metrics()
        .rate()
        .overallPerMinute()
        .ifPresent(r -> assertThat(mean).isGreaterThanOrEqualTo(r - 1e-9));
  }

  @Property(tries = 200)
  void theRateOverAMinuteThatHoldsAllBreathsIsTheRate(@ForAll @IntRange(max = 1_000_000) int seed) {
    // Breaths within the first 60 s: at second 60 the window holds them all.
    double[] breaths = breathsWithin(60, seed);
    Review review = SessionBuilder.ofSeconds(60).breaths(breaths).review();
    review.rollingRate().stream()
        .filter(p -> p.atNanos() == SessionBuilder.nanos(60))
        .forEach(
            p ->
                assertThat(p.perMinute())
                    .isCloseTo(
                        review.metrics().rate().overallPerMinute().getAsDouble(), within(1e-6)));
  }

  @Property(tries = 200)
  void leavingABreathOutNeverRaisesTheCount(@ForAll @IntRange(max = 1_000_000) int seed) {
    double[] breaths = breaths(seed);
    double[] fewer = java.util.Arrays.copyOf(breaths, breaths.length - 1);
    assertThat(countRate(fewer)).isLessThanOrEqualTo(countRate(breaths));
  }

  @Property(tries = 200)
  void aPauseNeverLengthensTheNetGap(@ForAll @IntRange(max = 1_000_000) int seed) {
    double[] breaths = breaths(seed);
    double net = session(breaths).review().metrics().gap().longestSeconds();
    // The pause moves the planned end, so the finish is set to the same instant.
    Review held =
        session(breaths)
            .pause(50, 70)
            .event(LENGTH, squeezewell.session.EventType.FINISH, "")
            .review();
    assertThat(held.metrics().gap().longestSeconds()).isLessThanOrEqualTo(net + 1e-9);
  }

  private static double countRate(double[] breaths) {
    return session(breaths).review().metrics().rate().countPerMinute().getAsDouble();
  }

  private static SessionBuilder session(double[] breaths) {
    return SessionBuilder.ofSeconds(LENGTH).breaths(breaths);
  }

  private static SessionBuilder withHolds(double[] breaths, int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double first = 20 + 30 * random.nextDouble();
    double second = 100 + 40 * random.nextDouble();
    return session(breaths)
        .suction(first, first + 25 * random.nextDouble())
        .pulseCheck(second, second + 15 * random.nextDouble());
  }

  private static double[] breaths(int seed) {
    return breathsWithin(LENGTH, seed);
  }

  private static double[] breathsWithin(double length, int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    TreeSet<Double> times = new TreeSet<>();
    int count = 1 + random.nextInt((int) (length / 4));
    for (int k = 0; k < count; k++) {
      times.add(Math.rint(1_000 * length * random.nextDouble()) / 1_000);
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
