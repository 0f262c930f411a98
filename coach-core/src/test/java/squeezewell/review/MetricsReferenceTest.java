package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Verdict;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.session.Session;

/**
 * Every figure of made-up practices against {@link NaiveMetrics}, which works each out again by its
 * definition. Both have to hold the same figures, so that one which is added needs its reference.
 */
class MetricsReferenceTest {
  private static final int SEEDS = 1_000;

  /** How many practices have to have had a value for a figure, not counted as unknown. */
  private static final int FEWEST = 10;

  @Test
  void everyFigureIsThatOfItsDefinition() {
    Map<String, Integer> compared = new TreeMap<>();
    for (long seed = 0; seed < SEEDS; seed++) {
      compare(seed, RandomPractice.measured(seed).build(), compared);
      if (seed % 4 == 0) {
        compare(seed, RandomPractice.cycles(seed).build(), compared);
      }
    }
    Set<String> rare =
        MetricFields.names().stream()
            .filter(name -> compared.getOrDefault(name, 0) < FEWEST)
            .collect(Collectors.toCollection(TreeSet::new));
    // What the rule says in words, and events of a newborn, are worked by hand only.
    assertThat(rare)
        .containsOnly(
            "compressions.eventsPerMinute", "unprompted.test.rule", "unprompted.test.reasons[]");
  }

  /** Names under which the JSON has a figure, where they differ from those of the record. */
  private static final Map<String, String> JSON_NAMES =
      Map.ofEntries(
          Map.entry("gap.longestNetSeconds", "gap.longestSeconds"),
          Map.entry("gap.longestNetAtSeconds", "gap.longestAtSeconds"),
          Map.entry("breaths.count", "breathCount"),
          Map.entry("breaths.firstSeconds", "firstBreathSeconds"),
          Map.entry("interval.inRangeFractionLow", "interval.inRangeLow"),
          Map.entry("interval.inRangeFractionHigh", "interval.inRangeHigh"),
          Map.entry("interval.hyperventilationMinutes", "hyperventilationMinutes"),
          Map.entry("unprompted.inRangeFractionLow", "unprompted.inRangeLow"),
          Map.entry("unprompted.inRangeFractionHigh", "unprompted.inRangeHigh"),
          Map.entry("holes.count", "holeCount"),
          Map.entry("holes.seconds", "holeSeconds"));

  /** What else the JSON holds: what was asked, words, and the marks that the figures rest on. */
  private static final Set<String> OTHERS =
      Set.of(
          "asked",
          "headline",
          "verdict",
          "findings",
          "notes",
          "found",
          "parts",
          "breathList",
          "silenceList",
          "promptList");

  /** So no figure stands in the JSON that is none of the record's, which have their reference. */
  @Test
  void everyNumberOfTheJsonIsAFigure() throws IOException {
    Set<String> written = new TreeSet<>();
    for (long seed = 0; seed < 60; seed++) {
      numbersAreFigures(RandomPractice.measured(seed).review(), written);
      numbersAreFigures(RandomPractice.cycles(seed).review(), written);
    }
    Set<String> notWritten = new TreeSet<>(MetricFields.names());
    notWritten.removeAll(written);
    assertThat(notWritten)
        .containsOnly(
            "sessionSeconds",
            "effectiveSeconds",
            "gap.overLimitSeconds",
            "drift.intervals",
            "inspiration.lowerQuartileSeconds",
            "inspiration.upperQuartileSeconds",
            "inspiration.goodCount",
            "inspiration.shortestGoodSeconds",
            "inspiration.longestGoodSeconds",
            "suctions[].limitSeconds",
            "compressions.pauseLimitSeconds",
            "compressions.cycles[].compressions",
            "compressions.cycles[].breaths",
            "compressions.cycles[].pauseSeconds");
  }

