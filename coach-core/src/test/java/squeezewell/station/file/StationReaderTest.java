package squeezewell.station.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.Tries;
import squeezewell.input.BadInputException;
import squeezewell.station.run.Candidate;
import squeezewell.station.run.Facts;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationRun;
import squeezewell.station.run.StationSetup;

/** A file with a fault gives no station, and all of its faults are told. */
class StationReaderTest {
  private static final int MUTATIONS = Tries.orLong(5_000, 20_000);
  private static final Pattern TOKEN = Pattern.compile("\"[^\"]*\"|-?[0-9.]+|[{}\\[\\]:,]");
  private static final List<String> SPARE =
      List.of(
          "0",
          "-1",
          "1e308",
          "0.5",
          "3",
          "60",
          "4000",
          "null",
          "true",
          "\"\"",
          "\"pulse\"",
          "\"open\"",
          "\"adult\"",
          "\"newborn\"",
          "\"timed\"",
          "\"vomit\"",
          "\"only\"",
          "\"after\"",
          "[",
          "]",
          "{",
          "}",
          ",",
          ":",
          "[]",
          "{}",
          "\"not-done\"",
          "\"fluid\"");

  /** A small station in which each kind of thing stands once. */
  private static final String SMALL =
      """
      {"format":"squeezewell-station","version":1,"id":"small","title":"Small","setting":"A room.",
       "patient":{"group":"adult","words":"Grown-up"},"situation":"pulse-no-breathing",
       "findings":[{"id":"wet","words":"Wet"},{"id":"hot","words":"Hot","atStart":true}],
       "branches":[{"id":"way","words":"Way","options":[
         {"id":"left","words":"Left"},{"id":"right","words":"Right","findings":["wet"]}]}],
       "orders":[{"id":"look","words":"Look"}],
       "tasks":[
         {"id":"ready","words":"Ready","doneWhen":"Said","phase":"preparation"},
         {"id":"open","words":"Open","doneWhen":"Open"},
         {"id":"dry","words":"Dry","doneWhen":"Dry","kind":"timed","mostSeconds":15,
          "after":["open"],"ifFinding":"wet","limit":{"seconds":20,"fromFinding":"wet"}}],
       "script":[
         {"id":"dried","when":{"task":"dry"},"clears":["wet"]},
         {"id":"cooled","when":{"order":"look"},"while":["hot"],"clears":["hot"],"says":"Cool."}],
       "criticalFaults":[
         {"id":"slow","words":"Slow","rule":"too-long","task":"dry"},
         {"id":"wet-open","words":"Opened while wet","rule":"done-while","task":"open",
          "finding":"wet"}]}
      """;

  private static final List<String> LISTS =
      List.of("findings", "tasks", "orders", "branches", "script", "criticalFaults", "rules");

  @Test
  void theSmallStationIsGood() {
    StationFile file = StationReader.checkText("small.json", SMALL);
    assertThat(file.faults()).isEmpty();
    assertThat(file.doubts()).isEmpty();
  }

  @Test
  void allFaultsAreTold() {
    String text =
        SMALL
            .replace("\"A room.\"", "7")
            .replace("\"kind\":\"timed\"", "\"kind\":\"slow\"")
            .replace("{\"task\":\"dry\"}", "{\"task\":\"wipe\"}");
    StationFile file = StationReader.checkText("s.json", text);
    assertThat(file.station()).isEmpty();
    assertThat(file.faults())
        .extracting(Throwable::getMessage)
        .anyMatch(m -> m.startsWith("s.json: setting is 7"))
        .anyMatch(m -> m.startsWith("s.json: tasks[2].kind is \"slow\""))
        .anyMatch(m -> m.startsWith("s.json: script[0].when.task is wipe"));
    assertThatThrownBy(() -> StationReader.readText("s.json", text))
        .isInstanceOf(BadInputException.class);
  }

  @Test
  void anOrderInACircleIsAFault() {
    String text =
        SMALL.replace("\"doneWhen\":\"Open\"", "\"doneWhen\":\"Open\",\"after\":[\"dry\"]");
    assertThat(StationReader.checkText("s.json", text).faults())
        .extracting(Throwable::getMessage)
        .containsExactly(
            "s.json: tasks[1].after: a task comes after itself: open after dry after open;"
                + " allowed: an order without a circle");
  }

  /** What an instructor reads who has misspelt something: where it is, and what was meant. */
  @Test
  void aMisspeltWordIsToldWithItsPlaceAndWhatWasProbablyMeant() {
    String text =
        SMALL
            .replace("{\"task\":\"dry\"}", "{\"task\":\"drry\"}")
            .replace("\"clears\":[\"hot\"]", "\"clears\":[\"hott\"]");
    StationFile file = StationReader.checkText("s.json", text);
    assertThat(file.faults())
        .extracting(Throwable::getMessage)
        .hasSize(2)
        .anyMatch(
            m ->
                m.startsWith("s.json: script[0].when.task is drry; allowed: ")
                    && m.endsWith("of this file; did you mean dry?"))
        .anyMatch(
            m ->
                m.startsWith("s.json: script[1].clears[0] is \"hott\"; allowed: ")
                    && m.endsWith("; did you mean hot?"));
    assertThat(file.nameOf("script[0].when.task")).contains("step 1 of the list, dried");
    assertThat(file.nameOf("script[1].clears[0]")).contains("step 2 of the list, cooled: Cool.");
    assertThat(file.nameOf("tasks[2].kind")).contains("task 3 of the list, dry: Dry");
    assertThat(file.nameOf("title")).isEmpty();
    assertThat(file.nameOf("tasks[99].kind")).isEmpty();
  }

