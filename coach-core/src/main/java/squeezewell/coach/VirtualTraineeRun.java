package squeezewell.coach;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Segment;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.Limits;
import squeezewell.protocol.PatientChange;
import squeezewell.session.ManualClock;

/** One practice of a {@link VirtualTrainee}: at each step, the next breath or the next check. */
final class VirtualTraineeRun {
  private static final long SECOND = 1_000_000_000L;
  private static final long MINUTE = 60 * SECOND;

  /** The interval at which the trainee's habits have their full size. */
  private static final double FULL_INTERVAL = 6.0 * SECOND;

  private static final long HANDS_MOVE = SECOND / 5;
  private static final int SKIPS_ONE_IN = 5;

  private final Coach coach;
  private final ManualClock clock;
  private final TraineeFault fault;
  private final VirtualTraineeChance chance;
  private final VirtualTraineeHands hands;
  private final Deque<ScriptedFinding> script;
  private final double scale;

  private long answeredUntil;
  private long handsBusyFrom;
  private boolean inRhythm;
  private long lastOnset;
  private long checkDue = -1;
  private long checkDelay;
  private int prompts;
  private int skipAt;
  private long nextRest;

  VirtualTraineeRun(
      Coach coach,
      ManualClock clock,
      TraineeFault fault,
      VirtualTraineeChance chance,
      VirtualTraineeChance handsChance,
      List<ScriptedFinding> script) {
    this.coach = coach;
    this.clock = clock;
    this.fault = fault;
    this.chance = chance;
    this.hands = new VirtualTraineeHands(coach, handsChance);
    CueSchedule schedule = coach.state().schedule();
    this.script = new ArrayDeque<>(script);
    this.scale = Math.min(1, shortestInterval(schedule) / FULL_INTERVAL);
    this.answeredUntil = clock.nanos();
    this.nextRest = schedule.plan().countInNanos() + 40 * SECOND;
  }

  /** From squeeze to squeeze; two of them are close in the pause of a compression cycle. */
  private static double shortestInterval(CueSchedule schedule) {
    double shortest = FULL_INTERVAL;
    long before = -1;
    for (Cue cue : schedule.squeezesUntil(schedule.plan().countInNanos() + MINUTE)) {
      shortest = before < 0 ? shortest : Math.min(shortest, (double) (cue.atNanos() - before));
      before = cue.atNanos();
    }
    return shortest;
  }

  void run() {
    passTo(clock.nanos());
    while (!coach.state().finished()) {
      OptionalLong check = checkAt();
      OptionalLong onset = nextOnset();
      long found = script.isEmpty() ? Long.MAX_VALUE : script.peek().atNanos();
      long next = Math.min(Math.min(handsBusyFrom, found), onset.orElse(Long.MAX_VALUE));
      if (check.isPresent() && check.getAsLong() < next) {
        checkPulse(check.getAsLong());
      } else if (found <= onset.orElse(coach.state().schedule().endNanos().getAsLong())) {
        find();
      } else if (onset.isPresent()) {
        breathe(onset.getAsLong());
      } else {
        passTo(coach.state().schedule().endNanos().getAsLong());
      }
    }
  }

  private double ownIntervalNanos() {
    return coach
        .state()
        .schedule()
        .guidanceAt(clock.nanos())
        .rhythm()
        .steadyBreaths()
        .map(b -> (double) b.interval().nanosAt(1))
        .orElse(FULL_INTERVAL);
  }

  private void find() {
    ScriptedFinding scripted = script.remove();
    long at = Math.max(scripted.atNanos(), clock.nanos());
    passTo(at);
    coach.find(scripted.finding(), at);
    if (scripted.finding() == PatientChange.VOMIT) {
      long limit = coach.state().schedule().guidanceAt(at).limits().suctionLongest().nanos();
      long end = at + limit / 2;
      passTo(end);
      coach.command(Command.SUCTION_END, end);
    }
    startAnew();
  }

  /** The prompts have changed. */
  private void startAnew() {
    hands.startAnew(clock.nanos());
    answeredUntil = clock.nanos();
    inRhythm = false;
  }

  private boolean keepsOwnTime() {
    return fault == TraineeFault.FAST
        || fault == TraineeFault.SLOWS
        || fault == TraineeFault.OWN_TEMPO;
  }

