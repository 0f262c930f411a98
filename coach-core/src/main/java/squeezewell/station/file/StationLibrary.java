package squeezewell.station.file;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import squeezewell.input.BadInputException;

/** The stations that come with the program. */
public final class StationLibrary {
  private static final List<String> IDS =
      Arrays.asList(
          "adult-secretions",
          "adult-gag",
          "adult-vomit",
          "adult-pulse-lost",
          "adult-slow-breathing",
          "adult-no-rise",
          "adult-advanced-airway",
          "child-not-breathing",
          "infant-not-breathing",
          "newborn-first-breaths");

  private StationLibrary() {}

  /**
   * All stations, the plainest first.
   *
   * @throws IllegalStateException if the program's own files are damaged
   */
  public static List<Station> stations() {
    List<Station> stations = new ArrayList<>();
    for (String id : IDS) {
      try {
        stations.add(StationReader.readText(id + ".json", text(id)));
      } catch (BadInputException e) {
        throw new IllegalStateException("the built-in station " + id + " is damaged", e);
      }
    }
    return List.copyOf(stations);
  }

  /** The text of a station's file. */
  public static String text(String id) {
    String name = id + ".json";
    InputStream stream =
        Objects.requireNonNull(StationLibrary.class.getResourceAsStream(name), name);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
      return reader.lines().collect(Collectors.joining("\n"));
    } catch (IOException e) {
      throw new IllegalStateException("the built-in station " + id + " can't be read", e);
    }
  }
}
