package squeezewell.coach;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import squeezewell.cue.Control;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Stretch;
import squeezewell.session.Breath;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;
import squeezewell.session.What;

/**
 * Runs one practice: takes commands, keeps the journal, gives cues to the outputs and shows where
 * things stand. It has no clock and no thread; its caller tells it the time. The same calls give
 * the same journal.
 *
 * <p>Not thread-safe: one thread calls it. {@link #state()} is immutable and may be handed on.
 */
public final class Coach {
  /** A cue this late is dropped rather than given at the wrong time (our own choice). */
  public static final long STALE_NANOS = 250_000_000L;

  /** Standing still for longer than this is written down as a hole (our own choice). */
  public static final long HOLE_NANOS = 1_000_000_000L;

  /** Two squeezes closer than this are one with a bouncing contact (our own choice). */
  public static final long BOUNCE_NANOS = 200_000_000L;

  /** A squeeze this long into a check or suction ends it: the trainee is breathing again. */
  private static final long BREATHING_AGAIN_NANOS = 300_000_000L;

  private final Journal journal;
  private final List<CueOutput> outputs;
  private final List<Breath> breaths = new ArrayList<>();
  private final List<Integer> breathNumbers = new ArrayList<>();
  private CueSchedule schedule;
  private int events;
  private long lastAt;
  private long cuedUntil;
  private boolean started;
  private boolean squeezing;
  private boolean soundLost;
  private boolean finished;
  private String trouble = "";
  private CoachState state;

  /**
   * Prepares a practice.
   *
   * @param plan what to practise
   * @param journal where the facts go
   * @param outputs who gives the prompts; told of the schedule at once
   */
  public Coach(PracticePlan plan, Journal journal, List<? extends CueOutput> outputs) {
    this.journal = Objects.requireNonNull(journal, "journal");
    this.outputs = List.copyOf(outputs);
    this.schedule = CueSchedule.of(plan);
    publish();
    announceSchedule();
  }

  /** Where things stand after the last call. */
  public CoachState state() {
    return state;
  }

  /**
   * The instant at which {@link #advance} should be called next at the latest; empty when nothing
   * more will be due unless a command comes.
   */
  public OptionalLong nextDueNanos() {
    return finished ? OptionalLong.empty() : schedule.nextCueAt(cuedUntil);
  }

  /**
   * Lets time pass: gives the cues that have fallen due and ends the practice at its time.
   *
   * @param nowNanos session time; a time before an earlier call's counts as that call's time
   */
  public void advance(long nowNanos) {
    if (finished) {
      return;
    }
    long now = Math.max(nowNanos, lastAt);
    noteHole(now);
    giveCues(now);
    OptionalLong end = schedule.endNanos();
    if (end.isPresent() && now >= end.getAsLong()) {
      finish(Math.max(end.getAsLong(), lastAt));
    }
    publish();
  }

  /**
   * Carries out a command. One that makes no sense now changes nothing.
   *
   * @param command what to do
   * @param atNanos when it was given, session time; a time before an earlier event's counts as that
   *     event's time
   */
  public void command(Command command, long atNanos) {
    long at = Math.max(atNanos, lastAt);
    advance(at);
    if (finished) {
      return;
    }
    switch (command) {
      case SQUEEZE -> squeeze(at);
      case SQUEEZE_END -> squeezeEnd(at);
      case PULSE_CHECK -> hold(What.PULSE_CHECK, Stretch.Kind.PULSE_CHECK, at);
      case SUCTION -> hold(What.SUCTION, Stretch.Kind.SUCTION, at);
      case PAUSE -> hold(What.PAUSE, Stretch.Kind.PAUSED, at);
      case PULSE_CHECK_END -> goOn(Stretch.Kind.PULSE_CHECK, at);
      case SUCTION_END -> goOn(Stretch.Kind.SUCTION, at);
      case RESUME -> goOn(Stretch.Kind.PAUSED, at);
      case FINISH -> finish(at);
      case RETRACT_BREATH -> retractBreath(at);
      case SOUND_LOST -> sound(true, at);
      case SOUND_BACK -> sound(false, at);
    }
    publish();
  }

