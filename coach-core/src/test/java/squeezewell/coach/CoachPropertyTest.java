package squeezewell.coach;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.storage.FileJournal;

/** What must hold for every order of commands and every jitter of the clock. */
class CoachPropertyTest {
  private static final long MILLI = TestPlans.MILLI;
  private static final long LAST = TestPlans.HOUR;

  /**
   * One step of a script.
   *
   * @param waitNanos how long after the step before
   * @param command what is told then; null to let time pass only
   * @param lateNanos how long before now the command was given
   * @param cuesFirst whether cues that are due at that very instant are given before the command
   */
  record Step(long waitNanos, Command command, long lateNanos, boolean cuesFirst) {}

  @Provide
  Arbitrary<PracticePlan> plans() {
    return Combinators.combine(
            Arbitraries.of(TestPlans.rhythms()),
            Arbitraries.of(0L, 3_000L),
            Arbitraries.longs().between(1_000, 300_000),
            Arbitraries.of(0L, 80L))
        .as(
            (rhythm, countIn, length, lead) ->
                new PracticePlan(
                    TestPlans.guidance(rhythm, TestPlans.limits("60", "10")),
                    countIn * MILLI,
                    length * MILLI,
                    lead * MILLI));
  }

  @Provide
  Arbitrary<List<Step>> scripts() {
    Arbitrary<Long> waits =
        Arbitraries.oneOf(
            Arbitraries.integers().between(0, 40).map(q -> q * 250L * MILLI),
            Arbitraries.longs().between(0, 20_000 * MILLI));
    Arbitrary<Command> commands =
        Arbitraries.of(Command.values()).filter(c -> c != Command.FINISH).injectNull(0.2);
    return Combinators.combine(
            waits,
            commands,
            Arbitraries.longs().between(0, 240 * MILLI),
            Arbitraries.of(true, false))
        .as(Step::new)
        .list()
        .ofMaxSize(40);
  }

  /** Runs a script carelessly: time passes in leaps, commands come late. */
  private static Coach leap(PracticePlan plan, Journal journal, List<Step> script) {
    Coach coach = new Coach(plan, journal, List.of());
    long now = 0;
    for (Step step : script) {
      now += step.waitNanos();
      if (step.cuesFirst() || step.command() == null) {
        coach.advance(now);
      }
      if (step.command() != null) {
        coach.command(step.command(), now - step.lateNanos());
      }
    }
    return coach;
  }

  @Property(tries = 150)
  void theSameCommandsGiveTheSameJournalAndItsReaderTheSamePrompts(
      @ForAll("plans") PracticePlan plan, @ForAll("scripts") List<Step> script) throws Exception {
    Path folder = Files.createTempDirectory("coach");
    Path first = folder.resolve("first.jsonl");
    Path second = folder.resolve("second.jsonl");
    try {
      SessionHeader header = TestPlans.header(plan);
      Coach coach = leapInto(first, header, script);
      leapInto(second, header, script);
      assertThat(Files.readAllBytes(first)).isEqualTo(Files.readAllBytes(second));

      Session session = SessionReader.read(first);
      assertThat(session.header()).isEqualTo(header);
      assertThat(session.notes()).isEmpty();
      assertThat(session.finished()).isEqualTo(coach.state().finished());
      assertThat(session.breaths()).isEqualTo(coach.state().breaths());
      assertThat(session.schedule().segments()).isEqualTo(coach.state().schedule().segments());
      assertThat(session.schedule().between(0, LAST))
          .isEqualTo(coach.state().schedule().between(0, LAST));
      assertThat(session.schedule().pulseChecks())
          .isEqualTo(coach.state().schedule().pulseChecks());
    } finally {
      Files.deleteIfExists(first);
      Files.deleteIfExists(second);
      Files.delete(folder);
    }
  }

  private static Coach leapInto(Path file, SessionHeader header, List<Step> script)
      throws IOException {
    try (FileJournal journal = FileJournal.create(file, header)) {
      return leap(header.plan(), journal, script);
    }
  }

  /** A coach that is called in time gives each cue of the final schedule once, and no other. */
  @Property(tries = 400)
  void everyCueIsGivenExactlyOnceByACoachThatIsCalledInTime(
      @ForAll("plans") PracticePlan plan, @ForAll("scripts") List<Step> script) {
    Recorder output = new Recorder();
    Coach coach = new Coach(plan, Journal.none(), List.of(output));
    long now = 0;
    for (Step step : script) {
      now += step.waitNanos();
      passInTime(coach, step.cuesFirst() ? now : now - 1);
      if (step.command() != null) {
        coach.command(step.command(), step.cuesFirst() ? now - step.lateNanos() : now);
      }
    }
    passInTime(coach, Long.MAX_VALUE);
    if (!coach.state().finished()) {
      coach.command(Command.FINISH, now + TestPlans.SECOND);
    }
    assertThat(coach.state().finished()).isTrue();
    assertThat(output.schedule).isSameAs(coach.state().schedule());
    assertThat(Recorder.keys(output.cues))
        .isEqualTo(Recorder.keys(coach.state().schedule().between(0, LAST)));
    for (int i = 0; i < output.cues.size(); i++) {
      assertThat(output.givenAt.get(i))
          .isBetween(
              output.cues.get(i).atNanos(), output.cues.get(i).atNanos() + CueGiver.STALE_NANOS);
    }
  }

  private static void passInTime(Coach coach, long to) {
    OptionalLong due = coach.nextDueNanos();
    while (due.isPresent() && due.getAsLong() <= to) {
      coach.advance(due.getAsLong());
      OptionalLong next = coach.nextDueNanos();
      assertThat(next).isNotEqualTo(due);
      due = next;
    }
  }
}
