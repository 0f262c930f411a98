package squeezewell.trainee;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.trainee.PastSessions.ADULT;
import static squeezewell.trainee.PastSessions.book;
import static squeezewell.trainee.PastSessions.fading;
import static squeezewell.trainee.PastSessions.test;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import squeezewell.TestPlans;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Situation;
import squeezewell.review.Reviewer;
import squeezewell.review.judge.Verdict;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * On which days the test was passed. Breaths every 6 s for two minutes pass, every 4 s they do not:
 * asked is one every 6 s, from 5 to 7 s (AHA 2025, adult). Offsets were worked by hand.
 */
class HeldAloneTest {
  private static final ZoneId UTC = ZoneOffset.UTC;

  private static List<String> days(ZoneId zone, Session... sessions) {
    return book(sessions).heldAlone("", ADULT, zone).days().stream()
        .map(LocalDate::toString)
        .toList();
  }

  @Test
  void twoPassesOnOneDayAreOneDay() {
    Session[] sessions = {
      test("2026-03-01T08:00:00Z", "", 6), test("2026-03-01T20:00:00Z", "", 6),
    };
    assertThat(days(UTC, sessions)).containsExactly("2026-03-01");
    assertThat(book(sessions).heldAlone("", ADULT, UTC).isOwn()).isFalse();
    assertThat(book(sessions).heldAlone("", ADULT, UTC).words())
        .isEqualTo("Held without prompts on one day (1 Mar 2026).");
  }

  @Test
  void aDayIsOneOfTheCalendarWhereThePracticeWas() {
    // 21 hours apart: on one day at no offset, on 1 and 2 March or on 2 and 3 March.
    Session[] sessions = {
      test("2026-03-01T23:30:00Z", "", 6), test("2026-03-02T20:30:00Z", "", 6),
    };
    assertThat(days(UTC, sessions)).containsExactly("2026-03-01", "2026-03-02");
    assertThat(days(ZoneOffset.ofHours(2), sessions)).containsExactly("2026-03-02");
    assertThat(days(ZoneOffset.ofHours(5), sessions)).containsExactly("2026-03-02", "2026-03-03");
    assertThat(book(sessions).heldAlone("", ADULT, UTC).words())
        .isEqualTo(
            "Held without prompts on two days (1 Mar 2026 and 2 Mar 2026): the rhythm is yours.");
  }

  @Test
  @DisplayName("Two calendar days that are ten minutes apart, or 19 hours, never count as two")
  void twoDaysAreAtLeastTwentyHoursApart() {
    Session first = test("2026-03-01T23:57:00Z", "", 6);
    assertThat(days(UTC, first, test("2026-03-02T00:35:00Z", "", 6))).containsExactly("2026-03-01");
    assertThat(days(UTC, first, test("2026-03-02T19:56:00Z", "", 6))).containsExactly("2026-03-01");
    assertThat(days(UTC, first, test("2026-03-02T19:57:00Z", "", 6)))
        .containsExactly("2026-03-01", "2026-03-02");
  }

  @Test
  @DisplayName("Only the first try of a day counts, and an undecided one is no try")
  void theFirstTryOfADayCounts() {
    Session failed = test("2026-03-01T08:00:00Z", "", 4);
    Session passed = test("2026-03-01T09:00:00Z", "", 6);
    assertThat(days(UTC, failed, passed)).isEmpty();
    assertThat(days(UTC, passed, test("2026-03-01T10:00:00Z", "", 4)))
        .containsExactly("2026-03-01");
    assertThat(days(UTC, failed, passed, test("2026-03-02T09:00:00Z", "", 6)))
        .containsExactly("2026-03-02");
    assertThat(days(UTC, failed, test("2026-03-01T09:00:00Z", "Bob", 6))).isEmpty();
  }

