package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;
import squeezewell.TestPlans;
import squeezewell.protocol.Rhythm;

/** What must hold for every plan and every order of controls. */
class CueSchedulePropertyTest {
  private static final Set<CueKind> CHANGES =
      EnumSet.of(CueKind.RHYTHM_CHANGED, CueKind.WATCH, CueKind.NO_RATE);

  private static final Map<Segment.Kind, String> UNPROMPTED =
      Map.of(Segment.Kind.WATCHING, "watch", Segment.Kind.NO_RATE, "no-rate");

  private static final Map<Control.Kind, Segment.Kind> BEGUN =
      Map.of(
          Control.Kind.PULSE_CHECK, Segment.Kind.PULSE_CHECK,
          Control.Kind.SUCTION, Segment.Kind.SUCTION,
          Control.Kind.SUCTION_COMPRESSING, Segment.Kind.SUCTION,
          Control.Kind.PAUSE, Segment.Kind.PAUSED);

  private static final Map<Control.Kind, Segment.Kind> ENDED =
      Map.of(
          Control.Kind.PULSE_CHECK_END, Segment.Kind.PULSE_CHECK,
          Control.Kind.SUCTION_END, Segment.Kind.SUCTION,
          Control.Kind.SUCTION_UNDONE, Segment.Kind.SUCTION,
          Control.Kind.RESUME, Segment.Kind.PAUSED);

  private static final int TRIES = 1_000;
  private static final long SECOND = 1_000_000_000L;
  private static final long LAST = 3_000 * SECOND;
  private static final Set<CueKind> RHYTHM =
      EnumSet.of(CueKind.SQUEEZE, CueKind.RELEASE, CueKind.COUNT, CueKind.COMPRESS);

  @Provide
  Arbitrary<PracticePlan> plans() {
    return ControlScripts.plans();
  }

  @Provide
  Arbitrary<List<Control>> scripts() {
    return ControlScripts.scripts();
  }

  /** With changes of rhythm and times of watching among them. */
  @Provide
  Arbitrary<List<Control>> changes() {
    return ControlScripts.scriptsWithChanges();
  }

