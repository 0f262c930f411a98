package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.review.Reviewer;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;

/** What the page and the picture of a debrief say alike. */
class DebriefWordsTest {
  /** By hand: 20 breaths of 1 s every 6 s are 19 intervals and 10 a minute, with gaps of 5 s. */
  @Test
  void whatIsTooLongForThePageIsCutAndThatIsSaid() {
    // Five signs outside of the basic plane are ten units, and none is cut in two.
    assertThat(DebriefWords.shortened("\uD83D\uDE00".repeat(5), 3))
        .isEqualTo("\uD83D\uDE00".repeat(3) + "… (cut, 5 characters in all)");
    assertThat(DebriefWords.shortened("Kim", 3)).isEqualTo("Kim");
  }

  @Test
  void anEvenPracticeShowsWhatWasAskedBesideWhatWasDone() {
    Review review = Reviewer.review(Reports.steady(6));
    assertThat(DebriefWords.cards(review))
        .containsExactly(
            new DebriefWords.Card("10", "breaths a minute", "asked: 10"),
            new DebriefWords.Card("19 of 19", "intervals in range", "5 to 7 s"),
            new DebriefWords.Card("5 s", "longest gap", "from 0:01"));
  }

  @Test
  void aGapThatNeverHappenedIsNotKnownAndIsNoNumber() {
    assertThat(DebriefWords.gap(new Metrics.Gap(0, 0, 0, 0)))
        .isEqualTo(new DebriefWords.Card("–", "longest gap", "not known: the breaths never began"));
  }

  @Test
  void theGapIsToldOnceAndFromWhen() {
    assertThat(DebriefWords.gap(new Metrics.Gap(5.5, 60, 0, 0)))
        .isEqualTo(new DebriefWords.Card("5.5 s", "longest gap", "from 1:00"));
  }

  @Test
  void theTimeOfAGapIsThatOfTheClockThatRan() {
    assertThat(DebriefWords.gap(new Metrics.Gap(23.4, 36.987, 0, 0)).note()).isEqualTo("from 0:36");
  }

  @Test
  void thePageShowsTheSameWords() {
    for (Session session : List.of(Reports.steady(6), Reports.steady(2), Reports.changing())) {
      Review review = Reviewer.review(session);
      String page = ReviewHtml.of(session.header(), review, Reports.ZONE);
      assertThat(page)
          .contains(DebriefWords.asked(review))
          .contains(DebriefWords.legend(review))
          .contains(DebriefWords.who(session.header(), Reports.ZONE));
      for (DebriefWords.Card card : DebriefWords.cards(review)) {
        assertThat(page)
            .contains("<b>" + card.value() + "</b>" + card.name())
            .contains("<div class=\"word\">" + card.note() + "</div>");
      }
    }
  }

  @Test
  void theLegendTellsOnlyWhatIsThere() {
    assertThat(DebriefWords.legend(Reviewer.review(Reports.steady(6))))
        .doesNotContain("compressions")
        .doesNotContain("Dotted");
    assertThat(DebriefWords.legend(Reviewer.review(Reports.changing())))
        .contains("Upright lines: what was found, by its number.");
  }

  @Test
  void aPracticeIsToldByWhoDidItAndHow() {
    assertThat(who(SessionHeader.Origin.LIVE, "Trainee 7"))
        .isEqualTo("Trainee 7, practised live, 2026-01-31 12:00");
    assertThat(who(SessionHeader.Origin.VIRTUAL, ""))
        .isEqualTo("a virtual practice, not a person, 2026-01-31 12:00");
    assertThat(who(SessionHeader.Origin.EVENT_LIST, "Trainee 7"))
        .isEqualTo("Trainee 7, from a list of events");
  }

  private static String who(SessionHeader.Origin origin, String trainee) {
    return DebriefWords.who(Reports.steady(origin, trainee).header(), Reports.ZONE);
  }
}
