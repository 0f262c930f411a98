package squeezewell.review.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.Judgement;
import squeezewell.review.SessionBuilder;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;

/** What is found among many silences at once, against a walk through all of them. */
class ManySilencesTest {
  private static SessionBuilder session(Random random) {
    SessionBuilder session = SessionBuilder.ofSeconds(300);
    double at = 0;
    for (int k = 0; at < 290; k++) {
      at += 0.2 + random.nextInt(40) / 10.0;
      session.event(at, k % 2 == 0 ? EventType.PROMPTS_OFF : EventType.PROMPTS_ON, "level 1");
    }
    for (double breath = 0.1; breath < 295; breath += 1 + random.nextInt(90) / 10.0) {
      session.breaths(breath);
    }
    return session;
  }

  @Test
  void eachInstantIsFoundAsByAWalkThroughAll() {
    Random random = new Random(20);
    for (int run = 0; run < 20; run++) {
      Practice practice = Practice.of(session(random).build());
      List<UnpromptedSpan> silences = practice.silences();
      assertThat(silences).hasSizeGreaterThan(20);
      for (int k = 0; k < 3_000; k++) {
        long at = 100L * k * TestPlans.MILLI - TestPlans.SECOND;
        assertThat(practice.silentAt(at)).isEqualTo(silences.stream().anyMatch(s -> s.holds(at)));
      }
      for (UnpromptedSpan silence : silences) {
        assertThat(practice.silentAt(silence.startNanos())).isTrue();
        assertThat(practice.silentAt(silence.endNanos()))
            .isEqualTo(silences.stream().anyMatch(s -> s.holds(silence.endNanos())));
      }
    }
  }

  /** Counted from the marks of the review, one silence and one breath at a time. */
  @Test
  void theIntervalsInSilencesAreThoseThatAWalkThroughAllFinds() {
    Random random = new Random(21);
    for (int run = 0; run < 20; run++) {
      Review review = session(random).review();
      Unprompted unprompted = review.metrics().unprompted().orElseThrow();
      long judged =
          review.breaths().stream()
              .filter(b -> b.judgement() != Judgement.UNJUDGED)
              .filter(b -> review.silences().stream().anyMatch(s -> s.holds(b.startNanos())))
              .count();
      assertThat(unprompted.intervalCount()).isEqualTo(Math.toIntExact(judged));
      assertThat(unprompted.silences()).isEqualTo(review.silences().size());
    }
  }
}
