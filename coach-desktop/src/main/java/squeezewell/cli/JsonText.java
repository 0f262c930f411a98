package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;

/** Makes JSON texts that survive any terminal and any pipe: all signs beyond ASCII are escaped. */
final class JsonText {
  private JsonText() {}

  /** Writes the one value of a text. */
  interface Body {
    void write(JsonWriter json) throws IOException;
  }

  /** The text, indented, without a line feed at its end. */
  static String of(Body body) {
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
    for (int i = 0; i < json.length(); i++) {
      char c = json.charAt(i);
      if (c < 0x7F) {
        out.append(c);
      } else {
        out.append(String.format("\\u%04x", (int) c));
      }
    }
    return out.toString();
  }
}
