package squeezewell.desktop.screens;

import java.util.List;
import java.util.stream.Collectors;
import squeezewell.protocol.Protocol;
import squeezewell.report.SideBySide;

/**
 * The values of all editions for one patient and one situation, as the screen words them. Pure.
 *
 * @param values in the order in which they matter
 */
record LibraryView(List<Value> values) {

  /**
   * One value in every edition that has it.
   *
   * @param name what it is
   * @param entries newest edition first
   */
  record Value(String name, List<Entry> entries) {}

  /**
   * One value in one edition.
   *
   * @param edition name of the edition
   * @param value the value with its unit
   * @param source where it comes from, with a word where it was not confirmed
   * @param change what it was in the edition before by the same organisation, or for a local
   *     protocol what it is in the edition that it is based on; empty if the same, or if there is
   *     none
   */
  record Entry(String edition, String value, String source, String change) {}

  /** The values of one choice. */
  static LibraryView of(List<Protocol> editions, SideBySide.Choice choice) {
    return new LibraryView(
        SideBySide.of(editions, choice).values().stream()
            .map(v -> new Value(v.name(), entries(v)))
            .collect(Collectors.toUnmodifiableList()));
  }

  private static List<Entry> entries(SideBySide.Value value) {
    return value.entries().stream()
        .map(
            e -> new Entry(Phrases.edition(e.protocol()), e.value(), e.source().line(), e.change()))
        .collect(Collectors.toUnmodifiableList());
  }
}
