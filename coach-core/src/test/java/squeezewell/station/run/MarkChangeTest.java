package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.input.BadInputException;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.SessionEvent;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationReader;

/** Marks that an examiner changes while the station runs and after its end. */
final class MarkChangeTest {
  private static final long SECOND = 1_000_000_000L;

  private static final String STATION =
      """
      {"format":"squeezewell-station","version":2,"id":"small","title":"Small",
       "setting":"A room.","patient":{"group":"adult","words":"Grown-up"},
       "situation":"pulse-no-breathing","preparationSeconds":0,"exerciseSeconds":600,
       "findings":[{"id":"wet","words":"Wet mouth"}],
       "orders":[{"id":"spill","words":"Spill"}],
       "tasks":[
         {"id":"gloves","words":"Gloves","doneWhen":"On"},
         {"id":"pulse","words":"Pulse","doneWhen":"Felt","after":["gloves"],"critical":true,
          "limit":{"seconds":30}},
         {"id":"open","words":"Open","doneWhen":"Open","after":["pulse"],
          "limit":{"seconds":10,"fromTask":"pulse"}}],
       "script":[
         {"id":"spilled","when":{"order":"spill"},"raises":["wet"]},
         {"id":"told","when":{"task":"pulse"},"says":"There is a pulse."}],
       "rules":[
         {"id":"wet-open","words":"Opened while wet","severity":"critical","source":"Own",
          "rule":"done-while","task":"open","finding":"wet"},
         {"id":"bare","words":"No gloves","severity":"critical","source":"Own",
          "rule":"before","task":"pulse","other":"gloves"},
         {"id":"slow","words":"Slow","severity":"improve","source":"Own",
          "rule":"not-done","task":"open","limit":{"seconds":10,"fromTask":"pulse"}}]}
      """;

  private final Facts facts = new Facts();
  private final Station station;
  private final StationRun run;

  MarkChangeTest() throws BadInputException {
    station = StationReader.readText("s.json", STATION);
    run = new StationRun(station, setup(StationMode.INSTRUCTOR), facts);
  }

  private StationSetup setup(StationMode mode) throws BadInputException {
    return StationSetup.of(station, mode, List.of(), 1);
  }

  private static Fact.MarkChange change(String text) {
    return Fact.MarkChange.parse(text).get();
  }

  private void mark(String text, int seconds) {
    assertThat(run.mark(change(text), seconds * SECOND)).isTrue();
  }

  private void done(String task, int seconds) {
    assertThat(run.done(task, seconds * SECOND)).isTrue();
  }

  private void end(boolean ends) {
    if (ends) {
      run.end(100 * SECOND);
    }
  }

  /** From the facts alone the same comes out. */
  private StationResult result() throws BadInputException {
    StationResult result = new StationResult(run.state());
    List<SessionEvent> events = new ArrayList<>(facts.events);
    assertThat(StationResult.of(station, events)).isEqualTo(result);
    return result;
  }

  private List<String> broken() {
    return run.state().faults().stream().map(StationState.Fault::id).toList();
  }

  @ParameterizedTest(name = "after the end: {0}")
  @ValueSource(booleans = {false, true})
  @DisplayName("A withdrawn mark takes the critical fault with it that hung on it")
  void withdrawn(boolean ended) throws BadInputException {
    done("gloves", 1);
    done("pulse", 10);
    run.order("spill", 11 * SECOND);
    done("open", 15);
    end(ended);
    assertThat(broken()).containsExactly("wet-open");
    mark("open withdrawn The airway was never touched", 101);
    assertThat(broken()).doesNotContain("wet-open").contains("slow");
    assertThat(run.state().task("open").get().begunNanos()).isEmpty();
    assertThat(result().state().changed())
        .containsExactly(
            new StationState.Changed(
                101 * SECOND, change("open withdrawn The airway was never touched")));
    assertThat(StationText.of(result())).contains("Mark withdrawn: Open (The airway was never");
  }

  @ParameterizedTest(name = "after the end: {0}")
  @ValueSource(booleans = {false, true})
  @DisplayName("A mark dated back is judged at its new time, with its order and what held then")
  void earlier(boolean ended) throws BadInputException {
    done("pulse", 40);
    run.order("spill", 41 * SECOND);
    done("open", 55);
    done("gloves", 60);
    end(ended);
    assertThat(broken()).containsExactlyInAnyOrder("bare", "slow", "wet-open");
    assertThat(run.state().task("pulse").get().late()).isTrue();
    mark("pulse earlier 15 Tapped late", 101);
    mark("open earlier 20 Tapped late", 102);
    mark("gloves earlier 60 On from the start", 103);
    assertThat(broken()).isEmpty();
    assertThat(run.state().tasks()).allMatch(t -> !t.late() && !t.outOfOrder());
    assertThat(run.state().task("pulse").get().begunNanos()).hasValue(25 * SECOND);
    result();
  }

