package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Figure;
import squeezewell.review.say.FigureValue;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * Every figure of the list has something beside it that it must equal: the field of that name in
 * the review as JSON, or a value worked by hand. A figure that is added without either fails.
 */
class MetricReferencesTest {
  /** Each squeeze: when it began and for how long. */
  private static final double[][] SQUEEZES = {
    {0, 0.8}, {6, 0.9}, {12, 1.0}, {36, 1.1}, {42, 1.2}, {60, 1.4}, {80, 1.0}, {86, 1.0}
  };

  /**
   * By hand, of the two minutes of {@link #eventful}, by AHA 2025: at most 15 s of suction, 10 s of
   * a check and 10 s without a breath.
   *
   * <p>Suction lasts from 14 to 34 s, 5 s too long, so 15 s are excused; the check from 50 to 57 s,
   * all excused: 120 − 15 − 7 = 98 s. From the end of a squeeze to the next squeeze: 13.0 to 36 s,
   * less 15 s is 8 s; 43.2 to 60 s, less 7 s is 9.8 s; 61.4 to 80 s, 18.6 s, 8.6 s too long; 87 to
   * 120 s, 33 s, 23 s too long: 31.6 s in all. The squeezes in order: 0.8, 0.9, 1.0, 1.0, 1.0, 1.1,
   * 1.2, 1.4 s; a quarter of the way from the first to the eighth is 1.75 steps on, 0.9 + 0.75 ×
   * 0.1 = 0.975 s; three quarters are 5.25 steps, 1.1 + 0.25 × 0.1 = 1.125 s.
   */
  private static final Map<String, Double> BY_HAND =
      Map.of(
          "time.fromSeconds", 0.0,
          "time.toSeconds", 120.0,
          "time.sessionSeconds", 120.0,
          "time.effectiveSeconds", 98.0,
          "gap.overLimitSeconds", 31.6,
          "inspiration.lowerQuartileSeconds", 0.975,
          "inspiration.upperQuartileSeconds", 1.125,
          "pulseChecks.count", 1.0,
          "suctions.count", 1.0);

  /** Where the JSON has it under another name. */
  private static final Map<String, String> OTHERWISE_NAMED =
      Map.of("unprompted.test", "unprompted.test.outcome");

  private static final Map<String, String> OF_A_PART =
      Map.of("time.fromSeconds", "fromSeconds", "time.toSeconds", "toSeconds");

  private static Session session(
      Situation situation, Prompting prompting, int seconds, Object[]... facts) {
    return session(PatientGroup.ADULT, situation, prompting, seconds, facts);
  }

  private static Session session(
      PatientGroup patient,
      Situation situation,
      Prompting prompting,
      int seconds,
      Object[]... facts) {
    Guidance guidance = Reports.edition().find(patient, situation).orElseThrow();
    PracticePlan plan = new PracticePlan(guidance, 0, seconds * Reports.SECOND, 0).with(prompting);
    List<SessionEvent> events = new ArrayList<>();
    for (Object[] fact : facts) {
      long at = Math.round(((Number) fact[0]).doubleValue() * Reports.SECOND);
      String detail = fact.length > 2 ? (String) fact[2] : "";
      events.add(SessionEvent.of(1, at, (EventType) fact[1], detail));
    }
    events.sort((a, b) -> Long.compare(a.atNanos(), b.atNanos()));
    List<SessionEvent> numbered = new ArrayList<>();
    for (SessionEvent event : events) {
      numbered.add(
          SessionEvent.of(numbered.size() + 1, event.atNanos(), event.what(), event.detail()));
    }
    return new Session(
        new SessionHeader(
            Reports.START, SessionHeader.Origin.LIVE, "Trainee 7", Reports.edition(), plan),
        numbered,
        List.of());
  }

  private static Object[] fact(double at, EventType what, String... detail) {
    return detail.length == 0 ? new Object[] {at, what} : new Object[] {at, what, detail[0]};
  }

