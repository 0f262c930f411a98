package squeezewell.station.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.input.BadInputException;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.SessionEvent;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationFile;
import squeezewell.station.file.StationReader;
import squeezewell.station.file.StationRule;

/** Rules that read recorded breaths, each on a line of events with the instant worked by hand. */
final class BreathRulesTest {
  private static final long SECOND = 1_000_000_000L;

  private final ArrayList<SessionEvent> events = new ArrayList<>();

  private static String text(String rule) {
    return """
        {"format":"squeezewell-station","version":2,"id":"small","title":"Small",
         "setting":"A room.","patient":{"group":"adult","words":"Grown-up"},
         "situation":"pulse-no-breathing","preparationSeconds":0,"exerciseSeconds":600,
         "findings":[{"id":"vomit","words":"Vomit","lasting":true}],
         "orders":[{"id":"spill","words":"Spill"},{"id":"lose","words":"Lose the pulse"}],
         "tasks":[
           {"id":"pulse","words":"Pulse","doneWhen":"Felt","kind":"timed","mostSeconds":10,
            "holds":"pulse-check"},
           {"id":"suction","words":"Suction","doneWhen":"Dry","kind":"timed","mostSeconds":15,
            "holds":"suction","optional":true},
           {"id":"breathe","words":"Breathe","doneWhen":"It rises","kind":"paced"},
           {"id":"place","words":"Check the place","doneWhen":"Seen"}],
         "script":[
           {"id":"spilled","when":{"order":"spill"},"raises":["vomit"]},
           {"id":"lost","when":{"order":"lose"},"says":"No pulse.","tells":"pulse-lost"}],
         "rules":[{"id":"r","words":"Broken","severity":"critical","source":"Our own choice",
           %s}]}
        """
        .formatted(rule);
  }

  private void at(double seconds, Fact fact) {
    long nanos = Math.round(seconds * SECOND);
    events.add(new SessionEvent(events.size() + 1, nanos, fact));
  }

  private void told(double seconds, EventType type, String words) {
    at(seconds, new Fact.Told(type, words));
  }

  private void squeeze(double seconds) {
    at(seconds, new Fact.Squeeze(EventType.BREATH));
    at(seconds + 1, new Fact.Squeeze(EventType.BREATH_END));
  }

  private void squeezes(double from, double to, double every) {
    for (double at = from; at <= to; at += every) {
      squeeze(at);
    }
  }

