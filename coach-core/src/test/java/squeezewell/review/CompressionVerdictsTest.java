package squeezewell.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Severity;
import squeezewell.review.judge.Verdict;
import squeezewell.review.say.Feedback;
import squeezewell.review.say.Review;
import squeezewell.review.say.ReviewText;

/**
 * What is said first of a fault of the compressions, from cycles written by hand. AHA, adult: 30
 * compressions at 100 to 120 a minute, then 2 breaths in a pause of at most 10 s; with an advanced
 * airway without a break, a breath every 6 s.
 */
class CompressionVerdictsTest {
  private static final double PAUSE = 4;

  private static SessionBuilder arrest(double seconds) {
    return SessionBuilder.ofSeconds(seconds).in(Situation.ARREST_NO_ADVANCED_AIRWAY);
  }

  /** Cycles one after the other; the time at which the last of them is over. */
  private static double cycles(
      SessionBuilder session,
      double from,
      int cycles,
      int compressions,
      double rate,
      int breaths,
      double pause) {
    double at = from;
    for (int k = 0; k < cycles; k++) {
      session.compressions(compressions, at, 60 / rate);
      at += (compressions - 1) * 60 / rate;
      for (int b = 0; b < breaths; b++) {
        session.squeeze(at + pause * (b + 0.35) / (breaths + 0.2), 0.9, "");
      }
      at += pause;
    }
    return at;
  }

  private static Review cycles(
      double from, int compressions, double rate, int breaths, double pause) {
    double seconds = from + 5 * ((compressions - 1) * 60 / rate + pause) + 1;
    SessionBuilder session = arrest(seconds);
    cycles(session, from, 5, compressions, rate, breaths, pause);
    return session.review();
  }

  private static List<String> codes(Review review) {
    return review.findings().stream().map(Feedback::code).toList();
  }

  private static Feedback first(Review review) {
    return review.findings().get(0);
  }

  @ParameterizedTest(
      name = "Good 30:2 at {0}/min, pauses of {1} s, begun {2} s late: nothing wrong")
  @CsvSource({"118, 4, 0", "102, 5, 0", "110, 4, 2.5", "101, 6, 1", "119, 3, 2.5", "105, 9, 0"})
  void goodCyclesHaveNoFault(double rate, double pause, double late) {
    Review review = cycles(late + 0.1, 30, rate, 2, pause);
    assertThat(review.findings()).allMatch(f -> f.severity() == Severity.GOOD);
    assertThat(first(review).code()).isEqualTo("compressions-good");
    assertThat(first(review).text()).contains("4 of 4 cycles");
    assertThat(review.metrics().prompts()).isEmpty();
    assertThat(review.metrics().asynchrony()).isEmpty();
  }

  @ParameterizedTest(name = "Good 30:2 at {0}/min after a change: held all the same")
  @CsvSource({"118, 4", "102, 5"})
  void goodCyclesDoNotSpoilAChangedPractice(double rate, double pause) {
    SessionBuilder session = SessionBuilder.ofSeconds(240).breathsEvery(6, 0, 114);
    session.pulseCheck(119, 126).finding(126.2, PatientChange.PULSE_LOST);
    cycles(session, 128, 5, 30, rate, 2, pause);
    Review review = session.review();
    assertThat(review.findings()).noneMatch(f -> f.severity() == Severity.FAULT);
    assertThat(review.verdict().outcome()).isEqualTo(Verdict.Outcome.HELD);
  }

  @ParameterizedTest(name = "{0}:2 at {1}/min: the wrong number first")
  @CsvSource({"34, 110", "34, 118", "36, 102", "25, 110", "15, 110", "40, 110"})
  void theWrongNumberIsToldFirst(int compressions, double rate) {
    Review review = cycles(0.1, compressions, rate, 2, PAUSE);
    assertThat(first(review).code()).isEqualTo("wrong-number");
    assertThat(first(review).text()).contains("usually it was " + compressions);
    assertThat(codes(review)).doesNotContain("missed-prompts", "compressions-good");
  }

