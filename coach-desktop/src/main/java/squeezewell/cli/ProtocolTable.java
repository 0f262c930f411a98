package squeezewell.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.protocol.Protocol;
import squeezewell.report.Caution;
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

  private final SourceMarks sources = new SourceMarks();
  private final StringBuilder text = new StringBuilder();

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
      String words =
          WORDS.say(
              edition.local() ? "edition.head.local" : "edition.head",
              edition.id(),
              edition.title(),
              edition.organisation(),
              edition.year());
      text.append(TextWrap.wrap(words, 78, "")).append('\n');
    }
    text.append(TextWrap.wrap(WORDS.say("edition.changed"), 78, "")).append('\n');
    for (SideBySide.Choice choice : SideBySide.choices(editions)) {
      section(editions, choice);
    }
    text.append('\n').append(sources.list()).append('\n');
    return text.append(TextWrap.wrap(Caution.TEXT, 78, "")).toString();
  }

  private void section(List<Protocol> editions, SideBySide.Choice choice) {
    SideBySide values = SideBySide.of(editions, choice);
    List<Protocol> covering =
        editions.stream()
            .filter(
                p ->
                    values.values().stream()
                        .flatMap(v -> v.entries().stream())
                        .anyMatch(e -> e.protocol().equals(p)))
            .collect(Collectors.toList());
    text.append('\n').append(choice).append('\n');
    String missing =
        editions.stream()
            .filter(p -> !covering.contains(p))
            .map(Protocol::id)
            .collect(Collectors.joining(", "));
    if (!missing.isEmpty()) {
      text.append(TextWrap.wrap(WORDS.say("edition.not-in", missing), 78, "  ")).append('\n');
    }
    int tables = (covering.size() + MOST_COLUMNS - 1) / MOST_COLUMNS;
    int columns = (covering.size() + tables - 1) / tables;
    int width = Math.min(WIDEST_COLUMN, (WIDTH - NAME_WIDTH) / columns - GAP);
    for (int from = 0; from < covering.size(); from += columns) {
      rows(covering.subList(from, Math.min(covering.size(), from + columns)), values, width);
    }
  }

  private void rows(List<Protocol> editions, SideBySide values, int width) {
    text.append('\n');
    List<List<String>> head = new ArrayList<>();
    editions.forEach(p -> head.add(cell(p.id(), width)));
    row("", head, width);
    for (SideBySide.Value value : values.values()) {
      List<List<String>> cells = new ArrayList<>();
      for (Protocol edition : editions) {
        cells.add(
            value.entries().stream()
                .filter(e -> e.protocol().equals(edition))
                .findFirst()
                .map(e -> cell(e, width))
                .orElse(List.of("-")));
      }
      row(value.name(), cells, width);
    }
  }

  private List<String> cell(SideBySide.Entry entry, int width) {
    List<String> lines =
        new ArrayList<>(cell(entry.value() + " " + sources.mark(entry.source()), width));
    if (!entry.change().isEmpty()) {
      lines.addAll(cell(entry.change(), width));
    }
    return lines;
  }

  /** The lines of one cell; a word that is too long is cut. */
  private static List<String> cell(String words, int width) {
    List<String> lines = new ArrayList<>();
    for (String line : TextWrap.wrap(words, width, "").split("\n", -1)) {
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
      text.append(line.toString().stripTrailing()).append('\n');
    }
  }

  private static String padded(List<String> lines, int i, int width) {
    String line = i < lines.size() ? lines.get(i) : "";
    return line + " ".repeat(width - line.length());
  }
}
