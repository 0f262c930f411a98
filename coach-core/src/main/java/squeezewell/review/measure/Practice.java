package squeezewell.review.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.IntToLongFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import squeezewell.cue.Cue;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.InOrder;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.PulseCheckDue;
import squeezewell.cue.Segment;
import squeezewell.cue.UnpromptedSpan;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;
import squeezewell.session.Breath;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;

/**
 * What a review needs of a session, or of a part of it with one rhythm, taken apart once.
 *
 * @param schedule what was asked in the whole session, in nanoseconds since it began
 * @param zeroNanos the instant of the schedule from which all other instants here are counted: 0
 *     while the session is taken apart, then that of {@link #onItsClock}
 * @param guidance the rhythm and limits in force; of a whole session, those of its start
 * @param place where it stands in the session
 * @param startNanos end of the count-in, or start of the part
 * @param endNanos up to when something is known, or end of the part
 * @param prompts the squeezes that were prompted, in order
 * @param breaths the breaths that began up to the end, in order
 * @param compressions instants of the compressions up to the end, in order
 * @param holds when no breaths were asked for, in order of start
 * @param checks the pulse checks that were due or made in it, in the order of the schedule; may
 *     hold others too
 * @param silences when breaths were asked for and not prompted, in order
 * @param highestLevel the highest level of fading in the whole session; empty if there is none
 */