  /** When the rule was broken, in seconds; empty if it was not. */
  private List<Double> broken(String rule, double end) throws BadInputException {
    at(end, new Fact.Turn(EventType.STATION_END, true));
    Station station = StationReader.readText("s.json", text(rule));
    List<SessionEvent> session = new ArrayList<>();
    StationSetup setup = StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), 1);
    session.add(new SessionEvent(1, 0, new Fact.StationSet(setup.json(station))));
    events.stream()
        .sorted(Comparator.comparingLong(SessionEvent::atNanos))
        .forEach(e -> session.add(new SessionEvent(session.size() + 1, e.atNanos(), e.fact())));
    StationResult result = StationResult.of(session);
    assertThat(result.outcome() == StationResult.Outcome.CRITICAL)
        .isEqualTo(!result.state().critical().isEmpty());
    return result.state().critical().stream()
        .filter(f -> f.id().equals("r"))
        .map(f -> Math.round(f.atNanos() / 1e6) / 1e3)
        .toList();
  }

  @ParameterizedTest(name = "one every {0} s is over 15 a minute: {1}")
  @CsvSource({"2, 62", "3.9, 63.4", "4, ", "6, "})
  @DisplayName("30 breaths a minute over a minute")
  void rate(double every, Double at) throws BadInputException {
    squeezes(1, 200, every);
    assertThat(broken("\"rule\":\"rate\",\"highPerMinute\":15", 201))
        .isEqualTo(at == null ? List.of() : List.of(at == 62 ? 61.0 : at));
  }

  @Test
  @DisplayName(
      "30 breaths a minute, 40 s before and 40 s after a check, are over a minute too fast")
  void aCheckDoesNotWashFastBreathsAway() throws BadInputException {
    squeezes(1, 41, 2);
    told(43, EventType.TASK_START, "pulse");
    told(50, EventType.TASK_DONE, "pulse");
    squeezes(51, 91, 2);
    assertThat(broken("\"rule\":\"rate\",\"highPerMinute\":15", 92)).containsExactly(71.0);
  }

  @Test
  @DisplayName("30 breaths a minute for 14 s, then 10, are no minute over 15")
  void aShortBurstIsNoMinute() throws BadInputException {
    squeezes(1, 15, 2);
    squeezes(21, 200, 6);
    assertThat(broken("\"rule\":\"rate\",\"highPerMinute\":15", 201)).isEmpty();
  }

  @ParameterizedTest(name = "{0} s without a breath: {1}")
  @CsvSource({"102, 92", "30.5, 92", "30, ", "25, "})
  @DisplayName("102 s without a breath")
  void interruption(double length, Double at) throws BadInputException {
    squeezes(1, 61, 6);
    squeezes(62 + length, 200, 6);
    assertThat(broken("\"rule\":\"interruption\",\"seconds\":30", 201))
        .isEqualTo(at == null ? List.of() : List.of(at));
  }

  @Test
  @DisplayName("A check of 20 s is left out of an interruption for the 10 s that it may last")
  void aCheckIsExcusedForSoLongAsItMayLast() throws BadInputException {
    squeezes(1, 61, 6);
    told(65, EventType.TASK_START, "pulse");
    told(85, EventType.TASK_DONE, "pulse");
    assertThat(broken("\"rule\":\"interruption\",\"seconds\":30", 201)).containsExactly(102.0);
  }

  @Test
  @DisplayName("Compressions after the pulse is lost are no interruption; with a pulse they are")
  void compressionsAreCareWithoutAPulse() throws BadInputException {
    squeezes(1, 61, 6);
    told(63, EventType.ORDER, "lose");
    for (double at = 64; at < 160; at += 0.5) {
      at(at, new Fact.Plain(EventType.COMPRESSION));
    }
    assertThat(broken("\"rule\":\"interruption\",\"seconds\":30", 161)).isEmpty();
    events.removeIf(e -> e.what() == EventType.ORDER || e.what() == EventType.STATION_END);
    assertThat(broken("\"rule\":\"interruption\",\"seconds\":30", 161)).containsExactly(92.0);
  }

  @ParameterizedTest(name = "a squeeze {0} s after the vomit: {1}")
  @CsvSource({"2, ", "3, 63", "8, 68"})
  @DisplayName("Squeezing while vomit fills the mouth")
  void breathWhile(double after, Double at) throws BadInputException {
    squeezes(1, 55, 6);
    told(60, EventType.ORDER, "spill");
    squeeze(60 + after);
    assertThat(broken("\"rule\":\"breath-while\",\"finding\":\"vomit\"", 80))
        .isEqualTo(at == null ? List.of() : List.of(at));
  }

  @Test
  @DisplayName("A squeeze into vomit that was a slip of the key is none")
  void aRetractedSqueezeIsNone() throws BadInputException {
    squeezes(1, 55, 6);
    told(60, EventType.ORDER, "spill");
    squeeze(66);
    at(68, new Fact.Correction(EventType.RETRACT, 1));
    assertThat(broken("\"rule\":\"breath-while\",\"finding\":\"vomit\"", 80)).isEmpty();
  }

  @ParameterizedTest(name = "first breath {0} s after the check: {1}")
  @CsvSource({"30, ", "30.1, 50", "45, 50"})
  @DisplayName("No breath within 30 s of the end of a check")
  void noBreath(double after, Double at) throws BadInputException {
    told(12, EventType.TASK_START, "pulse");
    told(20, EventType.TASK_DONE, "pulse");
    squeeze(20 + after);
    assertThat(
            broken("\"rule\":\"no-breath\",\"limit\":{\"seconds\":30,\"fromTask\":\"pulse\"}", 100))
        .isEqualTo(at == null ? List.of() : List.of(at));
  }

  @ParameterizedTest(name = "suction done: {0}; the limit runs out at {1}")
  @CsvSource({"true, 68", "false, 50"})
  @DisplayName("The limit runs from the end of suction, from the check where suction is never done")
  void elseFromTheCheck(boolean suction, double at) throws BadInputException {
    told(12, EventType.TASK_START, "pulse");
    told(20, EventType.TASK_DONE, "pulse");
    if (suction) {
      told(25, EventType.TASK_START, "suction");
      told(38, EventType.TASK_DONE, "suction");
    }
    squeeze(90);
    String limit = "\"limit\":{\"seconds\":30,\"fromTask\":\"suction\",\"elseFromTask\":\"pulse\"}";
    assertThat(broken("\"rule\":\"no-breath\"," + limit, 100)).containsExactly(at);
  }

  @ParameterizedTest(name = "first compression {0} s after the words: {1}")
  @CsvSource({"9, ", "10, ", "11, 70", "112, 70"})
  @DisplayName("No compression within 10 s of the examiner's words")
  void noCompression(double after, Double at) throws BadInputException {
    squeezes(1, 55, 6);
    told(60, EventType.ORDER, "lose");
    at(60 + after, new Fact.Plain(EventType.COMPRESSION));
    String limit = "\"limit\":{\"seconds\":10,\"fromStep\":\"lost\"}";
    assertThat(broken("\"rule\":\"no-compression\"," + limit, 200))
        .isEqualTo(at == null ? List.of() : List.of(at));
  }

  @ParameterizedTest(name = "place checked after {0} breaths: {1}")
  @CsvSource({"5, ", "6, 36"})
  @DisplayName("First breaths after the tube are right; going on unchecked by the sixth is not")
  void breathsWithout(int breaths, Double at) throws BadInputException {
    squeezes(6, 6 * breaths, 6);
    told(6 * breaths + 3, EventType.TASK_DONE, "place");
    squeezes(6 * breaths + 6, 100, 6);
    assertThat(broken("\"rule\":\"breaths-without\",\"task\":\"place\",\"breaths\":6", 101))
        .isEqualTo(at == null ? List.of() : List.of(at));
  }

  @ParameterizedTest(name = "{0} of {1} s: {2}")
  @CsvSource({
    "too-short, 4, true",
    "too-short, 5, false",
    "too-long, 15, false",
    "too-long, 16, true"
  })
  @DisplayName("A check under 5 or over 15 s")
  void aCheckOfALengthOfItsOwn(String rule, double length, boolean broken)
      throws BadInputException {
    told(10, EventType.TASK_START, "pulse");
    told(10 + length, EventType.TASK_DONE, "pulse");
    int bound = rule.equals("too-short") ? 5 : 15;
    String fields = "\"rule\":\"%s\",\"task\":\"pulse\",\"seconds\":%d".formatted(rule, bound);
    assertThat(broken(fields, 60)).hasSize(broken ? 1 : 0);
  }

  @Test
  @DisplayName("A check that was never made")
  void aCheckNeverMade() throws BadInputException {
    squeezes(1, 55, 6);
    assertThat(broken("\"rule\":\"not-done\",\"task\":\"pulse\"", 60)).containsExactly(60.0);
  }

  @Test
  @DisplayName("Breathing marked by hand without a squeeze is not judged, and not passed")
  void nothingIsKnownWithoutSqueezes() throws BadInputException {
    told(1, EventType.TASK_START, "breathe");
    assertThat(broken("\"rule\":\"interruption\",\"seconds\":30", 100)).isEmpty();
    assertThat(broken("\"rule\":\"no-breath\",\"limit\":{\"seconds\":30}", 100)).isEmpty();
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "'rule':'rate'|a rate needs lowPerMinute",
        "'rule':'rate','lowPerMinute':20,'highPerMinute':10|lowPerMinute must be less",
        "'rule':'rate','highPerMinute':900|highPerMinute",
        "'rule':'interruption'|an interruption needs seconds",
        "'rule':'no-breath'|needs a limit",
        "'rule':'no-breath','limit':{'seconds':30,'fromStep':'gone'}|a step of this file",
        "'rule':'no-breath','limit':{'seconds':30,'fromTask':'pulse','fromOrder':'lose'}|at most"
            + " one",
        "'rule':'no-breath','limit':{'seconds':30,'elseFromTask':'pulse'}|only beside fromTask",
        "'rule':'breaths-without','task':'place'|needs breaths",
        "'rule':'breath-while','finding':'gone'|a finding of this file",
        "'rule':'rate','highPerMinute':15,'while':['gone']|task or finding of this file",
      })
  void aRuleThatCannotBeReadIsAFault(String rule, String fault) {
    StationFile file = StationReader.checkText("s.json", text(rule.replace('\'', '"')));
    assertThat(file.faults()).anyMatch(f -> f.getMessage().contains(fault));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "'rule':'interruption','seconds':600|r: it can never be",
        "'rule':'rate','highPerMinute':15,'seconds':600|r: it can never be",
        "'rule':'no-breath','limit':{'seconds':30,'fromCleared':'vomit'}|r: it can never be",
        "'rule':'interruption','seconds':30,'lowPerMinute':5|does not know",
      })
  void whatCanNeverBeBrokenIsDoubted(String rule, String doubt) {
    StationFile file = StationReader.checkText("s.json", text(rule.replace('\'', '"')));
    assertThat(file.faults()).isEmpty();
    assertThat(file.doubts()).anyMatch(d -> d.contains(doubt));
  }

  @Test
  void aRuleWithoutASourceIsDoubted() {
    String text =
        text("\"rule\":\"interruption\",\"seconds\":30")
            .replace("\"source\":\"Our own choice\",", "");
    assertThat(StationReader.checkText("s.json", text).doubts())
        .containsExactly("rule r: it names no source");
  }

  @Test
  void rulesNeedVersionTwo() {
    String text =
        text("\"rule\":\"interruption\",\"seconds\":30").replace("\"version\":2", "\"version\":1");
    assertThat(StationReader.checkText("s.json", text).faults())
        .anyMatch(f -> f.getMessage().contains("rules need version 2"));
  }

  @Test
  void everyKindAboutBreathsIsTriedHere() {
    assertThat(Arrays.stream(StationRule.Kind.values()).filter(StationRule.Kind::readsBreaths))
        .hasSize(6);
  }
}