  private OptionalLong nextOnset() {
    if (keepsOwnTime() && inRhythm) {
      return ownOnset();
    }
    OptionalLong silentFrom = silentFrom();
    if (!silentFrom.isPresent()) {
      return promptedOnset();
    }
    // A prompt that was foreseen may still be given.
    Optional<Cue> prompt = inRhythm ? nextPrompt() : Optional.empty();
    return prompt.isPresent() && prompt.get().atNanos() < silentFrom.getAsLong()
        ? promptedOnset()
        : silentOnset();
  }

  /** When the prompts fell silent, or soon will, if breaths are to be given without them. */
  private OptionalLong silentFrom() {
    CueSchedule schedule = coach.state().schedule();
    List<UnpromptedSpan> silences = schedule.silences();
    UnpromptedSpan last = silences.isEmpty() ? null : silences.get(silences.size() - 1);
    boolean paced =
        schedule.stretchAt(Math.max(clock.nanos(), schedule.plan().countInNanos())).kind()
            == Segment.Kind.PACED;
    boolean goesOn = last != null && last.holds(schedule.endNanos().orElse(Segment.OPEN) - 1);
    return paced && goesOn ? OptionalLong.of(last.startNanos()) : OptionalLong.empty();
  }

  /** The next breath of one who counts alone; one who just starts needs a moment. */
  private OptionalLong silentOnset() {
    handsBusyFrom = Long.MAX_VALUE;
    answeredUntil = Math.max(answeredUntil, clock.nanos());
    if (!inRhythm) {
      long start = Math.max(clock.nanos(), coach.state().schedule().plan().countInNanos());
      return OptionalLong.of(start + nanos(chance.normal(0.3, 0.1, 0.1, 0.7)));
    }
    double factor =
        fault == TraineeFault.LOSES_RHYTHM
            ? chance.normal(0.7, 0.04, 0.6, 0.8)
            : chance.normal(1, 0.05, 0.88, 1.12);
    return OptionalLong.of(lastOnset + Math.round(factor * ownIntervalNanos()));
  }

  private OptionalLong ownOnset() {
    CueSchedule schedule = coach.state().schedule();
    handsBusyFrom = Long.MAX_VALUE;
    double done = (double) schedule.practisedAt(lastOnset) / schedule.plan().lengthNanos();
    double factor =
        switch (fault) {
          case FAST -> chance.normal(1 / 3.0, 0.012, 0.29, 0.37);
          case SLOWS -> chance.normal(1 + 0.4 * done, 0.02, 0.9, 1.5);
          // A little over 5 s for 6 s, so that the tempo is the fault and not the range.
          default -> chance.normal(5.05 / 6, 0.003, 0.835, 0.85);
        };
    return OptionalLong.of(lastOnset + Math.round(factor * ownIntervalNanos()));
  }

  private OptionalLong promptedOnset() {
    handsBusyFrom = Long.MAX_VALUE;
    Optional<Cue> cue = nextPrompt();
    while (cue.isPresent() && leavesOut(cue.get())) {
      answeredUntil = Math.max(answeredUntil, cue.get().atNanos() + 1);
      cue = nextPrompt();
    }
    if (!cue.isPresent()) {
      return OptionalLong.empty();
    }
    long at = cue.get().atNanos();
    handsBusyFrom = at;
    boolean foreseen = inRhythm && fault == TraineeFault.ANTICIPATES;
    double lag =
        foreseen ? chance.normal(-0.3, 0.08, -0.55, -0.1) : chance.normal(0.25, 0.15, 0.12, 0.7);
    return OptionalLong.of(Math.max(at + nanos(lag), clock.nanos() + HANDS_MOVE / 4));
  }

  private Optional<Cue> nextPrompt() {
    for (Cue cue : coach.state().schedule().between(answeredUntil, answeredUntil + MINUTE)) {
      if (cue.kind() == CueKind.SQUEEZE) {
        return Optional.of(cue);
      }
    }
    return Optional.empty();
  }

