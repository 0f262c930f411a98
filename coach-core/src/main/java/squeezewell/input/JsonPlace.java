package squeezewell.input;

/**
 * Where a value stands in a JSON text. The path is put together only when a message needs it: in a
 * hostile file, a long name above many values would otherwise fill the memory. Immutable.
 */
final class JsonPlace {
  static final JsonPlace TOP = new JsonPlace(null, "", -1);

  private final JsonPlace parent;
  private final String name;
  private final int index;

  private JsonPlace(JsonPlace parent, String name, int index) {
    this.parent = parent;
    this.name = name;
    this.index = index;
  }

  JsonPlace member(String name) {
    return new JsonPlace(this, name, -1);
  }

  JsonPlace element(int index) {
    return new JsonPlace(this, "", index);
  }

  /** Such as {@code patients[0].rhythms[1].situation}; empty at the top. */
  String path() {
    if (parent == null) {
      return "";
    }
    String before = parent.path();
    if (index >= 0) {
      return before + "[" + index + "]";
    }
    return before.isEmpty() ? name : before + "." + name;
  }
}
