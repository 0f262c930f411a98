package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationBranch;
import squeezewell.station.file.StationFile;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationPhase;
import squeezewell.station.file.StationReader;
import squeezewell.station.file.StationRule;
import squeezewell.station.file.StationTask;
import squeezewell.station.file.TimeLimit;

/** Each station that comes with the program can be passed, spoilt in each way, and timed out. */
class BuiltInStationsTest {
  static List<Station> stations() {
    return StationLibrary.stations();
  }

  /** Each choice of ways at the branches. */
  static List<List<BranchOption>> ways(Station station) {
    List<List<BranchOption>> all = new ArrayList<>();
    all.add(List.of());
    for (StationBranch branch : station.branches()) {
      List<List<BranchOption>> longer = new ArrayList<>();
      for (List<BranchOption> before : all) {
        for (StationBranch.Way way : branch.ways()) {
          List<BranchOption> next = new ArrayList<>(before);
          next.add(new BranchOption(branch.id(), way.id()));
          longer.add(next);
        }
      }
      all = longer;
    }
    return all;
  }

  @Test
  void thereAreTenForAllAgesWithoutAFaultOrDoubt() {
    assertThat(stations()).hasSizeGreaterThanOrEqualTo(10);
    assertThat(stations().stream().map(Station::id)).doesNotHaveDuplicates();
    assertThat(stations().stream().map(Station::group)).contains(PatientGroup.values());
    for (Station station : stations()) {
      StationFile file = StationReader.checkText(station.id(), StationLibrary.text(station.id()));
      assertThat(file.faults()).as(station.id()).isEmpty();
      assertThat(file.doubts()).as(station.id()).isEmpty();
      assertThat(GuidelineLibrary.editions())
          .as(station.id())
          .anyMatch(p -> p.find(station.group(), station.situation()).isPresent());
    }
  }

  @ParameterizedTest
  @MethodSource("stations")
  void itCanBePassedOnEveryWay(Station station) throws Exception {
    for (List<BranchOption> ways : ways(station)) {
      Candidate candidate = new Candidate(station, ways);
      StationResult result = new StationResult(candidate.go());
      assertThat(result.state().faults()).as("%s %s", station.id(), ways).isEmpty();
      assertThat(result.needed()).as("%s %s", station.id(), ways).allMatch(TaskState::good);
      assertThat(result.outcome()).isEqualTo(StationResult.Outcome.ALL_DONE);
      assertThat(result.exerciseNanos()).isLessThanOrEqualTo(station.exerciseNanos());
      assertThat(StationResult.of(station, candidate.events())).isEqualTo(result);
      assertThat(StationResult.of(candidate.events())).isEqualTo(result);
    }
  }

  @ParameterizedTest
  @MethodSource("stations")
  void everyRuleAboutMarksCanBeBroken(Station station) throws Exception {
    for (StationRule fault : aboutMarks(station)) {
      Set<String> committed = new HashSet<>();
      for (List<BranchOption> ways : ways(station)) {
        for (boolean optional : new boolean[] {false, true}) {
          Candidate candidate = new Candidate(station, ways).doingOptional(optional);
          spoil(candidate, station, fault);
          StationResult result = new StationResult(candidate.go());
          if (result.state().faults().stream().anyMatch(f -> f.id().equals(fault.id()))) {
            committed.add(fault.id());
            if (fault.severity() == StationRule.Severity.CRITICAL) {
              assertThat(result.outcome()).isEqualTo(StationResult.Outcome.CRITICAL);
            }
            assertThat(StationResult.of(station, candidate.events())).isEqualTo(result);
          }
        }
      }
      assertThat(committed).as(station.id()).contains(fault.id());
    }
  }

  private static void spoil(Candidate candidate, Station station, StationRule fault) {
    switch (fault.kind()) {
      case NOT_DONE -> candidate.omitting(fault.task());
      case BEFORE -> candidate.omitting(fault.other());
      case DONE_WHILE -> candidate.rashly(fault.task(), fault.other());
      case TOO_LONG -> candidate.taking(fault.task(), most(station, fault) + Candidate.SECOND);
      case TOO_SHORT -> candidate.taking(fault.task(), 1);
      default -> throw new IllegalArgumentException("not about marks: " + fault);
    }
  }

  /** A candidate of this test squeezes no bag, so nothing is known of its breaths. */
  private static List<StationRule> aboutMarks(Station station) {
    List<StationRule> rules = new ArrayList<>(station.rules());
    rules.removeIf(rule -> rule.kind().readsBreaths());
    return rules;
  }

