package squeezewell.cue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;

/**
 * When to prompt: a pure function of the plan and of the controls so far. The live practice and the
 * review ask the same schedule, so a prompt is the same in both to the nanosecond. A control never
 * changes a cue that lies before it. Immutable.
 */
public final class CueSchedule {
  private static final long SECOND = 1_000_000_000L;
  private static final long MINUTE = 60 * SECOND;

  private static final long[] NEXT_CUE_LOOKS = {
    SECOND, 6 * SECOND, MINUTE, 2 * PracticePlan.LONGEST_NANOS
  };

  /** How often a limit is told again while it is overrun (our own choice). */
  private static final long LIMIT_AGAIN = 5 * SECOND;

  private final PracticePlan plan;
  private final List<Control> controls;
  private final List<Segment> segments;
  private final List<UnpromptedSpan> silences;
  private final List<Timeline.Turn> changes;
  private final PracticeClock clock;
  private final List<PulseCheckDue> pulseChecks;
  private final List<Cue> reminders;

  /** For each stretch, until when its squeezes and counts go on. */
  private final long[] runsUntil;

  private CueSchedule(PracticePlan plan, List<Control> controls) {
    this.plan = plan;
    this.controls = controls;
    Timeline.Laid laid = Timeline.of(plan, controls);
    this.segments = laid.segments();
    this.silences = laid.silences();
    this.changes = laid.turns();
    this.clock = new PracticeClock(segments);
    List<PulseCheckPlan> planned = PulseCheckPlan.of(plan, segments, clock);
    this.pulseChecks = PulseCheckDue.of(planned, segments, clock);
    List<Cue> reminded =
        new ArrayList<>(Reminders.of(plan, planned, clock, endNanos().orElse(Segment.OPEN)));
    // While a check went on nothing reminded of it, though it was broken off.
    reminded.removeIf(
        c ->
            c.kind() != CueKind.LAST_MINUTE
                && PulseCheckPlan.brokenOff(segments, indexAt(c.atNanos())));
    this.reminders = List.copyOf(reminded);
    this.runsUntil = runsUntil(segments);
  }

  /** Found from the end, so that each stretch is looked at once. */
  private static long[] runsUntil(List<Segment> segments) {
    long[] until = new long[segments.size()];
    for (int i = until.length - 1; i >= 0; i--) {
      Segment segment = segments.get(i);
      // A squeeze or count goes on into a rhythm that is counted on from the breath before. What is
      // said in a hold ends with it, though the breaths after it may be counted on.
      boolean goesOn = i + 1 < until.length && segments.get(i + 1).countsOn() && !segment.holdsUp();
      until[i] = goesOn ? until[i + 1] : segment.endNanos();
    }
    return until;
  }

  /** The schedule of a session to which nothing has happened yet. */
  public static CueSchedule of(PracticePlan plan) {
    return of(plan, List.of());
  }

  /**
   * The schedule of a session.
   *
   * @param plan what is practised, not null
   * @param controls what has changed it, in order of time
   * @throws IllegalArgumentException if the controls are not in order of time
   */
  public static CueSchedule of(PracticePlan plan, List<Control> controls) {
    Objects.requireNonNull(plan, "plan");
    for (int i = 1; i < controls.size(); i++) {
      if (controls.get(i).atNanos() < controls.get(i - 1).atNanos()) {
        throw new IllegalArgumentException("control " + i + " lies before the one it follows");
      }
    }
    return new CueSchedule(plan, List.copyOf(controls));
  }

  /** This schedule with one more control, which must not lie before the last. */
  public CueSchedule with(Control control) {
    List<Control> more = new ArrayList<>(controls);
    more.add(control);
    return of(plan, more);
  }

  public PracticePlan plan() {
    return plan;
  }

  /** The stretches of the session, in order, without gaps; the last one is open. */
  public List<Segment> segments() {
    return segments;
  }

  /** The stretch that holds the instant; the first one for an instant before the session. */
  public Segment stretchAt(long nanos) {
    return segments.get(indexAt(nanos));
  }

  private int indexAt(long nanos) {
    int begun = InOrder.countUpTo(segments.size(), i -> segments.get(i).startNanos(), nanos);
    return Math.max(0, begun - 1);
  }

  /** When breaths are not prompted, in order; the last may be open. */
  public List<UnpromptedSpan> silences() {
    return silences;
  }

