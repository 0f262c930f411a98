package squeezewell.desktop.screens;

import java.util.List;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Citation;

/**
 * What a calculator of the kit screen says.
 *
 * @param good whether there is an answer, rather than something to put right
 * @param headline the answer, or what to put right
 * @param lines how it came about, and what to bear in mind
 * @param sources where the figures come from
 */
record EquipmentAnswer(boolean good, String headline, List<String> lines, List<String> sources) {
  EquipmentAnswer {
    lines = List.copyOf(lines);
    sources = List.copyOf(sources);
  }

  static EquipmentAnswer of(String headline, List<String> lines, List<Citation> sources) {
    return new EquipmentAnswer(
        true, headline, lines, sources.stream().map(Citation::line).distinct().toList());
  }

  /** Something that a person typed can't be used; the message says what is allowed. */
  static EquipmentAnswer putRight(BadInputException e) {
    return new EquipmentAnswer(false, "To put right", List.of(e.getMessage()), List.of());
  }

  /** All of it in one line, for a screen reader. */
  String spoken() {
    return headline + ". " + String.join(" ", lines);
  }
}
