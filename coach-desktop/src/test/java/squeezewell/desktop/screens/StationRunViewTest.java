package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import squeezewell.coach.Command;
import squeezewell.live.LiveStation;
import squeezewell.session.Journal;
import squeezewell.station.file.BranchOption;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationReader;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationOutput;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationRun;
import squeezewell.station.run.StationSetup;

/** Times and limits are those typed into the built-in station adult-secretions. */
class StationRunViewTest {
  private static final long SECOND = 1_000_000_000L;

  private final StationPractice practice = practice(StationMode.ALONE);

  static StationPractice practice(StationMode mode) {
    try {
      Station station = station();
      StationSetup setup =
          StationSetup.of(station, mode, List.of(new BranchOption("fluid-returns", "once")), 1);
      return new StationPractice(
          station,
          setup,
          StationPractice.plan(
              station,
              Practices.protocol(),
              StationsView.guidance(station, Practices.protocol()).orElseThrow(),
              0),
          Journal.none(),
          List.of());
    } catch (squeezewell.input.BadInputException e) {
      throw new IllegalStateException(e);
    }
  }

  static Station station() {
    return StationLibrary.stations().stream()
        .filter(s -> s.id().equals("adult-secretions"))
        .findFirst()
        .orElseThrow();
  }

  private StationRunView at(double seconds) {
    practice.advance(Math.round(seconds * SECOND));
    return StationRunView.of(practice.state(), Math.round(seconds * SECOND));
  }

  private void done(String id, double seconds) {
    assertThat(practice.done(id, Math.round(seconds * SECOND))).as(id).isTrue();
  }

  private static List<String> ids(StationRunView view) {
    return view.items().stream().map(StationItem::id).collect(Collectors.toList());
  }

  private static String next(StationRunView view) {
    return view.next().map(StationItem::id).orElse("none");
  }

  @Test
  void thePreparationShowsItsTasksAndThenOffersTheExercise() {
    StationRunView view = at(1);
    assertThat(view.left()).isEqualTo("1:59");
    assertThat(ids(view)).containsExactly("protect", "check-kit");
    assertThat(next(view)).isEqualTo("protect");
    done("protect", 2);
    done("check-kit", 3);
    assertThat(at(4).next().orElseThrow().kind()).isEqualTo(StationItem.Kind.BEGIN);
  }

  @Test
  @DisplayName("Nobody is told to check the kit while the patient has no pulse")
  void thePatientComesBeforeTheKit() throws Exception {
    Station lost =
        StationReader.readText(
            "s.json",
            """
            {"format":"squeezewell-station","version":2,"id":"small","title":"Small",
             "setting":"A room.","patient":{"group":"adult","words":"Grown-up"},
             "situation":"pulse-no-breathing","exerciseSeconds":300,
             "findings":[{"id":"no-pulse","words":"No pulse","lasting":true}],
             "tasks":[
               {"id":"kit","words":"Kit","doneWhen":"Looked at","phase":"preparation"},
               {"id":"gloves","words":"Gloves","doneWhen":"On","phase":"preparation",
                "critical":true},
               {"id":"oxygen","words":"Oxygen","doneWhen":"On","limit":{"seconds":5}},
               {"id":"cpr","words":"Compress","doneWhen":"Begun","kind":"paced",
                "ifFinding":"no-pulse","limit":{"seconds":60,"fromFinding":"no-pulse"}}],
             "script":[{"id":"lost","when":{"seconds":10},"says":"No pulse.",
                        "raises":["no-pulse"],"tells":"pulse-lost"}]}
            """);
    StationRun run =
        new StationRun(
            lost, StationSetup.of(lost, StationMode.PARTNER, List.of(), 1), StationOutput.none());
    run.begin(SECOND);
    assertThat(next(StationRunView.of(run.state(), SECOND))).isEqualTo("gloves");
    run.advance(20 * SECOND);
    assertThat(next(StationRunView.of(run.state(), 20 * SECOND))).isEqualTo("cpr");
    run.start("cpr", 21 * SECOND);
    run.done("gloves", 22 * SECOND);
    run.done("oxygen", 23 * SECOND);
    assertThat(next(StationRunView.of(run.state(), 23 * SECOND))).isEqualTo("none");
  }

