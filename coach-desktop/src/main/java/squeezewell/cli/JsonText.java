package squeezewell.cli;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;

/** Makes JSON texts that survive any terminal and any pipe: all signs beyond ASCII are escaped. */
final class JsonText {
  private static final Gson GSON =
      new GsonBuilder().serializeNulls().disableHtmlEscaping().create();

  private JsonText() {}

  /** Writes the one value of a text. */
  interface Body {
    void write(JsonWriter json) throws IOException;
  }

  /** A value of maps, lists, texts, numbers and nulls. */
  static Body of(Object tree) {
    return json -> GSON.toJson(tree, tree.getClass(), json);
  }

  /** The text, indented, without a line feed at its end. */
  static String text(Body body) {
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      json.setIndent("  ");
      json.setHtmlSafe(false);
      json.setSerializeNulls(true);
      body.write(json);
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory can't be written", e);
    }
    return ascii(text.toString());
  }

  /** Escapes what is not ASCII. It can only stand inside JSON strings, where this is allowed. */
  static String ascii(String json) {
    StringBuilder out = new StringBuilder(json.length());
    json.chars()
        .forEach(
            c -> out.append(c < 0x7F ? String.valueOf((char) c) : String.format("\\u%04x", c)));
    return out.toString();
  }
}
