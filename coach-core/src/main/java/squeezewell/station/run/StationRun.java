package squeezewell.station.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.SessionEvent;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;

/**
 * Runs one station. It has no clock and no thread; its caller tells it the time. The same calls
 * give the same facts and the same state, and how often {@link #advance} is called in between
 * changes nothing.
 *
 * <p>Every command returns whether it made sense; one that does not changes nothing. A time before
 * that of an earlier call counts as that call's time. What falls due at the very instant of a
 * command comes before it.
 *
 * <p>Not thread-safe: one thread calls it. {@link #state()} is immutable and may be handed on.
 */
public final class StationRun {
  /** A tap can be taken back as a slip for so long, as a finding can in the live practice. */
  public static final long UNDO_NANOS = 5_000_000_000L;

  /** The longest remark, in characters. */
  public static final int LONGEST_REMARK = 500;

  private static final long LATEST = SessionEvent.LATEST_NANOS - 2_000_000_000L;

  private final Station station;
  private final StationSetup setup;
  private final StationOutput output;
  private final List<StationInput> inputs = new ArrayList<>();
  private final SaidAndTold given = new SaidAndTold();
  private StationWalk walk;
  private StationWalk seenWalk;
  private int seenLines;
  private int seenTold;
  private long latest;
  private boolean exerciseTold;
  private boolean endTold;
  private StationState state;

  /**
   * Prepares a station: its time begins at session time 0.
   *
   * @param station what to run
   * @param setup what was settled for it
   * @param output where facts go
   * @throws IllegalArgumentException if the setup is not one for this station
   */
  public StationRun(Station station, StationSetup setup, StationOutput output) {
    this.station = Objects.requireNonNull(station, "station");
    this.setup = Objects.requireNonNull(setup, "setup");
    this.output = Objects.requireNonNull(output, "output");
    if (setup.choices().size() != station.branches().size()) {
      throw new IllegalArgumentException("a setup for another station: " + setup.choices());
    }
    walk = new StationWalk(station, setup);
    output.fact(new Fact.StationSet(setup.json(station)), 0);
    publish();
  }

  /** Where things stand after the last call. */
  public StationState state() {
    return state;
  }

  /** The instant, session time, at which {@link #advance} should be called next at the latest. */
  public OptionalLong nextDueNanos() {
    return walk.nextDue();
  }

  /** Lets time pass. */
  public void advance(long nowNanos) {
    latest = clamp(nowNanos);
    walk.advance(latest);
    publish();
  }

  /** The trainee is ready: the exercise begins before the preparation's time is up. */
  public boolean begin(long nowNanos) {
    return take(StationInput.Kind.BEGIN, "", nowNanos, EventType.STATION_BEGIN);
  }

  /** A timed or paced task begins; a paced one ends the paced one before it. */
  public boolean start(String taskId, long nowNanos) {
    boolean taken = take(StationInput.Kind.START, taskId, nowNanos, EventType.TASK_START);
    if (taken) {
      output.started(station.task(taskId).get(), latest);
    }
    return taken;
  }

  /** A task is done; one with a length that was never begun counts as done, its length unknown. */
  public boolean done(String taskId, long nowNanos) {
    boolean taken = take(StationInput.Kind.DONE, taskId, nowNanos, EventType.TASK_DONE);
    if (taken) {
      output.done(station.task(taskId).get(), latest);
    }
    return taken;
  }

  /** Whether {@link #undo} would take back what was last done about a task. */
  public boolean canUndo(String taskId, long nowNanos) {
    return withoutLast(taskId, clamp(nowNanos)).isPresent();
  }

