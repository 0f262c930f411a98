package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CareKind;
import squeezewell.cue.Control;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.cue.CueSchedule;
import squeezewell.cue.PatientCourse;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Limit;
import squeezewell.protocol.Limits;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.ProtocolValue;
import squeezewell.protocol.Situation;

class PhraseTest {
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void eachPhraseIsThereAndClean(int rate) {
    for (Phrase phrase : Phrase.values()) {
      float[] words = phrase.samples(rate);
      float peak = 0;
      for (float sample : words) {
        peak = Math.max(peak, Math.abs(sample));
      }
      assertThat(words.length / (double) rate).as(phrase.file()).isBetween(0.2, 2.0);
      assertThat(peak).as(phrase.file()).isBetween(0.3f, 0.9f);
      assertThat(Math.abs(words[0])).as(phrase.file()).isLessThan(0.02f);
      assertThat(Math.abs(words[words.length - 1])).as(phrase.file()).isLessThan(0.02f);
    }
  }

  @Test
  void aSpokenNumberEndsBeforeTheNextCount() {
    for (int number = 1; number <= 10; number++) {
      float[] words = Phrase.number(number).orElseThrow().samples(48_000);
      assertThat(words.length / 48_000.0).isLessThan(0.6);
    }
    assertThat(Phrase.number(0)).isEmpty();
    assertThat(Phrase.number(11)).isEmpty();
  }

  /** Our own choice: hands are busy, and attention goes to the patient. */
  @Test
  void nothingThatIsSaidHasMoreThanThreeWords() throws IOException {
    for (String line : Files.readAllLines(Path.of("src/main/voice/phrases.txt"))) {
      assertThat(line.substring(line.indexOf('|') + 1).split(" ")).hasSizeLessThanOrEqualTo(3);
    }
  }

  /** Of 1 s, the shortest interval that a newborn program prints (60 a minute: nrp-8). */
  @Test
  void aNewbornsLinesEndWellBeforeTheNextBreath() {
    for (Situation situation :
        List.of(Situation.NEWBORN_VENTILATION, Situation.ARREST_NO_ADVANCED_AIRWAY)) {
      Set<Phrase> said = said(Plans.guidance("nrp-8", PatientGroup.NEWBORN, situation));
      assertThat(said).contains(Phrase.HEART_RATE, Phrase.FINISHED);
      for (Phrase phrase : said) {
        double seconds = phrase.samples(48_000).length / 48_000.0;
        assertThat(seconds).as(phrase.file()).isLessThan(0.8);
      }
    }
  }

  @Test
  void aTimeIsNamedOnlyIfTheLimitsHaveIt() {
    Guidance usual = Plans.guidance("aha-2020", PatientGroup.ADULT, Situation.PULSE_NO_BREATHING);
    Limits limits = usual.limits();
    Limit eight = new Limit(8 * Plans.SECOND, limits.suctionNotice().source());
    Map<ProtocolValue, Limit> eights = new EnumMap<>(limits.all());
    eights.put(ProtocolValue.SUCTION_NOTICE, eight);
    Guidance other =
        new Guidance(
            usual.patient(),
            usual.situation(),
            usual.rescuers(),
            usual.rhythm(),
            new Limits(eights));
    assertThat(said(usual)).contains(Phrase.FIVE_SECONDS_LEFT).doesNotContain(Phrase.STOP_SOON);
    assertThat(said(other)).contains(Phrase.STOP_SOON).doesNotContain(Phrase.FIVE_SECONDS_LEFT);
  }

