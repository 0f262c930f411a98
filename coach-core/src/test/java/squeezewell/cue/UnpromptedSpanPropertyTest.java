package squeezewell.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import squeezewell.protocol.BreathPlan;

/** What must hold of silences for every plan and every order of controls. */
class UnpromptedSpanPropertyTest {
  private static final long LAST = 3_000_000_000_000L;

  private static final Set<CueKind> BREATHS =
      EnumSet.of(CueKind.SQUEEZE, CueKind.RELEASE, CueKind.COUNT);

  private static final Set<Control.Kind> PROMPTS =
      EnumSet.of(Control.Kind.PROMPTS_OFF, Control.Kind.PROMPTS_ON, Control.Kind.PROMPTS_AT_ONCE);

  @Provide
  Arbitrary<PracticePlan> plans() {
    return ControlScripts.plans();
  }

  @Provide
  Arbitrary<List<Control>> changes() {
    return ControlScripts.scriptsWithChanges();
  }

  @Property(tries = 1_000)
  void inASilenceNoBreathIsPromptedAndTheScreenTellsNoBeat(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    long before = Long.MIN_VALUE;
    for (UnpromptedSpan silence : schedule.silences()) {
      assertThat(silence.startNanos()).isGreaterThanOrEqualTo(before);
      before = silence.endNanos();
      long end = Math.min(LAST, silence.endNanos());
      for (Cue cue : schedule.between(silence.startNanos(), end)) {
        boolean countIn = schedule.stretchAt(cue.atNanos()).kind() == Segment.Kind.COUNT_IN;
        assertThat(BREATHS.contains(cue.kind()) && !countIn).as("%s", cue).isFalse();
      }
      for (long at = silence.startNanos(); at < end; at += 777_000_000L) {
        assertThat(schedule.silentAt(at)).isTrue();
        Moment moment = schedule.momentAt(at);
        if (moment.segment().kind() == Segment.Kind.PACED) {
          assertThat(moment)
              .isEqualTo(
                  new Moment(
                      moment.segment(),
                      Moment.Act.KEEP_RHYTHM,
                      0,
                      0,
                      0,
                      java.util.OptionalLong.empty()));
        }
      }
    }
  }

  /** A silence takes breath prompts away and nothing else, as long as they do not come back. */
  @Property(tries = 1_000)
  void whateverIsNotABreathIsToldAtTheSameInstants(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    List<Control> loud =
        script.stream().filter(c -> !PROMPTS.contains(c.kind())).collect(Collectors.toList());
    List<Control> quiet =
        script.stream()
            .filter(c -> !PROMPTS.contains(c.kind()) || c.kind() == Control.Kind.PROMPTS_OFF)
            .collect(Collectors.toList());
    assertThat(told(CueSchedule.of(plan, quiet))).isEqualTo(told(CueSchedule.of(plan, loud)));
    // Also when prompts come back: only compressions may then be set anew by a change.
    assertThat(safety(CueSchedule.of(plan, script))).isEqualTo(safety(CueSchedule.of(plan, loud)));
  }

  private static List<String> told(CueSchedule schedule) {
    return schedule.between(0, LAST).stream()
        .filter(c -> !BREATHS.contains(c.kind()) && c.kind() != CueKind.COMPRESS)
        .map(Cue::toString)
        .collect(Collectors.toList());
  }

  private static List<String> safety(CueSchedule schedule) {
    return told(schedule);
  }

  /** Within one interval of the moment they come back, and never two close together. */
  @Property(tries = 1_000)
  void promptsComeBackWithinOneInterval(
      @ForAll("plans") PracticePlan plan, @ForAll("changes") List<Control> script) {
    CueSchedule schedule = CueSchedule.of(plan, script);
    for (Control control : script) {
      boolean back =
          control.kind() == Control.Kind.PROMPTS_ON
              || control.kind() == Control.Kind.PROMPTS_AT_ONCE;
      Segment segment = schedule.stretchAt(control.atNanos());
      boolean ended =
          schedule.silences().stream()
              .anyMatch(
                  s -> s.endNanos() == control.atNanos() || s.endNanos() == control.atNanos() + 1);
      if (!back || !ended || segment.startNanos() != control.atNanos()) {
        continue;
      }
      // A change at the same instant has the last word; with compressions no interval is asked for.
      Optional<BreathPlan> steady = segment.guidance().rhythm().steadyBreaths();
      if (segment.kind() != Segment.Kind.PACED || steady.isEmpty()) {
        continue;
      }
      BreathPlan breaths = steady.get();
      long interval = breaths.interval().nanosAt(1);
      boolean atOnce = control.kind() == Control.Kind.PROMPTS_AT_ONCE;
      long first = control.atNanos() + (atOnce ? plan.leadNanos() : interval);
      List<Long> squeezes =
          schedule.between(control.atNanos(), Math.min(LAST, segment.endNanos())).stream()
              .filter(c -> c.kind() == CueKind.SQUEEZE && c.atNanos() <= first + interval)
              .map(Cue::atNanos)
              .collect(Collectors.toList());
      boolean quietAgain =
          schedule.silences().stream()
              .anyMatch(
                  s -> s.startNanos() >= control.atNanos() && s.startNanos() <= first + interval);
      if (first < segment.endNanos() && !quietAgain) {
        assertThat(squeezes.get(0)).isEqualTo(first);
      }
    }
  }
}