  private boolean leavesOut(Cue cue) {
    if (fault == TraineeFault.LONG_PAUSES && inRhythm && cue.atNanos() >= nextRest) {
      answeredUntil = cue.atNanos() + nanos(chance.normal(15, 1, 13, 17) / scale);
      nextRest = answeredUntil + MINUTE;
      return true;
    }
    if (fault != TraineeFault.SKIPS || cue.atNanos() < answeredUntil) {
      return false;
    }
    int place = prompts % SKIPS_ONE_IN;
    if (place == 0) {
      skipAt = chance.between(1, SKIPS_ONE_IN - 1);
    }
    prompts++;
    return inRhythm && place == skipAt;
  }

  private void breathe(long onset) {
    passTo(onset);
    if (coach.state().finished()) {
      return;
    }
    coach.command(Command.SQUEEZE, onset);
    Optional<Cue> prompt = nextPrompt();
    double asked = prompt.isPresent() ? prompt.get().lengthNanos() : SECOND * scale;
    if (fault == TraineeFault.FAST) {
      asked = Math.min(asked, ownIntervalNanos() * 0.55 / 3);
    }
    answeredUntil = Math.max(answeredUntil, answered(prompt, onset));
    lastOnset = onset;
    inRhythm = true;
    double factor =
        fault == TraineeFault.SHORT_SQUEEZE
            ? chance.normal(0.4, 0.04, 0.3, 0.5)
            : chance.normal(1, 0.08, 0.75, 1.25);
    long end = onset + Math.round(factor * asked);
    passTo(end);
    if (!coach.state().finished()) {
      coach.command(Command.SQUEEZE_END, end);
    }
  }

  /** A prompt counts as answered if the breath came near it; own time leaves later ones alone. */
  private long answered(Optional<Cue> prompt, long onset) {
    boolean near = prompt.isPresent() && prompt.get().atNanos() <= onset + nanos(0.6);
    return near ? prompt.get().atNanos() + 1 : answeredUntil;
  }

  private OptionalLong checkAt() {
    CueSchedule schedule = coach.state().schedule();
    OptionalLong due = schedule.nextPulseCheckAt(clock.nanos());
    if (!due.isPresent()) {
      return due;
    }
    if (due.getAsLong() != checkDue) {
      checkDue = due.getAsLong();
      checkDelay = Math.round(SECOND * chance.normal(2, 0.4, 1.2, 3));
      long late = Math.round(SECOND * chance.normal(35, 2, 30, 40));
      long timeToCheck = 10 * SECOND;
      if (fault == TraineeFault.LATE_CHECK
          && checkDue + late + timeToCheck < schedule.endNanos().orElse(Long.MAX_VALUE)) {
        checkDelay = late;
      }
    }
    return OptionalLong.of(Math.max(checkDue + checkDelay, clock.nanos() + HANDS_MOVE));
  }

  private void checkPulse(long at) {
    Limits limits = coach.state().schedule().guidanceAt(at).limits();
    long shortest = limits.pulseCheckShortest().nanos();
    long spread = limits.pulseCheckLongest().nanos() - shortest;
    passTo(at);
    coach.command(Command.PULSE_CHECK, at);
    hands.startAnew(clock.nanos());
    long end = at + shortest + Math.round(spread * chance.normal(0.4, 0.08, 0.2, 0.6));
    passTo(end);
    coach.command(Command.PULSE_CHECK_END, end);
    startAnew();
  }

  private long nanos(double seconds) {
    return Math.round(seconds * scale * SECOND);
  }

  /** Lets time pass, compressing where that is prompted. */
  private void passTo(long nanos) {
    OptionalLong compression = hands.nextBefore(nanos);
    while (compression.isPresent() && !coach.state().finished()) {
      advanceTo(compression.getAsLong());
      coach.command(Command.COMPRESS, compression.getAsLong());
      hands.done();
      compression = hands.nextBefore(nanos);
    }
    advanceTo(nanos);
  }

  /** Lets time pass with a call at every cue, as a live practice does. */
  private void advanceTo(long nanos) {
    long to = Math.min(nanos, coach.state().schedule().endNanos().orElse(nanos));
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() < to) {
      advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
    advance(to);
  }

  private void advance(long nanos) {
    clock.moveTo(Math.max(nanos, clock.nanos()));
    coach.advance(clock.nanos());
  }
}
