package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.Citation;
import squeezewell.report.Caution;
import squeezewell.words.Wording;

/**
 * A text that numbers its sources in the order in which it names them, and lists them at its end.
 */
final class SourcedText {
  private static final Wording WORDS = Wording.beside(SourcedText.class);
  private final StringBuilder text = new StringBuilder();
  private final List<Citation> sources = new ArrayList<>();

  void line(String line) {
    text.append(line).append('\n');
  }

  /** Adds a paragraph in lines of at most 78 signs. */
  void paragraph(String words, String indent) {
    line(CliContext.wrap(words, indent));
  }

  /** The number of a source in brackets, such as {@code [3]}. */
  String mark(Citation source) {
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return "[" + (sources.indexOf(source) + 1) + "]";
  }

  /** The whole text with its sources, each with how the value was checked, and the caution. */
  String end() {
    line("");
    line(WORDS.say("edition.sources"));
    for (Citation source : sources) {
      String mark = "  " + mark(source) + " ";
      String words = WORDS.say("edition.source", source.document(), source.confidence().meaning());
      line(mark + CliContext.wrap(words, " ".repeat(mark.length())).trim());
    }
    line("");
    return text + CliContext.wrap(Caution.TEXT, "");
  }
}