  /**
   * What is said before a check, when it is due and when it is overdue, at the limit of a check and
   * again, and at the limit of suction. Checks: the rhythm while the chest is compressed, with a
   * change of compressor where there are two (American Heart Association, basic life support: about
   * every two minutes or five cycles); a newborn's heart rate (newborn programme, 8th edition), of
   * which every 60 s is no time for a change; else the pulse (AHA, basic life support texts). After
   * a check or suction compressions come first where there are any (the same), and whoever breathes
   * well is watched (AHA, opioid algorithm). With two rescuers, or an advanced airway, compressions
   * go on through suction, so the breaths are what waited: common practice, as docs/sources.md
   * says.
   */
  @ParameterizedTest
  @CsvSource({
    "aha-2020,ADULT,PULSE_NO_BREATHING,2,no,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "squeeze now|squeeze now|stop. squeeze",
    "aha-2020,CHILD,PULSE_NO_BREATHING,2,no,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "squeeze now|squeeze now|stop. squeeze",
    "aha-2020,INFANT,PULSE_NO_BREATHING,1,no,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "squeeze now|squeeze now|stop. squeeze",
    "aha-2020,ADULT,PULSE_SLOW_BREATHING,2,no,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "squeeze now|squeeze now|stop. squeeze",
    "aha-2020,ADULT,ARREST_NO_ADVANCED_AIRWAY,2,no,"
        + "switch compressors soon|rhythm check. switch|switch compressors|"
        + "compress now|compress now|stop. squeeze",
    "aha-2020,ADULT,ARREST_NO_ADVANCED_AIRWAY,1,no,"
        + "rhythm check soon|check the rhythm|rhythm check overdue|"
        + "compress now|compress now|stop. compress",
    "aha-2020,CHILD,ARREST_NO_ADVANCED_AIRWAY,2,no,"
        + "switch compressors soon|rhythm check. switch|switch compressors|"
        + "compress now|compress now|stop. squeeze",
    "aha-2020,CHILD,ARREST_NO_ADVANCED_AIRWAY,1,no,"
        + "rhythm check soon|check the rhythm|rhythm check overdue|"
        + "compress now|compress now|stop. compress",
    "aha-2020,INFANT,ARREST_ADVANCED_AIRWAY,2,no,"
        + "switch compressors soon|rhythm check. switch|switch compressors|"
        + "compress now|compress now|stop. squeeze",
    "aha-2020,ADULT,ARREST_ADVANCED_AIRWAY,1,no,"
        + "rhythm check soon|check the rhythm|rhythm check overdue|"
        + "compress now|compress now|stop. squeeze",
    "nrp-8,NEWBORN,NEWBORN_VENTILATION,2,no,"
        + "check soon|heart rate|heart rate|"
        + "squeeze now|squeeze now|squeeze now",
    "nrp-8,NEWBORN,ARREST_NO_ADVANCED_AIRWAY,2,no,"
        + "check soon|heart rate|heart rate|"
        + "compress now|compress now|squeeze now",
    "aha-2025,NEWBORN,ARREST_NO_ADVANCED_AIRWAY,2,no rate,"
        + "check soon|heart rate|heart rate|"
        + "squeeze now|squeeze now|squeeze now",
    "erc-2025,CHILD,ARREST_NO_ADVANCED_AIRWAY,2,no rate,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "squeeze now|squeeze now|stop. squeeze",
    "erc-2025,INFANT,ARREST_NO_ADVANCED_AIRWAY,1,no rate,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "squeeze now|squeeze now|stop. squeeze",
    "erc-2025,NEWBORN,ARREST_NO_ADVANCED_AIRWAY,1,no rate,"
        + "check soon|heart rate|heart rate|"
        + "squeeze now|squeeze now|squeeze now",
    "aha-2020,ADULT,PULSE_NO_BREATHING,2,yes,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "watch breathing|watch breathing|stop suction",
    "aha-2020,CHILD,ARREST_NO_ADVANCED_AIRWAY,2,yes,"
        + "pulse check soon|check the pulse|pulse check overdue|"
        + "watch breathing|watch breathing|stop suction",
    "nrp-8,NEWBORN,NEWBORN_VENTILATION,2,yes,"
        + "check soon|heart rate|heart rate|"
        + "watch breathing|watch breathing|watch breathing",
  })
  void theWordsFitThePatient(
      String edition,
      PatientGroup patient,
      Situation situation,
      int rescuers,
      String unprompted,
      String words)
      throws IOException {
    Protocol protocol =
        GuidelineLibrary.editions().stream().filter(p -> p.id().equals(edition)).findFirst().get();
    Guidance guidance = protocol.find(patient, situation, rescuers).orElseThrow();
    PracticePlan plan = PracticePlan.of(protocol, guidance, rescuers, 0, 600 * Plans.SECOND, 0);
    List<Control> before =
        switch (unprompted) {
          case "yes" -> List.of(Control.watch(5 * Plans.SECOND, guidance));
          case "no rate" -> List.of(Control.noRate(5 * Plans.SECOND, guidance));
          default -> List.of();
        };
    boolean compressing = PatientCourse.of(plan).compressesDuringSuction() && before.isEmpty();
    List<Control> suction = new ArrayList<>(before);
    suction.add(
        new Control(
            8 * Plans.SECOND,
            compressing ? Control.Kind.SUCTION_COMPRESSING : Control.Kind.SUCTION));
    ActiveGuidance usual = CueSchedule.of(plan, before).inForceAt(10 * Plans.SECOND);
    ActiveGuidance suctioned = CueSchedule.of(plan, suction).inForceAt(10 * Plans.SECOND);
    List<String> said =
        List.of(
            words(CueKind.PULSE_CHECK_SOON, 1, usual),
            words(CueKind.PULSE_CHECK_DUE, 1, usual),
            words(CueKind.PULSE_CHECK_DUE, 2, usual),
            words(CueKind.PULSE_CHECK_LIMIT, 1, usual),
            words(CueKind.PULSE_CHECK_LIMIT, 2, usual),
            words(CueKind.SUCTION_LIMIT, 1, suctioned));
    assertThat(String.join("|", said)).isEqualTo(words);
  }