  private static void numbersAreFigures(Review review, Set<String> written) throws IOException {
    StringBuilder text = new StringBuilder();
    ReviewJson.write(review, text);
    Map<String, Object> figures = MetricFields.values(review);
    Map<String, JsonElement> json = new TreeMap<>();
    JsonParser.parseString(text.toString()).getAsJsonObject().entrySet().stream()
        .filter(group -> !OTHERS.contains(group.getKey()))
        .forEach(group -> flatten(group.getKey(), group.getValue(), json));
    json.forEach(
        (name, value) -> {
          String figure = JSON_NAMES.getOrDefault(name, name);
          figure += figure.endsWith("].length") ? "Outcome" : "";
          Object expected = figures.get(figure);
          if (figure.equals("compressions.cycles") && review.metrics().compressions().isPresent()) {
            expected = (double) review.metrics().compressions().get().cycles().size();
          }
          same(name, value, expected, review);
          written.add(figure.replaceAll("\\d+", ""));
        });
  }

  private static void same(String where, JsonElement value, Object expected, Review review) {
    assertThat(expected).as(where).isNotNull();
    if (value.isJsonNull()) {
      // A sum over intervals that were judged says nothing where none can be.
      boolean sum = review.asked().intervalSeconds().isEmpty() && expected.equals(0.0);
      assertThat(sum || expected.equals(MetricFields.NONE)).as(where).isTrue();
    } else if (expected instanceof Double number) {
      assertThat(value.getAsDouble()).as(where).isCloseTo(number, within(1e-6));
    } else {
      String word = expected.toString().toLowerCase(Locale.ROOT).replace('_', '-');
      assertThat(value.getAsString().toLowerCase(Locale.ROOT)).as(where).isEqualTo(word);
    }
  }

  private static void flatten(String name, JsonElement value, Map<String, JsonElement> into) {
    if (value.isJsonObject()) {
      value
          .getAsJsonObject()
          .entrySet()
          .forEach(e -> flatten(name + "." + e.getKey(), e.getValue(), into));
    } else if (value.isJsonArray()) {
      for (int i = 0; i < value.getAsJsonArray().size(); i++) {
        flatten(name + "[" + i + "]", value.getAsJsonArray().get(i), into);
      }
    } else {
      into.put(name, value);
    }
  }

  private static void compare(long seed, Session session, Map<String, Integer> compared) {
    Review review = Reviewer.review(session);
    Map<String, Object> found = MetricFields.values(review);
    found.keySet().removeIf(name -> name.startsWith("unprompted.test.r"));
    Map<String, Object> expected = NaiveMetrics.of(session, review);
    // A test that passed by its intervals fails for a fault of the breaths that is told beside it.
    if (Set.of("PASS", "REPEAT").contains(expected.getOrDefault("unprompted.test.outcome", ""))
        && review.verdict().outcome() == Verdict.Outcome.NOT_HELD) {
      assertThat(review.findings())
          .as("seed %s", seed)
          .anyMatch(f -> f.severity() == Severity.FAULT || f.code().equals("squeezes-uneven"));
      expected.put("unprompted.test.outcome", "FAIL");
    }
    Set<String> onlyOne = new TreeSet<>(found.keySet());
    onlyOne.addAll(expected.keySet());
    onlyOne.removeIf(name -> found.containsKey(name) && expected.containsKey(name));
    assertThat(onlyOne).as("seed %s", seed).isEmpty();
    found.forEach(
        (name, value) -> {
          String where = "seed " + seed + ", " + name;
          Object wanted = expected.get(name);
          if (value instanceof Double number && wanted instanceof Double other) {
            assertThat(number)
                .as(where)
                .isCloseTo(other, within(1e-8 * Math.max(1, Math.abs(other))));
          } else {
            assertThat(value).as(where).isEqualTo(wanted);
          }
          if (!MetricFields.NONE.equals(value)) {
            compared.merge(name.replaceAll("\\[\\d+]", "[]"), 1, Integer::sum);
          }
        });
  }
}