  @Test
  @DisplayName("Not dated back beyond the start of the exercise")
  void notBeforeTheStart() throws BadInputException {
    done("gloves", 20);
    mark("gloves earlier 500", 30);
    assertThat(run.state().task("gloves").get().begunNanos()).hasValue(0);
    result();
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"improper Two fingers off", "late Waited for a cue"})
  @DisplayName("Not done properly, or late: to improve, until it is taken back")
  void notProperly(String what) throws BadInputException {
    done("gloves", 1);
    done("pulse", 10);
    done("open", 15);
    run.end(20 * SECOND);
    assertThat(result().outcome()).isEqualTo(StationResult.Outcome.ALL_DONE);
    mark("pulse " + what, 21);
    assertThat(result().outcome()).isEqualTo(StationResult.Outcome.TO_IMPROVE);
    mark("pulse " + what, 22);
    assertThat(result().outcome()).isEqualTo(StationResult.Outcome.ALL_DONE);
  }

  @Test
  @DisplayName("A remark on a task changes no judgment")
  void remark() throws BadInputException {
    done("gloves", 1);
    done("pulse", 10);
    done("open", 15);
    run.end(20 * SECOND);
    mark("open remark Good jaw thrust", 21);
    assertThat(result().outcome()).isEqualTo(StationResult.Outcome.ALL_DONE);
    assertThat(StationText.of(result())).contains("On Open (Good jaw thrust)");
  }

  @Test
  @DisplayName("A withdrawn mark can be made again; the examiner's words stay said")
  void markedAgain() throws BadInputException {
    done("gloves", 1);
    done("pulse", 5);
    mark("pulse withdrawn", 8);
    done("pulse", 20);
    assertThat(run.state().task("pulse").get().begunNanos()).hasValue(20 * SECOND);
    assertThat(run.state().lines()).hasSize(1);
    result();
  }

  @Test
  @DisplayName("A critical task whose mark is withdrawn after the end was missed")
  void missedAfterAll() throws BadInputException {
    done("gloves", 1);
    done("pulse", 10);
    done("open", 15);
    run.end(20 * SECOND);
    mark("pulse withdrawn Only looked", 30);
    assertThat(result().outcome()).isEqualTo(StationResult.Outcome.CRITICAL);
    assertThat(broken()).containsExactly("pulse");
  }

  @Test
  @DisplayName("Who practices alone has no examiner's marks; what is not marked can't be changed")
  void onlyAnExaminer() throws BadInputException {
    assertThat(run.mark(change("pulse late"), SECOND)).isFalse();
    assertThat(run.mark(change("nothing remark Words"), SECOND)).isFalse();
    StationRun alone = new StationRun(station, setup(StationMode.ALONE), StationOutput.none());
    alone.done("gloves", SECOND);
    assertThat(alone.mark(change("gloves withdrawn"), 2 * SECOND)).isFalse();
  }

  @Test
  @DisplayName("Two records of one check: the examiner's decides, both are shown")
  void twoRecordsOfOneCheck() throws BadInputException {
    Station check =
        StationReader.readText(
            "s.json",
            STATION.replace(
                "\"doneWhen\":\"Felt\"",
                "\"doneWhen\":\"Felt\",\"kind\":\"timed\",\"leastSeconds\":5,"
                    + "\"holds\":\"pulse-check\""));
    List<Fact> said =
        List.of(
            new Fact.StationSet(
                StationSetup.of(check, StationMode.INSTRUCTOR, List.of(), 1).json(check)),
            new Fact.Told(EventType.TASK_DONE, "gloves"),
            new Fact.Plain(EventType.PULSE_CHECK),
            new Fact.Told(EventType.TASK_START, "pulse"),
            new Fact.Plain(EventType.PULSE_CHECK_END),
            new Fact.Told(EventType.TASK_DONE, "pulse"));
    int[] seconds = {0, 1, 10, 12, 20, 16};
    List<SessionEvent> events = new ArrayList<>();
    for (int i : new int[] {0, 1, 2, 3, 5, 4}) {
      events.add(new SessionEvent(events.size() + 1, seconds[i] * SECOND, said.get(i)));
    }
    StationResult result = StationResult.of(events);
    assertThat(result.state().task("pulse").get().length()).isEqualTo(TaskState.Length.TOO_SHORT);
    assertThat(StationText.of(result).replaceAll("\\s+", " "))
        .contains("Pulse: by the trainee's key from 0:10 to 0:20")
        .contains("by the examiner's mark from 0:12 to 0:16. The mark decides.");
  }

  @Test
  @DisplayName("Findings that were brought on stand in the result")
  void broughtOn() throws BadInputException {
    run.inject("wet", 5 * SECOND);
    run.inject("pulse-lost", 7 * SECOND);
    run.clear("wet", 9 * SECOND);
    run.end(20 * SECOND);
    assertThat(result().state().brought())
        .extracting(StationState.Brought::atNanos)
        .containsExactly(5 * SECOND, 7 * SECOND, 9 * SECOND);
    assertThat(StationText.of(result()))
        .contains("Examiner: Wet mouth brought on", "Examiner: Wet mouth cleared");
  }
}