public record Practice(
    CueSchedule schedule,
    long zeroNanos,
    Guidance guidance,
    Place place,
    long startNanos,
    long endNanos,
    List<Cue> prompts,
    List<Breath> breaths,
    List<Long> compressions,
    List<Interruption> holds,
    List<PulseCheckDue> checks,
    List<UnpromptedSpan> silences,
    OptionalInt highestLevel) {

  /** The length of a hole is written to a tenth of a second. */
  private static final long ROUNDING_NANOS = 50_000_000L;

  /**
   * Where a part stands in its session.
   *
   * @param first whether nothing comes before it
   * @param last whether nothing comes after it
   * @param slip whether a finding led to it that was taken back
   * @param breathedUntilNanos end of the last squeeze before it, its start if the end is not known;
   *     the start of the session if there is none
   * @param compressedAtNanos the last compression before it, if any
   */
  public record Place(
      boolean first,
      boolean last,
      boolean slip,
      long breathedUntilNanos,
      OptionalLong compressedAtNanos) {
    public static final Place WHOLE = new Place(true, true, false, 0, OptionalLong.empty());
  }

  public static Practice of(Session session) {
    CueSchedule schedule = session.schedule();
    long end = session.endNanos(schedule);
    List<Interruption> holes = holes(session, end);
    List<Interruption> holds = new ArrayList<>(holes);
    for (Segment segment : schedule.segments()) {
      hold(segment, end).ifPresent(holds::add);
    }
    holds.sort(Comparator.comparingLong(Interruption::startNanos));
    Spans stoodStill = Spans.closed(holes);
    List<Cue> prompts =
        schedule.squeezesUntil(end).stream()
            .filter(c -> !stoodStill.holds(c.atNanos()))
            .collect(Collectors.toList());
    return new Practice(
        schedule,
        0,
        schedule.plan().guidance(),
        Place.WHOLE,
        Math.min(Math.max(schedule.plan().countInNanos(), stoodUntil(holds)), end),
        end,
        prompts,
        session.breaths().stream().filter(b -> b.startNanos() <= end).collect(Collectors.toList()),
        session.compressions().stream().filter(c -> c <= end).collect(Collectors.toList()),
        List.copyOf(holds),
        schedule.pulseChecks(),
        silences(schedule, 0, end),
        highestLevel(session));
  }

  /** The highest level that the events of a session tell of; empty if they tell of none. */
  private static OptionalInt highestLevel(Session session) {
    return session.standing().stream()
        .map(SessionEvent::fact)
        .filter(Fact.Prompts.class::isInstance)
        .map(f -> ((Fact.Prompts) f).level())
        .filter(OptionalInt::isPresent)
        .mapToInt(OptionalInt::getAsInt)
        .max();
  }

  /** What of the silences lies in [from, to). */
  static List<UnpromptedSpan> silences(CueSchedule schedule, long from, long to) {
    List<UnpromptedSpan> silences = new ArrayList<>();
    List<UnpromptedSpan> all = schedule.silences();
    // Of those that began before the span only the last can reach into it.
    int first = InOrder.countUpTo(all.size(), i -> all.get(i).startNanos(), from);
    for (int i = Math.max(0, first - 1); i < all.size(); i++) {
      UnpromptedSpan silence = all.get(i);
      if (silence.startNanos() >= to) {
        break;
      }
      long start = Math.max(from, silence.startNanos());
      long end = Math.min(to, silence.endNanos());
      if (start < end) {
        silences.add(new UnpromptedSpan(start, end));
      }
    }
    return List.copyOf(silences);
  }

  /** When each breath was prompted, in order. */
  public long[] promptTimes() {
    return prompts.stream().mapToLong(Cue::atNanos).toArray();
  }

  /** When each breath began, in order. */
  public long[] breathTimes() {
    return breaths.stream().mapToLong(Breath::startNanos).toArray();
  }

  /** When the breaths began that could be prompted, in order. */
  public long[] promptedBreaths() {
    return breaths.stream().mapToLong(Breath::startNanos).filter(at -> !silentAt(at)).toArray();
  }

  /** Which breath met which prompt. One that no prompt could be heard for is left out. */
  public Alignment align() {
    int[] prompted =
        IntStream.range(0, breaths.size())
            .filter(k -> !silentAt(breaths.get(k).startNanos()))
            .toArray();
    long[] prompts = promptTimes();
    long[] given = promptedBreaths();
    List<Alignment> stretches = new ArrayList<>();
    for (Stretch one : stretches(prompts, given)) {
      stretches.add(
          Alignment.of(one.prompts.of(prompts), one.breaths.of(given))
              .moved(one.prompts.from, k -> prompted[k], one.breaths.from));
    }
    return Alignment.joined(stretches);
  }

  /** Whether breaths kept a place between prompts, in each stretch its own. */
  PhaseLocking locking() {
    long[] prompts = promptTimes();
    long[] given = promptedBreaths();
    return PhaseLocking.joined(
        stretches(prompts, given).stream()
            .map(s -> PhaseLocking.of(s.prompts.of(prompts), s.breaths.of(given)))
            .collect(Collectors.toList()),
        lockingAsOne());
  }

  /** The same of all breaths together, as the figure is defined. */
  PhaseLocking lockingAsOne() {
    return PhaseLocking.of(promptTimes(), promptedBreaths());
  }

  /** Places in a row of instants. */
  private record Slice(int from, int to) {
    long[] of(long[] instants) {
      return Arrays.copyOfRange(instants, from, to);
    }

    /** What follows it, before an instant. */
    Slice next(long[] instants, long before) {
      return new Slice(
          to, Math.max(to, InOrder.countBefore(instants.length, i -> instants[i], before)));
    }
  }

  private record Stretch(Slice prompts, Slice breaths) {}

  private List<Stretch> stretches(long[] prompts, long[] given) {
    List<Stretch> stretches = new ArrayList<>();
    Stretch last = new Stretch(new Slice(0, 0), new Slice(0, 0));
    for (long end : stretchEnds()) {
      last = new Stretch(last.prompts.next(prompts, end), last.breaths.next(given, end));
      stretches.add(last);
    }
    return stretches;
  }

  /**
   * Where stretches between checks, suction and pauses end: half-way through each, so that a late
   * answer to the last prompt before it still belongs to what went before. After each a trainee
   * finds the beat anew, so each stretch has a lag of its own.
   */
  private List<Long> stretchEnds() {
    List<Long> ends = new ArrayList<>();
    for (Interruption hold : holds) {
      ends.add(hold.startNanos() + (hold.endNanos() - hold.startNanos()) / 2);
    }
    ends.sort(null);
    ends.add(Long.MAX_VALUE);
    return ends;
  }

  /** Whether no breath was prompted at an instant. */
  public boolean silentAt(long nanos) {
    int next = firstSilenceAfter(nanos);
    return next > 0 && silences.get(next - 1).holds(nanos);
  }

  /** The place of the first silence that starts after an instant; how many there are if none. */
  int firstSilenceAfter(long nanos) {
    return InOrder.countUpTo(silences.size(), i -> silences.get(i).startNanos(), nanos);
  }

  /** How many breaths began between two instants, neither of them included. */
  public int breathsWithin(long afterNanos, long beforeNanos) {
    IntToLongFunction starts = i -> breaths.get(i).startNanos();
    int before = InOrder.countBefore(breaths.size(), starts, beforeNanos);
    return Math.max(0, before - InOrder.countUpTo(breaths.size(), starts, afterNanos));
  }

  /** A station's breathing stands from the very start until it begins; that is no wait for one. */
  private static long stoodUntil(List<Interruption> holds) {
    long until = 0;
    for (Interruption hold : holds) {
      // One pause may be told in pieces, where a finding changes the rhythm in it.
      if (hold.kind() == Segment.Kind.PAUSED && hold.startNanos() <= until) {
        until = Math.max(until, hold.endNanos());
      }
    }
    return until;
  }

  /**
   * The same with every instant counted from 0:00 of the practice, as whatever is shown or exported
   * has it.
   *
   * @param zero nanoseconds since the session began
   */
  public Practice onItsClock(long zero) {
    return new Practice(
        schedule,
        zero,
        guidance,
        new Place(
            place.first(),
            place.last(),
            place.slip(),
            place.breathedUntilNanos() - zero,
            from(zero, place.compressedAtNanos())),
        startNanos - zero,
        endNanos - zero,
        each(prompts, c -> c.from(zero)),
        each(
            breaths,
            b -> new Breath(b.startNanos() - zero, from(zero, b.endNanos()), b.millilitres())),
        each(compressions, c -> c - zero),
        each(holds, h -> h.from(zero)),
        each(
            checks,
            c -> new PulseCheckDue(c.dueNanos() - zero, from(zero, c.startedNanos()), c.extra())),
        each(silences, s -> new UnpromptedSpan(s.startNanos() - zero, s.endNanos() - zero)),
        highestLevel);
  }

  private static OptionalLong from(long zero, OptionalLong nanos) {
    return nanos.isPresent() ? OptionalLong.of(nanos.getAsLong() - zero) : nanos;
  }

  private static <T> List<T> each(List<T> all, UnaryOperator<T> moved) {
    return all.stream().map(moved).collect(Collectors.toList());
  }

  /** How many breaths were asked for in a silence. */
  int askedIn(UnpromptedSpan silence) {
    return schedule
        .squeezesAsked(zeroNanos + silence.startNanos(), zeroNanos + silence.endNanos())
        .size();
  }

  /** The same up to a breath with which what counts ends. */
  public Practice upTo(long nanos) {
    return new Practice(
        schedule,
        zeroNanos,
        guidance,
        new Place(
            place.first(),
            true,
            place.slip(),
            place.breathedUntilNanos(),
            place.compressedAtNanos()),
        startNanos,
        nanos,
        prompts.stream().filter(c -> c.atNanos() <= nanos).collect(Collectors.toList()),
        breaths.stream().filter(b -> b.startNanos() <= nanos).collect(Collectors.toList()),
        compressions.stream().filter(c -> c <= nanos).collect(Collectors.toList()),
        holds.stream().filter(h -> h.startNanos() <= nanos).collect(Collectors.toList()),
        checks,
        silences.stream()
            .filter(s -> s.startNanos() <= nanos)
            // The breath at the end is one of them.
            .map(s -> new UnpromptedSpan(s.startNanos(), Math.min(s.endNanos(), nanos + 1)))
            .collect(Collectors.toList()),
        highestLevel);
  }

  public PracticePlan plan() {
    return schedule.plan();
  }

  /** How much was practised in it, pauses not counted, in nanoseconds. */
  public long practisedNanos() {
    return schedule.practisedAt(zeroNanos + endNanos)
        - schedule.practisedAt(zeroNanos + startNanos);
  }

  /**
   * How much of that a rhythm was asked for in: not in the times of watching, nor without a rate.
   */
  public long pacedNanos() {
    long unprompted =
        holds.stream()
            .filter(h -> h.kind() == Segment.Kind.WATCHING || h.kind() == Segment.Kind.NO_RATE)
            .mapToLong(h -> Math.max(0, h.endNanos() - Math.max(startNanos, h.startNanos())))
            .sum();
    return practisedNanos() - unprompted;
  }

  /** The interval asked for; empty for a rhythm of compressions and pauses. */
  public Optional<BreathPlan> breathPlan() {
    return guidance.rhythm().steadyBreaths();
  }

  public Limits limits() {
    return guidance.limits();
  }

  public List<Interruption> holds(Segment.Kind kind) {
    return holds.stream().filter(h -> h.kind() == kind).collect(Collectors.toList());
  }

  private static Optional<Interruption> hold(Segment segment, long sessionEnd) {
    Limits limits = segment.guidance().limits();
    long start = segment.startNanos();
    long end = Math.min(segment.endNanos(), sessionEnd);
    if (start > sessionEnd) {
      return Optional.empty();
    }
    long length = end - start;
    boolean cut = segment.endNanos() >= sessionEnd;
    long excused =
        switch (segment.kind()) {
          case PULSE_CHECK -> Math.min(length, limits.pulseCheckLongest().nanos());
          case SUCTION -> Math.min(length, limits.suctionLongest().nanos());
          case PAUSED, WATCHING, NO_RATE -> length;
          default -> -1;
        };
    return excused < 0
        ? Optional.empty()
        : Optional.of(
            new Interruption(segment.kind(), start, end, excused, cut, segment.compressing()));
  }

  private static List<Interruption> holes(Session session, long sessionEnd) {
    List<Interruption> holes = new ArrayList<>();
    for (SessionEvent event : session.standing()) {
      if (!(event.fact() instanceof Fact.Stall stall) || !stall.lengthNanos().isPresent()) {
        continue;
      }
      long end = Math.min(event.atNanos(), sessionEnd);
      long start = Math.max(0, event.atNanos() - stall.lengthNanos().getAsLong() - ROUNDING_NANOS);
      if (start < end) {
        holes.add(
            new Interruption(
                Segment.Kind.STALLED, start, end, end - start, end == sessionEnd, false));
      }
    }
    return holes;
  }
}