  @Test
  @DisplayName("What was practiced in the half hour before a test makes it no retention")
  void nothingIsPractisedBeforeATest() {
    // A practice from 8:00 to 8:02; half an hour after it is 8:32.
    Session before = fading("2026-03-01T08:00:00Z", "", 0, "prompts-on: level 2");
    Instant ended = PastPractice.of(before).orElseThrow().endedAt();
    String soon = ended.plusSeconds(1_799).toString();
    String later = ended.plusSeconds(1_800).toString();
    assertThat(days(UTC, before, test(soon, "", 6))).isEmpty();
    assertThat(days(UTC, before, test(later, "", 6))).containsExactly("2026-03-01");
    assertThat(days(UTC, test(soon, "", 6))).containsExactly("2026-03-01");
    // Any live practice counts, prompted throughout too, and none of somebody else.
    for (String name : List.of("", "Bob")) {
      SessionHeader header =
          PastSessions.session(
                  "2026-03-01T08:00:00Z",
                  name,
                  SessionHeader.Origin.LIVE,
                  PastSessions.plan("aha-2025", Prompting.THROUGHOUT),
                  List.of())
              .header();
      PastPractice prompted = PastPractice.of(header, Instant.MAX).orElseThrow();
      assertThat(prompted.endedAt()).isEqualTo(Instant.parse("2026-03-01T08:02:00Z"));
      PastPractice test = PastPractice.of(test("2026-03-01T08:20:00Z", "", 6)).orElseThrow();
      assertThat(RecordBook.of(List.of(prompted, test)).heldAlone("", ADULT, UTC).days())
          .hasSize(name.isEmpty() ? 0 : 1);
    }
  }

  @Test
  @DisplayName("Advice after 0 of 35 intervals in range, or one breath, is not to let prompts fade")
  void adviceFollowsTheResult() {
    NextPractice next =
        NextPractice.of(book(), "", ADULT, UTC, NextPractice.Result.NOT_YET).orElseThrow();
    assertThat(next.prompting()).isEqualTo(Prompting.THROUGHOUT);
    assertThat(next.lines()).singleElement().asString().contains("every breath prompted");
    // 36 breaths 3 s apart where 5 to 7 s was asked, and one breath alone; then 6 s apart.
    assertThat(NextPractice.Result.of(prompted(3, 36))).isEqualTo(NextPractice.Result.NOT_YET);
    assertThat(NextPractice.Result.of(prompted(6, 1))).isEqualTo(NextPractice.Result.NOT_YET);
    assertThat(NextPractice.Result.of(prompted(6, 20))).isEqualTo(NextPractice.Result.WELL);
  }

  private static Review prompted(int step, int breaths) {
    List<SessionEvent> events = new ArrayList<>();
    for (int k = 0; k < breaths; k++) {
      events.add(breath(events, 1 + (long) k * step));
    }
    events.add(SessionEvent.of(events.size() + 1, 119 * TestPlans.SECOND, EventType.FINISH, ""));
    return Reviewer.review(
        PastSessions.session(
            "2026-03-01T08:00:00Z",
            "",
            SessionHeader.Origin.LIVE,
            PastSessions.plan("aha-2025", Prompting.THROUGHOUT),
            events));
  }

  @Test
  void onlyAPassByTheSameTraineeInThisRhythmCounts() {
    Session[] sessions = {
      test("2026-03-01T08:00:00Z", "", 4),
      test("2026-03-02T08:00:00Z", "Bob", 6),
      test("2026-03-03T08:00:00Z", "", 6, SessionHeader.Origin.VIRTUAL),
      fading("2026-03-04T08:00:00Z", "", 4, "prompts-on: level 5"),
      test("2026-03-05T08:00:00Z", "", 6),
    };
    assertThat(days(UTC, sessions)).containsExactly("2026-03-05");
    assertThat(
            book(sessions)
                .heldAlone("", TestPlans.adult(Situation.PULSE_SLOW_BREATHING), UTC)
                .days())
        .isEmpty();
    assertThat(book().heldAlone("", ADULT, UTC).words()).isEmpty();
  }

  /**
   * Twenty-one breaths 6 s apart, from 1 to 121 s, pass: asked is one every 6 s. At 123 s the
   * patient is found to breathe too slowly, which asks for one every 6 s too. Then twenty breaths
   * from 127 s on: 3 s apart all 19 intervals are shorter than 5 s, 6 s apart none is.
   */
  @Test
  void aTestCountsOnlyIfTheDebriefSaysThatItWasHeld() {
    Session lost = withLaterPart("2026-03-01T08:00:00Z", 3);
    Session kept = withLaterPart("2026-03-02T08:00:00Z", 6);
    assertThat(Reviewer.review(lost).verdict().outcome()).isEqualTo(Verdict.Outcome.NOT_HELD);
    assertThat(Reviewer.review(kept).verdict().outcome()).isEqualTo(Verdict.Outcome.HELD);
    assertThat(days(UTC, lost, kept)).containsExactly("2026-03-02");
    assertThat(words(lost, book(lost))).isEqualTo("test: not held without prompts");
    assertThat(
            NextPractice.of(book(lost), "", ADULT, UTC, NextPractice.Result.WELL)
                .orElseThrow()
                .lines())
        .noneMatch(line -> line.startsWith("Held without prompts"));
  }

