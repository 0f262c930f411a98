package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.Practices.SECOND;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.coach.Coach;
import squeezewell.coach.Command;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.Segment;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;

/**
 * That the screens say what the voice says where an edition has no rate for a patient whose heart
 * beats. Which patients those are is typed from docs/sources.md; that there are no others is tested
 * with the courses. A newborn with a heart over 60 is breathed for until it is over 100 and the
 * newborn breathes (Ghai, Essential Pediatrics, as quoted).
 */
class NoRateWordsTest {
  private static Coach arrest(String edition, PatientGroup patient) {
    return new Coach(
        Practices.plan(
            Practices.protocol(edition), patient, Situation.ARREST_NO_ADVANCED_AIRWAY, 0, 10),
        Journal.none(),
        List.of());
  }

  /** As recorded: the line of the file that is played for such a change. */
  private static String spoken(String file) throws IOException {
    return Files.readAllLines(Path.of("../audio/src/main/voice/phrases.txt")).stream()
        .filter(line -> line.startsWith(file + "|"))
        .map(line -> line.substring(file.length() + 1))
        .collect(Collectors.joining());
  }

  /** Words alone, so that a stop and a comma do not matter. */
  private static String bare(String words) {
    return words.toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", " ").trim();
  }

  private static List<CueKind> toldSince(Coach coach, long nanos) {
    CueSchedule schedule = coach.state().schedule();
    return schedule.between(nanos, nanos + SECOND).stream()
        .map(Cue::kind)
        .collect(Collectors.toList());
  }

  @ParameterizedTest
  @CsvSource({
    "erc-2025,NEWBORN,HEART_RATE_UP",
    "erc-2025,INFANT,HEART_RATE_UP",
    "erc-2025,INFANT,PULSE_BACK",
    "erc-2025,CHILD,HEART_RATE_UP",
    "erc-2025,CHILD,PULSE_BACK",
  })
  void theScreenAndTheVoiceSayTheSame(String edition, PatientGroup patient, PatientChange found)
      throws IOException {
    Coach coach = arrest(edition, patient);
    assertThat(FindingsView.of(coach.state()).choices())
        .filteredOn(c -> c.finding() == found)
        .extracting(FindingsView.Offer::leads)
        .allMatch(leads -> bare(leads).equals("breaths only no rate here"));
    coach.find(found, 30 * SECOND);
    assertThat(toldSince(coach, 30 * SECOND)).contains(CueKind.NO_RATE);
    LiveView view = LiveView.of(coach.state(), 31 * SECOND);
    String said = spoken("breaths-only");
    assertThat(bare(view.word())).isEqualTo(bare(said));
    assertThat(bare(FindingsView.told(coach.state(), 31 * SECOND).orElseThrow().text()))
        .contains("stop compressing go on with breaths")
        .contains("breaths only")
        .contains("no rate here")
        .doesNotContain("watch");
    assertThat(LiveView.goOn(Segment.Kind.SUCTION, coach.state().schedule().inForceAt(31 * SECOND)))
        .isEqualTo("Squeeze to go on");
  }

  /** Whatever else is found then, the patient still needs breaths, unless it breathes well. */
  @ParameterizedTest
  @CsvSource({"erc-2025,NEWBORN", "erc-2025,INFANT", "erc-2025,CHILD"})
  void whatIsFoundLaterChangesNothingUnlessThePatientBreathesWell(
      String edition, PatientGroup patient) {
    List<String> shown = new ArrayList<>();
    for (PatientChange later : PatientChange.values()) {
      Coach coach = arrest(edition, patient);
      coach.find(PatientChange.HEART_RATE_UP, 30 * SECOND);
      if (!coach.state().course().state().possible().contains(later)) {
        continue;
      }
      coach.find(later, 40 * SECOND);
      if (later == PatientChange.VOMIT) {
        coach.command(Command.SUCTION_END, 45 * SECOND);
      }
      LiveView view = LiveView.of(coach.state(), 46 * SECOND);
      String words = view.word() + ", " + view.countNote();
      if (later == PatientChange.BREATHING_BACK) {
        assertThat(words).isEqualTo("Watch, breathing well");
        coach.find(PatientChange.BREATHING_STOPPED, 50 * SECOND);
        assertThat(LiveView.of(coach.state(), 51 * SECOND).word()).isEqualTo("Breaths only");
      } else if (later == PatientChange.PULSE_LOST || later == PatientChange.HEART_RATE_LOW) {
        assertThat(view.word()).isIn("Compress", "Squeeze", "Release", "Ready");
      } else {
        assertThat(words).as("%s", later).isEqualTo("Breaths only, no rate here");
        shown.add(later.word());
      }
    }
    assertThat(shown).contains("vomit", "no-chest-rise", "advanced-airway");
  }

  @Test
  void aPatientWhoBreathesWellIsWatchedOnTheScreenAndByTheVoice() throws IOException {
    Coach coach = arrest("erc-2025", PatientGroup.NEWBORN);
    coach.find(PatientChange.HEART_RATE_UP, 30 * SECOND);
    coach.find(PatientChange.BREATHING_BACK, 60 * SECOND);
    assertThat(toldSince(coach, 60 * SECOND))
        .contains(CueKind.WATCH)
        .doesNotContain(CueKind.NO_RATE);
    assertThat(spoken("watch-breathing")).isEqualTo("watch breathing");
    assertThat(LiveView.of(coach.state(), 61 * SECOND).word()).isEqualTo("Watch");
  }
}
