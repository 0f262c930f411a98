package squeezewell.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationFile;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationReader;
import squeezewell.words.Wording;

/**
 * The stations that come with the program and those of a home. Immutable.
 *
 * @param stations built-in stations first, then the home's by file name
 * @param own identifiers of the home's stations
 * @param problems why a file is not among them; one sentence each
 */
public record StationStore(List<Station> stations, Set<String> own, List<String> problems) {
  private static final Wording WORDS = Wording.beside(StationStore.class);

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
    for (Path file : HomeFolder.jsonFiles(home.stations(), problems)) {
      StationFile read = StationReader.checkFile(file);
      if (read.station().isEmpty()) {
        problems.add(HomeFolder.firstOf(read.faults(), "station"));
        continue;
      }
      Station station = read.station().get();
      if (stations.stream().anyMatch(s -> s.id().equals(station.id()))) {
        problems.add(WORDS.say("id-taken", file, station.id()));
        continue;
      }
      stations.add(station);
      own.add(station.id());
    }
    return new StationStore(stations, own, problems);
  }
}
