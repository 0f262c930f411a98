package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolWriter;

/** Protocol files for tests. */
final class Protocols {
  private Protocols() {}

  /** The newest built-in edition under another identifier, as the text of a file. */
  static String text(String id) throws IOException {
    Protocol built = GuidelineLibrary.editions().get(0);
    StringWriter text = new StringWriter();
    ProtocolWriter.write(
        new JsonWriter(text), new Protocol(id, "Own", "A service", 2026, true, built.guidance()));
    return text.toString();
  }
}