  private void squeeze(long at) {
    boolean bounced =
        !breaths.isEmpty() && at - breaths.get(breaths.size() - 1).startNanos() < BOUNCE_NANOS;
    if (squeezing || bounced) {
      return;
    }
    Stretch now = schedule.stretchAt(at);
    if (at - now.startNanos() >= BREATHING_AGAIN_NANOS) {
      goOn(Stretch.Kind.PULSE_CHECK, at);
      goOn(Stretch.Kind.SUCTION, at);
    }
    append(What.BREATH, at, "");
    breaths.add(new Breath(at, OptionalLong.empty(), OptionalDouble.empty()));
    breathNumbers.add(events);
    squeezing = true;
  }

  private void squeezeEnd(long at) {
    if (!squeezing) {
      return;
    }
    append(What.BREATH_END, at, "");
    Breath open = breaths.remove(breaths.size() - 1);
    breaths.add(new Breath(open.startNanos(), OptionalLong.of(at), open.millilitres()));
    squeezing = false;
  }

  private void retractBreath(long at) {
    if (breaths.isEmpty()) {
      return;
    }
    squeezeEnd(at);
    append(What.RETRACT, at, Integer.toString(breathNumbers.get(breathNumbers.size() - 1)));
    breaths.remove(breaths.size() - 1);
    breathNumbers.remove(breathNumbers.size() - 1);
  }

  private void hold(What what, Stretch.Kind kind, long at) {
    if (schedule.stretchAt(at).kind() == kind) {
      return;
    }
    squeezeEnd(at);
    endHold(at);
    append(what, at, "");
    control(what, at);
  }

  private void goOn(Stretch.Kind kind, long at) {
    if (schedule.stretchAt(at).kind() == kind) {
      endHold(at);
    }
  }

  private void endHold(long at) {
    What end =
        switch (schedule.stretchAt(at).kind()) {
          case PULSE_CHECK -> What.PULSE_CHECK_END;
          case SUCTION -> What.SUCTION_END;
          case PAUSED -> What.RESUME;
          default -> null;
        };
    if (end != null) {
      append(end, at, "");
      control(end, at);
    }
  }

  private void finish(long at) {
    squeezeEnd(at);
    append(What.FINISH, at, "");
    control(What.FINISH, at);
    giveCues(at);
    finished = true;
  }

  private void sound(boolean lost, long at) {
    if (soundLost != lost) {
      soundLost = lost;
      append(lost ? What.SOUND_LOST : What.SOUND_BACK, at, "");
    }
  }

  private void control(What what, long at) {
    schedule = schedule.with(new Control(at, what.control().get()));
    announceSchedule();
  }

  private void append(What what, long at, String detail) {
    lastAt = at;
    events++;
    try {
      journal.append(new SessionEvent(events, at, what, detail));
    } catch (IOException e) {
      trouble = "This practice is not being saved: " + e.getMessage();
    }
  }

  private void noteHole(long now) {
    OptionalLong due = schedule.nextCueAt(cuedUntil);
    if (started && due.isPresent() && now - due.getAsLong() > HOLE_NANOS) {
      BigDecimal seconds =
          BigDecimal.valueOf(now - due.getAsLong(), 9).setScale(1, RoundingMode.HALF_UP);
      append(What.HOLE, now, seconds.toPlainString() + " s");
    }
    started = true;
  }

  private void giveCues(long now) {
    for (Cue cue : schedule.between(Math.max(cuedUntil, now - STALE_NANOS), now + 1)) {
      for (CueOutput output : outputs) {
        output.cue(cue, now);
      }
    }
    cuedUntil = Math.max(cuedUntil, now + 1);
  }

  private void announceSchedule() {
    for (CueOutput output : outputs) {
      output.scheduleChanged(schedule);
    }
  }

  private void publish() {
    state =
        new CoachState(schedule, breaths, squeezing, lastInterval(), soundLost, trouble, finished);
  }

  private OptionalLong lastInterval() {
    if (breaths.size() < 2) {
      return OptionalLong.empty();
    }
    long from = breaths.get(breaths.size() - 2).startNanos();
    long to = breaths.get(breaths.size() - 1).startNanos();
    boolean oneStretch = schedule.stretchAt(from).equals(schedule.stretchAt(to));
    return oneStretch ? OptionalLong.of(to - from) : OptionalLong.empty();
  }
}
