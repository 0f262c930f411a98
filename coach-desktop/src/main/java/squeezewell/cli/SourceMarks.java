package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import squeezewell.protocol.Citation;
import squeezewell.words.Wording;

/** Numbers the sources of a text in the order in which it names them, and lists them at its end. */
final class SourceMarks {
  private static final Wording WORDS = Wording.beside(SourceMarks.class);
  private static final int WIDTH = 78;

  private final List<Citation> sources = new ArrayList<>();

  /** The number of a source in brackets, such as {@code [3]}. */
  String mark(Citation source) {
    if (!sources.contains(source)) {
      sources.add(source);
    }
    return "[" + (sources.indexOf(source) + 1) + "]";
  }

  /** The list of what was marked so far, each with how the value was checked; lines. */
  String list() {
    StringBuilder text = new StringBuilder(WORDS.say("edition.sources")).append('\n');
    for (int i = 0; i < sources.size(); i++) {
      String mark = "  [" + (i + 1) + "] ";
      String indent = " ".repeat(mark.length());
      String words =
          WORDS.say(
              "edition.source", sources.get(i).document(), sources.get(i).confidence().meaning());
      text.append(mark).append(TextWrap.wrap(words, WIDTH, indent).trim()).append('\n');
    }
    return text.toString();
  }
}
