package squeezewell.station.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationTask;

/** Writes stations and their results as plain text for a terminal, at most 80 columns wide. */
public final class StationText {
  /** What must be said wherever a result is shown. */
  public static final String PRACTICE_AID =
      "This sheet is an aid to practice. The criteria of your local examining body decide, not it.";

  private static final int COLUMNS = 80;

  private StationText() {}

  /** A result: critical faults first, then each task, then all that was said, on one time line. */
  public static String of(StationResult result) {
    StationState state = result.state();
    List<String> lines = new ArrayList<>();
    wrap(lines, "", state.station().title());
    wrap(lines, "", result.outcome().label() + ".");
    if (!state.faults().isEmpty()) {
      lines.add("");
      lines.add("Critical");
      for (StationState.Fault fault : state.faults()) {
        wrap(lines, "  " + clock(fault.atNanos()) + "  ", fault.words());
      }
    }
    lines.add("");
    wrap(
        lines,
        "",
        result.good().size()
            + " of "
            + result.needed().size()
            + " tasks done in order and in time; late: "
            + result.late().size()
            + ", out of order: "
            + result.outOfOrder().size()
            + ", too short or too long: "
            + result.wrongLength().size()
            + ", missed: "
            + result.missed().size()
            + ".");
    wrap(
        lines,
        "",
        "Time used: preparation "
            + clock(result.preparationNanos())
            + ", exercise "
            + clock(result.exerciseNanos())
            + " of "
            + clock(state.station().exerciseNanos())
            + (result.stoppedNanos() > 0
                ? "; the clock was stopped for " + clock(result.stoppedNanos())
                : "")
            + (result.endedEarly() ? "; ended before all that was to come" : "")
            + (state.end().isPresent() && state.end().get() == StationState.End.CLOCK
                ? "; the time was up."
                : "."));
    lines.add("");
    lines.add("Tasks");
    for (TaskState task : state.tasks()) {
      String at = task.begunNanos().isPresent() ? clock(task.begunNanos().getAsLong()) : "    ";
      String length =
          task.lengthNanos().isPresent()
              ? " ("
                  + clock(task.lengthNanos().getAsLong())
                  + (task.task().asksForBreaths() ? " of breaths with it)" : ")")
              : "";
      wrap(
          lines,
          "  " + at + "  " + pad(task.word()) + "  ",
          task.task().words() + length + (task.task().critical() ? " *" : ""));
    }
    wrap(lines, "  ", "* critical if it is missed");
    if (!state.ventilation().isEmpty()) {
      lines.add("");
      lines.add("Time of ventilation");
      for (VentilationTime time : state.ventilation()) {
        wrap(
            lines,
            "  " + clock(time.nanos()) + "  ",
            time.adjunct().label() + ", " + time.mode().label());
      }
    }
    lines.add("");
    lines.add("Said and remarked (time since the start, the stopped clock included)");
    for (String[] entry : timeLine(state)) {
      wrap(lines, "  " + entry[0] + "  ", entry[1]);
    }
    lines.add("");
    wrap(lines, "", PRACTICE_AID);
    return String.join("\n", lines) + "\n";
  }

  /** A station for a person who wants to know it before running it. */
  public static String of(Station station) {
    List<String> lines = new ArrayList<>();
    wrap(lines, "", station.id() + ": " + station.title());
    lines.add("");
    wrap(lines, "", station.setting());
    wrap(lines, "", "Patient: " + station.patient() + " (" + station.group().id() + ").");
    wrap(lines, "", "Begins as: " + station.situation().label() + ".");
    wrap(
        lines,
        "",
        "Time: preparation "
            + clock(station.preparationNanos())
            + ", exercise "
            + clock(station.exerciseNanos())
            + ".");
    lines.add("");
    lines.add("Kit");
    station.kit().forEach(item -> wrap(lines, "  ", item));
    lines.add("");
    lines.add("Tasks");
    for (StationTask task : station.tasks()) {
      wrap(
          lines,
          "  " + id(task.id()) + "  ",
          task.words() + (task.critical() ? " *" : "") + ". Done when: " + task.doneWhen());
    }
    wrap(lines, "  ", "* critical if it is missed");
    if (!station.orders().isEmpty()) {
      lines.add("");
      lines.add("Orders");
      station.orders().forEach(o -> wrap(lines, "  " + id(o.id()) + "  ", o.words()));
    }
    lines.add("");
    lines.add("Findings");
    station.findings().forEach(f -> wrap(lines, "  " + id(f.id()) + "  ", f.words()));
    for (StationBranch branch : station.branches()) {
      lines.add("");
      wrap(lines, "", "Branch " + branch.id() + ": " + branch.words());
      branch.ways().forEach(w -> wrap(lines, "  " + id(w.id()) + "  ", w.words()));
    }
    lines.add("");
    lines.add("Critical faults");
    station.faults().forEach(f -> wrap(lines, "  ", f.words()));
    lines.add("");
    wrap(lines, "", PRACTICE_AID);
    return String.join("\n", lines) + "\n";
  }

  private static List<String[]> timeLine(StationState state) {
    List<StationState.Remark> all = new ArrayList<>();
    state.lines().forEach(l -> all.add(new StationState.Remark(l.atNanos(), l.words())));
    state
        .remarks()
        .forEach(r -> all.add(new StationState.Remark(r.atNanos(), "Remark: " + r.words())));
    state
        .chosen()
        .forEach(
            c ->
                all.add(
                    new StationState.Remark(
                        c.atNanos(), "Chosen: " + c.branch().words() + ": " + c.way().words())));
    all.sort((a, b) -> Long.compare(a.atNanos(), b.atNanos()));
    List<String[]> entries = new ArrayList<>();
    all.forEach(r -> entries.add(new String[] {clock(r.atNanos()), r.words()}));
    return entries;
  }

  private static String id(String id) {
    return String.format(Locale.ROOT, "%-16s", id);
  }

  private static String pad(String word) {
    return String.format(Locale.ROOT, "%-12s", word);
  }

  private static String clock(long nanos) {
    long seconds = nanos / 1_000_000_000L;
    return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
  }

  private static void wrap(List<String> lines, String first, String text) {
    StringBuilder indent = new StringBuilder();
    for (int i = 0; i < first.length(); i++) {
      indent.append(' ');
    }
    StringBuilder line = new StringBuilder(first);
    boolean empty = true;
    for (String word : text.trim().split("\\s+", -1)) {
      if (!empty && line.length() + 1 + word.length() > COLUMNS) {
        lines.add(line.toString());
        line = new StringBuilder(indent);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    lines.add(line.toString());
  }
}