  /** Whether breaths are not prompted at an instant, whatever else goes on then. */
  public boolean silentAt(long nanos) {
    int next = firstSilenceAfter(nanos);
    return next > 0 && silences.get(next - 1).holds(nanos);
  }

  /** The index of the first silence that starts after an instant. */
  private int firstSilenceAfter(long nanos) {
    return InOrder.countUpTo(silences.size(), i -> silences.get(i).startNanos(), nanos);
  }

  /** Whether one rhythm went on from an instant to a later one, with nothing held up between. */
  public boolean unbroken(long fromNanos, long toNanos) {
    int first = indexAt(fromNanos);
    Segment from = segments.get(first);
    for (int i = first; i <= indexAt(toNanos); i++) {
      Segment segment = segments.get(i);
      boolean paced = segment.kind() == Segment.Kind.PACED;
      if (!paced || !segment.guidance().equals(from.guidance())) {
        return false;
      }
    }
    return true;
  }

  /** The rhythm and limits in force at an instant. */
  public Guidance guidanceAt(long nanos) {
    return stretchAt(nanos).guidance();
  }

  /** What is in force at an instant, and what will be once a hold is over. */
  public ActiveGuidance inForceAt(long nanos) {
    Segment segment = stretchAt(nanos);
    int turned = InOrder.countUpTo(changes.size(), i -> changes.get(i).atNanos(), nanos);
    return new ActiveGuidance(
        turned == 0 ? plan.guidance() : changes.get(turned - 1).guidance(),
        segment.guidance().limits(),
        plan.rescuers(),
        turned == 0 ? CareKind.of(plan.guidance()) : changes.get(turned - 1).care(),
        segment.compressing());
  }

  /** When pulse checks are due, and which check served which. */
  public List<PulseCheckDue> pulseChecks() {
    return pulseChecks;
  }

  /**
   * The pulse check that is due next, or overdue, at an instant; empty if none is planned before
   * the end.
   */
  public OptionalLong nextPulseCheckAt(long nanos) {
    for (PulseCheckDue due : pulseChecks) {
      boolean served = due.startedNanos().isPresent() && due.startedNanos().getAsLong() <= nanos;
      long serves = PulseCheckPlan.servesWithin(guidanceAt(due.dueNanos()).limits());
      if (!served && due.dueNanos() + serves >= nanos) {
        return OptionalLong.of(due.dueNanos());
      }
    }
    return OptionalLong.empty();
  }

  /** When the session ends by plan or by command; empty while it is paused. */
  public OptionalLong endNanos() {
    Segment last = segments.get(segments.size() - 1);
    return last.kind() == Segment.Kind.ENDED
        ? OptionalLong.of(last.startNanos())
        : OptionalLong.empty();
  }

  /** Practice time used up at an instant, count-in not included, pauses not included. */
  public long practisedAt(long nanos) {
    long until = Math.min(nanos, endNanos().orElse(nanos));
    return Math.max(0, clock.toPractice(until) - plan.countInNanos());
  }

  /**
   * The cues with an instant in a half-open range.
   *
   * @param fromNanos inclusive, nanoseconds since the session began
   * @param toNanos exclusive
   * @return in order of time, then of kind
   */
  public List<Cue> between(long fromNanos, long toNanos) {
    List<Cue> cues = new ArrayList<>();
    for (int i = indexAt(fromNanos); i < segments.size(); i++) {
      Segment segment = segments.get(i);
      if (segment.startNanos() >= toNanos) {
        break;
      }
      long from = Math.max(fromNanos, segment.startNanos());
      long to = Math.min(toNanos, segment.endNanos());
      if (from < to) {
        addOf(i, from, to, cues);
      }
    }
    for (int i = firstReminderAt(fromNanos); i < reminders.size(); i++) {
      if (reminders.get(i).atNanos() >= toNanos) {
        break;
      }
      cues.add(reminders.get(i));
    }
    cues.sort(Cue.ORDER);
    return List.copyOf(cues);
  }

  private int firstReminderAt(long nanos) {
    return InOrder.countBefore(reminders.size(), i -> reminders.get(i).atNanos(), nanos);
  }