  @Test
  @DisplayName("15:2 in a newborn is the wrong ratio before its pauses are too long")
  void anotherRatioIsToldBeforeItsPauses() {
    SessionBuilder session =
        SessionBuilder.ofSeconds(60)
            .by(TestPlans.edition("aha-2025"), PatientGroup.NEWBORN)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY);
    cycles(session, 0.1, 4, 15, 110, 2, PAUSE);
    assertThat(first(session.review()).code()).isEqualTo("wrong-number");
  }

  @Test
  @DisplayName("Numbers that differ from cycle to cycle are not \"usually 30\"")
  void mixedNumbersAreToldFromTo() {
    SessionBuilder session = arrest(110);
    double at = 0;
    for (int compressions : new int[] {30, 22, 38, 30, 25}) {
      at = cycles(session, at, 1, compressions, 110, 2, PAUSE);
    }
    session.compressions(1, at, 1);
    Review review = session.review();
    assertThat(first(review).code()).isEqualTo("wrong-number");
    assertThat(first(review).text()).contains("22 to 38").doesNotContain("usually");
  }

  @ParameterizedTest(name = "No compression for {0} s after a lost pulse, breaths {1}: told first")
  @CsvSource({"112, true", "112, false", "60, true", "25, true", "25, false"})
  void noCompressionsAfterALostPulseIsToldFirst(double seconds, boolean breaths) {
    SessionBuilder session = SessionBuilder.ofSeconds(62 + seconds).breathsEvery(6, 0.2, 54.2);
    session.finding(62, PatientChange.PULSE_LOST);
    if (breaths) {
      session.breathsEvery(6, 64, 64 + 6 * Math.floor((seconds - 4) / 6));
    }
    Review review = session.review();
    assertThat(first(review).code()).isEqualTo("compressions-missing");
    assertThat(first(review).severity()).isEqualTo(Severity.FAULT);
    assertThat(review.headline()).startsWith("No compressions after the pulse was lost");
    assertThat(first(review).text())
        .contains("At 1:02", Math.round(seconds) + " s")
        .doesNotContain("Until then");
    // The prompt at 1:00 had no breath, and no wait was too long for it.
    assertThat(codes(review)).doesNotContain("missed-prompts");
  }

  @Test
  @DisplayName("Compressions that stop half way are told, with the airway in and without")
  void compressionsThatStopAreTold() {
    SessionBuilder cycles = arrest(120);
    cycles(cycles, 0.1, 2, 30, 110, 2, PAUSE);
    SessionBuilder tube =
        SessionBuilder.ofSeconds(115)
            .in(Situation.ARREST_ADVANCED_AIRWAY)
            .compressions(111, 0.1, 0.545)
            .breathsEvery(6, 0.3, 108.3);
    for (Review review : List.of(cycles.review(), tube.review())) {
      assertThat(first(review).code()).isEqualTo("pause-too-long");
      assertThat(review.headline()).isEqualTo("No compressions towards the end");
      assertThat(codes(review)).doesNotContain("compressions-good");
    }
    // A last cycle that the clock cuts off need not be begun.
    SessionBuilder cut = arrest(120);
    cycles(cut, 0.1, 5, 30, 110, 2, PAUSE);
    assertThat(codes(cut.review())).doesNotContain("pause-too-long");
  }

  @Test
  @DisplayName("A first compression after 20 s is late; after 2.5 s it is not")
  void aLateStartIsTold() {
    Review late = cycles(20, 30, 110, 2, PAUSE);
    assertThat(first(late).code()).isEqualTo("compressions-late");
    assertThat(first(late).text()).contains("20 s after the start");
    assertThat(codes(cycles(2.5, 30, 110, 2, PAUSE))).doesNotContain("compressions-late");
  }

  @Test
  @DisplayName("With the airway in a pause of 14 s, or 30:2 all along, is told")
  void pausesWithTheAirwayInAreTold() {
    SessionBuilder one =
        SessionBuilder.ofSeconds(114)
            .in(Situation.ARREST_ADVANCED_AIRWAY)
            .compressions(92, 0.1, 0.545)
            .compressions(90, 64.2, 0.545)
            .breathsEvery(6, 0.3, 108.3);
    assertThat(first(one.review()).code()).isEqualTo("pause-too-long");
    SessionBuilder cycles = SessionBuilder.ofSeconds(105).in(Situation.ARREST_ADVANCED_AIRWAY);
    cycles(cycles, 0.1, 5, 30, 110, 2, PAUSE);
    Review review = cycles.review();
    assertThat(codes(review)).contains("pause-too-long");
    // No air goes into the stomach through a tube.
    assertThat(ReviewText.write(review)).doesNotContain("stomach");
  }

  @Test
  @DisplayName("Three breaths a pause, or no pause at all, are no praise of cycles")
  void otherCyclesAreTold() {
    Review three = cycles(0.1, 30, 110, 3, 5);
    assertThat(first(three).title()).isEqualTo("More breaths than asked for in the pauses");
    assertThat(codes(three)).doesNotContain("compressions-good");
    SessionBuilder session = arrest(100).compressions(180, 0.1, 0.545).breathsEvery(8, 5, 93);
    assertThat(first(session.review()).title()).isEqualTo("No pauses for the breaths");
    // Without a breath no cycle is praised.
    assertThat(ReviewText.write(cycles(0.1, 30, 110, 0, PAUSE))).doesNotContain("0 of 4 cycles");
  }

  @ParameterizedTest(name = "3:1 at {0} events a minute: {1} compressions")
  @CsvSource({"120, 90", "128, 96", "112, 84"})
  void aNewbornsCompressionsAreThreeQuartersOfTheEvents(double events, double compressions) {
    // Solevag and others, Scand J Trauma Resusc Emerg Med 2012;20:73: 90 and 30, 120 events.
    SessionBuilder session =
        SessionBuilder.ofSeconds(60)
            .by(TestPlans.edition("aha-2025"), PatientGroup.NEWBORN)
            .in(Situation.ARREST_NO_ADVANCED_AIRWAY);
    double beat = 60 / events;
    for (int k = 0; k < 26; k++) {
      session.compressions(3, 4 * k * beat, beat).squeeze((4 * k + 3) * beat, 0.4, "");
    }
    Review review = session.review();
    assertThat(review.metrics().compressions().get().ratePerMinute().getAsDouble())
        .isCloseTo(compressions, org.assertj.core.api.Assertions.within(0.1));
    assertThat(review.metrics().compressions().get().eventsPerMinute().getAsDouble())
        .isCloseTo(events, org.assertj.core.api.Assertions.within(0.1));
    assertThat(first(review).code()).isEqualTo("compressions-good");
    assertThat(first(review).text()).contains("You compressed " + Math.round(compressions));
  }
}