  @Test
  void aTaskThatAFindingCallsForIsHiddenUntilTheFindingComesAndNoKeyMoves() {
    practice.begin(SECOND);
    StationRunView before = at(2);
    assertThat(ids(before)).doesNotContain("suction").contains("protect", "oral");
    char oral = key(before, "oral");
    done("protect", 2.5);
    done("scene", 3);
    done("response", 4);
    practice.start("pulse", 5 * SECOND);
    done("pulse", 11);
    done("open", 12);
    StationRunView after = at(13);
    assertThat(ids(after)).contains("suction");
    assertThat(key(after, "oral")).isEqualTo(oral);
    assertThat(after.examiner()).isEqualTo("You hear gurgling. There is fluid in the mouth.");
  }

  private static char key(StationRunView view, String id) {
    return view.items().stream().filter(i -> i.id().equals(id)).findFirst().orElseThrow().key();
  }

  @Test
  void noTwoThingsHaveTheSameKeyAndNoKeyIsOneOfThePractice() throws Exception {
    for (Station station : StationLibrary.stations()) {
      StationRun run =
          new StationRun(
              station,
              StationSetup.of(station, StationMode.ALONE, List.of(), 1),
              StationOutput.none());
      run.begin(SECOND);
      List<Character> keys =
          StationRunView.of(run.state(), 2 * SECOND).items().stream()
              .map(StationItem::key)
              .collect(Collectors.toList());
      // A key of 0 would be none: everything in the built-in stations has one.
      assertThat(keys).as(station.id()).doesNotHaveDuplicates().doesNotContain('N', '\0');
    }
    // The keys of a practice: C compresses, F, M, P, S and Z act.
    assertThat(StationItems.LETTERS).doesNotContain("C", "F", "M", "P", "S", "Z", "N");
  }

  @Test
  void aRunningCheckIsCountedAgainstItsLimit() {
    done("protect", 1);
    done("check-kit", 2);
    practice.begin(3 * SECOND);
    done("scene", 4);
    done("response", 5);
    practice.start("pulse", 6 * SECOND);
    StationRunView running = at(12);
    assertThat(running.bar().text()).isEqualTo("Feel for a pulse: 6 s, 5 to 10 s");
    assertThat(running.bar().urgent()).isFalse();
    assertThat(next(running)).isEqualTo("pulse");
    StationRunView over = at(17);
    assertThat(over.bar().text()).isEqualTo("Feel for a pulse over 10 s: end it");
    assertThat(over.bar().urgent()).isTrue();
  }

  @Test
  void theTaskThatIsLateIsWhatIsNextEvenBeforeOneWithoutATime() {
    done("protect", 1);
    done("check-kit", 2);
    practice.begin(3 * SECOND);
    done("scene", 4);
    done("response", 5);
    practice.start("pulse", 6 * SECOND);
    done("pulse", 12);
    // Sending for help has no time and stands first; opening the airway is due 15 s after 0:12.
    assertThat(next(at(13))).isEqualTo("help");
    assertThat(next(at(18))).isEqualTo("open");
    assertThat(at(28).bar().text()).isEqualTo("Late: Open the airway");
  }

  @Test
  void oxygenCountsDownAndWarnsBeforeItsEnd() {
    practice.begin(SECOND);
    assertThat(at(2).oxygen()).isEmpty();
    done("oxygen", 3);
    // D cylinder, factor 0.16 L/psi: (1500 - 200) psi x 0.16 / 15 L/min = 13.87 min = 13:52, less
    // the second that has passed. A second takes 15 / 60 / 0.16 = 1.6 psi.
    StationRunView view = at(4);
    assertThat(view.oxygen()).isEqualTo("Oxygen 1498 psi (103 bar), 13:51 left");
    assertThat(view.oxygenUrgent()).isFalse();
  }

