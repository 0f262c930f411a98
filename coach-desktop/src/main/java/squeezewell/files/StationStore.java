package squeezewell.files;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationFile;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationReader;

/**
 * The stations that come with the program and those of a home. Immutable.
 *
 * @param stations built-in stations first, then the home's by file name
 * @param own identifiers of the home's stations
 * @param problems why a file is not among them; one sentence each
 */
public record StationStore(List<Station> stations, Set<String> own, List<String> problems) {
  public StationStore {
    stations = List.copyOf(stations);
    own = Set.copyOf(own);
    problems = List.copyOf(problems);
  }

  /** Reads what is there. A file that can't be used is left out, with its problem listed. */
  public static StationStore read(HomeFolder home) {
    List<Station> stations = new ArrayList<>(StationLibrary.stations());
    Set<String> own = new HashSet<>();
    List<String> problems = new ArrayList<>();
    for (Path file : files(home, problems)) {
      StationFile read = StationReader.checkFile(file);
      if (read.station().isEmpty()) {
        int more = read.faults().size() - 1;
        problems.add(
            read.faults().get(0).getMessage()
                + (more == 0
                    ? ""
                    : " (and " + more + " more, which “squeezewell station check” lists)"));
        continue;
      }
      Station station = read.station().get();
      if (stations.stream().anyMatch(s -> s.id().equals(station.id()))) {
        problems.add(file + ": id: “" + station.id() + "” is taken by another station");
        continue;
      }
      stations.add(station);
      own.add(station.id());
    }
    return new StationStore(stations, own, problems);
  }

  private static List<Path> files(HomeFolder home, List<String> problems) {
    List<Path> files = new ArrayList<>();
    if (!Files.isDirectory(home.stations())) {
      return files;
    }
    try (DirectoryStream<Path> found = Files.newDirectoryStream(home.stations(), "*.json")) {
      found.forEach(files::add);
    } catch (IOException e) {
      problems.add(home.stations() + ": the folder can't be listed (" + e.getMessage() + ")");
    }
    Collections.sort(files);
    return files;
  }
}
