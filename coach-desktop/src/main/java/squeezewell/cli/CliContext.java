package squeezewell.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.text.Normalizer;
import java.time.Clock;
import squeezewell.report.Caution;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewJson;
import squeezewell.review.say.ReviewText;
import squeezewell.words.WrappedText;

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
    out.println(shown(text));
  }

  /** Prints a paragraph in lines of at most 78 signs. */
  void print(String text, String indent) {
    print(wrap(text, indent));
  }

  /** A paragraph in lines of at most 78 signs. */
  static String wrap(String text, String indent) {
    return wrap(text, 78, indent);
  }

  /**
   * Breaks a paragraph at spaces. A word that is longer than a line stands alone on a longer one.
   *
   * @param width longest line in characters, the indent included
   * @param indent what each line begins with
   */
  static String wrap(String text, int width, String indent) {
    String spaced = WrappedText.oneSpaced(text);
    return String.join("\n", WrappedText.lines(indent, indent, spaced, width, String::length));
  }

  /** Prints JSON for a program to read. */
  void printJson(JsonText.Body body) {
    out.println(JsonText.text(body));
  }

  /** Prints a review. */
  void print(Review review, boolean json) {
    if (json) {
      printJson(writer -> ReviewJson.write(review, writer));
    } else {
      print(ReviewText.write(review) + Caution.LINE_3);
    }
  }

  /** Prints one message to standard error. */
  void say(String text) {
    err.println(shown(text));
  }

  private String shown(String text) {
    String harmless = harmless(text);
    return showsBlocks() ? harmless : plain(harmless);
  }

  /** File names and files from elsewhere must not move a terminal's cursor or turn its text. */
  private static String harmless(String text) {
    return text.replaceAll("[[\\p{Cc}&&[^\\n\\t]]\\p{Cf}\\p{Zl}\\p{Zp}]", "?");
  }

  /** Letters lose their accents. */
  private static String plain(String text) {
    String bare = Normalizer.normalize(text, Normalizer.Form.NFD).replaceAll("\\p{M}", "");
    return bare.replace("—", "-")
        .replace("–", "-")
        .replace("…", "...")
        .replace("×", "x")
        .replace("₂", "2")
        .replace("’", "'");
  }
}