  @Test
  void aStoppedClockStandsStill() {
    practice.begin(SECOND);
    practice.stopClock(11 * SECOND);
    assertThat(at(40).left()).isEqualTo("4:50");
    assertThat(at(40).bar().text()).isEqualTo("The clock is stopped");
    practice.runClock(50 * SECOND);
    assertThat(at(60).left()).isEqualTo("4:40");
  }

  @Test
  void theConsoleShowsWhatHoldsAndWhatWentWrong() {
    practice.begin(SECOND);
    practice.inject("fluid", 2 * SECOND);
    practice.remark("Good seal", 3 * SECOND);
    StationConsoleView view =
        StationConsoleView.of(practice.state(), practice.practice(), 3 * SECOND);
    Optional<StationConsoleView.Mark> fluid =
        view.findings().stream().filter(f -> f.id().equals("fluid")).findFirst();
    // Alone there is no examiner, so a person can't make a finding come.
    assertThat(fluid.orElseThrow().on()).isFalse();
    StationPractice led = practice(StationMode.INSTRUCTOR);
    led.begin(SECOND);
    led.inject("fluid", 2 * SECOND);
    led.remark("Good seal", 3 * SECOND);
    StationConsoleView console = StationConsoleView.of(led.state(), led.practice(), 3 * SECOND);
    assertThat(console.findings()).filteredOn(StationConsoleView.Mark::on).hasSize(1);
    assertThat(console.remarks()).containsExactly("0:03  Good seal");
    StationRunView told = StationRunView.of(led.state(), 3 * SECOND);
    assertThat(told.examiner()).isEqualTo("Fluid gurgles in the mouth.");
    assertThat(told.examinerWhen()).isEqualTo("Found, at 0:02");
    assertThat(console.clock()).isEqualTo("Exercise, 4:58 left");
  }

  private static StationProjectorView projected(StationPractice practice, long seconds) {
    practice.advance(seconds * SECOND);
    return StationProjectorView.of(
        new LiveStation.Now(
            practice.state(), practice.practice(), practice.breathing(), Optional.empty()),
        seconds * SECOND);
  }

  @Test
  void aClassSeesWhatTheTraineeSeesAndNoMore() {
    StationPractice led = practice(StationMode.INSTRUCTOR);
    assertThat(projected(led, 1).text()).isEqualTo(led.state().station().setting());
    assertThat(projected(led, 1).next()).isEqualTo("Next: Put on gloves and eye protection");
    led.done("protect", 2 * SECOND);
    led.begin(5 * SECOND);
    StationProjectorView begun = projected(led, 10);
    assertThat(begun.clock()).isEqualTo("4:55");
    assertThat(begun.text()).isEqualTo(led.state().station().patient() + ".");
    led.done("open", 20 * SECOND);
    StationProjectorView found = projected(led, 21);
    assertThat(found.text()).contains("gurgling");
    led.stopClock(22 * SECOND);
    assertThat(projected(led, 40).phase()).isEqualTo("Clock stopped");
    assertThat(projected(led, 40).clock()).isEqualTo("4:43");
    // A critical fault is made, and stays with the instructor.
    led.runClock(41 * SECOND);
    led.command(Command.SQUEEZE, 42 * SECOND);
    assertThat(led.state().faults()).isNotEmpty();
    for (squeezewell.station.run.StationState.Fault fault : led.state().faults()) {
      assertThat(projected(led, 43).toString()).doesNotContain(fault.words());
    }
  }

  @Test
  void theConsoleOffersTheWaysThatCanStillBeChosen() {
    StationPractice led = practice(StationMode.INSTRUCTOR);
    led.begin(5 * SECOND);
    led.advance(100 * SECOND);
    StationConsoleView open = StationConsoleView.of(led.state(), led.practice(), 100 * SECOND);
    assertThat(open.ways())
        .extracting(w -> w.id() + " " + w.on())
        .containsExactly("fluid-returns=once true", "fluid-returns=twice false");
    led.advance(200 * SECOND);
    assertThat(StationConsoleView.of(led.state(), led.practice(), 200 * SECOND).ways()).isEmpty();
  }
}
