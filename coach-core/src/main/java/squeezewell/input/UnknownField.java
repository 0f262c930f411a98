package squeezewell.input;

import java.util.List;
import java.util.Objects;

/**
 * A field that stands in a file and that its reader never asked for: from a newer version, misspelt
 * or put in the wrong place.
 *
 * @param owner the object in which it stands
 * @param name what it is called
 * @param value what it holds
 * @param known the fields of that object that were asked for, in alphabetical order
 */
public record UnknownField(JsonValue owner, String name, JsonValue value, List<String> known) {
  public UnknownField {
    Objects.requireNonNull(owner, "owner");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(value, "value");
    known = List.copyOf(known);
  }

  /** A question to put behind a message; empty if no field that is known is close enough. */
  public String question() {
    return Nearest.question(name, known);
  }
}