  private static Session withLaterPart(String at, int laterIntervalSeconds) {
    List<SessionEvent> events = new ArrayList<>();
    events.add(SessionEvent.of(1, 0, EventType.PROMPTS_OFF, "test"));
    for (long second = 1; second <= 121; second += 6) {
      events.add(breath(events, second));
    }
    events.add(
        SessionEvent.of(
            events.size() + 1, 123 * TestPlans.SECOND, EventType.FINDING, "breathing-slow"));
    for (int k = 0; k < 20; k++) {
      events.add(breath(events, 127 + (long) k * laterIntervalSeconds));
    }
    PracticePlan plan =
        PracticePlan.of(TestPlans.edition("aha-2025"), ADULT, 0, 246 * TestPlans.SECOND, 0)
            .with(Prompting.NONE);
    long end = (127 + 20L * laterIntervalSeconds) * TestPlans.SECOND;
    events.add(SessionEvent.of(events.size() + 1, end, EventType.FINISH, ""));
    return PastSessions.session(at, "", SessionHeader.Origin.LIVE, plan, events);
  }

  private static SessionEvent breath(List<SessionEvent> before, long second) {
    return SessionEvent.of(before.size() + 1, second * TestPlans.SECOND, EventType.BREATH, "");
  }

  @Test
  void theListCountsTheDaysUpToEachPractice() {
    Session first = test("2026-03-01T08:00:00Z", "", 6);
    Session failed = test("2026-03-02T08:00:00Z", "", 4);
    Session second = test("2026-03-03T08:00:00Z", "", 6);
    RecordBook book = book(second, first, failed);
    assertThat(words(first, book)).isEqualTo("Held without prompts on one day (1 Mar 2026).");
    assertThat(words(failed, book)).isEqualTo("test: not held without prompts");
    assertThat(words(second, book)).contains("two days (1 Mar 2026 and 3 Mar 2026)");
    assertThat(words(fading("2026-03-04T08:00:00Z", "", 1, "prompts-on: level 2"), book))
        .isEqualTo("fading, level 1 to 2");
  }

  private static String words(Session session, RecordBook book) {
    return book.words(PastPractice.of(session).orElseThrow(), UTC);
  }

  /** The way from a first practice to a rhythm of one's own. */
  @Test
  void theNextPracticeLeadsToTheTestAndItsSecondDay() {
    assertNext(book(), Prompting.FADING, 0, "Let the prompts fade");
    Session low = fading("2026-03-01T08:00:00Z", "", 0, "prompts-on: level 2");
    assertNext(
        book(low),
        Prompting.FADING,
        1,
        "Fading, 1 Mar 2026, ended at level 2 of 5",
        "from level 1, 5 breaths");
    Session high = fading("2026-03-02T08:00:00Z", "", 2, "prompts-on: level 3");
    assertNext(book(low, high), Prompting.NONE, 0, "level 3 of 5", "Try the test", "from level 3");
    Session failed = test("2026-03-03T08:00:00Z", "", 4);
    assertNext(book(low, high, failed), Prompting.NONE, 0, "level 3 of 5");
    Session passed = test("2026-03-04T08:00:00Z", "", 6);
    assertNext(
        book(low, high, failed, passed),
        Prompting.NONE,
        0,
        "on one day (4 Mar 2026)",
        "again on another day",
        "our own choice");
    Session again = test("2026-03-05T08:00:00Z", "", 6);
    assertNext(
        book(low, high, failed, passed, again), Prompting.NONE, 0, "the rhythm is yours", "weeks");
    assertThat(
            NextPractice.of(
                book(),
                "",
                TestPlans.adult(Situation.ARREST_NO_ADVANCED_AIRWAY),
                UTC,
                NextPractice.Result.WELL))
        .isEmpty();
  }

  private static void assertNext(RecordBook book, Prompting prompting, int level, String... said) {
    NextPractice next =
        NextPractice.of(book, "", ADULT, UTC, NextPractice.Result.WELL).orElseThrow();
    assertThat(next.prompting()).isEqualTo(prompting);
    assertThat(next.startLevel()).isEqualTo(level);
    assertThat(String.join(" ", next.lines())).contains(said);
  }
}