  @Property(tries = TRIES)
  void adjoiningRangesAddUp(
      @ForAll("plans") PracticePlan plan,
      @ForAll("changes") List<Control> script,
      @ForAll @LongRange(min = 0, max = 900_000) long firstMillis,
      @ForAll @LongRange(min = 0, max = 900_000) long secondMillis) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    long a = Math.min(firstMillis, secondMillis) * 1_000_000;
    long b = Math.max(firstMillis, secondMillis) * 1_000_000;
    List<Cue> parts = new ArrayList<>(schedule.between(0, a));
    parts.addAll(schedule.between(a, b));
    parts.addAll(schedule.between(b, LAST));
    assertThat(parts).isEqualTo(schedule.between(0, LAST));
    assertThat(schedule.between(b, a)).isEmpty();
  }

  @Property(tries = TRIES)
  void cuesStandInOrderOfTimeThenOfKind(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    List<Cue> cues = CueSchedule.of(plan, script).between(0, LAST);
    assertThat(cues)
        .isSortedAccordingTo(Comparator.comparingLong(Cue::atNanos).thenComparing(Cue::kind));
    assertThat(keys(cues)).doesNotHaveDuplicates();
  }

  @Property(tries = TRIES)
  void aControlNeverChangesACueBeforeIt(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule before = CueSchedule.of(plan);
    for (Control control : script) {
      CueSchedule after = before.with(control);
      assertThat(keys(after.between(0, control.atNanos())))
          .as("%s", control)
          .isEqualTo(keys(before.between(0, control.atNanos())));
      before = after;
    }
  }

  @Property(tries = TRIES)
  void oneControlAfterAnotherGivesTheSameAsAllAtOnce(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule grown = CueSchedule.of(plan);
    for (Control control : script) {
      grown = grown.with(control);
    }
    assertThat(grown.between(0, LAST)).isEqualTo(CueSchedule.of(plan, script).between(0, LAST));
  }

  @Property(tries = TRIES)
  void stretchesFollowEachOtherWithoutAGap(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    long at = 0;
    for (Segment segment : schedule.segments()) {
      assertThat(segment.startNanos()).isEqualTo(at);
      assertThat(segment.endNanos()).isGreaterThan(at);
      assertThat(schedule.stretchAt(segment.startNanos())).isEqualTo(segment);
      assertThat(schedule.stretchAt(segment.endNanos() - 1)).isEqualTo(segment);
      at = segment.endNanos();
    }
    assertThat(at).isEqualTo(Segment.OPEN);
  }

  @Property(tries = TRIES)
  void holdsHaveNoRhythmAndPausesHaveNothing(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    for (Cue cue : schedule.between(0, LAST)) {
      Segment.Kind kind = schedule.stretchAt(cue.atNanos()).kind();
      assertThat(kind).as("%s", cue).isNotEqualTo(Segment.Kind.PAUSED);
      boolean through = schedule.stretchAt(cue.atNanos()).compressing();
      if (RHYTHM.contains(cue.kind()) && !(through && cue.kind() == CueKind.COMPRESS)) {
        assertThat(kind).as("%s", cue).isIn(Segment.Kind.PACED, Segment.Kind.COUNT_IN);
      }
      assertThat(kind == Segment.Kind.ENDED).isEqualTo(cue.kind() == CueKind.SESSION_END);
    }
  }

  /** One word for each change of what is to be done, where it begins, and none besides. */
  @Property(tries = TRIES)
  void aChangeIsToldOnceWhereItBegins(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    List<String> wanted = new ArrayList<>();
    String before = null;
    for (Segment segment : schedule.segments()) {
      String unprompted = UNPROMPTED.getOrDefault(segment.kind(), "");
      if (!unprompted.isEmpty() || segment.kind() == Segment.Kind.PACED || before == null) {
        String doing =
            unprompted.isEmpty()
                ? segment.guidance().rhythm().getClass().getSimpleName()
                : unprompted;
        if (before != null && !before.equals(doing)) {
          wanted.add(
              segment.startNanos() + " " + (unprompted.isEmpty() ? "rhythm-changed" : unprompted));
        }
        before = doing;
      }
    }
    List<String> told =
        schedule.between(0, LAST).stream()
            .filter(c -> CHANGES.contains(c.kind()))
            .map(c -> c.atNanos() + " " + c.kind().id())
            .collect(Collectors.toList());
    assertThat(told).isEqualTo(wanted);
  }

  /**
   * Compressions start the lead after a hold, or go on in step after suction in which they went on.
   * The first breath comes then too, but after a check or a pause not before its interval is over.
   */
  @Property(tries = TRIES)
  void theRhythmStartsTheLeadAfterAHoldOrBreathsOnceTheirIntervalIsOver(
      @ForAll("plans") PracticePlan plan, @ForAll("scripts") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    Rhythm rhythm = plan.guidance().rhythm();
    List<Step> steps = Step.of(script, rhythm);
    for (Segment segment : schedule.segments()) {
      if (segment.kind() != Segment.Kind.PACED) {
        continue;
      }
      boolean planned = segment.startNanos() == plan.countInNanos();
      boolean told = script.stream().anyMatch(c -> c.atNanos() == segment.startNanos());
      if (planned && told) {
        // A control at the very start may or may not have meant anything.
        continue;
      }
      boolean quiet =
          schedule.silences().stream()
              .anyMatch(
                  s -> s.startNanos() < segment.endNanos() && s.endNanos() >= segment.startNanos());
      if (quiet) {
        // SilencePropertyTest says what holds there.
        continue;
      }
      long first = segment.startNanos() + (planned ? 0 : plan.leadNanos());
      Optional<Step> ending =
          steps.stream()
              .filter(s -> !planned && s.ends() && s.control().atNanos() == segment.startNanos())
              .reduce((a, b) -> b);
      Control.Kind by = ending.map(s -> s.control().kind()).orElse(null);
      boolean compressedOn = ending.isPresent() && ending.get().compressing();
      if (rhythm.compressions().isPresent() && !compressedOn) {
        firstIs(CueKind.COMPRESS, first, segment, schedule);
      } else if (compressedOn && by == Control.Kind.SUCTION_END && cycle(rhythm)) {
        firstIs(CueKind.SQUEEZE, first, segment, schedule);
      }
      if (rhythm.steadyBreaths().isPresent()) {
        long interval = rhythm.steadyBreaths().get().interval().nanosAt(1);
        OptionalLong before = lastBreath(segment.startNanos(), steps, schedule);
        boolean countsOn = !planned && by != Control.Kind.SUCTION_END && before.isPresent();
        long last = countsOn ? before.getAsLong() : first - interval;
        long earliest = Math.max(first, last + interval);
        // Intervals are rounded to the nanosecond, each from the start of the rhythm.
        firstIsNear(earliest, segment, schedule);
      }
    }
  }

  private static boolean cycle(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle;
  }

  /**
   * Once found by chance: the second end of the same suction, at the same instant, said nothing.
   */
  @Example
  void anEndThatFindsItsHoldOverMeansNothing() {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.guidance(TestPlans.cycle("110", 30, 2, "4", "1"), TestPlans.usualLimits()),
            0,
            300 * SECOND,
            SECOND);
    List<Control> script =
        List.of(
            new Control(1_250_009_461L, Control.Kind.SUCTION_COMPRESSING),
            new Control(1_250_009_466L, Control.Kind.SUCTION_UNDONE),
            new Control(1_250_009_466L, Control.Kind.SUCTION_END));
    theRhythmStartsTheLeadAfterAHoldOrBreathsOnceTheirIntervalIsOver(plan, script);
    assertThat(CueSchedule.of(plan, script).segments())
        .isEqualTo(CueSchedule.of(plan, script.subList(0, 2)).segments());
  }

  /** Once found by chance: a check that follows prompts within their lead, or in their instant. */
  @Example
  void breathsAreNotCountedOnFromASqueezeThatNobodyWasToldOf() {
    PracticePlan plan =
        new PracticePlan(
            TestPlans.guidance(TestPlans.steady("6", "1"), TestPlans.usualLimits()),
            0,
            300 * SECOND,
            35_000_000);
    for (Control.Kind again : List.of(Control.Kind.PROMPTS_AT_ONCE, Control.Kind.PROMPTS_ON)) {
      List<Control> script =
          List.of(
              new Control(0, Control.Kind.PROMPTS_OFF),
              new Control(18_250_000_000L, again),
              new Control(18_250_000_000L, Control.Kind.PULSE_CHECK),
              new Control(18_250_000_002L, Control.Kind.PULSE_CHECK_END));
      theRhythmStartsTheLeadAfterAHoldOrBreathsOnceTheirIntervalIsOver(plan, script);
      // At once after a long wait; an interval after a breath that was just given, at 18.25 s.
      assertThat(CueSchedule.of(plan, script).squeezesUntil(60 * SECOND).get(0).atNanos())
          .isEqualTo(again == Control.Kind.PROMPTS_AT_ONCE ? 18_285_000_002L : 24_250_000_000L);
    }
  }

  /**
   * What went on when a control came. Several may fall on one instant: an end that finds its hold
   * already over means nothing.
   *
   * @param going the hold that went on; {@link Segment.Kind#PACED} without one
   * @param compressing whether the chest was compressed on in it
   */
  private record Step(Control control, Segment.Kind going, boolean compressing) {
    static List<Step> of(List<Control> script, Rhythm rhythm) {
      List<Step> steps = new ArrayList<>();
      Segment.Kind going = Segment.Kind.PACED;
      boolean compressing = false;
      for (Control control : script) {
        steps.add(new Step(control, going, compressing));
        Segment.Kind begun = BEGUN.get(control.kind());
        if (begun != null && begun != going) {
          going = begun;
          compressing =
              control.kind() == Control.Kind.SUCTION_COMPRESSING
                  && rhythm.compressions().isPresent();
        } else if (ENDED.get(control.kind()) == going) {
          going = Segment.Kind.PACED;
          compressing = false;
        }
      }
      return steps;
    }

    boolean ends() {
      return ENDED.get(control.kind()) == going;
    }

    boolean givesBreath() {
      return control.kind() == Control.Kind.PROMPTS_ON && going == Segment.Kind.PACED;
    }
  }

  /** The last breath before an instant that was prompted, or from which prompts were counted on. */
  private static OptionalLong lastBreath(long at, List<Step> steps, CueSchedule schedule) {
    LongStream prompted = schedule.squeezesUntil(at).stream().mapToLong(Cue::atNanos);
    LongStream given =
        steps.stream()
            .filter(Step::givesBreath)
            .mapToLong(s -> s.control().atNanos())
            .filter(n -> n < at && schedule.stretchAt(n).kind() != Segment.Kind.COUNT_IN)
            .filter(n -> schedule.silences().stream().anyMatch(s -> s.endNanos() == n + 1));
    return LongStream.concat(prompted, given).max();
  }

  private static List<Cue> cuesOf(CueKind kind, Segment segment, CueSchedule schedule) {
    return schedule.between(segment.startNanos(), Math.min(segment.endNanos(), LAST)).stream()
        .filter(c -> c.kind() == kind)
        .collect(Collectors.toList());
  }

  private static void firstIs(CueKind kind, long at, Segment segment, CueSchedule schedule) {
    List<Cue> found = cuesOf(kind, segment, schedule);
    if (at < segment.endNanos()) {
      assertThat(found.get(0).atNanos()).isEqualTo(at);
    } else {
      assertThat(found).isEmpty();
    }
  }

  private static void firstIsNear(long at, Segment segment, CueSchedule schedule) {
    List<Cue> found = cuesOf(CueKind.SQUEEZE, segment, schedule);
    if (at + 1 < segment.endNanos()) {
      assertThat(found.get(0).atNanos()).isBetween(at - 1, at + 1);
    }
  }

  /**
   * No check and no pause brings two squeezes closer than the interval asked for. Prompts that come
   * back at once do, since no breath has come for long when the coach asks for them.
   */
  @Property(tries = TRIES)
  void onlySuctionBringsSqueezesTogether(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    Cue before = null;
    for (Cue cue : schedule.squeezesUntil(LAST)) {
      long from = before == null ? 0 : before.atNanos();
      boolean suction =
          script.stream()
              .anyMatch(
                  c ->
                      (c.kind() == Control.Kind.SUCTION_END
                              || c.kind() == Control.Kind.PROMPTS_AT_ONCE)
                          && c.atNanos() > from
                          && c.atNanos() <= cue.atNanos());
      if (before != null && !suction) {
        long least =
            Math.min(
                spacing(schedule.guidanceAt(from).rhythm()),
                spacing(schedule.guidanceAt(cue.atNanos()).rhythm()));
        assertThat(cue.atNanos() - from).isGreaterThanOrEqualTo(least - 1);
      }
      before = cue;
    }
  }

  private static long spacing(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle c
        ? c.pauseNanos() / c.breathsPerCycle()
        : rhythm.steadyBreaths().orElseThrow().interval().nanosAt(1);
  }

  @Property(tries = TRIES)
  void squeezesNeverCrowdWithinAStretch(
      @ForAll("plans") PracticePlan plan, @ForAll("scripts") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    long least =
        plan.guidance().rhythm() instanceof Rhythm.CompressionCycle c
            ? c.pauseNanos() / c.breathsPerCycle()
            : plan.guidance().rhythm().steadyBreaths().orElseThrow().interval().nanosAt(1);
    Cue before = null;
    for (Cue cue : schedule.squeezesUntil(LAST)) {
      boolean sameStretch =
          before != null
              && schedule.stretchAt(before.atNanos()).equals(schedule.stretchAt(cue.atNanos()));
      if (sameStretch) {
        assertThat(cue.atNanos() - before.atNanos()).isGreaterThanOrEqualTo(least);
      }
      before = cue;
    }
  }

  @Property(tries = TRIES)
  void theEndMovesByThePausesAndByNothingElse(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    long paused = 0;
    boolean open = false;
    for (Segment segment : schedule.segments()) {
      if (segment.kind() == Segment.Kind.PAUSED) {
        open = segment.endNanos() == Segment.OPEN;
        paused += open ? 0 : segment.endNanos() - segment.startNanos();
      }
    }
    long planned = plan.countInNanos() + plan.lengthNanos() + paused;
    long finished =
        script.stream()
            .filter(c -> c.kind() == Control.Kind.FINISH)
            .mapToLong(Control::atNanos)
            .findFirst()
            .orElse(Long.MAX_VALUE);
    if (open) {
      assertThat(schedule.endNanos()).isEmpty();
    } else {
      assertThat(schedule.endNanos()).hasValue(Math.min(planned, finished));
    }
  }

  @Property(tries = TRIES)
  void theNextCueIsTheFirstThatComes(
      @ForAll("plans") PracticePlan plan,
      @ForAll("changes") List<Control> script,
      @ForAll @LongRange(min = 0, max = 900_000) long millis) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    long at = millis * 1_000_000;
    List<Cue> cues = schedule.between(at, LAST);
    if (cues.isEmpty()) {
      assertThat(schedule.nextCueAt(at)).isEmpty();
    } else {
      assertThat(schedule.nextCueAt(at)).hasValue(cues.get(0).atNanos());
    }
  }

  /** Instant, kind and count: a control may cut a squeeze short that it falls into. */
  private static List<String> keys(List<Cue> cues) {
    return cues.stream()
        .map(c -> c.atNanos() + " " + c.kind() + " " + c.count())
        .collect(Collectors.toList());
  }
}
