package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.stream.JsonWriter;
import de.siegmar.fastcsv.reader.CsvReader;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.review.Reviewer;
import squeezewell.review.say.FigureValue;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;

class MetricCsvTest {
  @Test
  void theFiguresAreThoseWorkedByHand() {
    // 20 breaths of 1 s at 0, 6, ... 114 s against prompts at the same instants.
    List<List<String>> rows = rows(Reviewer.review(Reports.steady(6)));
    assertThat(rows.get(0)).containsExactly("part", "name", "value", "unit", "observations");
    assertThat(rows.get(1)).containsExactly("whole", "caution", Caution.TEXT, "", "");
    assertThat(rows)
        .contains(
            List.of("whole", "breaths.count", "20", "1", ""),
            List.of("whole", "rate.overallPerMinute", "10", "/min", "19"),
            List.of("whole", "interval.meanSeconds", "6", "s", "19"),
            List.of("whole", "interval.sdSeconds", "0", "s", "19"),
            List.of("whole", "interval.inRangeCount", "19", "1", "19"),
            List.of("whole", "prompts.met", "20", "1", "20"),
            List.of("whole", "inspiration.meanSeconds", "1", "s", "20"),
            List.of("whole", "verdict.outcome", "held", "", ""));
  }

  @Test
  void whatCanNotBeComputedIsEmpty() {
    List<List<String>> rows = rows(Reviewer.review(Reports.steady(200)));
    assertThat(rows)
        .contains(
            List.of("whole", "breaths.count", "1", "1", ""),
            List.of("whole", "interval.meanSeconds", "", "s", "0"),
            List.of("whole", "drift.percentPerMinute", "", "%/min", "0"),
            List.of("whole", "volume.medianMillilitres", "", "mL", "0"),
            List.of("whole", "compressions.count", "", "1", ""));
  }

  @Test
  void aChangedRhythmHasRowsForTheWholeAndEachPart() {
    Review review = Reviewer.review(Reports.changing());
    List<List<String>> rows = rows(review);
    assertThat(rows.stream().skip(1).map(r -> r.get(0)).distinct())
        .containsExactly("whole", "1", "2");
    assertThat(rows)
        .contains(
            List.of("whole", "asked.intervalSeconds", "", "s", ""),
            List.of("1", "asked.intervalSeconds", "6", "s", ""),
            List.of("1", "asked.situation", "pulse-not-breathing", "", ""),
            List.of("1", "time.toSeconds", "30", "s", ""),
            List.of("2", "time.fromSeconds", "30", "s", ""),
            List.of("2", "asked.situation", "no-pulse-no-advanced-airway", "", ""),
            List.of("2", "interval.fastMinutes", "", "min", "0"));
  }

  /** The names are those of the JSON, so the same name must mean the same there. */
  @ParameterizedTest
  @ValueSource(doubles = {2, 5, 6, 7.4, 200})
  void theSameNameHasTheSameValueAsInTheReviewAsJson(double every) throws IOException {
    Review review = Reviewer.review(Reports.steady(every));
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      ReviewJson.write(review, json);
    }
    JsonObject json = JsonParser.parseString(text.toString()).getAsJsonObject();
    int compared = 0;
    for (FigureValue metric : Figures.of(review)) {
      List<String> path = List.of(metric.name().split("\\.", -1));
      JsonElement group = json.get(path.get(0));
      if (path.size() != 2
          || group == null
          || !group.isJsonObject()
          || !group.getAsJsonObject().has(path.get(1))
          || !metric.isNumber()) {
        continue;
      }
      JsonElement value = group.getAsJsonObject().get(path.get(1));
      assertThat(metric.value().isEmpty()).as(metric.name()).isEqualTo(value.isJsonNull());
      if (!value.isJsonNull()) {
        assertThat(Double.parseDouble(metric.value().orElseThrow()))
            .as(metric.name())
            .isCloseTo(value.getAsDouble(), within(1e-6));
      }
      compared++;
    }
    assertThat(compared).isGreaterThan(45);
  }

  @Test
  void theNamesAreTheSameForEveryPractice() {
    assertThat(names(Reports.steady(200)))
        .isEqualTo(names(Reports.steady(2)))
        .doesNotHaveDuplicates();
  }

  private static List<String> names(squeezewell.session.Session session) {
    return Figures.of(Reviewer.review(session)).stream()
        .map(FigureValue::name)
        .filter(name -> !name.startsWith("pulseChecks."))
        .collect(Collectors.toList());
  }

  static List<List<String>> rows(Review review) {
    try (CsvReader csv = CsvReader.builder().build(ReviewCsv.figures(review))) {
      return csv.stream().map(r -> r.getFields()).collect(Collectors.toList());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }
}