  /**
   * Takes back what was last done about a task, its end or its beginning, within {@link
   * #UNDO_NANOS} of it. What followed from it is taken back too, save the examiner's words, which
   * were said.
   */
  public boolean undo(String taskId, long nowNanos) {
    advance(nowNanos);
    Optional<Undone> undone = withoutLast(taskId, latest);
    if (!undone.isPresent()) {
      return false;
    }
    inputs.remove(undone.get().place());
    walk = undone.get().walk();
    given.undone(latest);
    output.fact(new Fact.Told(EventType.TASK_UNDONE, taskId), latest);
    undone
        .get()
        .slip()
        .ifPresent(
            slip -> {
              given.takeBack(slip);
              output.undoFinding(latest);
            });
    publish();
    return true;
  }

  /** Something that is not on the list of tasks is done. */
  public boolean order(String orderId, long nowNanos) {
    return take(StationInput.Kind.ORDER, orderId, nowNanos, EventType.ORDER);
  }

  /**
   * An examiner makes a finding come.
   *
   * @param word the identifier of a finding of the station, or else the word of a {@link
   *     squeezewell.protocol.ClinicalFinding}, which then changes the prompts only
   */
  public boolean inject(String word, long nowNanos) {
    return take(StationInput.Kind.INJECT, word, nowNanos, EventType.EXAMINER_FINDING);
  }

  /** An examiner makes a finding go. */
  public boolean clear(String findingId, long nowNanos) {
    return take(StationInput.Kind.CLEAR, findingId, nowNanos, EventType.EXAMINER_CLEARED);
  }

  /**
   * Whoever leads the station chooses the way of a branch on the spot, until the branch is reached.
   *
   * @param way as {@link BranchOption#words} writes it
   */
  public boolean choose(String way, long nowNanos) {
    return take(StationInput.Kind.CHOOSE, way, nowNanos, EventType.WAY_CHOSEN);
  }

  /** Something to be talked about afterwards. */
  public boolean remark(String words, long nowNanos) {
    String text = words.trim();
    return !text.isEmpty()
        && text.length() <= LONGEST_REMARK
        && take(StationInput.Kind.REMARK, text, nowNanos, EventType.REMARK);
  }

  /** The station's clock stands until {@link #runClock}. */
  public boolean stopClock(long nowNanos) {
    boolean taken = take(StationInput.Kind.STOP_CLOCK, "", nowNanos, EventType.CLOCK_STOPPED);
    if (taken) {
      output.clock(true, latest);
    }
    return taken;
  }

  /** The station's clock runs again. */
  public boolean runClock(long nowNanos) {
    boolean taken = take(StationInput.Kind.RUN_CLOCK, "", nowNanos, EventType.CLOCK_RUNNING);
    if (taken) {
      output.clock(false, latest);
    }
    return taken;
  }

  /** The station is over. */
  public boolean end(long nowNanos) {
    return take(StationInput.Kind.END, "", nowNanos, EventType.STATION_END);
  }

  /**
   * A squeeze or a compression was given: begins the paced task that is next in turn, and ends one
   * that has lasted long enough or that a finding cuts short.
   */
  public void breath(long nowNanos) {
    advance(nowNanos);
    Optional<TaskState> running = PacedTurn.running(state);
    boolean tooShort = running.filter(t -> !PacedTurn.isLongEnough(t)).isPresent();
    if (running.isPresent() && !tooShort) {
      done(running.get().task().id(), latest);
    }
    PacedTurn.next(state)
        .filter(next -> !tooShort || PacedTurn.wasCalledFor(station, next))
        .ifPresent(next -> start(next.id(), latest));
  }

  /**
   * A squeeze or compression was recorded; here it only tells for how long breaths went on.
   *
   * @param atNanos when, session time; in order, but it may lie a little before an earlier call's
   */
  void recorded(long atNanos) {
    advance(atNanos);
    StationInput input = new StationInput(StationInput.Kind.BREATH, "", atNanos);
    if (walk.apply(input)) {
      inputs.add(input);
      publish();
    }
  }

