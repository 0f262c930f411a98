package squeezewell.station.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import squeezewell.cue.Segment;
import squeezewell.input.BadInputException;
import squeezewell.input.FileWord;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.SessionEvent;
import squeezewell.station.file.Station;
import squeezewell.words.Wording;

/**
 * What came of a station: a pure function of the station and of the facts in the journal.
 * Immutable.
 *
 * @param state where the station stood at its end, or at the last fact if it was cut off
 * @param keyed pulse checks that the trainee's key recorded, in order
 */
public record StationResult(StationState state, List<KeyedCheck> keyed) {
  private static final String SOURCE = "the station in the session";

  /** A check and a mark that begin no further apart are one (our own choice). */
  private static final long SAME_CHECK_NANOS = 15_000_000_000L;

  private static final long SECOND_NANOS = 1_000_000_000L;

  public StationResult {
    Objects.requireNonNull(state, "state");
    keyed = List.copyOf(keyed);
  }

  /** A result in which no key recorded a check. */
  public StationResult(StationState state) {
    this(state, List.of());
  }

  /**
   * A pulse check as the trainee's key recorded it, on the station's clock.
   *
   * @param fromNanos when it began
   * @param toNanos when it ended
   */
  public record KeyedCheck(long fromNanos, long toNanos) {}

  /**
   * The task that is the same check as one by the key; the examiner's mark of it decides. Empty if
   * there is none.
   */
  public Optional<TaskState> marked(KeyedCheck check) {
    return state.tasks().stream()
        .filter(t -> t.task().hold().filter(Segment.Kind.PULSE_CHECK::equals).isPresent())
        .filter(t -> t.begunNanos().isPresent())
        .filter(t -> Math.abs(t.begunNanos().getAsLong() - check.fromNanos()) <= SAME_CHECK_NANOS)
        .findFirst();
  }

  /** Checks by the key whose mark says something else by a second or more. */
  public List<KeyedCheck> disputed() {
    return keyed.stream()
        .filter(check -> marked(check).filter(task -> differs(check, task)).isPresent())
        .collect(Collectors.toList());
  }

  private static boolean differs(KeyedCheck check, TaskState task) {
    long from = task.begunNanos().getAsLong() - check.fromNanos();
    long to = task.doneNanos().orElse(check.toNanos()) - check.toNanos();
    return Math.abs(from) >= SECOND_NANOS || Math.abs(to) >= SECOND_NANOS;
  }

  /** What it comes to, by this program's own rule. */
  public enum Outcome implements FileWord {
    /** Nothing critical, nothing missed, all in order, in time and long enough. */
    ALL_DONE,
    /**
     * Nothing critical, but something missed, late, out of order, too short or too long, or ended
     * by hand before all had come.
     */
    TO_IMPROVE,
    CRITICAL,
    /** It was cut off before its end. */
    CUT_OFF;

    private static final Wording WORDS = Wording.beside(Outcome.class);

    /** The words shown to people. */
    public String label() {
      return WORDS.say("outcome." + word());
    }
  }

  /** Whether a session holds a station. */
  public static boolean isIn(List<SessionEvent> events) {
    return events.stream().anyMatch(e -> e.what() == EventType.STATION);
  }

  /**
   * The result of the station that a session holds.
   *
   * @throws BadInputException if it holds none, or one that can't be used
   */
  public static StationResult of(List<SessionEvent> events) throws BadInputException {
    return of(StationSetup.station(SOURCE, setup(events)), events);
  }

  /**
   * The result of a station whose facts a session holds.
   *
   * @throws BadInputException if the session holds no station, or not that one
   */
  public static StationResult of(Station station, List<SessionEvent> events)
      throws BadInputException {
    StationSetup setup = StationSetup.read(SOURCE, setup(events), station);
    StationRun run = new StationRun(station, setup, StationOutput.none());
    long last = 0;
    List<KeyedCheck> keyed = new ArrayList<>();
    OptionalLong from = OptionalLong.empty();
    for (SessionEvent event : events) {
      replay(run, event);
      last = event.atNanos();
      boolean begins = event.what() == EventType.PULSE_CHECK;
      if (begins || event.what() == EventType.PULSE_CHECK_END) {
        run.advance(last);
        long clock = run.state().clockNanos();
        from.ifPresent(start -> keyed.add(new KeyedCheck(start, clock)));
        from = begins ? OptionalLong.of(clock) : OptionalLong.empty();
      }
    }
    run.advance(last);
    return new StationResult(run.state(), keyed);
  }