  /** A fault that only follows from another one would send the reader to the wrong place. */
  @Test
  void aFaultOfATaskIsNotToldAgainWhereTheTaskIsNamed() {
    StationFile file =
        StationReader.checkText(
            "s.json", SMALL.replace("\"mostSeconds\":15", "\"mostSeconds\":-1"));
    assertThat(file.faults())
        .singleElement()
        .satisfies(
            f -> assertThat(f.getMessage()).startsWith("s.json: tasks[2].mostSeconds is -1"));
  }

  /**
   * One slip, one fault: each identifier of each built-in station is in turn given to the entry
   * before it, as happens to whoever copies an entry. All that named the entry by then leads
   * nowhere, which is the same slip.
   */
  @Test
  void aRepeatedIdentifierIsOneFaultWhateverNamesIt() {
    int tried = 0;
    for (Station station : StationLibrary.stations()) {
      for (String list : LISTS) {
        JsonObject whole = JsonParser.parseString(station.definition()).getAsJsonObject();
        JsonArray entries = whole.has(list) ? whole.getAsJsonArray(list) : new JsonArray();
        for (int i = 0; i < entries.size() - 1; i++) {
          JsonObject changed = whole.deepCopy();
          JsonArray copies = changed.getAsJsonArray(list);
          copies.get(i + 1).getAsJsonObject().add("id", copies.get(i).getAsJsonObject().get("id"));
          tried++;
          assertThat(StationReader.checkText("s.json", changed.toString()).faults())
              .extracting(Throwable::getMessage)
              .singleElement()
              .asString()
              .startsWith("s.json: " + list + "[" + (i + 1) + "].id is ")
              .endsWith("allowed: an identifier that nothing else of its kind has");
        }
      }
    }
    assertThat(tried).isGreaterThan(250);
  }

  /**
   * The same for ways, and for an identifier that can't be read instead of one that is repeated.
   */
  @Test
  void anIdentifierThatCanNotBeReadIsOneFaultWhateverNamesIt() {
    for (Station station : StationLibrary.stations()) {
      for (String list : LISTS) {
        JsonObject whole = JsonParser.parseString(station.definition()).getAsJsonObject();
        JsonArray entries = whole.has(list) ? whole.getAsJsonArray(list) : new JsonArray();
        for (int i = 0; i < entries.size(); i++) {
          JsonObject changed = whole.deepCopy();
          changed.getAsJsonArray(list).get(i).getAsJsonObject().addProperty("id", "Not So");
          assertThat(StationReader.checkText("s.json", changed.toString()).faults())
              .singleElement()
              .extracting(Throwable::getMessage)
              .asString()
              .startsWith("s.json: " + list + "[" + i + "].id is \"Not So\"");
        }
      }
      JsonObject ways = JsonParser.parseString(station.definition()).getAsJsonObject();
      if (ways.has("branches")) {
        JsonArray options =
            ways.getAsJsonArray("branches").get(0).getAsJsonObject().getAsJsonArray("options");
        options.get(1).getAsJsonObject().add("id", options.get(0).getAsJsonObject().get("id"));
        assertThat(StationReader.checkText("s.json", ways.toString()).faults())
            .singleElement()
            .extracting(Throwable::getMessage)
            .asString()
            .startsWith("s.json: branches[0].options[1].id is ");
      }
    }
  }

