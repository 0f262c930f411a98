package squeezewell.station.file;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import squeezewell.input.BadInputException;
import squeezewell.input.Faults;
import squeezewell.input.JsonValue;

/**
 * The identifiers that the entries of lists of a station file give themselves. Read before all
 * else, so that a reference may come before what it names. What is wrong with them is told where
 * they stand.
 */
final class Identifiers {
  private static final int LONGEST = 40;

  private final Set<String> given = new LinkedHashSet<>();
  private boolean oneIsMissing;

  /** Reads the identifiers of lists; one that is left out has none. */
  static Identifiers of(JsonValue top, String... lists) {
    Identifiers identifiers = new Identifiers();
    for (String list : lists) {
      identifiers.add(top, list);
    }
    return identifiers;
  }

  /** The identifier in a field. */
  static String read(JsonValue value, String name) throws BadInputException {
    String text = value.text(name, LONGEST);
    if (!text.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw value.field(name, "").wrong("lower-case letters, digits and single hyphens");
    }
    return text;
  }

  private void add(JsonValue top, String list) {
    Faults elsewhere = new Faults();
    Optional<List<JsonValue>> entries =
        elsewhere.take(() -> top.has(list) ? top.list(list, 0, "") : List.of());
    oneIsMissing |= !entries.isPresent();
    for (JsonValue entry : entries.orElse(List.of())) {
      Optional<String> id = elsewhere.take(() -> read(entry, "id"));
      oneIsMissing |= !id.filter(given::add).isPresent();
    }
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
