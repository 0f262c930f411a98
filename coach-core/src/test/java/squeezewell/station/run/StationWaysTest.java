package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.session.EventType;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;

/** Who leads a station chooses its ways until they are reached, and not after. */
class StationWaysTest {
  private static final long SECOND = Candidate.SECOND;
  private static final BranchOption ONCE = new BranchOption("fluid-returns", "once");
  private static final BranchOption TWICE = new BranchOption("fluid-returns", "twice");

  private final Facts facts = new Facts();

  private StationRun begun(String id, StationMode mode, BranchOption way) throws Exception {
    Station station =
        StationLibrary.stations().stream().filter(s -> s.id().equals(id)).findFirst().get();
    StationRun run =
        new StationRun(station, StationSetup.of(station, mode, List.of(way), 1), facts);
    run.begin(10 * SECOND);
    return run;
  }

  @Test
  void aWayIsChosenOnTheSpotAndWrittenDown() throws Exception {
    StationRun run = begun("adult-secretions", StationMode.INSTRUCTOR, ONCE);
    assertThat(run.state().openBranches()).containsExactly("fluid-returns");
    assertThat(run.choose(TWICE.words(), 100 * SECOND)).isTrue();
    assertThat(facts.details(EventType.WAY_CHOSEN)).containsExactly("fluid-returns=twice");
    // By the station's file fluid comes back 190 s into the exercise, here at 200 s.
    run.advance(199 * SECOND);
    assertThat(run.state().holds("fluid-again")).isFalse();
    run.advance(200 * SECOND);
    assertThat(run.state().holds("fluid-again")).isTrue();
    assertThat(run.state().chosen())
        .singleElement()
        .satisfies(c -> assertThat(c.way().words()).isEqualTo("It comes back"));
    assertThat(StationResult.of(run.state().station(), facts.events))
        .isEqualTo(new StationResult(run.state()));
  }

  @Test
  void aBranchThatWasReachedStands() throws Exception {
    StationRun run = begun("adult-secretions", StationMode.INSTRUCTOR, ONCE);
    // Its moment passes at 200 s, though nothing comes on this way.
    assertThat(run.choose(TWICE.words(), 200 * SECOND)).isFalse();
    assertThat(run.state().openBranches()).isEmpty();
    assertThat(run.state().setup().takes(ONCE)).isTrue();
    assertThat(facts.details(EventType.WAY_CHOSEN)).isEmpty();
  }

  @Test
  void whatAWayBringsAtOnceIsChosenBeforeTheExercise() throws Exception {
    BranchOption position = new BranchOption("cause", "position");
    BranchOption seal = new BranchOption("cause", "seal");
    Station station =
        StationLibrary.stations().stream()
            .filter(s -> s.id().equals("adult-no-rise"))
            .findFirst()
            .get();
    StationRun run =
        new StationRun(
            station,
            StationSetup.of(station, StationMode.PARTNER, List.of(position), 1),
            StationOutput.none());
    assertThat(run.choose(seal.words(), SECOND)).isTrue();
    run.begin(2 * SECOND);
    assertThat(run.state().holds("bad-seal")).isTrue();
    assertThat(run.choose(position.words(), 3 * SECOND)).isFalse();
  }

  @Test
  void aSlipThatReachedTheBranchOpensItAgain() throws Exception {
    StationRun run =
        begun("adult-gag", StationMode.INSTRUCTOR, new BranchOption("reflex", "early"));
    run.done("open", 20 * SECOND);
    assertThat(run.choose("reflex=late", 21 * SECOND)).isFalse();
    assertThat(run.undo("open", 22 * SECOND)).isTrue();
    assertThat(run.choose("reflex=late", 23 * SECOND)).isTrue();
  }

  @Test
  void whoIsAloneChoosesNothingAndNobodyChoosesNonsense() throws Exception {
    StationRun alone = begun("adult-secretions", StationMode.ALONE, ONCE);
    assertThat(alone.state().openBranches()).isEmpty();
    assertThat(alone.choose(TWICE.words(), 20 * SECOND)).isFalse();
    facts.events.clear();
    StationRun led = begun("adult-secretions", StationMode.INSTRUCTOR, ONCE);
    for (String nonsense : List.of("", "=", "fluid-returns", "fluid-returns=", "fluid-returns=x")) {
      assertThat(led.choose(nonsense, 20 * SECOND)).as(nonsense).isFalse();
    }
    assertThat(led.choose(ONCE.words(), 20 * SECOND)).as("as it stands").isFalse();
  }
}
