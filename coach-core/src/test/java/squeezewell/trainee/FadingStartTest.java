package squeezewell.trainee;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.trainee.PastSessions.ADULT;
import static squeezewell.trainee.PastSessions.book;
import static squeezewell.trainee.PastSessions.fading;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.TestPlans;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.session.SessionHeader;

/** With which level fading goes on. The rule is our own choice; each row was worked by hand. */
class FadingStartTest {
  private static PastPractice practice(int from, int to) {
    return PastPractice.of(fading("2026-03-01T10:00:00Z", "", from, "prompts-on: level " + to))
        .orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({
    // From, to, next: one below the end ...
    "0, 2, 1",
    "0, 3, 2",
    "0, 4, 3",
    "0, 5, 4",
    "1, 3, 2",
    "2, 5, 4",
    // ... the end itself where it was reached without a run-up, or kept ...
    "0, 0, 0",
    "0, 1, 1",
    "1, 2, 2",
    "2, 3, 3",
    "3, 4, 4",
    "2, 2, 2",
    "4, 4, 4",
    // ... or where it fell back; and never without any prompt.
    "3, 2, 2",
    "4, 1, 1",
    "1, 0, 0",
    "4, 5, 4",
  })
  void oneBeginsOneBelowTheEndUnlessItWasHeldWithoutARunUp(int from, int to, int next) {
    FadingStart start = FadingStart.after(practice(from, to));
    assertThat(start.lastLevel()).isEqualTo(to);
    assertThat(start.level()).isEqualTo(next);
  }

  @Test
  void theEndIsTheLastLevelThatAnEventTellsOf() {
    assertThat(
            PastPractice.of(
                    fading(
                        "2026-03-01T10:00:00Z",
                        "",
                        1,
                        "prompts-off: level 1",
                        "prompts-on: level 2",
                        "prompts-off: level 2",
                        "prompts-at-once: level 2, gap",
                        "prompts-on: level 1, rescue"))
                .orElseThrow()
                .endLevel())
        .isEqualTo(1);
    assertThat(PastPractice.of(fading("2026-03-01T10:00:00Z", "", 3)).orElseThrow().endLevel())
        .isEqualTo(3);
  }

  @Test
  void whatCameAfterAnotherRhythmDoesNotCount() {
    assertThat(
            PastPractice.of(
                    fading(
                        "2026-03-01T10:00:00Z",
                        "",
                        0,
                        "prompts-on: level 1",
                        "prompts-on: level 2",
                        "finding: pulse-lost",
                        "finding: pulse-back",
                        "prompts-on: level 1"))
                .orElseThrow()
                .endLevel())
        .isEqualTo(2);
    // Vomit changes no rhythm.
    assertThat(
            PastPractice.of(
                    fading("2026-03-01T10:00:00Z", "", 0, "finding: vomit", "prompts-on: level 1"))
                .orElseThrow()
                .endLevel())
        .isEqualTo(1);
  }

  @Test
  void theLastPracticeCountsWhateverTheOrderOfTheFiles() {
    RecordBook book =
        book(
            fading("2026-03-03T10:00:00Z", "Ann", 1, "prompts-on: level 2"),
            fading("2026-03-05T10:00:00Z", "Ann", 2, "prompts-on: level 1"),
            fading("2026-03-04T10:00:00Z", "Ann", 2, "prompts-on: level 4"));
    assertThat(book.fadingStart("Ann", ADULT).map(FadingStart::level)).isEqualTo(Optional.of(1));
    assertThat(book.fadingStart("Ann", ADULT).orElseThrow().words(ZoneOffset.UTC))
        .isEqualTo("Last time, 5 Mar 2026, you ended at level 1 of 5.");
  }

  @Test
  void onlyTheSameTraineeAndTheSameRhythmCount() {
    RecordBook book = book(fading("2026-03-03T10:00:00Z", "Ann", 1, "prompts-on: level 2"));
    assertThat(book.fadingStart(" Ann ", ADULT)).isPresent();
    assertThat(book.fadingStart("", ADULT)).isEmpty();
    assertThat(book.fadingStart("Bob", ADULT)).isEmpty();
    assertThat(book.fadingStart("Ann", TestPlans.adult(Situation.PULSE_SLOW_BREATHING))).isEmpty();
    assertThat(book.fadingStart("Ann", TestPlans.adult(Situation.ARREST_ADVANCED_AIRWAY)))
        .isEmpty();
    Guidance child =
        TestPlans.edition("aha-2025")
            .find(PatientGroup.CHILD, Situation.PULSE_NO_BREATHING)
            .orElseThrow();
    assertThat(book.fadingStart("Ann", child)).isEmpty();
    // Every 6 s as well (AHA 2020); 5 to 6 s before (AHA 2015).
    assertThat(book.fadingStart("Ann", adult("aha-2020"))).isPresent();
    assertThat(book.fadingStart("Ann", adult("aha-2015"))).isEmpty();
  }

  private static Guidance adult(String edition) {
    return TestPlans.edition(edition)
        .find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING)
        .orElseThrow();
  }

  @Test
  void whatNobodyPractisedLiveOrWasPromptedThroughoutSaysNothing() {
    for (Prompting prompting : Prompting.values()) {
      for (SessionHeader.Origin origin : SessionHeader.Origin.values()) {
        boolean tells = prompting != Prompting.THROUGHOUT && origin == SessionHeader.Origin.LIVE;
        assertThat(
                PastPractice.of(
                        PastSessions.session(
                            "2026-03-03T10:00:00Z",
                            "",
                            origin,
                            PastSessions.plan("aha-2025", prompting),
                            List.of()))
                    .isPresent())
            .isEqualTo(tells);
      }
    }
  }

  /** 5 and 5, 4 and 8, 3 and 12, 2 and 20: as docs/user-guide.md says. */
  @Test
  void aLevelSaysWhatItAsksFor() {
    assertThat(FadingStart.asks(0)).isEqualTo("level 0, every breath prompted at first");
    assertThat(FadingStart.asks(1)).isEqualTo("level 1, 5 breaths prompted, then 5 not");
    assertThat(FadingStart.asks(2)).isEqualTo("level 2, 4 breaths prompted, then 8 not");
    assertThat(FadingStart.asks(3)).isEqualTo("level 3, 3 breaths prompted, then 12 not");
    assertThat(FadingStart.asks(4)).isEqualTo("level 4, 2 breaths prompted, then 20 not");
  }
}
