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
import squeezewell.station.file.Station;

/**
 * Runs one station. It has no clock and no thread; its caller tells it the time. The same calls
 * give the same facts and the same state, and how often {@link #advance} is called in between
 * changes nothing.
 *
 * <p>Not thread-safe: one thread calls it. {@link #state()} is immutable and may be handed on.
 */
public final class StationRun implements StationCommands {
  /** A tap can be taken back as a slip for so long, as a finding can in the live practice. */
  public static final long UNDO_NANOS = 5_000_000_000L;

  /** The longest remark, in characters. */
  public static final int LONGEST_REMARK = 500;

  private static final long LATEST = SessionEvent.LATEST_NANOS - 2_000_000_000L;

  private static final int NOTHING_SEEN = -1;

  private final Station station;
  private final StationSetup setup;
  private final StationOutput output;
  private final List<StationInput> inputs = new ArrayList<>();
  private final SaidAndTold given = new SaidAndTold();
  private StationEngine walk;
  private int seen = NOTHING_SEEN;
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
    walk = new StationEngine(station, setup);
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

  @Override
  public boolean canUndo(String taskId, long nowNanos) {
    return withoutLast(taskId, clamp(nowNanos)).isPresent();
  }

  @Override
  public boolean act(StationAction action, String words, long nowNanos) {
    return switch (action) {
      case UNDO -> takeBack(words, nowNanos);
      case REMARK -> {
        String text = words.trim();
        boolean fits = !text.isEmpty() && text.length() <= LONGEST_REMARK;
        yield fits && take(action, text, nowNanos);
      }
      default -> take(action, words, nowNanos);
    };
  }

  private boolean takeBack(String taskId, long nowNanos) {
    advance(nowNanos);
    Optional<Undone> undone = withoutLast(taskId, latest);
    if (!undone.isPresent()) {
      return false;
    }
    inputs.remove(undone.get().place());
    walk = undone.get().walk();
    seen = NOTHING_SEEN;
    given.undone(latest);
    output.fact(StationAction.UNDO.fact(taskId), latest);
    if (undone.get().slip().isPresent()) {
      given.takeBack(undone.get().slip().get());
      output.undoFinding(latest);
    }
    publish();
    return true;
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
   * A squeeze, its end or a compression was recorded; here it tells for how long breaths went on,
   * and the station's rules read it.
   *
   * @param action which of them
   * @param atNanos when, session time; in order, but it may lie a little before an earlier call's
   */
  void recorded(StationAction action, long atNanos) {
    advance(atNanos);
    StationInput input = new StationInput(action, "", atNanos);
    if (walk.apply(input)) {
      inputs.add(input);
      publish();
    }
  }

  private boolean take(StationAction action, String words, long nowNanos) {
    advance(nowNanos);
    StationInput input = new StationInput(action, words, latest);
    if (!walk.apply(input)) {
      return false;
    }
    inputs.add(input);
    exerciseTold |= action == StationAction.BEGIN;
    endTold |= action == StationAction.END;
    output.fact(action.fact(words), latest);
    publish();
    switch (action) {
      case START -> output.started(station.task(words).get(), latest);
      case DONE -> output.done(station.task(words).get(), latest);
      case STOP_CLOCK, RUN_CLOCK -> output.clock(action == StationAction.STOP_CLOCK, latest);
      case END -> output.ended(latest);
      default -> {
        // The fact says all.
      }
    }
    return true;
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
    int news = walk.lines().size() + walk.told().size();
    if (news != seen) {
      seen = news;
      gather(outgoing);
    }
    if (!endTold && walk.over()) {
      endTold = true;
      long at = walk.nowNanos();
      outgoing.add(new Outgoing(at, 2, () -> byClock(EventType.STATION_END, at)));
      outgoing.add(new Outgoing(at, 3, () -> output.ended(at)));
    }
    // What was taken back changes without news of the walk.
    state = walk.state(given.lines(), given.told());
    outgoing.sort(Comparator.comparingLong(Outgoing::atNanos).thenComparingInt(Outgoing::rank));
    outgoing.forEach(o -> o.action().run());
  }

  private void byClock(EventType type, long at) {
    output.fact(new Fact.Turn(type, false), at);
  }

  /** What was said and told and has not been given out. */
  private void gather(List<Outgoing> outgoing) {
    for (StationState.Line line : given.say(walk.lines())) {
      long at = line.atNanos();
      outgoing.add(
          new Outgoing(
              at, 1, () -> output.fact(new Fact.Told(EventType.EXAMINER, line.words()), at)));
    }
    for (StationState.Told told : given.tell(walk.told())) {
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
  private record Undone(int place, StationEngine walk, Optional<String> slip) {}

  private Optional<Undone> withoutLast(String taskId, long atNanos) {
    int place = inputs.size() - 1;
    while (place >= 0 && !isAbout(inputs.get(place), taskId)) {
      place--;
    }
    if (place < 0 || walk.over() || atNanos - inputs.get(place).atNanos() > UNDO_NANOS) {
      return Optional.empty();
    }
    StationEngine without = new StationEngine(station, setup);
    for (int i = 0; i < inputs.size(); i++) {
      if (i != place) {
        without.apply(inputs.get(i));
      }
    }
    without.advance(atNanos);
    SaidAndTold.Consequence consequence = given.without(without.told());
    return consequence.possible()
        ? Optional.of(new Undone(place, without, consequence.key()))
        : Optional.empty();
  }

  private static boolean isAbout(StationInput input, String taskId) {
    boolean aboutTask =
        input.action() == StationAction.START || input.action() == StationAction.DONE;
    return aboutTask && input.words().equals(taskId);
  }
}
