package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.run.ExaminerLines;

class PreparedLinesTest {
  private static final Path FOLDER =
      Path.of("src", "main", "resources", "squeezewell", "audio", "voice", "examiner");

  @Test
  void everyLineOfABuiltInStationHasItsVoice() {
    List<String> silent = new ArrayList<>();
    for (Station station : StationLibrary.stations()) {
      for (String text : ExaminerLines.all(station)) {
        if (!PreparedLines.find(text).isPresent()) {
          silent.add(text);
        }
      }
    }
    assertThat(silent)
        .as("add these to src/main/voice/examiner.txt and run: render.sh examiner")
        .isEmpty();
  }

  @Test
  void noVoiceIsLeftOverOrMissingFromTheList() throws IOException {
    Set<String> said = new TreeSet<>();
    for (Station station : StationLibrary.stations()) {
      said.addAll(ExaminerLines.all(station));
    }
    Path list = Path.of("src", "main", "voice", "examiner.txt");
    assertThat(Files.readAllLines(list, StandardCharsets.UTF_8)).containsExactlyElementsOf(said);
    Set<String> names = new TreeSet<>();
    said.forEach(text -> names.add(PreparedLines.name(text) + ".wav"));
    try (Stream<Path> files = Files.list(FOLDER)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(names);
    }
  }

  /** People speak English at 120 to 200 words a minute; a dead or cut rendering would not fit. */
  @Test
  void aLineLastsAsLongAsItsWordsTakeAndIsLoudEnough() {
    for (Station station : StationLibrary.stations()) {
      for (String text : ExaminerLines.all(station)) {
        SpokenLine line = PreparedLines.find(text).get();
        double seconds = line.nanos() / 1e9;
        double characters = text.length();
        assertThat(characters / seconds).as(text).isBetween(6.0, 24.0);
        assertThat(peak(line)).as(text).isBetween(0.5, 0.98);
        assertThat(level(line)).as(text).isBetween(0.05, 0.4);
      }
    }
  }

  @Test
  void anUnknownTextHasNone() {
    assertThat(PreparedLines.find("Nobody ever says this.")).isEmpty();
    assertThat(PreparedLines.find("../squeeze")).isEmpty();
    assertThat(PreparedLines.find("")).isEmpty();
  }

  /** The first digits of the SHA-256 of "abc" stand in FIPS 180-4's examples: ba7816bf 8f01cfea. */
  @Test
  void aFileIsNamedAfterTheHashOfItsText() {
    assertThat(PreparedLines.name("abc")).isEqualTo("ba7816bf8f01cfea");
  }

  /**
   * ITU-T G.711, table 2: the decision and output values of mu-law, here on 16 bits (14-bit values
   * times four). 0xFF and 0x7F are zero, 0x80 the largest positive value 8,031, 0x00 the largest
   * negative.
   */
  @ParameterizedTest
  @CsvSource({
    "FF, 0",
    "7F, 0",
    "FE, 8",
    "EF, 132",
    "DF, 396",
    "8F, 16764",
    "80, 32124",
    "00, -32124",
    "7E, -8"
  })
  void muLawIsReadAsPublished(String code, short expected) {
    assertThat(WavReader.ofMuLaw((byte) Integer.parseInt(code, 16))).isEqualTo(expected);
  }

  private static double peak(SpokenLine line) {
    double peak = 0;
    for (int i = 0; i < line.frames(); i++) {
      peak = Math.max(peak, Math.abs(line.at(i)));
    }
    return peak;
  }

  private static double level(SpokenLine line) {
    double sum = 0;
    for (int i = 0; i < line.frames(); i++) {
      sum += line.at(i) * line.at(i);
    }
    return Math.sqrt(sum / line.frames());
  }
}