  /** Each row is one slip, planted in the small station, and what alone must be told of it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"task\":\"dry\"},\"clears\":[\"wet\"]|{\"task\":\"dry\"},\"clears\":[\"wett\"]"
            + "|script[0].clears[0] is \"wett\"",
        "\"rule\":\"too-long\",\"task\":\"dry\"|\"rule\":\"too-long\",\"task\":\"open\""
            + "|criticalFaults[0].task is open; allowed: a timed or paced task",
        "\"rule\":\"done-while\",\"task\":\"open\"|\"rule\":\"done-while\",\"task\":7"
            + "|criticalFaults[1].task is 7",
        "\"rule\":\"too-long\",\"task\":\"dry\"|\"rule\":\"before\",\"task\":7,\"other\":\"dry\""
            + "|criticalFaults[0].task is 7",
        "\"mostSeconds\":15,|\"leastSeconds\":9,|criticalFaults[0].task is dry; allowed: a task"
            + " with mostSeconds"
      })
  void oneSlipIsToldOnce(String from, String to, String fault) {
    assertThat(SMALL).contains(from);
    assertThat(StationReader.checkText("s.json", SMALL.replace(from, to)).faults())
        .singleElement()
        .extracting(Throwable::getMessage)
        .asString()
        .startsWith("s.json: " + fault);
  }

  @Test
  void aNewerVersionIsRefused() {
    assertThatThrownBy(
            () -> StationReader.readText("s.json", SMALL.replace("\"version\":1", "\"version\":3")))
        .hasMessageContaining("made by a newer version");
  }

  /** Each row plants one thing that can never happen, and names the doubt that must follow. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"situation\"|\"preparationSeconds\":0,\"situation\"|phase preparation: it is never"
            + " reached",
        "\"phase\":\"preparation\"|\"phase\":\"exercise\"|phase preparation: nothing happens in it",
        "\"findings\":[\"wet\"]|\"findings\":[]|task dry: it is never needed",
        "\"findings\":[\"wet\"]|\"findings\":[]|finding wet: nothing makes it come",
        "\"findings\":[\"wet\"]|\"findings\":[]|branch way: all its ways are alike",
        "\"clears\":[\"wet\"]|\"says\":\"Dry.\"|finding wet: nothing can make it go",
        "\"atStart\":true|\"atStart\":true,\"lasting\":true|finding hot: it is called lasting",
        "\"words\":\"Left\"|\"words\":\"Left\",\"weight\":0|branch way: chance can never take the"
            + " way left",
        "\"when\":{\"order\":\"look\"}|\"when\":{\"seconds\":10}|order look: nothing follows from"
            + " it",
        "\"when\":{\"order\":\"look\"}|\"when\":{\"seconds\":400}|step cooled: it can never be"
            + " taken, since the exercise is over by then",
        "\"when\":{\"order\":\"look\"},|\"when\":{\"order\":\"look\"},\"unless\":[\"hot\"],|step"
            + " cooled: it can never be taken",
        "\"findings\":[\"wet\"]|\"findings\":[]|critical fault wet-open: it can never be committed",
        "\"doneWhen\":\"Said\"|\"doneWhen\":\"Said\",\"after\":[\"open\"]|task ready: it is never"
            + " in order",
        "\"seconds\":20|\"seconds\":900|task dry: its time is not up before the exercise ends",
        "\"fromFinding\":\"wet\"|\"fromTask\":\"dry\"|task dry: its time begins with dry",
        "\"mostSeconds\":15|\"mostSeconds\":900,\"leastSeconds\":800|task dry: it can't be long"
            + " enough",
        "\"ifFinding\"|\"iffFinding\":\"wet\",\"ifFinding\"|tasks[2].iffFinding: this version does"
            + " not know",
      })
  void whatCanNeverHappenIsDoubted(String from, String to, String doubt) {
    assertThat(SMALL).contains(from);
    StationFile file = StationReader.checkText("s.json", SMALL.replace(from, to));
    assertThat(file.faults()).isEmpty();
    assertThat(file.doubts()).anyMatch(d -> d.startsWith(doubt));
  }

  @Test
  void aMutatedFileIsRefusedOrCanBeRunToItsEnd() {
    Random random = new Random(20_260_131);
    List<String> texts =
        List.of(SMALL, StationLibrary.text("adult-secretions"), StationLibrary.text("adult-gag"));
    int refused = 0;
    int read = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      String text = mutate(texts.get(i % texts.size()), random);
      try {
        Station station = StationReader.readText("mutated.json", text);
        runToItsEnd(station, i);
        read++;
      } catch (BadInputException e) {
        assertThat(e.getMessage()).startsWith("mutated.json").doesNotContainPattern("\\p{Cntrl}");
        refused++;
      } catch (RuntimeException | AssertionError e) {
        throw new AssertionError("mutation " + i + ":\n" + text, e);
      }
    }
    // Both must happen, or the mutations are too harsh or too mild to tell anything.
    assertThat(refused).isGreaterThan(MUTATIONS / 4);
    assertThat(read).isGreaterThan(MUTATIONS / 50);
  }

  private static void runToItsEnd(Station station, long seed) throws BadInputException {
    Facts facts = new Facts();
    StationRun run =
        new StationRun(
            station, StationSetup.of(station, StationMode.ALONE, List.of(), seed), facts);
    run.advance(station.preparationNanos());
    long now = station.preparationNanos();
    for (StationTask task : station.tasks()) {
      now += Candidate.SECOND;
      run.done(task.id(), now);
    }
    run.advance(now + station.exerciseNanos());
    assertThat(run.state().phase()).isEqualTo(StationPhase.ENDED);
    assertThat(StationResult.of(station, facts.events)).isEqualTo(new StationResult(run.state()));
  }

  private static String mutate(String text, Random random) {
    String out = text;
    int times = 1 + random.nextInt(2);
    for (int i = 0; i < times; i++) {
      Matcher matcher = TOKEN.matcher(out);
      int count = 0;
      while (matcher.find()) {
        count++;
      }
      int pick = random.nextInt(Math.max(1, count));
      matcher.reset();
      for (int j = 0; j <= pick; j++) {
        if (!matcher.find()) {
          return out;
        }
      }
      String with = random.nextInt(4) == 0 ? "" : SPARE.get(random.nextInt(SPARE.size()));
      out = out.substring(0, matcher.start()) + with + out.substring(matcher.end());
    }
    return out;
  }
}