  /** Squeezes with volumes, suction, a check, a time in which the program stood still. */
  private static Session eventful() {
    List<Object[]> facts = new ArrayList<>();
    for (double[] squeeze : SQUEEZES) {
      facts.add(fact(squeeze[0], EventType.BREATH));
      facts.add(fact(squeeze[0] + squeeze[1], EventType.BREATH_END, "500 mL"));
    }
    facts.add(fact(14, EventType.SUCTION));
    facts.add(fact(34, EventType.SUCTION_END));
    facts.add(fact(50, EventType.PULSE_CHECK));
    facts.add(fact(57, EventType.PULSE_CHECK_END));
    facts.add(fact(120, EventType.FINISH));
    return session(
        Situation.PULSE_NO_BREATHING, Prompting.THROUGHOUT, 120, facts.toArray(Object[][]::new));
  }

  private static Session test() {
    List<Object[]> facts = new ArrayList<>();
    facts.add(fact(0, EventType.PROMPTS_OFF, "test"));
    for (double at = 0; at < 119; at += 6.25) {
      facts.add(fact(at, EventType.BREATH));
    }
    facts.add(fact(20, EventType.HOLE, "1.5 s"));
    facts.add(fact(120, EventType.FINISH));
    return session(
        Situation.PULSE_NO_BREATHING, Prompting.NONE, 120, facts.toArray(Object[][]::new));
  }

  private static Session cycles() {
    List<Object[]> facts = new ArrayList<>();
    for (int k = 0; k < 90; k++) {
      facts.add(fact(0.55 * k + 4 * (k / 30), EventType.COMPRESSION));
      if (k % 30 == 29) {
        facts.add(fact(0.55 * k + 4 * (k / 30) + 1, EventType.BREATH));
        facts.add(fact(0.55 * k + 4 * (k / 30) + 2.5, EventType.BREATH));
      }
    }
    facts.add(fact(120, EventType.FINISH));
    return session(
        Situation.ARREST_NO_ADVANCED_AIRWAY,
        Prompting.THROUGHOUT,
        120,
        facts.toArray(Object[][]::new));
  }

  /** Three to one: 90 compressions and 30 breaths, 120 events a minute. */
  private static Session newborn() {
    List<Object[]> facts = new ArrayList<>();
    for (int k = 0; k < 120; k++) {
      facts.add(fact(0.5 * k, k % 4 == 3 ? EventType.BREATH : EventType.COMPRESSION));
    }
    facts.add(fact(60, EventType.FINISH));
    return session(
        PatientGroup.NEWBORN,
        Situation.ARREST_NO_ADVANCED_AIRWAY,
        Prompting.THROUGHOUT,
        60,
        facts.toArray(Object[][]::new));
  }

  /** Breaths that slow down by a tenth a minute in one long silence, and a check when due. */
  private static Session slowing() {
    List<Object[]> facts = new ArrayList<>();
    facts.add(fact(1, EventType.PROMPTS_OFF, "level 3"));
    for (double at = 0; at < 358; at += 6 * (1 + at / 600)) {
      if (at < 120 || at > 129) {
        facts.add(fact(at, EventType.BREATH));
      }
    }
    facts.add(fact(121, EventType.PULSE_CHECK));
    facts.add(fact(128, EventType.PULSE_CHECK_END));
    facts.add(fact(360, EventType.FINISH));
    return session(
        Situation.PULSE_NO_BREATHING, Prompting.FADING, 360, facts.toArray(Object[][]::new));
  }

  private static List<Session> sessions() {
    return List.of(
        eventful(),
        test(),
        slowing(),
        cycles(),
        newborn(),
        Reports.changing(),
        Reports.steady(2),
        Reports.steady(200));
  }

  @Test
  void everyFigureHasItsTwinInTheJsonOrWasWorkedByHand() throws IOException {
    Collection<String> without = new TreeSet<>();
    Collection<String> compared = new TreeSet<>();
    Collection<String> names = new TreeSet<>();
    for (Session session : sessions()) {
      Review review = Reviewer.review(session);
      JsonObject json = json(review);
      check(Figures.of(review), json, review, without, compared);
      for (int part = 0; part < review.parts().size(); part++) {
        check(
            Figures.of(review.parts().get(part)),
            json.getAsJsonArray("parts").get(part).getAsJsonObject(),
            review.parts().get(part),
            without,
            compared);
      }
      Figures.of(review).forEach(m -> names.add(anyOfItsList(m.name())));
    }
    assertThat(without).isEmpty();
    // Each was compared where it has a value, too: not only empty with null.
    names.removeAll(compared);
    names.removeAll(BY_HAND.keySet());
    assertThat(names).isEmpty();
  }

