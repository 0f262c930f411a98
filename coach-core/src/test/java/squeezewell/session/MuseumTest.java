package squeezewell.session;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.input.BadInputException;
import squeezewell.review.Reviewer;
import squeezewell.review.say.ReviewJson;
import squeezewell.station.run.StationJson;
import squeezewell.station.run.StationResult;

/** Files of format 1 are read for ever, and say what they said when they were new. */
final class MuseumTest {
  private static final Path MUSEUM = Path.of("src/test/resources/squeezewell/session/museum");

  static Stream<Path> exhibits() throws IOException {
    try (Stream<Path> files = Files.list(MUSEUM)) {
      return files.filter(f -> f.toString().endsWith(".jsonl")).sorted().toList().stream();
    }
  }

  @Test
  void noneHasGoneMissing() throws IOException {
    assertThat(exhibits()).hasSizeGreaterThanOrEqualTo(20);
  }

  @ParameterizedTest
  @MethodSource("exhibits")
  void aSessionOfFormatOneIsReviewedAsItWas(Path file) throws BadInputException, IOException {
    String name = file.getFileName().toString().replace(".jsonl", ".review.json");
    assertThat(told(file)).isEqualTo(Files.readString(MUSEUM.resolve(name)));
  }

  private static String told(Path file) throws BadInputException, IOException {
    Session session = SessionReader.read(file);
    StringWriter text = new StringWriter();
    JsonWriter json = new JsonWriter(text);
    json.setIndent(" ");
    json.beginObject();
    json.name("review");
    ReviewJson.write(Reviewer.review(session), json);
    if (StationResult.isIn(session.events())) {
      json.name("station").beginObject();
      StationJson.fields(StationResult.of(session.events()), json);
      json.endObject();
    }
    json.endObject();
    return text + "\n";
  }
}
