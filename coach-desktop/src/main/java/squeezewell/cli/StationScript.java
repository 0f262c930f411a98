package squeezewell.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import squeezewell.coach.Command;
import squeezewell.input.BadInputException;
import squeezewell.station.run.StationAction;
import squeezewell.station.run.StationPractice;
import squeezewell.words.Wording;

/** A script of what is done in a station: one line each, {@code seconds command words}. */
final class StationScript {
  private static final Wording WORDS = Wording.beside(StationScript.class);
  private static final Pattern LINE =
      Pattern.compile("(\\d{1,5}(?:\\.\\d{1,3})?)\\s+(\\S+)\\s*(.*)");
  private static final Pattern BREATHS =
      Pattern.compile("(\\d{1,4})\\s+(\\d{1,2}(?:\\.\\d{1,3})?)");
  private static final long SQUEEZE_NANOS = 1_000_000_000L;
  private static final String COMMANDS =
      "seconds, then one of begin, start TASK, done TASK, undo TASK, mark TASK withdrawn|earlier"
          + " SECONDS|late|improper|remark WORDS, order ORDER, inject FINDING,"
          + " clear FINDING, choose BRANCH=WAY, remark WORDS, stop-clock, run-clock, breaths COUNT"
          + " SECONDS, compressions COUNT SECONDS, end";

  private final String source;
  private final List<Entry> entries = new ArrayList<>();

  private interface Action {
    boolean run(StationPractice practice, long atNanos);
  }

  private record Entry(long atNanos, int line, String text, Action action) {}

  private StationScript(String source) {
    this.source = source;
  }

  /**
   * Reads a script; empty lines and lines that begin with # say nothing.
   *
   * @throws BadInputException naming the first line that is none
   */
  static StationScript read(String source, List<String> lines) throws BadInputException {
    StationScript script = new StationScript(source);
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).trim();
      if (!line.isEmpty() && !line.startsWith("#")) {
        script.add(i + 1, line);
      }
    }
    // Breaths reach beyond the line after them.
    script.entries.sort((a, b) -> Long.compare(a.atNanos(), b.atNanos()));
    return script;
  }

  /** Does what the script says, then lets the clock end what goes on; tells what made no sense. */
  List<String> run(StationPractice practice, long endNanos) {
    List<String> refused = new ArrayList<>();
    for (Entry entry : entries) {
      practice.advanceByAll(entry.atNanos());
      if (!entry.action().run(practice, entry.atNanos())) {
        refused.add(WORDS.say("station.refused", source, entry.line(), entry.text()));
      }
    }
    practice.advanceByAll(endNanos);
    return refused;
  }

  private void add(int number, String line) throws BadInputException {
    Matcher matcher = LINE.matcher(line);
    if (!matcher.matches()) {
      throw bad(number, line);
    }
    long at = nanos(matcher.group(1));
    String words = matcher.group(3);
    switch (matcher.group(2)) {
      case "breaths" -> repeated(number, line, words, at, Command.SQUEEZE);
      case "compressions" -> repeated(number, line, words, at, Command.COMPRESS);
      default -> {
        StationAction action =
            StationAction.of(matcher.group(2))
                .filter(known -> known.hasWords() != words.isEmpty())
                .orElseThrow(() -> bad(number, line));
        entries.add(new Entry(at, number, line, (p, t) -> p.act(action, words, t)));
      }
    }
  }

  private void repeated(int number, String line, String words, long at, Command command)
      throws BadInputException {
    Matcher matcher = BREATHS.matcher(words);
    if (!matcher.matches() || nanos(matcher.group(2)) == 0) {
      throw bad(number, line);
    }
    long every = nanos(matcher.group(2));
    for (int i = 0; i < Integer.parseInt(matcher.group(1)); i++) {
      long from = at + i * every;
      entries.add(new Entry(from, number, line, told(command)));
      if (command == Command.SQUEEZE) {
        long to = from + Math.min(SQUEEZE_NANOS, every / 2);
        entries.add(new Entry(to, number, line, told(Command.SQUEEZE_END)));
      }
    }
  }

  private static Action told(Command command) {
    return (practice, at) -> {
      practice.command(command, at);
      return true;
    };
  }

  private BadInputException bad(int number, String line) {
    return BadInputException.notAllowed(source, "line " + number, line, COMMANDS);
  }

  private static long nanos(String seconds) {
    return new BigDecimal(seconds).movePointRight(9).longValueExact();
  }
}