  /** Not only some time: the instant after it was up, counted here from what it counts from. */
  @ParameterizedTest
  @MethodSource("stations")
  void aFaultOfTimeIsCommittedAtTheInstantAfterItsTime(Station station) {
    for (StationRule fault : aboutMarks(station)) {
      for (List<BranchOption> ways : ways(station)) {
        for (boolean optional : new boolean[] {false, true}) {
          Candidate candidate = new Candidate(station, ways).doingOptional(optional);
          spoil(candidate, station, fault);
          Map<String, Long> came = new HashMap<>();
          StationState end =
              candidate
                  .watchedBy(
                      s ->
                          s.findings()
                              .forEach(f -> came.putIfAbsent(f.finding().id(), f.sinceNanos())))
                  .go();
          end.faults().stream()
              .filter(f -> f.id().equals(fault.id()) && !f.missed())
              .forEach(
                  f -> {
                    if (fault.kind() == StationRule.Kind.NOT_DONE && fault.limit().isPresent()) {
                      long limit = fault.limit().get().nanos();
                      assertThat(f.atNanos()).isEqualTo(from(fault, end, came) + limit + 1);
                    } else if (fault.kind() == StationRule.Kind.TOO_LONG) {
                      long begun = end.task(fault.task()).get().begunNanos().getAsLong();
                      assertThat(f.atNanos()).isEqualTo(begun + most(station, fault) + 1);
                    }
                  });
        }
      }
    }
  }

  private static long most(Station station, StationRule rule) {
    return rule.bounds()
        .nanos()
        .orElseGet(() -> station.task(rule.task()).get().mostNanos().getAsLong());
  }

  private static long from(StationRule fault, StationState end, Map<String, Long> came) {
    TimeLimit limit = fault.limit().get();
    return switch (limit.from()) {
      case EXERCISE -> end.exerciseFromNanos().getAsLong();
      case TASK -> end.task(limit.id()).get().doneNanos().getAsLong();
      case STARTED -> end.task(limit.id()).get().begunNanos().getAsLong();
      case FINDING -> came.get(limit.id());
      default -> throw new IllegalArgumentException("not followed here: " + limit);
    };
  }

  /** "Within 15 s" still holds at 15 s, and no longer one nanosecond later. */
  @ParameterizedTest
  @CsvSource({"0, false", "1, true"})
  void whatIsBegunAtItsLastInstantIsNotLate(long past, boolean late) throws Exception {
    Station station =
        stations().stream().filter(s -> s.id().equals("adult-vomit")).findFirst().get();
    StationRun run =
        new StationRun(
            station,
            StationSetup.of(station, StationMode.ALONE, List.of(), 1),
            StationOutput.none());
    run.begin(7 * Candidate.SECOND);
    run.done("scene", 22 * Candidate.SECOND + past);
    assertThat(run.state().task("scene").get().late()).isEqualTo(late);
  }

  @ParameterizedTest
  @MethodSource("stations")
  void everyCriticalTaskThatIsMissedIsAFault(Station station) {
    for (StationTask task : station.tasks()) {
      if (task.critical()) {
        boolean found = false;
        for (List<BranchOption> ways : ways(station)) {
          for (boolean optional : new boolean[] {false, true}) {
            StationState end =
                new Candidate(station, ways).omitting(task.id()).doingOptional(optional).go();
            found |= end.faults().stream().anyMatch(f -> f.missed() && f.id().equals(task.id()));
          }
        }
        assertThat(found).as(station.id() + " " + task.id()).isTrue();
      }
    }
  }

  @ParameterizedTest
  @MethodSource("stations")
  void whoDoesNothingIsTimedOut(Station station) throws Exception {
    Facts facts = new Facts();
    StationRun run =
        new StationRun(station, StationSetup.of(station, StationMode.ALONE, List.of(), 3), facts);
    long all = station.preparationNanos() + station.exerciseNanos();
    run.advance(station.preparationNanos() - 1);
    assertThat(run.state().phase()).isEqualTo(StationPhase.PREPARATION);
    run.advance(station.preparationNanos());
    assertThat(run.state().phase()).isEqualTo(StationPhase.EXERCISE);
    run.advance(all - 1);
    assertThat(run.state().phase()).isEqualTo(StationPhase.EXERCISE);
    assertThat(run.state().phaseLeftNanos()).isEqualTo(1);
    run.advance(10 * all);
    StationResult result = new StationResult(run.state());
    assertThat(run.state().end()).contains(StationState.End.CLOCK);
    assertThat(run.state().nowNanos()).isEqualTo(all);
    assertThat(result.exerciseNanos()).isEqualTo(station.exerciseNanos());
    assertThat(result.outcome()).isEqualTo(StationResult.Outcome.CRITICAL);
    assertThat(result.good()).isEmpty();
    assertThat(StationResult.of(station, facts.events)).isEqualTo(result);
  }
}
