package squeezewell.station.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import squeezewell.session.Fact;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationEntry;
import squeezewell.station.file.StationRule;
import squeezewell.station.file.StationTask;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;
import squeezewell.words.WrappedText;

/** Writes stations and their results as plain text for a terminal, at most 80 columns wide. */
public final class StationText {
  /** What must be said wherever a result is shown. */
  public static final String PRACTICE_AID =
      "This sheet is an aid to practice. The criteria of your local examining body decide, not it.";

  private static final Wording WORDS = Wording.beside(StationText.class);

  private final WrappedText text = new WrappedText();

  private StationText() {}

  /** A result: critical faults first, then each task, then all that was said, on one time line. */
  public static String of(StationResult result) {
    StationText written = new StationText();
    written.result(result);
    return written.text.toString();
  }

  /** A station for a person who wants to know it before running it. */
  public static String of(Station station) {
    StationText written = new StationText();
    written.station(station);
    return written.text.toString();
  }

  private void result(StationResult result) {
    StationState state = result.state();
    text.add("", state.station().title());
    text.add("", result.outcome().label() + ".");
    for (StationRule.Severity severity : StationRule.Severity.values()) {
      List<StationState.Fault> faults = state.faults(severity);
      if (!faults.isEmpty()) {
        title("result." + severity.word());
        faults.forEach(f -> at(f.atNanos(), withSource(f.words(), f.source())));
      }
    }
    if (result.isUnjudged()) {
      text.gap();
      say("result.breaths-unrecorded");
    }
    text.gap();
    say(
        "result.tasks-done",
        result.good().size(),
        result.needed().size(),
        result.late().size(),
        result.outOfOrder().size(),
        result.wrongLength().size(),
        result.missed().size());
    if (!result.improper().isEmpty()) {
      say("result.improper", result.improper().size());
    }
    String stopped = clock(result.stoppedNanos());
    say(
        "result.time-used",
        clock(result.preparationNanos()),
        clock(result.exerciseNanos()),
        clock(state.station().exerciseNanos()),
        result.stoppedNanos() > 0 ? WORDS.say("result.stopped", stopped) : "",
        result.endedEarly() ? WORDS.say("result.ended-early") : "",
        state.end().filter(StationState.End.CLOCK::equals).isPresent()
            ? WORDS.say("result.time-up")
            : "");
    title("tasks");
    state.tasks().forEach(this::task);
    text.add("  ", WORDS.say("tasks.critical-mark"));
    disputed(result).forEach(words -> text.add("  ", words));
    if (!state.ventilation().isEmpty()) {
      title("result.ventilation");
      for (VentilationTime time : state.ventilation()) {
        at(time.nanos(), time.adjunct().label() + ", " + time.mode().label());
      }
    }
    title("result.said");
    timeLine(state).forEach(entry -> at(entry.atNanos(), entry.words()));
    text.gap();
    text.add("", PRACTICE_AID);
  }

  private void task(TaskState task) {
    String begun = task.begunNanos().isPresent() ? clock(task.begunNanos().getAsLong()) : "    ";
    String length = "";
    if (task.lengthNanos().isPresent()) {
      String key = task.task().asksForBreaths() ? "task.breaths-length" : "task.length";
      length = WORDS.say(key, clock(task.lengthNanos().getAsLong()));
    }
    text.add(
        String.format(Locale.ROOT, "  %s  %-12s  ", begun, task.word()),
        task.task().words() + length + mark(task.task()));
  }

  /** Checks of which the trainee's key and the examiner's mark say different things, both told. */
  public static List<String> disputed(StationResult result) {
    List<String> all = new ArrayList<>();
    for (StationResult.KeyedCheck check : result.disputed()) {
      TaskState task = result.marked(check).get();
      all.add(
          WORDS.say(
              "result.disputed",
              task.task().words(),
              clock(check.fromNanos()),
              clock(check.toNanos()),
              clock(task.begunNanos().getAsLong()),
              clock(task.doneNanos().orElse(check.toNanos()))));
    }
    return all;
  }

