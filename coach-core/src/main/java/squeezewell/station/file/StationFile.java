package squeezewell.station.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.input.BadInputException;

/**
 * What a station file holds, and all that is wrong with it.
 *
 * @param station the station; empty if there are faults
 * @param faults why it can't be used, all of them
 * @param doubts what can be used but is hardly meant, such as a task that never comes; one sentence
 *     each
 * @param names what stands at a place such as {@code tasks[2]}, for people who do not count from 0
 */
public record StationFile(
    Optional<Station> station,
    List<BadInputException> faults,
    List<String> doubts,
    Map<String, String> names) {
  public StationFile {
    faults = List.copyOf(faults);
    doubts = List.copyOf(doubts);
    names = Map.copyOf(names);
  }

  /** What stands at the place of a fault or at the beginning of a doubt, if that has a name. */
  public Optional<String> nameOf(String place) {
    int end = place.indexOf(']');
    return Optional.ofNullable(end < 0 ? null : names.get(place.substring(0, end + 1)));
  }

  /**
   * The station.
   *
   * @throws BadInputException the first fault, if there is one
   */
  public Station require() throws BadInputException {
    if (!faults.isEmpty() || !station.isPresent()) {
      throw faults.get(0);
    }
    return station.get();
  }
}
