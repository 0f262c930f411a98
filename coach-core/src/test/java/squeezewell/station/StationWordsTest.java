package squeezewell.station;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.Paths;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.input.FileWord;
import squeezewell.station.file.Adjunct;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.Trigger;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.VentilationMode;

/** The bundles of the station's rooms hold what their classes say, all of it and no more. */
class StationWordsTest {
  private static final Pattern KEY = Pattern.compile("\"([a-z]+(?:[.-][a-z-]+)*\\.?)\"");

  @ParameterizedTest
  @ValueSource(strings = {"file", "run"})
  void everyKeyIsThereAndIsUsed(String room) throws IOException {
    Properties bundle = new Properties();
    Path file = Paths.get("src/main/resources/squeezewell/station", room, "words.properties");
    try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      bundle.load(reader);
    }
    Set<String> literals = literals(Paths.get("src/main/java/squeezewell/station", room));
    Set<String> used = new TreeSet<>();
    for (String key : bundle.stringPropertyNames()) {
      String stem = key.substring(0, key.lastIndexOf('.') + 1);
      if (literals.contains(key) || literals.contains(stem)) {
        used.add(key);
      }
    }
    assertThat(used).isEqualTo(new TreeSet<>(bundle.stringPropertyNames()));
    for (String literal : literals) {
      boolean isKey = bundle.keySet().stream().anyMatch(key -> startsAlike(literal, key));
      if (isKey && literal.indexOf('.') > 0 && !literal.endsWith(".")) {
        assertThat(bundle.stringPropertyNames()).contains(literal);
      }
    }
    for (String stem : literals) {
      for (String word : words(stem)) {
        assertThat(bundle.stringPropertyNames()).contains(stem + word);
      }
    }
  }

  /** The constants of which a key is made. */
  private static List<String> words(String stem) {
    FileWord[] constants =
        switch (stem) {
          case "adjunct." -> Adjunct.values();
          case "phase." -> StationPhase.values();
          case "mode." -> StationMode.values();
          case "ventilation." -> VentilationMode.values();
          case "outcome." -> StationResult.Outcome.values();
          case "doubt.step." ->
              Stream.of(Trigger.Kind.values())
                  // An order can always be given.
                  .filter(kind -> kind != Trigger.Kind.ORDER)
                  .toArray(FileWord[]::new);
          default -> new FileWord[0];
        };
    return Stream.of(constants).map(FileWord::word).collect(Collectors.toList());
  }

  private static boolean startsAlike(String literal, Object key) {
    int dot = literal.indexOf('.');
    return dot > 0 && key.toString().startsWith(literal.substring(0, dot + 1));
  }

  private static Set<String> literals(Path room) throws IOException {
    Set<String> literals = new TreeSet<>();
    List<Path> sources = new ArrayList<>();
    try (Stream<Path> files = Files.list(room)) {
      files.forEach(sources::add);
    }
    for (Path source : sources) {
      Matcher matcher = KEY.matcher(new String(Files.readAllBytes(source), StandardCharsets.UTF_8));
      while (matcher.find()) {
        literals.add(matcher.group(1));
      }
    }
    return literals;
  }
}
