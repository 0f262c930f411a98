package squeezewell.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RenderCommandTest {
  @TempDir Path folder;
  private Path wav;
  private Path cues;

  @BeforeEach
  void nameFiles() {
    wav = folder.resolve("track.wav");
    cues = folder.resolve("cues.json");
  }

  @Test
  void squeezesStandEverySixSecondsFromZero() throws Exception {
    CliRun run = render("--minutes", "1", "--rate", "48000");
    assertThat(run.code()).isZero();
    assertThat(run.out()).isEmpty();
    JsonObject json = JsonParser.parseString(Files.readString(cues)).getAsJsonObject();
    assertThat(json.get("sampleRate").getAsInt()).isEqualTo(48_000);
    // One breath every 6 s in one minute: 0, 6, ... 54.
    List<BigDecimal> expected = new ArrayList<>();
    for (int k = 0; k < 10; k++) {
      expected.add(BigDecimal.valueOf(6L * k));
    }
    assertThat(at(json, "squeeze")).containsExactlyElementsOf(expected);
  }

  @Test
  void compressionsStandAtExactDecimalSeconds() throws Exception {
    render("--minutes", "0.1", "--situation", "arrest-advanced-airway");
    JsonObject json = JsonParser.parseString(Files.readString(cues)).getAsJsonObject();
    // 110 a minute: the k-th at 60 k / 110 s, to the nanosecond; 60 / 110 = 0.545454545...
    assertThat(at(json, "compress").subList(0, 4))
        .containsExactly(
            BigDecimal.ZERO,
            new BigDecimal("0.545454545"),
            new BigDecimal("1.090909091"),
            new BigDecimal("1.636363636"));
  }

  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void theSoundIsAFileThatOthersCanRead(int rate) throws Exception {
    render("--minutes", "0.1", "--rate", Integer.toString(rate));
    AudioFileFormat format = AudioSystem.getAudioFileFormat(wav.toFile());
    assertThat(format.getType()).isEqualTo(AudioFileFormat.Type.WAVE);
    assertThat(format.getFormat().getSampleRate()).isEqualTo(rate);
    assertThat(format.getFrameLength()).isGreaterThanOrEqualTo(6 * rate);
  }

  @Test
  void aFileThatIsThereIsKeptUnlessForced() throws Exception {
    Files.writeString(wav, "precious");
    CliRun refused = render("--minutes", "0.1");
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("--out").contains("--force");
    assertThat(wav).hasContent("precious");
    assertThat(cues).doesNotExist();
    assertThat(render("--minutes", "0.1", "--force").code()).isZero();
    assertThat(Files.size(wav)).isGreaterThan(100_000);
  }

  @Test
  void oneFileCanNotBeBoth() throws Exception {
    Files.createDirectories(folder.resolve("sub"));
    CliRun run =
        CliRun.of("render", "--out", wav.toString(), "--cues", folder + "/sub/../track.wav");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("another file than that of --cues");
    assertThat(wav).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "22050", "-48000", "48000.0", "abc", "99999999999"})
  void aBadRateIsBadInput(String rate) {
    CliRun run = render("--rate", rate, "--minutes", "0.1");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--rate is " + rate);
    assertThat(folder).isEmptyDirectory();
  }

  @Test
  void aTrackTooLongForItsFormatIsBadInput() {
    CliRun run = render("--minutes", "1440");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--minutes").contains("WAV");
  }

  @Test
  void aFolderThatIsNotThereIsRefusedBeforeAnythingIsWritten() throws Exception {
    CliRun run =
        CliRun.of("render", "--minutes", "0.1", "--out", folder.resolve("no/a.wav").toString());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--out is ", "a.wav", "a folder that is there");
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files).isEmpty();
    }
  }

  private CliRun render(String... more) {
    List<String> words = new ArrayList<>(List.of("render", "--no-count-in"));
    words.addAll(List.of(more));
    words.addAll(List.of("--out", wav.toString(), "--cues", cues.toString()));
    return CliRun.of(words.toArray(new String[0]));
  }

  private static List<BigDecimal> at(JsonObject json, String kind) {
    List<BigDecimal> at = new ArrayList<>();
    JsonArray cues = json.getAsJsonArray("cues");
    for (JsonElement cue : cues) {
      if (cue.getAsJsonObject().get("kind").getAsString().equals(kind)) {
        at.add(cue.getAsJsonObject().get("atSeconds").getAsBigDecimal());
      }
    }
    return at;
  }

  @Test
  void aCountInComesFirstAndChecksAreSilent() throws Exception {
    Path cues = folder.resolve("checks.json");
    CliRun.of("render", "--minutes", "3", "--cues", cues.toString());
    JsonObject json = JsonParser.parseString(Files.readString(cues)).getAsJsonObject();
    assertThat(json.get("firstPromptAtSeconds").getAsInt()).isEqualTo(3);
    assertThat(at(json, "squeeze").get(0)).isEqualByComparingTo("3");
    // Due 2 minutes after the first prompt; 10 s are for the check (AHA).
    assertThat(at(json, "squeeze"))
        .noneMatch(t -> t.doubleValue() >= 123 && t.doubleValue() < 133)
        .anyMatch(t -> t.doubleValue() == 133);
  }

  @Test
  @DisplayName(
      "At a due check the call stands alone: it is given, and no squeeze or release with it")
  void theCallOfADueCheckStandsAlone() throws Exception {
    Path cues = folder.resolve("call.json");
    CliRun.of("render", "--minutes", "5", "--cues", cues.toString());
    JsonObject json = JsonParser.parseString(Files.readString(cues)).getAsJsonObject();
    // Due every 2 minutes of practice (AHA course texts), after the count-in of 3 s; the second is
    // counted on from the first.
    assertThat(at(json, "pulse-check-due")).extracting(t -> t.intValueExact()).contains(123, 243);
    assertThat(at(json, "squeeze")).noneMatch(t -> t.intValue() == 123 || t.intValue() == 243);
    assertThat(at(json, "release")).noneMatch(t -> t.intValue() == 123 || t.intValue() == 243);
  }

  @Test
  void aPracticeWithAFaultIsPlayed() throws Exception {
    Path sound = folder.resolve("fast.wav");
    assertThat(
            CliRun.of("render", "--minutes", "1", "--fault", "fast", "--out", sound.toString())
                .code())
        .isZero();
    assertThat(Files.size(sound)).isGreaterThan(60 * 48_000 * 2);
    assertThat(CliRun.of("render", "--fault", "no-such", "--out", sound.toString()).code())
        .isEqualTo(2);
  }
}
