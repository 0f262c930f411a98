package squeezewell.coach;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.LongConsumer;
import squeezewell.cue.CheckAnswer;
import squeezewell.cue.Control;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PatientCourse;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.cue.Segment;
import squeezewell.protocol.PatientChange;
import squeezewell.session.Breath;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.Journal;
import squeezewell.session.NotedFinding;
import squeezewell.session.SessionEvent;

/**
 * Runs one practice: takes commands, keeps the journal, gives cues to the outputs and shows where
 * things stand. It has no clock and no thread; its caller tells it the time. The same calls give
 * the same journal.
 *
 * <p>Not thread-safe: one thread calls it. {@link #state()} is immutable and may be handed on.
 */
public final class Coach {
  /** Standing still for longer than this is written down as a hole (our own choice). */
  public static final long HOLE_NANOS = 1_000_000_000L;

  /** So often time passes at the least, so that standing still is noticed whatever is prompted. */
  private static final long TICK_NANOS = 1_000_000_000L;

  private final EventLog log;
  private final CueGiver cues;
  private final HandsRecord hands = new HandsRecord();
  private final List<NotedFinding> findings = new ArrayList<>();

  /** What was told since the last finding, as long as that can be taken back. */
  private final List<Holds.Told> since = new ArrayList<>();

  /** The prompts before the last finding. */
  private CueSchedule beforeFinding;

  private CueSchedule schedule;
  private PatientCourse course;
  private Fading fading;
  private long latestNow;
  private long tickedAt;
  private boolean started;
  private boolean soundLost;
  private boolean finished;
  private CoachState state;

  /**
   * Prepares a practice.
   *
   * @param plan what to practise
   * @param journal where the facts go
   * @param outputs who gives the prompts; told of the schedule at once
   */
  public Coach(PracticePlan plan, Journal journal, List<? extends CueOutput> outputs) {
    this.log = new EventLog(journal);
    this.cues = new CueGiver(outputs);
    this.schedule = CueSchedule.of(plan);
    this.course = PatientCourse.of(plan);
    this.fading = Fading.start(plan, course, plan.startLevel());
    if (plan.prompting() == Prompting.NONE && Prompting.mayFallSilent(plan.guidance())) {
      long from = log.append(Fact.Prompts.test(), 0);
      schedule = schedule.with(new Control(from, Control.Kind.PROMPTS_OFF));
    }
    publish();
    cues.announce(schedule);
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
    return finished ? OptionalLong.empty() : nextDue();
  }

  private OptionalLong nextDue() {
    OptionalLong cue = cues.nextAt(schedule);
    OptionalLong rescue = rescueDue();
    long due = Math.min(cue.orElse(Long.MAX_VALUE), rescue.orElse(Long.MAX_VALUE));
    long next = Math.min(due, tick());
    return next == Long.MAX_VALUE ? OptionalLong.empty() : OptionalLong.of(next);
  }

  /** In a pause nothing is measured, so nothing is blamed on anybody. */
  private long tick() {
    long tick = tickedAt + TICK_NANOS;
    return started
            && tick < SessionEvent.LATEST_NANOS - HOLE_NANOS
            && schedule.stretchAt(tickedAt).kind() != Segment.Kind.PAUSED
        ? tick
        : Long.MAX_VALUE;
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
    latestNow = clamp(nowNanos, latestNow);
    pass(latestNow + 1);
    rescueFromGap();
    publish();
  }

  /**
   * Carries out a command. One that makes no sense now changes nothing. A command that changes the
   * prompts takes effect just after the last cue given, so that what was prompted stays prompted.
   *
   * @param command what to do
   * @param atNanos when it was given, session time; may lie before an earlier call's time, but a
   *     time before an earlier event's counts as that event's time
   */
  public void command(Command command, long atNanos) {
    carryOut(at -> carryOut(command, at), atNanos);
  }

  /**
   * Notes what was found, and changes the prompts at once if the patient now needs another rhythm.
   * Vomit starts suction. The same words about the time hold as for a command.
   *
   * @param finding what was found
   * @param atNanos when, session time
   */
  public void find(PatientChange finding, long atNanos) {
    Objects.requireNonNull(finding, "finding");
    carryOut(at -> noteFinding(finding, at), atNanos);
  }

  /**
   * Answers the check that goes on, which ends it, and notes what the answer says has changed.
   * Where no check goes on nothing happens. The same words about the time hold as for a command.
   *
   * @param answer what was felt or seen
   * @param atNanos when, session time
   */
  public void answer(CheckAnswer answer, long atNanos) {
    carryOut(at -> answerCheck(answer, at), atNanos);
  }

  private void answerCheck(CheckAnswer answer, long at) {
    if (schedule.stretchAt(at).kind() != Segment.Kind.PULSE_CHECK) {
      return;
    }
    remember(Command.PULSE_CHECK_END, at);
    control(new Fact.CheckEnd(Optional.of(answer)), at);
    answer
        .change()
        .filter(course.state().possible()::contains)
        .ifPresent(change -> noteFinding(change, log.lastNanos()));
  }

