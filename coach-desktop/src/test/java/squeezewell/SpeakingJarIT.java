package squeezewell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;

/**
 * The runnable jar holds only that part of the synthesiser which one voice needs. A station with
 * words of its own is run and its replay written as sound: they must be heard in it.
 */
class SpeakingJarIT {
  private static final int RATE = 48_000;
  private static final int HEADER = 44;

  @TempDir Path home;

  @Test
  void theJarSpeaksWordsOfAnOwnStation() throws Exception {
    Station gag =
        StationLibrary.stations().stream()
            .filter(s -> s.id().equals("adult-gag"))
            .findFirst()
            .get();
    Path station = home.resolve("own.json");
    Files.writeString(
        station, gag.definition().replace("No answer, no movement.", "The lorry stands still."));
    Path script = home.resolve("script.txt");
    Files.writeString(script, "1 done protect\n2 begin\n10 done response\n20 end\n");
    run("station", "run", station.toString(), "--script", script.toString(), "--home", home + "");
    List<Path> sessions;
    try (Stream<Path> files = Files.walk(home)) {
      sessions = files.filter(f -> f.toString().endsWith(".jsonl")).toList();
    }
    assertThat(sessions).hasSize(1);
    Path wav = home.resolve("replay.wav");
    run("review", sessions.get(0).toString(), "--replay-wav", wav.toString());
    ByteBuffer sound = ByteBuffer.wrap(Files.readAllBytes(wav)).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(sound.getInt(24)).isEqualTo(RATE);
    assertThat(level(sound, 8, 2)).as("nothing is prompted before").isZero();
    assertThat(level(sound, 10, 1)).as("the words").isGreaterThan(0.02);
    assertThat(level(sound, 15, 2)).as("nor after").isZero();
  }

  private static double level(ByteBuffer sound, int fromSecond, int seconds) {
    double sum = 0;
    for (int i = fromSecond * RATE; i < (fromSecond + seconds) * RATE; i++) {
      double sample = sound.getShort(HEADER + 2 * i) / 32_768.0;
      sum += sample * sample;
    }
    return Math.sqrt(sum / seconds / RATE);
  }

  private void run(String... arguments) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-jar", System.getProperty("squeezewell.jar")));
    command.addAll(Arrays.asList(arguments));
    Path said = home.resolve("said.txt");
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile()).start();
    assertThat(process.waitFor(90, TimeUnit.SECONDS)).isTrue();
    String text = Files.readString(said, StandardCharsets.UTF_8);
    assertThat(process.exitValue()).as(text).isZero();
  }
}