  /** The first cue at or after an instant; empty if there is none. */
  public OptionalLong nextCueAt(long nanos) {
    // Most often there is one within a second, so a short look comes first. Where there is none
    // for a minute, as while a patient is only watched, there are few for long.
    long from = nanos;
    for (long ahead : NEXT_CUE_LOOKS) {
      long to = nanos > Segment.OPEN - ahead ? Segment.OPEN : nanos + ahead;
      List<Cue> cues = between(from, to);
      if (!cues.isEmpty()) {
        return OptionalLong.of(cues.get(0).atNanos());
      }
      from = to;
    }
    return OptionalLong.empty();
  }

  /**
   * The squeezes that a rhythm asked for in a half-open range, prompted or not.
   *
   * @param fromNanos inclusive, nanoseconds since the session began
   * @param toNanos exclusive
   * @return when they were to begin, in order
   */
  public List<Long> squeezesAsked(long fromNanos, long toNanos) {
    List<Long> squeezes = new ArrayList<>();
    for (int i = indexAt(fromNanos); i < segments.size(); i++) {
      Segment segment = segments.get(i);
      if (segment.startNanos() >= toNanos) {
        break;
      }
      if (segment.kind() == Segment.Kind.PACED) {
        RhythmCues.instants(segment, CueKind.SQUEEZE, fromNanos, toNanos).forEach(squeezes::add);
      }
    }
    return List.copyOf(squeezes);
  }

  /** The squeezes prompted in the whole session, up to {@code endNanos}. */
  public List<Cue> squeezesUntil(long endNanos) {
    List<Cue> squeezes = new ArrayList<>(between(0, endNanos));
    squeezes.removeIf(c -> c.kind() != CueKind.SQUEEZE);
    return List.copyOf(squeezes);
  }

  /**
   * Until when a cue may sound: the end of its stretch, or of those that count on from it.
   *
   * @return nanoseconds since the session began; {@link Segment#OPEN} if that is not known
   */
  public long soundsUntil(Cue cue) {
    int index = indexAt(cue.atNanos());
    boolean change = cue.kind().tellsChange();
    // The words of a change are wrong as soon as something else is to be done.
    long until = change && turns(index + 1) ? segments.get(index).endNanos() : runsUntil[index];
    int next = firstSilenceAfter(cue.atNanos());
    return cue.kind().tellsBreath() && next < silences.size()
        ? Math.min(until, silences.get(next).startNanos())
        : until;
  }

  /** What is asked for at an instant. */
  public Moment momentAt(long nanos) {
    Segment segment = stretchAt(nanos);
    int seconds = (int) Math.max(0, (nanos - segment.startNanos()) / SECOND);
    return switch (segment.kind()) {
      case COUNT_IN -> {
        long first = plan.countInNanos();
        int count = (int) ((first - Math.max(nanos, 0) + SECOND - 1) / SECOND);
        OptionalLong next =
            segment.endNanos() == first ? OptionalLong.of(first) : OptionalLong.empty();
        yield new Moment(segment, Moment.Act.GET_READY, count, 0, 0, next);
      }
      case PULSE_CHECK -> holding(segment, Moment.Act.CHECK_PULSE, seconds);
      case SUCTION -> holding(segment, Moment.Act.SUCTION, seconds);
      case PAUSED, STALLED -> holding(segment, Moment.Act.PAUSED, 0);
      case ENDED -> holding(segment, Moment.Act.FINISHED, 0);
      case WATCHING -> holding(segment, Moment.Act.WATCH, 0);
      case NO_RATE -> holding(segment, Moment.Act.BREATHE_NO_RATE, 0);
      case PACED ->
          silentAt(nanos)
              ? holding(segment, Moment.Act.KEEP_RHYTHM, 0)
              : prompted(RhythmMoment.at(segment, nanos));
    };
  }

  /** The next squeeze is not told if it is not going to be prompted. */
  private Moment prompted(Moment moment) {
    OptionalLong next = moment.nextSqueezeNanos();
    return next.isPresent() && silentAt(next.getAsLong())
        ? new Moment(
            moment.segment(),
            moment.act(),
            moment.count(),
            moment.of(),
            moment.fill(),
            OptionalLong.empty())
        : moment;
  }

  private static Moment holding(Segment segment, Moment.Act act, int count) {
    return new Moment(segment, act, count, 0, 0, OptionalLong.empty());
  }