  private static String setup(List<SessionEvent> events) throws BadInputException {
    for (SessionEvent event : events) {
      if (event.fact() instanceof Fact.StationSet set) {
        return set.setup();
      }
    }
    throw BadInputException.missing(SOURCE, "station", "a session in which a station was run");
  }

  private static void replay(StationRun run, SessionEvent event) {
    String words = StationAction.words(event.fact());
    StationAction.of(event.fact())
        .ifPresent(
            action -> {
              if (action.isRecorded()) {
                run.recorded(action, event.atNanos());
              } else {
                run.act(action, words, event.atNanos());
              }
            });
  }

  /** What it comes to. */
  public Outcome outcome() {
    if (!state.critical().isEmpty()) {
      return Outcome.CRITICAL;
    }
    if (!state.end().isPresent()) {
      return Outcome.CUT_OFF;
    }
    boolean all =
        !endedEarly()
            && state.faults().isEmpty()
            && !isUnjudged()
            && state.tasks().stream()
                .allMatch(t -> t.good() || t.progress() == TaskState.Progress.NOT_NEEDED);
    return all ? Outcome.ALL_DONE : Outcome.TO_IMPROVE;
  }

  /** Whether the station has rules about breaths that could not be judged. */
  public boolean isUnjudged() {
    return state.breathsUnrecorded()
        && state.station().rules().stream().anyMatch(rule -> rule.kind().readsBreaths());
  }

  /** Whether it was ended by hand while more was on its way, though all tasks so far were done. */
  public boolean endedEarly() {
    return state.end().filter(StationState.End.COMMAND::equals).isPresent()
        && !state.complete()
        && missed().isEmpty();
  }

  /** Time used, from the start of the exercise, on the station's clock; 0 if it never began. */
  public long exerciseNanos() {
    return state.exerciseFromNanos().isPresent()
        ? state.clockNanos() - state.exerciseFromNanos().getAsLong()
        : 0;
  }

  /** Time used for the preparation, on the station's clock. */
  public long preparationNanos() {
    return state.exerciseFromNanos().orElse(state.clockNanos());
  }

  /** How long the clock was stopped. */
  public long stoppedNanos() {
    return state.nowNanos() - state.clockNanos();
  }

  /** Tasks that were needed. */
  public List<TaskState> needed() {
    return with(t -> t.progress() != TaskState.Progress.NOT_NEEDED);
  }

  /** Tasks that were done, in order, in time and at a good length. */
  public List<TaskState> good() {
    return with(TaskState::good);
  }

  /** Tasks that were begun after their time. */
  public List<TaskState> late() {
    return with(t -> t.begunNanos().isPresent() && t.late());
  }

  /** Tasks that were begun before what must come first. */
  public List<TaskState> outOfOrder() {
    return with(TaskState::outOfOrder);
  }

  /** Tasks that the examiner says were not done properly. */
  public List<TaskState> improper() {
    return with(TaskState::improper);
  }

  /** Tasks that were too short or too long. */
  public List<TaskState> wrongLength() {
    return with(TaskState::isWrongLength);
  }

  /** Tasks that were needed and not done. */
  public List<TaskState> missed() {
    return with(
        t ->
            t.progress() != TaskState.Progress.NOT_NEEDED
                && t.progress() != TaskState.Progress.DONE);
  }

  private List<TaskState> with(Predicate<TaskState> test) {
    List<TaskState> some = new ArrayList<>();
    for (TaskState task : state.tasks()) {
      if (test.test(task)) {
        some.add(task);
      }
    }
    return List.copyOf(some);
  }
}
