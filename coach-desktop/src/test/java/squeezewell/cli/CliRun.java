package squeezewell.cli;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import squeezewell.files.HomeFolder;

/**
 * One command run in this process.
 *
 * @param code its exit code
 * @param out what it wrote to standard output
 * @param err what it wrote to standard error
 * @param opened the homes for which a window was opened
 */
record CliRun(int code, String out, String err, List<HomeFolder> opened) {
  static final Instant NOW = Instant.parse("2026-01-31T12:00:00Z");

  static CliRun of(String... words) {
    return with(true, StandardCharsets.UTF_8, words);
  }

  static CliRun withDisplay(String... words) {
    return with(false, StandardCharsets.UTF_8, words);
  }

  /** With something typed. */
  static CliRun typing(String typed, String... words) {
    return run(true, StandardCharsets.UTF_8, typed, words);
  }

  static CliRun with(boolean headless, Charset charset, String... words) {
    return run(headless, charset, "", words);
  }

  private static CliRun run(boolean headless, Charset charset, String typed, String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<HomeFolder> opened = new ArrayList<>();
    InputStream in = new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8));
    int code =
        Cli.run(
            words,
            new CliContext(
                new PrintWriter(out),
                new PrintWriter(err),
                in,
                false,
                headless,
                charset,
                Clock.fixed(NOW, ZoneOffset.UTC),
                opened::add));
    return new CliRun(code, out.toString(), err.toString(), opened);
  }

  /** A screen to write on. */
  static final class Screen {
    private final StringWriter out = new StringWriter();

    CliContext around() {
      return new CliContext(
          new PrintWriter(out),
          new PrintWriter(new StringWriter()),
          InputStream.nullInputStream(),
          false,
          true,
          StandardCharsets.UTF_8,
          Clock.fixed(NOW, ZoneOffset.UTC),
          home -> true);
    }

    String text() {
      return out.toString();
    }
  }

  /** What it wrote, as JSON. */
  JsonObject json() {
    return JsonParser.parseString(out).getAsJsonObject();
  }
}