  /**
   * Writes down something that is not of the practice itself but happens in it, so that one journal
   * holds all in order. The same words about the time hold as for a command. A change of a mark is
   * written down even after the end.
   *
   * @param fact one of those of a station
   * @param atNanos when, session time
   * @throws IllegalArgumentException if it is of the practice itself
   */
  public void note(Fact fact, long atNanos) {
    if (!fact.type().isOfStation()) {
      throw new IllegalArgumentException("of the practice itself: " + fact.type().word());
    }
    if (finished && fact instanceof Fact.MarkChange) {
      log.append(fact, clamp(atNanos, log.lastNanos()));
      publish();
      return;
    }
    carryOut(at -> log.append(fact, at), atNanos);
  }

  /** When the last event was written down, session time; 0 before the first. */
  public long lastEventNanos() {
    return log.lastNanos();
  }

  private void carryOut(LongConsumer action, long atNanos) {
    if (finished) {
      return;
    }
    long at = clamp(atNanos, log.lastNanos());
    latestNow = Math.max(latestNow, at);
    pass(at);
    if (!finished) {
      action.accept(Math.max(at, log.lastNanos()));
    }
    if (!finished) {
      pass(latestNow + 1);
    }
    publish();
  }

  private static long clamp(long nanos, long least) {
    // A control may be written one nanosecond later, so the very last instant is out of bounds.
    return Math.min(Math.max(nanos, least), SessionEvent.LATEST_NANOS - HOLE_NANOS);
  }

  private void carryOut(Command command, long at) {
    remember(command, at);
    switch (command) {
      case SQUEEZE -> squeeze(at);
      case SQUEEZE_END -> squeezeEnd(at);
      case COMPRESS -> compress(at);
      case BREATH -> breath(at);
      case FINISH -> finish(at);
      case RETRACT_BREATH -> retractBreath(at);
      case UNDO_FINDING -> undoFinding(at);
      case SOUND_LOST -> sound(true, at);
      case SOUND_BACK -> sound(false, at);
      default -> hold(command, at);
    }
  }

  private void hold(Command command, long at) {
    change(Holds.changes(command, schedule, course, at), at);
  }

  private void change(List<Fact> facts, long at) {
    if (facts.stream().anyMatch(Holds::begins)) {
      squeezeEnd(at);
    }
    facts.forEach(fact -> control(fact, at));
  }

  private void squeeze(long at) {
    if (hands.isSqueezing()) {
      return;
    }
    hands.press();
    if (hands.breathBounces(at)) {
      // The contact bounced: the squeeze goes on, and its end will be written once more.
      return;
    }
    hold(Command.SQUEEZE, at);
    OptionalLong rescue = rescueDue();
    long began = log.append(new Fact.Squeeze(EventType.BREATH), at);
    hands.breathBegan(began, log.lastNumber());
    fade(began, rescue.isPresent() && rescue.getAsLong() <= began);
  }

  /** Every change of the prompts and of the level is written down, so that nobody decides again. */
  private void fade(long began, boolean afterGap) {
    if (schedule.stretchAt(began).kind() == Segment.Kind.PACED) {
      fading
          .breath(afterGap, intervalTo(began))
          .ifPresent(turn -> control(turn.fact(EventType.PROMPTS_ON), began));
    }
  }

  private OptionalLong intervalTo(long began) {
    OptionalLong before = hands.beforeLastNanos();
    return before.isPresent() && schedule.unbroken(before.getAsLong(), began)
        ? OptionalLong.of(began - before.getAsLong())
        : OptionalLong.empty();
  }

  /**
   * When a wait in a silence has grown too long, checks and suction not counted; empty while
   * breaths are prompted or none is asked for.
   */
  private OptionalLong rescueDue() {
    // What ended a check at the instant of its last cue takes effect a nanosecond later.
    Segment now = schedule.stretchAt(Math.max(latestNow, log.lastNanos()));
    boolean waits = fading.isSilent() && !hands.isSqueezing() && hands.hasBreaths();
    if (!waits || now.kind() != Segment.Kind.PACED) {
      return OptionalLong.empty();
    }
    Breath last = hands.lastBreath();
    long breathed = last.endNanos().orElse(last.startNanos());
    long from = Math.max(breathed, now.startNanos());
    return OptionalLong.of(from + now.guidance().limits().gapLongest().nanos() + 1);
  }

  private void rescueFromGap() {
    OptionalLong due = rescueDue();
    if (!finished && due.isPresent() && due.getAsLong() <= latestNow) {
      long at = Math.max(latestNow, log.lastNanos());
      fading.gap().ifPresent(turn -> control(turn.fact(EventType.PROMPTS_AT_ONCE), at));
      pass(latestNow + 1);
    }
  }

  private void compress(long at) {
    if (hands.compressionBounces(at)) {
      return;
    }
    hold(Command.COMPRESS, at);
    hands.compressed(log.append(new Fact.Plain(EventType.COMPRESSION), at));
  }

