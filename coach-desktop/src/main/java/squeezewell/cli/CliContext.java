package squeezewell.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.text.Normalizer;
import java.time.Clock;

/**
 * What a command finds around it, so that tests can put something else there.
 *
 * @param out standard output
 * @param err standard error
 * @param in standard input
 * @param console whether a person sits at both ends, rather than a pipe or a file
 * @param headless whether there is no display for windows
 * @param charset what the output can show
 * @param wallClock the time of day
 * @param simulator opens the window
 */
public record CliContext(
    PrintWriter out,
    PrintWriter err,
    InputStream in,
    boolean console,
    boolean headless,
    Charset charset,
    Clock wallClock,
    SimulatorLauncher simulator) {

  /** Whether the output can show more than plain letters, digits and signs. */
  boolean showsBlocks() {
    return charset.canEncode() && charset.newEncoder().canEncode("█▲▼▾—…×₂");
  }

  /** Prints lines of text; what the output can't show is replaced by something plain. */
  void print(String text) {
    String harmless = harmless(text);
    out.println(showsBlocks() ? harmless : plain(harmless));
  }

  /** Prints a paragraph in lines of at most 78 signs. */
  void print(String text, String indent) {
    print(TextWrap.wrap(text, 78, indent));
  }

  /** Prints JSON for a program to read. */
  void printJson(JsonText.Body body) {
    out.println(JsonText.of(body));
  }

  /** Prints one message to standard error. */
  void say(String text) {
    String harmless = harmless(text);
    err.println(showsBlocks() ? harmless : plain(harmless));
  }

  /** File names and files from elsewhere must not move a terminal's cursor or turn its text. */
  private static String harmless(String text) {
    return text.replaceAll("[[\\p{Cc}&&[^\\n\\t]]\\p{Cf}\\p{Zl}\\p{Zp}]", "?");
  }

  private static String plain(String text) {
    String letters = Normalizer.normalize(text, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
    return letters
        .replace("—", "-")
        .replace("–", "-")
        .replace("…", "...")
        .replace("×", "x")
        .replace("₂", "2")
        .replace("’", "'");
  }
}
