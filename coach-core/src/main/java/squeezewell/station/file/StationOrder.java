package squeezewell.station.file;

import java.util.Objects;

/**
 * Something that the trainee does or has done by the partner, as often as wanted, and that is not
 * on the list of tasks.
 *
 * @param id identifier
 * @param words for people
 */
public record StationOrder(String id, String words) {
  public StationOrder {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(words, "words");
  }
}