  private void remember(Command command, long at) {
    boolean bounced =
        switch (command) {
          case SQUEEZE, BREATH -> hands.isSqueezing() || hands.breathBounces(at);
          case COMPRESS -> hands.compressionBounces(at);
          default -> false;
        };
    if (!bounced && lastFinding(at).isPresent()) {
      since.add(new Holds.Told(command, at));
    }
  }

  private void breath(long at) {
    if (!hands.isSqueezing()) {
      squeeze(at);
      hands.release();
    }
  }

  private void squeezeEnd(long at) {
    if (hands.isSqueezing()) {
      hands.breathEnded(log.append(new Fact.Squeeze(EventType.BREATH_END), at));
      hands.release();
    }
  }

  private void retractBreath(long at) {
    if (hands.hasBreaths()) {
      squeezeEnd(at);
      log.append(new Fact.Correction(EventType.RETRACT, hands.lastBreathNumber()), at);
      hands.forgetLastBreath();
      fading.forgetLastBreath();
    }
  }

  private void noteFinding(PatientChange finding, long at) {
    if (!finding.concerns(course.state().patient())) {
      return;
    }
    PatientCourse next = course.after(finding);
    boolean changes = next.controlFrom(course, at).isPresent();
    long noted = log.append(new Fact.Found(finding), changes ? cues.afterLastCue(at) : at);
    findings.add(
        new NotedFinding(log.lastNumber(), noted, finding, course, next, OptionalLong.empty()));
    beforeFinding = schedule;
    since.clear();
    goTo(next, noted);
    Segment now = schedule.stretchAt(noted);
    if (finding == PatientChange.VOMIT && now.kind() != Segment.Kind.PAUSED) {
      change(Holds.beginning(Segment.Kind.SUCTION, now, course), noted);
    }
  }

  /** The last finding, if it can be taken back. */
  private Optional<NotedFinding> lastFinding(long at) {
    return CoachState.undoable(findings, at);
  }

  private void undoFinding(long at) {
    lastFinding(at).ifPresent(noted -> undo(noted, at));
  }

  /** What holds the prompts up is what would, had the schedule been laid without the finding. */
  private void undo(NotedFinding noted, long at) {
    long undone = noted.changesPrompts() ? cues.afterLastCue(at) : at;
    long from = log.append(new Fact.Correction(EventType.FINDING_UNDONE, noted.number()), undone);
    findings.set(findings.size() - 1, noted.takenBack(from));
    CueSchedule without = Holds.laidAgain(beforeFinding, noted.before(), since);
    goTo(course.undone(), from);
    Segment.Kind kind = without.stretchAt(from).kind();
    change(Holds.backTo(kind, schedule.stretchAt(from), course), from);
  }

  private void goTo(PatientCourse next, long from) {
    Optional<Control> control = next.controlFrom(course, from);
    course = next;
    if (control.isPresent()) {
      change(control.get());
      // In another rhythm nothing was held yet.
      fading = Fading.start(schedule.plan(), course, 0);
    }
  }

  private void finish(long at) {
    squeezeEnd(at);
    control(new Fact.Plain(EventType.FINISH), at);
    cues.giveEnd(schedule, latestNow);
    finished = true;
  }

  private void sound(boolean lost, long at) {
    if (soundLost != lost) {
      soundLost = lost;
      log.append(new Fact.Plain(lost ? EventType.SOUND_LOST : EventType.SOUND_BACK), at);
    }
  }

  /** Changes the prompts; never at or before a cue that was given. */
  private void control(Fact fact, long at) {
    long from = log.append(fact, cues.afterLastCue(at));
    change(new Control(from, fact.control().get()));
  }

  private void change(Control control) {
    schedule = schedule.with(control);
    cues.changed(schedule, control.atNanos());
  }

  /** Gives the cues before an instant, and ends the practice if its end is not after now. */
  private void pass(long upToNanos) {
    noteHole(upToNanos);
    cues.give(schedule, upToNanos, latestNow);
    tickedAt = latestNow;
    started = true;
    long end = schedule.endNanos().orElse(Segment.OPEN);
    if (end <= latestNow) {
      finish(Math.max(end, log.lastNanos()));
    }
  }

  private void noteHole(long upToNanos) {
    OptionalLong due = nextDue();
    if (!started || !due.isPresent() || due.getAsLong() >= upToNanos) {
      return;
    }
    long late = latestNow - due.getAsLong();
    if (late > HOLE_NANOS) {
      log.append(Fact.Stall.of(late), latestNow);
    }
  }

  private void publish() {
    state =
        new CoachState(
            schedule,
            hands.breaths(),
            hands.recentCompressions(),
            hands.compressionCount(),
            hands.isSqueezing(),
            CoachState.lastInterval(schedule, hands.breaths()),
            findings,
            fading.level(),
            soundLost,
            log.trouble(),
            finished);
  }
}
