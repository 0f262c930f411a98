package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.LongRange;
import squeezewell.protocol.Rhythm;

/** What must hold for every plan and every order of controls. */
class CueSchedulePropertyTest {
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
    for (Stretch stretch : schedule.stretches()) {
      assertThat(stretch.startNanos()).isEqualTo(at);
      assertThat(stretch.endNanos()).isGreaterThan(at);
      assertThat(schedule.stretchAt(stretch.startNanos())).isEqualTo(stretch);
      assertThat(schedule.stretchAt(stretch.endNanos() - 1)).isEqualTo(stretch);
      at = stretch.endNanos();
    }
    assertThat(at).isEqualTo(Stretch.OPEN);
  }

  @Property(tries = TRIES)
  void holdsHaveNoRhythmAndPausesHaveNothing(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    for (Cue cue : schedule.between(0, LAST)) {
      Stretch.Kind kind = schedule.stretchAt(cue.atNanos()).kind();
      assertThat(kind).as("%s", cue).isNotEqualTo(Stretch.Kind.PAUSED);
      if (RHYTHM.contains(cue.kind())) {
        assertThat(kind).as("%s", cue).isIn(Stretch.Kind.PACED, Stretch.Kind.COUNT_IN);
      }
      assertThat(kind == Stretch.Kind.ENDED).isEqualTo(cue.kind() == CueKind.SESSION_END);
    }
  }

  /** One word for each change of what is to be done, where it begins, and none besides. */
  @Property(tries = TRIES)
  void aChangeIsToldOnceWhereItBegins(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    List<String> wanted = new ArrayList<>();
    String before = null;
    for (Stretch stretch : schedule.stretches()) {
      boolean watching = stretch.kind() == Stretch.Kind.WATCHING;
      if (watching || stretch.kind() == Stretch.Kind.PACED || before == null) {
        String doing = watching ? "watch" : stretch.guidance().rhythm().getClass().getSimpleName();
        if (before != null && !before.equals(doing)) {
          wanted.add(stretch.startNanos() + (watching ? " watch" : " rhythm-changed"));
        }
        before = doing;
      }
    }
    List<String> told =
        schedule.between(0, LAST).stream()
            .filter(c -> c.kind() == CueKind.RHYTHM_CHANGED || c.kind() == CueKind.WATCH)
            .map(c -> c.atNanos() + " " + c.kind().id())
            .collect(Collectors.toList());
    assertThat(told).isEqualTo(wanted);
  }

  @Property(tries = TRIES)
  void theRhythmStartsExactlyTheLeadAfterAHold(
      @ForAll("plans") PracticePlan plan, @ForAll("scripts") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    boolean cycle = plan.guidance().rhythm() instanceof Rhythm.CompressionCycle;
    for (Stretch stretch : schedule.stretches()) {
      if (stretch.kind() != Stretch.Kind.PACED) {
        continue;
      }
      boolean planned = stretch.startNanos() == plan.countInNanos();
      boolean told = script.stream().anyMatch(c -> c.atNanos() == stretch.startNanos());
      if (planned && told) {
        // A control at the very start may or may not have meant anything.
        continue;
      }
      boolean quiet =
          schedule.silences().stream()
              .anyMatch(
                  s -> s.startNanos() < stretch.endNanos() && s.endNanos() >= stretch.startNanos());
      if (quiet) {
        // SilencePropertyTest says what holds there.
        continue;
      }
      long lead = planned ? 0 : plan.leadNanos();
      long first = stretch.startNanos() + lead;
      List<Cue> found =
          schedule.between(stretch.startNanos(), Math.min(stretch.endNanos(), LAST)).stream()
              .filter(c -> c.kind() == (cycle ? CueKind.COMPRESS : CueKind.SQUEEZE))
              .collect(Collectors.toList());
      if (first < stretch.endNanos()) {
        assertThat(found.get(0).atNanos()).isEqualTo(first);
      } else {
        assertThat(found).isEmpty();
      }
    }
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
    for (Stretch stretch : schedule.stretches()) {
      if (stretch.kind() == Stretch.Kind.PAUSED) {
        open = stretch.endNanos() == Stretch.OPEN;
        paused += open ? 0 : stretch.endNanos() - stretch.startNanos();
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
