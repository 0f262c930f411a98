package squeezewell.station;

import java.util.List;
import java.util.Optional;
import squeezewell.input.BadInputException;

/**
 * What a station file holds, and all that is wrong with it.
 *
 * @param station the station; empty if there are faults
 * @param faults why it can't be used, all of them
 * @param doubts what can be used but is hardly meant, such as a task that never comes; one sentence
 *     each
 */
public record StationFile(
    Optional<Station> station, List<BadInputException> faults, List<String> doubts) {
  public StationFile {
    faults = List.copyOf(faults);
    doubts = List.copyOf(doubts);
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