  private static String clock(long nanos) {
    return Quantities.clock(nanos);
  }

  private static String withSource(String words, String source) {
    return source.isEmpty() ? words : WORDS.say("rule.source", words, source);
  }

  private static String mark(StationTask task) {
    return task.critical() ? " *" : "";
  }

  private void station(Station station) {
    text.add("", station.id() + ": " + station.title());
    text.gap();
    text.add("", station.setting());
    say("station.patient", station.patient(), station.group().id());
    say("station.begins", station.situation().label());
    say("station.time", clock(station.preparationNanos()), clock(station.exerciseNanos()));
    title("station.kit");
    station.kit().forEach(item -> text.add("  ", item));
    title("tasks");
    for (StationTask task : station.tasks()) {
      String words = WORDS.say("station.task", task.words() + mark(task), task.doneWhen());
      entry(task.id(), words);
    }
    text.add("  ", WORDS.say("tasks.critical-mark"));
    if (!station.orders().isEmpty()) {
      title("station.orders");
      station.orders().forEach(this::entry);
    }
    title("station.findings");
    station.findings().forEach(this::entry);
    for (StationBranch branch : station.branches()) {
      title("station.branch", branch.id(), branch.words());
      branch.ways().forEach(this::entry);
    }
    for (StationRule.Severity severity : StationRule.Severity.values()) {
      List<StationRule> rules =
          station.rules().stream()
              .filter(rule -> rule.severity() == severity)
              .collect(Collectors.toList());
      if (!rules.isEmpty()) {
        title("station." + severity.word());
        rules.forEach(rule -> text.add("  ", withSource(rule.words(), rule.source())));
      }
    }
    text.gap();
    text.add("", PRACTICE_AID);
  }

  private static List<StationState.Remark> timeLine(StationState state) {
    List<StationState.Remark> all = new ArrayList<>();
    state.lines().forEach(l -> all.add(new StationState.Remark(l.atNanos(), l.words())));
    for (StationState.Remark remark : state.remarks()) {
      String words = WORDS.say("result.remark", remark.words());
      all.add(new StationState.Remark(remark.atNanos(), words));
    }
    for (StationState.Changed changed : state.changed()) {
      all.add(new StationState.Remark(changed.atNanos(), changed(state.station(), changed)));
    }
    for (StationState.Brought brought : state.brought()) {
      String words = WORDS.say("result.brought", brought.words(), brought.comes() ? 1 : 0);
      all.add(new StationState.Remark(brought.atNanos(), words));
    }
    for (StationState.Chosen chosen : state.chosen()) {
      String words = WORDS.say("result.chosen", chosen.branch().words(), chosen.way().words());
      all.add(new StationState.Remark(chosen.atNanos(), words));
    }
    all.sort(Comparator.comparingLong(StationState.Remark::atNanos));
    return all;
  }

  /** A change of a mark in a sentence, with its reason. */
  public static String changed(Station station, StationState.Changed changed) {
    Fact.MarkChange change = changed.change();
    String what =
        WORDS.say(
            "mark." + change.change().word(),
            station.task(change.task()).map(StationTask::words).orElse(change.task()),
            Quantities.exactSeconds(change.earlierNanos()).stripTrailingZeros().toPlainString());
    return change.words().isEmpty() ? what : WORDS.say("mark.reason", what, change.words());
  }

  private void title(String key, Object... values) {
    text.gap();
    say(key, values);
  }

  private void say(String key, Object... values) {
    text.add("", WORDS.say(key, values));
  }

  private void at(long nanos, String words) {
    text.add("  " + clock(nanos) + "  ", words);
  }

  private void entry(StationEntry entry) {
    entry(entry.id(), entry.words());
  }

  private void entry(String id, String words) {
    text.add(String.format(Locale.ROOT, "  %-16s  ", id), words);
  }
}
