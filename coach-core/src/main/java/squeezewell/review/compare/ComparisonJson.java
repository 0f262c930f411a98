package squeezewell.review.compare;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import squeezewell.review.say.Figure;
import squeezewell.review.say.Review;

/**
 * Writes a comparison as one JSON object for programs. Numbers are plain decimals of at most six
 * places; what can't be computed is null.
 */
public final class ComparisonJson {
  private final JsonWriter json;

  private ComparisonJson(JsonWriter json) {
    this.json = json;
  }

  /**
   * Writes a comparison as the next value of {@code json}.
   *
   * @param labelA what names A for people
   * @param a the review of A
   * @param labelB what names B for people
   * @param b the review of B
   */
  public static void write(
      Comparison comparison, String labelA, Review a, String labelB, Review b, JsonWriter json)
      throws IOException {
    boolean nulls = json.getSerializeNulls();
    json.setSerializeNulls(true);
    new ComparisonJson(json).write(comparison, labelA, a, labelB, b);
    json.setSerializeNulls(nulls);
  }

  private void write(Comparison comparison, String labelA, Review a, String labelB, Review b)
      throws IOException {
    json.beginObject();
    json.name("sentence").value(comparison.sentence());
    practice("a", labelA, a);
    practice("b", labelB, b);
    texts("askedDifferently", comparison.askedDifferently());
    json.name("rows").beginArray();
    for (Comparison.Row row : comparison.rows()) {
      row(row);
    }
    json.endArray();
    texts("targets", comparison.targets());
    json.endObject();
  }

  private void practice(String name, String label, Review review) throws IOException {
    json.name(name).beginObject();
    json.name("label").value(label);
    json.name("headline").value(review.headline());
    json.name("protocol").value(review.asked().protocolId());
    json.name("patient").value(review.asked().patient());
    json.name("situation").value(review.asked().situation());
    number("practisedSeconds", OptionalDouble.of(review.asked().practisedNanos() / 1e9));
    texts("notes", review.notes());
    json.endObject();
  }

  private void row(Comparison.Row row) throws IOException {
    json.beginObject();
    json.name("code").value(row.code());
    json.name("label").value(row.label());
    json.name("unit").value(row.unit());
    side("a", row.a());
    side("b", row.b());
    number("difference", row.difference());
    json.endObject();
  }

  private void side(String name, Comparison.Side side) throws IOException {
    json.name(name).beginObject();
    json.name("text").value(side.text());
    number("value", side.value());
    json.name("observations");
    OptionalInt observations = side.observations();
    if (observations.isPresent()) {
      json.value(observations.getAsInt());
    } else {
      json.nullValue();
    }
    json.name("outside").value(side.outside().orElse(null));
    json.endObject();
  }

  private void texts(String name, List<String> texts) throws IOException {
    json.name(name).beginArray();
    for (String text : texts) {
      json.value(text);
    }
    json.endArray();
  }

  private void number(String name, OptionalDouble number) throws IOException {
    json.name(name);
    if (number.isPresent()) {
      json.jsonValue(Figure.plain(number.getAsDouble()));
    } else {
      json.nullValue();
    }
  }
}
