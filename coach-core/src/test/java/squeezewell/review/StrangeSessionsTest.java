package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.BreathMark;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.review.say.ReviewText;
import squeezewell.session.EventType;

/** Events in any order, as a file from elsewhere may hold them, must not stop a review. */
class StrangeSessionsTest {
  private static final Situation[] SITUATIONS = {
    Situation.PULSE_NO_BREATHING,
    Situation.ARREST_NO_ADVANCED_AIRWAY,
    Situation.ARREST_ADVANCED_AIRWAY
  };
  private static final EventType[] MOSTLY_BREATHS = {
    EventType.BREATH,
    EventType.BREATH,
    EventType.BREATH,
    EventType.BREATH,
    EventType.BREATH_END,
    EventType.BREATH_END
  };

  @Property(tries = 500)
  void anyOrderOfEventsCanBeReviewed(@ForAll @IntRange(max = 1_000_000) int seed)
      throws IOException {
    SplittableRandom random = new SplittableRandom(seed);
    SessionBuilder session =
        SessionBuilder.ofSeconds(1 + random.nextInt(200))
            .in(SITUATIONS[random.nextInt(SITUATIONS.length)])
            .countIn(random.nextInt(5));
    if (random.nextBoolean()) {
      session.live();
    }
    int count = random.nextInt(80);
    double at = 0;
    for (int n = 1; n <= count; n++) {
      // Steps of 0 put events at the same instant.
      at += random.nextInt(4) * 1.7;
      EventType[] kinds = random.nextInt(3) == 0 ? EventType.values() : MOSTLY_BREATHS;
      EventType what = kinds[random.nextInt(kinds.length)];
      if (what != EventType.RETRACT || n > 1) {
        session.event(at, what, detail(what, n, random));
      } else {
        session.event(at, EventType.BREATH, "");
      }
    }
    Review review = session.review();
    review
        .metrics()
        .prompts()
        .ifPresent(
            prompts -> {
              assertThat(prompts.met() + prompts.extra() + prompts.unprompted())
                  .isEqualTo(review.metrics().breathCount());
              assertThat(review.breaths().stream().filter(BreathMark::unprompted))
                  .hasSize(prompts.unprompted());
              assertThat(review.breaths().stream().filter(BreathMark::extra))
                  .hasSize(prompts.extra());
              assertThat(prompts.met() + prompts.missed() + prompts.forgiven())
                  .isEqualTo(prompts.given());
            });
    assertThat(review.headline()).isNotEmpty();
    assertThat(ReviewText.write(review)).doesNotContain("NaN", "Infinity", "null");
    StringBuilder json = new StringBuilder();
    ReviewJson.write(review, json);
    assertThat(JsonParser.parseString(json.toString()).isJsonObject()).isTrue();
  }

  private static String detail(EventType what, int number, SplittableRandom random) {
    return switch (what) {
      case RETRACT -> Integer.toString(1 + random.nextInt(number - 1));
      case HOLE -> random.nextInt(9) == 0 ? "a while" : random.nextInt(20) + ".5 s";
      case BREATH_END -> random.nextBoolean() ? "450 mL" : "";
      default -> "";
    };
  }
}
