package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.protocol.Protocol;
import squeezewell.report.SideBySide;
import squeezewell.words.Wording;

/**
 * Several editions as text for people, in lines of at most 80 signs: a column an edition, a row a
 * value, for each patient and situation. Where they do not fit side by side they follow in a second
 * table.
 */
final class ProtocolTable {
  private static final Wording WORDS = Wording.beside(ProtocolTable.class);
  private static final int WIDTH = 80;
  private static final int NAME_WIDTH = 20;
  private static final int GAP = 2;
  private static final int LEAST_COLUMN = 10;
  private static final int WIDEST_COLUMN = 26;
  private static final int MOST_COLUMNS = (WIDTH - NAME_WIDTH) / (LEAST_COLUMN + GAP);

  private final SourcedText text = new SourcedText();

  private ProtocolTable() {}

  /**
   * The table.
   *
   * @param editions in the order of the columns, at least one
   */
  static String of(List<Protocol> editions) {
    return new ProtocolTable().table(editions);
  }

  private String table(List<Protocol> editions) {
    for (Protocol edition : editions) {
      String key = edition.local() ? "edition.head.local" : "edition.head";
      text.paragraph(WORDS.say(key, ProtocolCommand.values(edition)), "");
    }
    text.paragraph(WORDS.say("edition.changed"), "");
    for (SideBySide.Choice choice : SideBySide.choices(editions)) {
      section(editions, choice);
    }
    return text.end();
  }

  private void section(List<Protocol> editions, SideBySide.Choice choice) {
    SideBySide values = SideBySide.of(editions, choice);
    List<Protocol> covering =
        editions.stream()
            .filter(p -> values.values().stream().anyMatch(v -> v.in(p).isPresent()))
            .toList();
    text.line("");
    text.line(choice.toString());
    String missing =
        editions.stream()
            .filter(p -> !covering.contains(p))
            .map(Protocol::id)
            .collect(Collectors.joining(", "));
    if (!missing.isEmpty()) {
      text.paragraph(WORDS.say("edition.not-in", missing), "  ");
    }
    int tables = (covering.size() + MOST_COLUMNS - 1) / MOST_COLUMNS;
    int columns = (covering.size() + tables - 1) / tables;
    int width = Math.min(WIDEST_COLUMN, (WIDTH - NAME_WIDTH) / columns - GAP);
    for (int from = 0; from < covering.size(); from += columns) {
      rows(covering.subList(from, Math.min(covering.size(), from + columns)), values, width);
    }
  }

  private void rows(List<Protocol> editions, SideBySide values, int width) {
    text.line("");
    row("", editions.stream().map(p -> cell(p.id(), width)).toList(), width);
    for (SideBySide.Value value : values.values()) {
      List<List<String>> cells =
          editions.stream()
              .map(p -> value.in(p).map(e -> cell(e, width)).orElse(List.of("-")))
              .toList();
      row(value.name(), cells, width);
    }
  }

  private List<String> cell(SideBySide.Entry entry, int width) {
    List<String> lines =
        new ArrayList<>(cell(entry.value() + " " + text.mark(entry.source()), width));
    if (!entry.change().isEmpty()) {
      lines.addAll(cell(entry.change(), width));
    }
    return lines;
  }

  /** The lines of one cell; a word that is too long is cut. */
  private static List<String> cell(String words, int width) {
    List<String> lines = new ArrayList<>();
    for (String line : CliContext.wrap(words, width, "").split("\n", -1)) {
      for (int from = 0; from < line.length(); from += width) {
        lines.add(line.substring(from, Math.min(line.length(), from + width)));
      }
    }
    return lines;
  }

  private void row(String name, List<List<String>> cells, int width) {
    List<String> names = name.isEmpty() ? List.of() : cell(name, NAME_WIDTH - GAP);
    int height = Math.max(names.size(), cells.stream().mapToInt(List::size).max().orElse(0));
    for (int i = 0; i < height; i++) {
      StringBuilder line = new StringBuilder(padded(names, i, NAME_WIDTH));
      for (List<String> cell : cells) {
        line.append(padded(cell, i, width + GAP));
      }
      text.line(line.toString().stripTrailing());
    }
  }

  private static String padded(List<String> lines, int i, int width) {
    String line = i < lines.size() ? lines.get(i) : "";
    return line + " ".repeat(width - line.length());
  }
}