  /** What is told when it comes into force, beside what the screens show (tested there). */
  @Test
  void whoNeedsBreathsAtNoKnownRateIsNotWatched() throws IOException {
    Guidance arrest =
        Plans.guidance("aha-2025", PatientGroup.NEWBORN, Situation.ARREST_NO_ADVANCED_AIRWAY);
    PracticePlan plan = new PracticePlan(arrest, 0, 600 * Plans.SECOND, 0);
    CueSchedule noRate = CueSchedule.of(plan, List.of(Control.noRate(30 * Plans.SECOND, arrest)));
    CueSchedule watched = CueSchedule.of(plan, List.of(Control.watch(30 * Plans.SECOND, arrest)));
    assertThat(wordsAt(noRate, 30 * Plans.SECOND)).isEqualTo("breaths only");
    assertThat(wordsAt(watched, 30 * Plans.SECOND)).isEqualTo("watch breathing");
  }

  /** What is said of the cues at an instant. */
  private static String wordsAt(CueSchedule schedule, long nanos) throws IOException {
    List<String> said = new ArrayList<>();
    for (Cue cue : schedule.between(nanos, nanos + 1)) {
      if (Phrase.reminder(cue, schedule.inForceAt(nanos)).isPresent()) {
        said.add(words(cue.kind(), cue.count(), schedule.inForceAt(nanos)));
      }
    }
    return String.join("|", said);
  }

  /** As they are written down for the recording. */
  private static String words(CueKind kind, int count, ActiveGuidance inForce) throws IOException {
    String file =
        Phrase.reminder(new Cue(0, kind, count, 0, 0, false), inForce).orElseThrow().file();
    return Files.readAllLines(Path.of("src/main/voice/phrases.txt")).stream()
        .filter(line -> line.startsWith(file + "|"))
        .map(line -> line.substring(file.length() + 1))
        .findFirst()
        .orElseThrow();
  }

  /** All that may be said under that guidance. */
  private static Set<Phrase> said(Guidance guidance) {
    Set<Phrase> said = EnumSet.noneOf(Phrase.class);
    for (CueKind kind : CueKind.values()) {
      for (int count = 1; count <= 2; count++) {
        ActiveGuidance inForce =
            new ActiveGuidance(guidance, guidance.limits(), 2, CareKind.of(guidance), false);
        Phrase.reminder(new Cue(0, kind, count, 0, 0, false), inForce).ifPresent(said::add);
      }
    }
    return said;
  }

  /** A sine is known at every instant, so a resampled one can be compared with itself. */
  @ParameterizedTest
  @ValueSource(ints = {44_100, 48_000})
  void aResampledSineIsTheSameSine(int rate) {
    short[] sine = new short[22_050];
    for (int i = 0; i < sine.length; i++) {
      sine[i] = (short) Math.round(32_000 * Math.sin(2 * Math.PI * 1_000 * i / 22_050));
    }
    float[] converted = Resampler.convert(new SpokenLine(sine, 22_050), rate);
    assertThat(converted).hasSize(rate);
    for (int i = rate / 10; i < rate * 9 / 10; i++) {
      double wanted = 32_000 / 32_768.0 * Math.sin(2 * Math.PI * 1_000 * i / rate);
      assertThat(Math.abs(converted[i] - wanted)).isLessThan(1e-3);
    }
  }
}
