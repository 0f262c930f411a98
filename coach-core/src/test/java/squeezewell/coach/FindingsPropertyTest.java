package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
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
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Rhythm;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** What must hold for any sequence of findings, in every edition, for every patient. */
class FindingsPropertyTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long LAST = TestPlans.HOUR;
  private static final Set<CueKind> RHYTHM =
      EnumSet.of(CueKind.SQUEEZE, CueKind.RELEASE, CueKind.COUNT, CueKind.COMPRESS);

  /**
   * One step of a script.
   *
   * @param waitNanos how long after the step before
   * @param finding what is found; null for a command
   * @param command what is told; null for a finding
   */
  record Step(long waitNanos, PatientChange finding, Command command) {}

  /**
   * An edition and where in it the practice begins.
   *
   * @param edition the edition
   * @param plan the practice
   */
  record Case(Protocol edition, PracticePlan plan) {
    @Override
    public String toString() {
      Guidance start = plan.guidance();
      return edition.id() + " " + start.patient().id() + " " + start.situation().id();
    }
  }

  @Provide
  Arbitrary<Case> cases() {
    List<Case> cases = new ArrayList<>();
    for (Protocol edition : GuidelineLibrary.editions()) {
      for (Guidance guidance : edition.guidance()) {
        for (long lead : List.of(0L, 35L)) {
          cases.add(
              new Case(
                  edition,
                  PracticePlan.of(
                      edition, guidance, 3_000 * MILLI, 120_000 * MILLI, lead * MILLI)));
        }
      }
    }
    return Arbitraries.of(cases);
  }

  @Provide
  Arbitrary<List<Step>> scripts() {
    Arbitrary<Long> waits =
        Arbitraries.oneOf(
            Arbitraries.integers().between(0, 20).map(q -> q * 250L * MILLI),
            Arbitraries.longs().between(0, 15_000 * MILLI));
    Arbitrary<Step> findings =
        Combinators.combine(waits, Arbitraries.of(PatientChange.values()))
            .as((wait, finding) -> new Step(wait, finding, null));
    Arbitrary<Step> commands =
        Combinators.combine(
                waits,
                Arbitraries.of(
                    Command.UNDO_FINDING,
                    Command.UNDO_FINDING,
                    Command.SUCTION,
                    Command.SUCTION_END,
                    Command.PULSE_CHECK,
                    Command.PULSE_CHECK_END,
                    Command.PAUSE,
                    Command.RESUME))
            .as((wait, command) -> new Step(wait, null, command));
    return Arbitraries.frequencyOf(Tuple.of(3, findings), Tuple.of(1, commands))
        .list()
        .ofMaxSize(14);
  }

  @Property(tries = 10_000)
  void anySequenceOfFindingsLeavesOneRhythmRunningAndAJournalThatTellsItAgain(
      @ForAll("cases") Case chosen, @ForAll("scripts") List<Step> script) {
    MemoryJournal journal = new MemoryJournal();
    Recorder output = new Recorder();
    Coach coach = new Coach(chosen.plan(), journal, List.of(output));
    List<Long> holdsEnd = new ArrayList<>();
    long now = 0;
    for (Step step : script) {
      now += step.waitNanos();
      passInTime(coach, now);
      if (step.finding() != null) {
        coach.find(step.finding(), now);
      } else {
        coach.command(step.command(), now);
      }
      holdsEnd.addAll(endedHold(journal));
    }
    coach.command(Command.RESUME, now);
    holdsEnd.addAll(endedHold(journal));
    passInTime(coach, Long.MAX_VALUE);
    CueSchedule schedule = coach.state().schedule();

    noCueCameBeforeItsTimeOrTwiceOrWasChangedLater(output, schedule);
    eachStretchHasTheRhythmInForceAndNoOther(schedule);
    squeezesNeverCrowd(schedule, holdsEnd);
    theJournalTellsTheSamePrompts(chosen, journal, schedule);
  }

  private static List<Long> endedHold(MemoryJournal journal) {
    return journal.events.stream()
        .skip(Math.max(0, journal.events.size() - 1))
        .filter(e -> e.what() == EventType.SUCTION_END && e.detail().isEmpty())
        .map(SessionEvent::atNanos)
        .collect(Collectors.toList());
  }

  private static void noCueCameBeforeItsTimeOrTwiceOrWasChangedLater(
      Recorder output, CueSchedule schedule) {
    assertThat(Recorder.keys(output.cues)).isEqualTo(Recorder.keys(schedule.between(0, LAST)));
    assertThat(Recorder.keys(output.cues)).doesNotHaveDuplicates();
    for (int i = 0; i < output.cues.size(); i++) {
      assertThat(output.givenAt.get(i)).isGreaterThanOrEqualTo(output.cues.get(i).atNanos());
    }
  }

  /** Counts and compressions stand at their own distances, worked out here from the guidance. */
  private static void eachStretchHasTheRhythmInForceAndNoOther(CueSchedule schedule) {
    for (Segment segment : schedule.segments()) {
      long end = Math.min(segment.endNanos(), LAST);
      List<Cue> cues =
          schedule.between(segment.startNanos(), end).stream()
              .filter(c -> RHYTHM.contains(c.kind()))
              .collect(Collectors.toList());
      if (segment.compressing()) {
        assertThat(cues).allMatch(c -> c.kind() == CueKind.COMPRESS);
        assertThat(firstOf(segment, schedule))
            .isLessThanOrEqualTo(longestWait(segment.guidance().rhythm()));
        continue;
      }
      if (segment.kind() != Segment.Kind.PACED) {
        assertThat(segment.kind() == Segment.Kind.COUNT_IN || cues.isEmpty()).isTrue();
        continue;
      }
      Rhythm rhythm = segment.guidance().rhythm();
      boolean compresses = cues.stream().anyMatch(c -> c.kind() == CueKind.COMPRESS);
      assertThat(compresses && rhythm.compressions().isEmpty()).isFalse();
      long first = firstOf(segment, schedule);
      assertThat(first)
          .as("the wait for the first breath or compression of %s", segment)
          .isLessThanOrEqualTo(longestWait(rhythm));
      if (rhythm.steadyBreaths().isPresent()) {
        double interval = rhythm.steadyBreaths().get().interval().seconds();
        distances(cues, CueKind.SQUEEZE)
            .forEach(d -> assertThat(Math.abs(d / 1e9 - interval)).isLessThan(2e-9));
      }
      if (rhythm instanceof Rhythm.ContinuousCompressions c) {
        double period = c.compressing().tempo().seconds();
        distances(cues, CueKind.COMPRESS)
            .forEach(d -> assertThat(Math.abs(d / 1e9 - period)).isLessThan(2e-9));
      }
    }
  }

  private static long firstOf(Segment segment, CueSchedule schedule) {
    return schedule.between(segment.startNanos(), Math.min(segment.endNanos(), LAST)).stream()
        .filter(c -> c.kind() == CueKind.SQUEEZE || c.kind() == CueKind.COMPRESS)
        .mapToLong(c -> c.atNanos() - segment.startNanos())
        .findFirst()
        .orElse(0);
  }

  /** Compressions at once or in step; breaths at once or an interval after the last. */
  private static long longestWait(Rhythm rhythm) {
    double seconds =
        rhythm.compressions().isPresent()
            ? rhythm.compressions().get().tempo().seconds()
            : rhythm.steadyBreaths().orElseThrow().interval().seconds();
    return Math.round(seconds * 1e9) + 35 * MILLI + 2;
  }

  private static List<Long> distances(List<Cue> cues, CueKind kind) {
    List<Long> found = new ArrayList<>();
    long before = -1;
    for (Cue cue : cues) {
      if (cue.kind() == kind) {
        if (before >= 0) {
          found.add(cue.atNanos() - before);
        }
        before = cue.atNanos();
      }
    }
    return found;
  }

  /** After suction the first breath comes at once; nothing else may bring squeezes together. */
  private static void squeezesNeverCrowd(CueSchedule schedule, List<Long> holds) {
    Cue before = null;
    for (Cue cue : schedule.squeezesUntil(LAST)) {
      if (before != null && !heldBetween(holds, before.atNanos(), cue.atNanos())) {
        long least =
            Math.min(
                spacing(schedule.guidanceAt(before.atNanos()).rhythm()),
                spacing(schedule.guidanceAt(cue.atNanos()).rhythm()));
        assertThat(cue.atNanos() - before.atNanos()).isGreaterThanOrEqualTo(least);
      }
      before = cue;
    }
  }

  private static boolean heldBetween(List<Long> holds, long from, long to) {
    return holds.stream().anyMatch(h -> h > from && h <= to);
  }

  private static long spacing(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle c
        ? c.pauseNanos() / c.breathsPerCycle()
        : rhythm.steadyBreaths().orElseThrow().interval().nanosAt(1);
  }

  private static void theJournalTellsTheSamePrompts(
      Case chosen, MemoryJournal journal, CueSchedule schedule) {
    SessionHeader header =
        new SessionHeader(
            TestPlans.header(chosen.plan()).startedAt(),
            SessionHeader.Origin.LIVE,
            "",
            chosen.edition(),
            chosen.plan());
    Session session = new Session(header, journal.events, List.of());
    assertThat(session.schedule().segments()).isEqualTo(schedule.segments());
    assertThat(session.schedule().between(0, LAST)).isEqualTo(schedule.between(0, LAST));
    assertThat(session.schedule().pulseChecks()).isEqualTo(schedule.pulseChecks());
  }

  private static void passInTime(Coach coach, long to) {
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() <= to) {
      coach.advance(due.getAsLong());
      due = coach.nextDueNanos();
    }
  }
}
