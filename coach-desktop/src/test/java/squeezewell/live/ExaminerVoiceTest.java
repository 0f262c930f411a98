package squeezewell.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import squeezewell.audio.LineStore;
import squeezewell.audio.PreparedLines;
import squeezewell.audio.SpeechException;
import squeezewell.audio.SpeechMaker;
import squeezewell.audio.SpokenLine;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.file.StationReader;
import squeezewell.station.run.ExaminerLines;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationOutput;
import squeezewell.station.run.StationRun;
import squeezewell.station.run.StationSetup;
import squeezewell.station.run.StationState;

@Timeout(60)
class ExaminerVoiceTest {
  private static final long SECOND = 1_000_000_000L;
  private static final String HUSH = "(hush)";

  /** Words that change the prompts, in the station of the pulse that is lost. */
  private static final String PULSE_LOST = "You feel no pulse.";

  /** What was said, by the length of the line; lines of a built-in station differ in it. */
  private final List<String> said = new ArrayList<>();

  private StationRun run;
  private ExaminerVoice voice;

  @Test
  void whatIsShownIsSaidOnceAndInOrder() throws Exception {
    begin("adult-gag", StationMode.ALONE);
    done("response", 10);
    again(11);
    again(12);
    done("pulse", 20);
    assertThat(said)
        .containsExactly("No answer, no movement.", "There is a pulse. The chest does not move.");
  }

  @Test
  void onlyWordsThatChangeThePromptsMayCutOthers() throws Exception {
    begin("adult-pulse-lost", StationMode.ALONE);
    done("response", 10);
    // Before a minute and more of breaths the second check only finds that it is early.
    run.start("ventilate", 20 * SECOND);
    again(101);
    done("recheck-2", 110);
    assertThat(said).contains("No answer, no movement.", "! " + PULSE_LOST);
  }

  @Test
  void aFindingThatAnInstructorBringsIsSaidToo() throws Exception {
    begin("adult-gag", StationMode.INSTRUCTOR);
    run.inject("gag-shown", 10 * SECOND);
    voice.changed(run.state());
    again(11);
    assertThat(said).containsExactly("Gags when the mouth is touched.");
  }

  @Test
  void withoutAnInstructorFindingsAreLeftToBeFound() throws Exception {
    begin("adult-gag", StationMode.ALONE);
    run.inject("gag-shown", 10 * SECOND);
    voice.changed(run.state());
    assertThat(said).isEmpty();
  }

  @Test
  void whileTheClockStandsAndAfterTheEndNothingIsSaid() throws Exception {
    begin("adult-gag", StationMode.INSTRUCTOR);
    run.stopClock(5 * SECOND);
    voice.changed(run.state());
    again(6);
    assertThat(said).containsExactly(HUSH);
    run.inject("gag-shown", 7 * SECOND);
    voice.changed(run.state());
    run.runClock(9 * SECOND);
    voice.changed(run.state());
    assertThat(said).as("nor later").containsExactly(HUSH);
    run.end(20 * SECOND);
    voice.changed(run.state());
    assertThat(said).containsExactly(HUSH, HUSH);
  }

  @Test
  void aTapThatIsTakenBackUnsaysNothingAndAgainSaysItAgain() throws Exception {
    begin("adult-gag", StationMode.ALONE);
    done("response", 10);
    run.undo("response", 11 * SECOND);
    voice.changed(run.state());
    done("response", 20);
    assertThat(said).containsExactly("No answer, no movement.", "No answer, no movement.");
  }

  @Test
  void wordsOfAnOwnStationAreSynthesised() throws Exception {
    own(
        () ->
            new Speaker(
                text -> {
                  assertThat(text).isEqualTo("The lorry stands still.");
                  return new SpokenLine(new short[7], 16_000);
                }));
    done("response", 10);
    assertThat(said).containsExactly("7");
    assertThat(voice.notice(0)).isEmpty();
  }

  @Test
  void whatCannotBeSpokenIsToldOnceForTenSeconds() throws Exception {
    own(
        () -> {
          throw new IllegalStateException("no synthesiser");
        });
    done("response", 10);
    assertThat(said).isEmpty();
    assertThat(voice.notice(100 * SECOND))
        .isEqualTo("One of the examiner's lines can't be spoken. Read it.");
    assertThat(voice.notice(110 * SECOND)).isNotEmpty();
    assertThat(voice.notice(110 * SECOND + 1)).isEmpty();
    assertThat(voice.notice(999 * SECOND)).isEmpty();
  }

  @Test
  void builtInStationsHaveNothingToTell() throws Exception {
    for (Station station : StationLibrary.stations()) {
      begin(station, StationMode.INSTRUCTOR, Refusing::new);
      assertThat(voice.notice(0)).as(station.id()).isEmpty();
      voice.close();
    }
  }

  private void begin(String id, StationMode mode) throws Exception {
    begin(
        StationLibrary.stations().stream().filter(s -> s.id().equals(id)).findFirst().get(),
        mode,
        Refusing::new);
  }

  private void own(Supplier<SpeechMaker> makers) throws Exception {
    Station gag =
        StationLibrary.stations().stream()
            .filter(s -> s.id().equals("adult-gag"))
            .findFirst()
            .get();
    String text = gag.definition().replace("No answer, no movement.", "The lorry stands still.");
    begin(StationReader.readText("own.json", text), StationMode.ALONE, makers);
  }

  private void begin(Station station, StationMode mode, Supplier<? extends SpeechMaker> makers)
      throws Exception {
    run =
        new StationRun(station, StationSetup.of(station, mode, List.of(), 1), StationOutput.none());
    Map<Integer, String> texts = new HashMap<>();
    ExaminerLines.all(station)
        .forEach(t -> PreparedLines.find(t).ifPresent(l -> texts.put(l.frames(), t)));
    voice =
        new ExaminerVoice(
            station,
            new LineStore(makers),
            new Mouth() {
              @Override
              public void say(SpokenLine line, boolean urgent) {
                String text = texts.getOrDefault(line.frames(), Integer.toString(line.frames()));
                said.add((urgent ? "! " : "") + text);
              }

              @Override
              public void hush() {
                said.add(HUSH);
              }
            });
    wait(voice);
    voice.changed(run.state());
    run.done("protect", SECOND);
    run.begin(2 * SECOND);
    voice.changed(run.state());
    assertThat(said).isEmpty();
  }

  private static void wait(ExaminerVoice voice) throws InterruptedException, ExecutionException {
    voice.prepared().get();
  }

  private void done(String task, long seconds) {
    assertThat(run.done(task, seconds * SECOND)).as(task).isTrue();
    voice.changed(run.state());
  }

  private void again(long seconds) {
    run.advance(seconds * SECOND);
    StationState state = run.state();
    voice.changed(state);
  }

  /** Built-in lines need no synthesiser. */
  private static final class Refusing implements SpeechMaker {
    @Override
    public SpokenLine speak(String text) throws SpeechException {
      throw new SpeechException("asked for " + text);
    }

    @Override
    public void close() {
      // Nothing is held.
    }
  }

  private interface Speech {
    SpokenLine of(String text) throws SpeechException;
  }

  private record Speaker(Speech speech) implements SpeechMaker {
    @Override
    public SpokenLine speak(String text) throws SpeechException {
      return speech.of(text);
    }

    @Override
    public void close() {
      // Nothing is held.
    }
  }
}
