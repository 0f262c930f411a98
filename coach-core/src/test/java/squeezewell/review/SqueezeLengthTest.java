package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.review.measure.Metrics;
import squeezewell.session.Session;

/** How long a good squeeze may be (our own choice), worked by hand. */
class SqueezeLengthTest {
  // 1 s: 0.8 and 1.3 s. 0.5 s: 0.5 - 0.15 = 0.35 (below 0.4) and 0.5 + 0.15 = 0.65 (as 1.3 x 0.5).
  // 0.3 s: 0.15 and 0.45. 0.1 s: never below 0.
  @ParameterizedTest
  @CsvSource({"1, 0.8, 1.3", "0.5, 0.35, 0.65", "0.3, 0.15, 0.45", "0.1, 0, 0.25"})
  void aShortSqueezeHasRoomForTheHand(String asked, double shortest, double longest) {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.guidance(TestPlans.steady("2", asked), TestPlans.usualLimits()),
            0,
            TestPlans.MINUTE,
            0);
    Metrics.Inspiration squeeze =
        Reviewer.review(new Session(TestPlans.header(plan), List.of(), List.of()))
            .metrics()
            .inspiration();
    assertThat(squeeze.shortestGoodSeconds()).isCloseTo(shortest, within(1e-9));
    assertThat(squeeze.longestGoodSeconds()).isCloseTo(longest, within(1e-9));
  }
}
