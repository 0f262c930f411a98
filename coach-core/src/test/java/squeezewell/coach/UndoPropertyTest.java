package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import squeezewell.TestPlans;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.session.Session;

/**
 * Taking a finding back leads to where the practice would be had it never been noted: two coaches
 * are told the same, one of them with a finding that is taken back, and must end up the same.
 */
class UndoPropertyTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long SLIP_WITHIN = 5_000 * MILLI;

  /** Something told after a wait; one of finding and command is null. */
  record Step(long waitNanos, PatientChange finding, Command command) {}

  @Provide
  Arbitrary<PracticePlan> plans() {
    List<PracticePlan> plans = new ArrayList<>();
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance guidance : edition.guidance()) {
        for (long lead : List.of(0L, 35L)) {
          plans.add(PracticePlan.of(edition, guidance, 0, 200_000 * MILLI, lead * MILLI));
        }
      }
    }
    return Arbitraries.of(plans);
  }

  private static Arbitrary<Step> commands(long longestMillis) {
    return Combinators.combine(
            Arbitraries.longs().between(1, longestMillis * MILLI),
            Arbitraries.of(
                Command.SUCTION,
                Command.SUCTION,
                Command.SUCTION_END,
                Command.PULSE_CHECK,
                Command.PULSE_CHECK_END,
                Command.PAUSE,
                Command.RESUME,
                Command.BREATH,
                Command.COMPRESS))
        .as((wait, command) -> new Step(wait, null, command));
  }

  @Provide
  Arbitrary<List<Step>> before() {
    Arbitrary<Step> findings =
        Combinators.combine(
                Arbitraries.longs().between(1, 15_000 * MILLI),
                Arbitraries.of(PatientChange.values()))
            .as((wait, finding) -> new Step(wait, finding, null));
    return Arbitraries.frequencyOf(Tuple.of(1, findings), Tuple.of(2, commands(8_000)))
        .list()
        .ofMaxSize(6);
  }

  /** What is told between the finding and its undoing. */
  @Provide
  Arbitrary<List<Step>> between() {
    return commands(2_500).list().ofMaxSize(3);
  }

  @Property(tries = 20_000)
  void aFindingThatIsTakenBackLeavesNothingBehind(
      @ForAll("plans") PracticePlan plan,
      @ForAll("before") List<Step> before,
      @ForAll PatientChange slip,
      @ForAll("between") List<Step> between) {
    long meanwhile = between.stream().mapToLong(Step::waitNanos).sum();
    if (meanwhile > SLIP_WITHIN - 300 * MILLI) {
      return;
    }
    MemoryJournal journal = new MemoryJournal();
    Coach with = new Coach(plan, journal, List.of());
    Coach without = new Coach(plan, new MemoryJournal(), List.of());
    long now = 0;
    for (Step step : before) {
      now += step.waitNanos();
      tell(with, step, now);
      tell(without, step, now);
    }
    now += 100 * MILLI;
    int noted = with.state().findings().size();
    tell(with, new Step(0, slip, null), now);
    if (with.state().findings().size() == noted) {
      // Not to be found in such a patient.
      return;
    }
    for (Step step : between) {
      now += step.waitNanos();
      tell(with, step, now);
      tell(without, step, now);
    }
    now += 100 * MILLI;
    tell(with, new Step(0, null, Command.UNDO_FINDING), now);
    pass(without, now);

    sameIsGoingOn(with, without, now + 2);
    assertThat(with.state().course().state()).isEqualTo(without.state().course().state());
    assertThat(with.state().course().care()).isEqualTo(without.state().course().care());
    assertThat(with.state().course().guidance()).isEqualTo(without.state().course().guidance());
    if (plan.guidance().rhythm() instanceof Rhythm.SteadyBreaths) {
      nextBreathIsNotSooner(with, without, now + 2, before, between);
    }
    now += 100 * MILLI;
    for (Command end : List.of(Command.SUCTION_END, Command.PULSE_CHECK_END, Command.RESUME)) {
      tell(with, new Step(0, null, end), now);
      tell(without, new Step(0, null, end), now);
    }
    sameIsGoingOn(with, without, now + 10);
    assertThat(with.state().schedule().guidanceAt(now + 10))
        .isEqualTo(without.state().schedule().guidanceAt(now + 10));
    Session session = new Session(TestPlans.header(plan), journal.events, List.of());
    assertThat(session.schedule().segments()).isEqualTo(with.state().schedule().segments());
  }

  private static void sameIsGoingOn(Coach with, Coach without, long now) {
    Segment found = with.state().schedule().stretchAt(now);
    Segment wanted = without.state().schedule().stretchAt(now);
    assertThat(found.kind()).isEqualTo(wanted.kind());
    assertThat(found.compressing()).isEqualTo(wanted.compressing());
  }

  /** Where nothing else was told, the next breath is the very one that would have come. */
  private static void nextBreathIsNotSooner(
      Coach with, Coach without, long now, List<Step> before, List<Step> between) {
    if (before.isEmpty() && between.isEmpty()) {
      assertThat(nextSqueezes(with, now)).isEqualTo(nextSqueezes(without, now));
    }
  }

  private static List<Long> nextSqueezes(Coach coach, long now) {
    return coach.state().schedule().between(now, now + 20_000 * MILLI).stream()
        .filter(c -> c.kind() == CueKind.SQUEEZE)
        .map(Cue::atNanos)
        .collect(Collectors.toList());
  }

  private static void tell(Coach coach, Step step, long now) {
    pass(coach, now);
    if (step.finding() != null) {
      coach.find(step.finding(), now);
    } else {
      coach.command(step.command(), now);
    }
  }

  private static void pass(Coach coach, long to) {
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() <= to) {
      coach.advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
  }
}