  private boolean take(StationInput.Kind kind, String text, long nowNanos, EventType type) {
    advance(nowNanos);
    StationInput input = new StationInput(kind, text, latest);
    if (!walk.apply(input)) {
      return false;
    }
    inputs.add(input);
    exerciseTold |= kind == StationInput.Kind.BEGIN;
    endTold |= kind == StationInput.Kind.END;
    output.fact(fact(type, text), latest);
    publish();
    if (kind == StationInput.Kind.END) {
      output.ended(latest);
    }
    return true;
  }

  private static Fact fact(EventType type, String text) {
    return switch (type) {
      case STATION_BEGIN, STATION_END -> new Fact.Turn(type, true);
      case CLOCK_STOPPED, CLOCK_RUNNING -> new Fact.Plain(type);
      default -> new Fact.Told(type, text);
    };
  }

  private long clamp(long nowNanos) {
    return Math.min(Math.max(nowNanos, latest), LATEST);
  }

  /** Gives out what has happened since the last call, in order of time, and shows the new state. */
  private void publish() {
    List<Outgoing> outgoing = new ArrayList<>();
    OptionalLong began = walk.exerciseSince();
    if (!exerciseTold && began.isPresent()) {
      exerciseTold = true;
      long at = began.getAsLong();
      outgoing.add(new Outgoing(at, 0, () -> byClock(EventType.STATION_BEGIN, at)));
    }
    boolean news =
        !walk.equals(seenWalk)
            || walk.lines().size() != seenLines
            || walk.told().size() != seenTold;
    if (news) {
      seenWalk = walk;
      seenLines = walk.lines().size();
      seenTold = walk.told().size();
      gather(outgoing);
    }
    if (!endTold && walk.over()) {
      endTold = true;
      long at = walk.nowNanos();
      outgoing.add(new Outgoing(at, 2, () -> byClock(EventType.STATION_END, at)));
      outgoing.add(new Outgoing(at, 3, () -> output.ended(at)));
    }
    // What was taken back changes without news of the walk.
    state = walk.state(given);
    outgoing.sort(Comparator.comparingLong(Outgoing::atNanos).thenComparingInt(Outgoing::rank));
    outgoing.forEach(o -> o.action().run());
  }

  private void byClock(EventType type, long at) {
    output.fact(new Fact.Turn(type, false), at);
  }

  /** What was said and told and has not been given out. */
  private void gather(List<Outgoing> outgoing) {
    for (StationState.Line line : given.say(walk)) {
      long at = line.atNanos();
      outgoing.add(
          new Outgoing(
              at, 1, () -> output.fact(new Fact.Told(EventType.EXAMINER, line.words()), at)));
    }
    for (StationState.Told told : given.tell(walk)) {
      long at = told.atNanos();
      outgoing.add(new Outgoing(at, 1, () -> output.find(told.finding(), at)));
    }
  }

  private record Outgoing(long atNanos, int rank, Runnable action) {}

  /**
   * @param place of the input that is left out
   * @param walk the way without it
   * @param slip the key of what the live practice was told in consequence
   */
  private record Undone(int place, StationWalk walk, Optional<String> slip) {}

  private Optional<Undone> withoutLast(String taskId, long atNanos) {
    int place = inputs.size() - 1;
    while (place >= 0 && !isAbout(inputs.get(place), taskId)) {
      place--;
    }
    if (place < 0 || walk.over() || atNanos - inputs.get(place).atNanos() > UNDO_NANOS) {
      return Optional.empty();
    }
    StationWalk without = new StationWalk(station, setup);
    for (int i = 0; i < inputs.size(); i++) {
      if (i != place) {
        without.apply(inputs.get(i));
      }
    }
    without.advance(atNanos);
    SaidAndTold.Consequence consequence = given.without(without);
    return consequence.possible()
        ? Optional.of(new Undone(place, without, consequence.key()))
        : Optional.empty();
  }

  private static boolean isAbout(StationInput input, String taskId) {
    boolean aboutTask =
        input.kind() == StationInput.Kind.START || input.kind() == StationInput.Kind.DONE;
    return aboutTask && input.detail().equals(taskId);
  }
}
