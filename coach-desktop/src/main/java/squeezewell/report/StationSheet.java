package squeezewell.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import squeezewell.review.judge.Severity;
import squeezewell.review.say.Review;
import squeezewell.station.file.Adjunct;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationRule;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationState;
import squeezewell.station.run.StationText;
import squeezewell.station.run.TaskState;
import squeezewell.station.run.VentilationTime;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/**
 * The words of a station's result, the same on the screen and on paper. Pure.
 *
 * @param title of the station
 * @param outcome what it came to
 * @param breaths what the breaths still ask for where all tasks are done; empty if nothing, or if
 *     the outcome says that something is wrong anyway
 * @param critical critical faults with their times, in order
 * @param improve rules broken that are not critical, with their times, in order
 * @param counts how many tasks were done, late and so on
 * @param time the time used
 * @param ways what has to be known of it: checks of which key and mark say different things, that
 *     breaths were not judged, the ways taken where it could go several
 * @param ventilated for how long breaths went on, with each adjunct in each mode
 * @param tasks the tasks in the station's order
 * @param story what was said, found and remarked, in order of time
 */
public record StationSheet(
    String title,
    String outcome,
    String breaths,
    List<Entry> critical,
    List<Entry> improve,
    List<Count> counts,
    String time,
    List<String> ways,
    List<Ventilated> ventilated,
    List<Row> tasks,
    List<Entry> story) {
  /** What the times of ventilation mean. */
  public static final String VENTILATED =
      Wording.beside(StationSheet.class).say("sheet.ventilated");

  private static final Wording WORDS = Wording.beside(StationSheet.class);

  public StationSheet {
    critical = List.copyOf(critical);
    improve = List.copyOf(improve);
    counts = List.copyOf(counts);
    ways = List.copyOf(ways);
    ventilated = List.copyOf(ventilated);
    tasks = List.copyOf(tasks);
    story = List.copyOf(story);
  }

  /**
   * Something at a time.
   *
   * @param atNanos when, session time
   * @param kind what it is, such as remark; empty for plain words
   * @param words the words
   * @param critical whether it is a critical fault
   */
  public record Entry(long atNanos, String kind, String words, boolean critical) {
    /** Something that is no critical fault. */
    Entry(long atNanos, String kind, String words) {
      this(atNanos, kind, words, false);
    }

    /** The time as people read it. */
    public String at() {
      return Quantities.clock(atNanos);
    }
  }

  /**
   * How many of a kind.
   *
   * @param name the kind
   * @param number how many
   */
  public record Count(String name, int number) {}

  /**
   * A time of ventilation.
   *
   * @param words the adjunct and the mode
   * @param length for how long, all stretches added up
   */
  public record Ventilated(String words, String length) {}

  /**
   * One task.
   *
   * @param at when it was begun, on the station's clock; empty if it was not
   * @param words what it is
   * @param how how it went, in words
   * @param length how long it took; empty if that is not known
   * @param critical whether missing it is critical
   * @param good whether it was done in order, in time and long enough, or was not needed
   */
  public record Row(
      String at, String words, String how, String length, boolean critical, boolean good) {}

  /**
   * What the breaths still ask for where all tasks are done: a trainee who ticked everything and
   * let the patient wait must not read that all is well.
   *
   * @return one sentence, or empty
   */
  public static String breaths(StationResult result, Review review) {
    if (result.outcome() != StationResult.Outcome.ALL_DONE) {
      return "";
    }
    return review.findings().stream()
        .filter(finding -> finding.severity() == Severity.FAULT)
        .findFirst()
        .map(finding -> WORDS.say("sheet.breaths", finding.title()))
        .orElse("");
  }

  /**
   * The words of a result.
   *
   * @param review of the breaths in it
   */
  public static StationSheet of(StationResult result, Review review) {
    StationState state = result.state();
    return new StationSheet(
        state.station().title(),
        outcome(result),
        breaths(result, review),
        faults(state, StationRule.Severity.CRITICAL),
        faults(state, StationRule.Severity.IMPROVE),
        List.of(
            new Count(WORDS.say("sheet.good", result.needed().size()), result.good().size()),
            new Count(WORDS.say("sheet.late"), result.late().size()),
            new Count(WORDS.say("sheet.out-of-order"), result.outOfOrder().size()),
            new Count(WORDS.say("sheet.wrong-length"), result.wrongLength().size()),
            new Count(WORDS.say("sheet.improper"), result.improper().size()),
            new Count(WORDS.say("sheet.missed"), result.missed().size())),
        time(result),
        notes(result),
        ventilated(state),
        state.tasks().stream().map(StationSheet::row).toList(),
        story(state));
  }

  private static List<Entry> faults(StationState state, StationRule.Severity severity) {
    boolean critical = severity == StationRule.Severity.CRITICAL;
    List<Entry> entries = new ArrayList<>();
    for (StationState.Fault fault : state.faults(severity)) {
      String kind = fault.missed() ? WORDS.say("sheet.missed") : fault.source();
      entries.add(new Entry(fault.atNanos(), kind, fault.words(), critical));
    }
    return entries;
  }

  private static Row row(TaskState task) {
    return new Row(
        task.begunNanos().isPresent() ? Quantities.clock(task.begunNanos().getAsLong()) : "",
        task.task().words(),
        task.word(),
        length(task),
        task.task().critical(),
        task.good() || task.progress() == TaskState.Progress.NOT_NEEDED);
  }

  private static String outcome(StationResult result) {
    int faults = result.state().critical().size();
    return faults > 1 ? WORDS.say("sheet.faults", faults) : result.outcome().label();
  }

  private static String length(TaskState task) {
    if (!task.lengthNanos().isPresent()) {
      return "";
    }
    String length = Quantities.clock(task.lengthNanos().getAsLong());
    String whole = task.task().asksForBreaths() ? WORDS.say("sheet.of-breaths", length) : length;
    return task.length() == TaskState.Length.TOO_SHORT && task.task().leastNanos().isPresent()
        ? WORDS.say("sheet.at-least", whole, Quantities.clock(task.task().leastNanos().getAsLong()))
        : whole;
  }

  private static List<Ventilated> ventilated(StationState state) {
    List<Ventilated> times = new ArrayList<>();
    // A station that names no adjunct has none to tell apart.
    boolean named = state.station().tasks().stream().anyMatch(t -> t.adjunct().isPresent());
    for (VentilationTime time : state.ventilation()) {
      boolean adjunct = named || time.adjunct() != Adjunct.NONE;
      String mode = time.mode().label();
      String words = adjunct ? time.adjunct().label() + ", " + mode : mode;
      times.add(
          new Ventilated(
              words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1),
              Quantities.clock(time.nanos())));
    }
    return times;
  }

  private static String time(StationResult result) {
    StationState state = result.state();
    List<String> parts = new ArrayList<>();
    parts.add(
        WORDS.say(
            "sheet.time",
            Quantities.clock(result.preparationNanos()),
            Quantities.clock(result.exerciseNanos()),
            Quantities.clock(state.station().exerciseNanos())));
    if (result.stoppedNanos() > 0) {
      parts.add(WORDS.say("sheet.time.stopped", Quantities.clock(result.stoppedNanos())));
    }
    if (result.endedEarly()) {
      parts.add(WORDS.say("sheet.time.early"));
    }
    if (state.end().filter(StationState.End.CLOCK::equals).isPresent()) {
      parts.add(WORDS.say("sheet.time.up"));
    }
    return String.join("; ", parts) + ".";
  }

  private static List<String> notes(StationResult result) {
    StationState state = result.state();
    List<String> ways = new ArrayList<>(StationText.disputed(result));
    if (result.isUnjudged()) {
      ways.add(WORDS.say("sheet.unjudged"));
    }
    for (StationBranch branch : state.station().branches()) {
      for (StationBranch.Way way : branch.ways()) {
        if (state.setup().choices().stream()
            .anyMatch(c -> c.branch().equals(branch.id()) && c.option().equals(way.id()))) {
          ways.add(WORDS.say("sheet.way", branch.words(), way.words()));
        }
      }
    }
    return ways;
  }

  private static List<Entry> story(StationState state) {
    List<Entry> story = new ArrayList<>();
    state
        .lines()
        .forEach(l -> story.add(new Entry(l.atNanos(), WORDS.say("story.examiner"), l.words())));
    for (StationState.Told told : state.told()) {
      String kind = WORDS.say(told.takenBack() ? "story.taken-back" : "story.finding");
      story.add(new Entry(told.atNanos(), kind, told.finding().label()));
    }
    for (StationState.Brought brought : state.brought()) {
      String kind = WORDS.say(brought.comes() ? "story.brought" : "story.cleared");
      story.add(new Entry(brought.atNanos(), kind, brought.words()));
    }
    for (StationState.Changed changed : state.changed()) {
      String words = StationText.changed(state.station(), changed);
      story.add(new Entry(changed.atNanos(), WORDS.say("story.mark"), words));
    }
    for (StationState.Chosen chosen : state.chosen()) {
      String words = WORDS.say("sheet.way", chosen.branch().words(), chosen.way().words());
      story.add(new Entry(chosen.atNanos(), WORDS.say("story.chosen"), words));
    }
    for (StationState.Fault fault : state.faults()) {
      boolean critical = fault.severity() == StationRule.Severity.CRITICAL;
      String kind = WORDS.say(critical ? "story.critical" : "story.improve");
      story.add(new Entry(fault.atNanos(), kind, fault.words(), critical));
    }
    state
        .remarks()
        .forEach(r -> story.add(new Entry(r.atNanos(), WORDS.say("story.remark"), r.words())));
    story.sort(Comparator.comparingLong(Entry::atNanos));
    return story;
  }
}