  @Test
  void theFiguresThatTheJsonDoesNotHaveAreThoseWorkedByHand() {
    List<FigureValue> list = Figures.of(Reviewer.review(eventful()));
    BY_HAND.forEach(
        (name, value) -> {
          FigureValue metric =
              list.stream().filter(m -> m.name().equals(name)).findFirst().orElseThrow();
          assertThat(Double.parseDouble(metric.value().orElseThrow()))
              .as(name)
              .isCloseTo(value, within(1e-6));
        });
  }

  @Test
  void aFigureWithoutEitherIsFound() throws IOException {
    Review review = Reviewer.review(eventful());
    List<FigureValue> more = new ArrayList<>(Figures.of(review));
    more.add(new FigureValue("gap.newSeconds", Optional.of("1"), "s", OptionalInt.empty()));
    more.add(new FigureValue("pulseChecks.1.new", Optional.of("a-word"), "", OptionalInt.empty()));
    Collection<String> without = new TreeSet<>();
    check(more, json(review), review, without, new TreeSet<>());
    assertThat(without).containsExactly("gap.newSeconds", "pulseChecks.1.new");
  }

  private static JsonObject json(Review review) throws IOException {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      ReviewJson.write(review, json);
    }
    return JsonParser.parseString(text.toString()).getAsJsonObject();
  }

  private static void check(
      List<FigureValue> list,
      JsonObject json,
      Review review,
      Collection<String> without,
      Collection<String> compared) {
    for (FigureValue metric : list) {
      String name = metric.name();
      boolean differs = name.equals("asked.inspirationSeconds") && !review.parts().isEmpty();
      boolean listed = name.startsWith("pulseChecks.") || name.startsWith("suctions.");
      boolean inTheWhole = json.has("fromSeconds") && (listed || name.startsWith("holes."));
      if (differs || inTheWhole) {
        // What differs between parts is empty; checks, suction and holes of a part are not told.
        continue;
      }
      Optional<JsonElement> twin =
          twin(json, OTHERWISE_NAMED.getOrDefault(name, OF_A_PART.getOrDefault(name, name)));
      if (twin.isEmpty()) {
        if (!BY_HAND.containsKey(name)) {
          without.add(name);
        }
        continue;
      }
      same(metric, twin.get());
      if (!twin.get().isJsonNull()) {
        compared.add(anyOfItsList(name));
      }
    }
  }

  private static String anyOfItsList(String name) {
    return name.replaceFirst("\\.\\d+\\.", ".n.");
  }

  /** The field of that name, null if what holds it is; empty if there is no such field. */
  private static Optional<JsonElement> twin(JsonObject json, String name) {
    JsonElement at = json;
    for (String step : name.split("\\.", -1)) {
      if (at.isJsonNull()) {
        return Optional.of(at);
      }
      if (at instanceof JsonArray array && step.matches("\\d+")) {
        at = array.get(Integer.parseInt(step) - 1);
      } else if (at instanceof JsonObject object && object.has(step)) {
        at = object.get(step);
      } else {
        return Optional.empty();
      }
    }
    return at.isJsonNull() || at.isJsonPrimitive() ? Optional.of(at) : Optional.empty();
  }

  private static void same(FigureValue metric, JsonElement twin) {
    assertThat(metric.value().isEmpty()).as(metric.name()).isEqualTo(twin.isJsonNull());
    if (twin instanceof JsonPrimitive value) {
      String text = metric.value().orElseThrow();
      if (metric.isNumber()) {
        assertThat(Double.parseDouble(text))
            .as(metric.name())
            .isCloseTo(value.getAsDouble(), within(1e-6));
      } else {
        assertThat(text).as(metric.name()).isEqualTo(Figure.slug(value.getAsString()));
      }
    }
  }
}
