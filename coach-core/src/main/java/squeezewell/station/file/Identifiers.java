package squeezewell.station.file;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import squeezewell.input.JsonValue;

/**
 * The identifiers that the entries of one list of a station file give themselves. Read before all
 * else, so that a reference may come before what it names. What is wrong with them is told where
 * they stand.
 */
final class Identifiers {
  private final Set<String> given = new LinkedHashSet<>();
  private boolean oneIsMissing;

  /** Reads the identifiers of a list; one that is left out has none. */
  static Identifiers of(JsonValue top, String list) {
    Identifiers found = new Identifiers();
    Optional<List<JsonValue>> entries =
        FaultList.silently(
            () -> Optional.of(top.has(list) ? top.list(list, 0, "") : List.<JsonValue>of()),
            Optional.<List<JsonValue>>empty());
    found.oneIsMissing = !entries.isPresent();
    for (JsonValue entry : entries.orElse(List.of())) {
      found.oneIsMissing |=
          !FaultList.silently(() -> found.given.add(StationFields.id(entry)), false);
    }
    return found;
  }

  Set<String> given() {
    return given;
  }

  /**
   * Whether a reference may name something. Where an entry's own identifier is repeated or can't be
   * read, any name that leads nowhere may be the one it should have had; that is one fault, and is
   * told where the identifier stands.
   */
  boolean mayHave(String id) {
    return oneIsMissing || given.contains(id);
  }
}