  private void addOf(int index, long from, long to, List<Cue> cues) {
    Segment segment = segments.get(index);
    Limits limits = segment.guidance().limits();
    long start = segment.startNanos();
    if (start >= from && start < to && turns(index)) {
      CueKind kind =
          switch (segment.kind()) {
            case WATCHING -> CueKind.WATCH;
            case NO_RATE -> CueKind.NO_RATE;
            default -> CueKind.RHYTHM_CHANGED;
          };
      cues.add(Cue.of(start, kind, 1));
    }
    switch (segment.kind()) {
      case COUNT_IN -> addCountIn(from, to, cues);
      case PACED -> addRhythm(index, from, to, cues);
      case PULSE_CHECK -> {
        long limit = limits.pulseCheckLongest().nanos();
        addSeconds(start, limit, from, to, cues);
        put(
            cues,
            from,
            to,
            start + limits.pulseCheckShortest().nanos(),
            CueKind.PULSE_CHECK_ENOUGH);
        addAgain(CueKind.PULSE_CHECK_LIMIT, start + limit, from, to, cues);
      }
      case SUCTION -> {
        if (segment.compressing()) {
          RhythmCues.add(segment, from, to, cues);
        }
        long limit = start + limits.suctionLongest().nanos();
        put(cues, from, to, limit - limits.suctionNotice().nanos(), CueKind.SUCTION_SOON);
        addAgain(CueKind.SUCTION_LIMIT, limit, from, to, cues);
      }
      case PAUSED, WATCHING, NO_RATE, STALLED -> {
        // Nothing is prompted any more.
      }
      case ENDED -> put(cues, from, to, start, CueKind.SESSION_END);
    }
  }

  /** Whether something else is to be done in a stretch than before it, holds left out. */
  private boolean turns(int index) {
    if (index >= segments.size()) {
      return false;
    }
    Segment segment = segments.get(index);
    boolean goesOn = !segment.holdsUp() && segment.kind() != Segment.Kind.ENDED;
    for (int i = index - 1; goesOn && i >= 0; i--) {
      Segment before = segments.get(i);
      // What a session begins with stands for what was planned.
      if (i == 0 || !before.holdsUp()) {
        return !segment.sameDoingAs(before);
      }
    }
    return false;
  }

  private void addRhythm(int index, long from, long to, List<Cue> cues) {
    List<Cue> found = new ArrayList<>();
    long prompted = from;
    for (int i = Math.max(0, firstSilenceAfter(from) - 1); i < silences.size(); i++) {
      UnpromptedSpan silence = silences.get(i);
      if (silence.startNanos() >= to) {
        break;
      }
      if (silence.endNanos() > prompted) {
        addPrompted(index, prompted, silence.startNanos(), found);
        prompted = silence.endNanos();
      }
    }
    addPrompted(index, prompted, to, found);
    for (Cue cue : found) {
      long left = runsUntil[index] - cue.atNanos();
      cues.add(
          cue.lengthNanos() <= left
              ? cue
              : new Cue(cue.atNanos(), cue.kind(), cue.count(), cue.of(), left, cue.leadIn()));
    }
  }

  private void addPrompted(int index, long from, long to, List<Cue> cues) {
    if (from < to) {
      RhythmCues.add(segments.get(index), from, to, cues);
    }
  }

  private void addCountIn(long from, long to, List<Cue> cues) {
    // Counted from the plan, not from the stretch, which a control may have cut short.
    int whole = (int) (plan.countInNanos() / SECOND);
    for (int left = whole; left >= 1; left--) {
      long at = plan.countInNanos() - left * SECOND;
      if (at >= from && at < to) {
        cues.add(new Cue(at, CueKind.COUNT, left, whole, 0, true));
      }
    }
  }

  private static void addSeconds(long start, long limit, long from, long to, List<Cue> cues) {
    for (int second = 1; start + second * SECOND < Math.min(to, start + limit); second++) {
      long at = start + second * SECOND;
      if (at >= from) {
        cues.add(Cue.of(at, CueKind.PULSE_CHECK_SECOND, second));
      }
    }
  }

  private static void addAgain(CueKind kind, long first, long from, long to, List<Cue> cues) {
    long skipped = Math.max(0, (from - first + LIMIT_AGAIN - 1) / LIMIT_AGAIN);
    for (long n = skipped; first + n * LIMIT_AGAIN < to; n++) {
      cues.add(Cue.of(first + n * LIMIT_AGAIN, kind, (int) n + 1));
    }
  }

  private static void put(List<Cue> cues, long from, long to, long at, CueKind kind) {
    if (at >= from && at < to) {
      cues.add(Cue.of(at, kind, 1));
    }
  }
}
