package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.Review;
import squeezewell.review.Reviewer;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** The ribbon of a page: it must fit on a sheet however long the practice was. */
class ReviewSvgTest {
  /** By hand: the minutes over the length of a row, upwards, and never more than eight rows. */
  @ParameterizedTest
  @CsvSource({
    "2, 2, 1",
    "3, 2, 2",
    "16, 2, 8",
    "17, 5, 4",
    "40, 5, 8",
    "60, 10, 6",
    "81, 20, 5",
    "1440, 180, 8"
  })
  void theRowsAreAsLongAsTheyMustBeToBeEightAtMost(int minutes, int rowMinutes, int rows) {
    String svg = ReviewSvg.ribbon(Reviewer.review(practice(minutes)));
    assertThat(svg.split("class=\"rule\"", -1)).hasSize(rows + 1);
    assertThat(svg)
        .contains(rowMinutes + " minutes a row")
        .contains("viewBox=\"0 0 720 " + rows * 76);
    // A breath at half of the first row stands in the middle of its 668 points, 44 from the left.
    assertThat(svg).contains("class=\"good\" x=\"378\"");
  }

  /** By hand: an hour in at most twelve rows is five minutes a row, with 600 breaths of 6 s. */
  @Test
  void withMoreRowsAnHourIsDrawnWholeInRowsOfFiveMinutes() {
    String svg = ReviewSvg.ribbon(Reviewer.review(practice(60)), 12);
    assertThat(svg).contains("5 minutes a row").contains("viewBox=\"0 0 720 " + 12 * 76);
    assertThat(svg.split("<rect class=\"good\"", -1)).hasSize(601);
    // The last at 59:54, 294 of the 300 s of its row: 44 + 294 / 300 * 668 = 698.64.
    assertThat(svg).contains("x=\"698.64\" y=\"" + (11 * 76 + 42) + "\"");
  }

  @Test
  void theChartOfAPartBeginsWithThePart() {
    Session whole = practice(3);
    List<SessionEvent> events = new ArrayList<>();
    for (SessionEvent event : whole.events()) {
      for (long at : new long[] {30, 60}) {
        if (event.atNanos() == at * Reports.SECOND && event.what() == EventType.BREATH) {
          String found = at == 30 ? "pulse-lost" : "pulse-back";
          events.add(SessionEvent.of(events.size() + 1, event.atNanos(), EventType.FINDING, found));
        }
      }
      events.add(SessionEvent.of(events.size() + 1, event.atNanos(), event.what(), event.detail()));
    }
    Review review = Reviewer.review(new Session(whole.header(), events, List.of()));
    assertThat(review.parts()).hasSize(3);
    String svg = ReviewSvg.intervals(review.parts().get(2));
    // From 1:00 to 3:00; the breath at 2:00 in the middle of 660 points, 44 from the left, and
    // its square from 3 points before.
    assertThat(svg).contains(">1:00</text>").contains(">3:00</text>").contains("M371 ");
  }

  /** A station's clock ends it one instant after its time; two rows of two minutes hold four. */
  @Test
  void anEndOneInstantLaterAsksForNoEmptyRow() {
    Session whole = practice(4, 5 * 60 * Reports.SECOND);
    List<SessionEvent> events = new ArrayList<>(whole.events());
    events.remove(events.size() - 1);
    events.add(
        SessionEvent.of(events.size() + 1, 4 * 60 * Reports.SECOND + 1, EventType.FINISH, ""));
    Session late = new Session(whole.header(), events, List.of());
    assertThat(Reviewer.review(late).endNanos()).isGreaterThan(4 * 60 * Reports.SECOND);
    assertThat(ReviewSvg.ribbon(Reviewer.review(late)).split("class=\"rule\"", -1)).hasSize(3);
  }

  /**
   * Two minutes are 668 points from 44: 1:00 stands at 378 and its word at 380, 30 points long with
   * six for a letter. The pause from 1:02 stands at 389.13; its word moves on to 380 + 30 + 6. That
   * from 1:12.5 stands at 447.61 and is 2.78 long: its word would stand beyond it, at 452.
   */
  @Test
  void noWordOfAPauseStandsOnTheOneBefore() {
    String svg = ReviewSvg.ribbon(Reviewer.review(pausing(60, 61, 62, 72, 72.5, 73)));
    assertThat(words(svg, "pause")).containsExactly("380", "416");
    assertThat(svg.split("class=\"hold\"", -1)).hasSize(4);
  }

  /** By hand: 1:59 stands at 706.43 of 720 points, and the word takes 30. */
  @Test
  void aWordAtTheEndOfARowIsNotCut() {
    assertThat(words(ReviewSvg.ribbon(Reviewer.review(pausing(119, 140))), "pause"))
        .containsExactly("690");
  }

  private static List<String> words(String svg, String word) {
    List<String> places = new ArrayList<>();
    Matcher matcher =
        Pattern.compile("<text class=\"label\" x=\"([0-9.]+)\" y=\"\\d+\">" + word).matcher(svg);
    while (matcher.find()) {
      places.add(matcher.group(1));
    }
    return places;
  }

  /** Three minutes with pauses from and to those seconds and no breath from 0:54 to 2:24. */
  private static Session pausing(double... seconds) {
    List<SessionEvent> events = new ArrayList<>();
    int next = 0;
    for (SessionEvent event : practice(3).events()) {
      while (next < seconds.length && seconds[next] * Reports.SECOND <= event.atNanos()) {
        long at = Math.round(seconds[next] * Reports.SECOND);
        EventType what = next % 2 == 0 ? EventType.PAUSE : EventType.RESUME;
        events.add(SessionEvent.of(events.size() + 1, at, what, ""));
        next++;
      }
      double at = event.atNanos() / (double) Reports.SECOND;
      if (at < 59 || at > 144) {
        events.add(
            SessionEvent.of(events.size() + 1, event.atNanos(), event.what(), event.detail()));
      }
    }
    return new Session(practice(3).header(), events, List.of());
  }

  private static Session practice(long minutes) {
    return practice(minutes, minutes * 60 * Reports.SECOND);
  }

  private static Session practice(long minutes, long planNanos) {
    PracticePlan plan =
        PracticePlan.of(
            Reports.edition(),
            Reports.edition().find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow(),
            0,
            planNanos,
            0);
    List<SessionEvent> events = new ArrayList<>();
    for (long at = 0; at < minutes * 60; at += 6) {
      events.add(SessionEvent.of(events.size() + 1, at * Reports.SECOND, EventType.BREATH, ""));
      events.add(
          SessionEvent.of(events.size() + 1, (at + 1) * Reports.SECOND, EventType.BREATH_END, ""));
    }
    events.add(
        SessionEvent.of(events.size() + 1, minutes * 60 * Reports.SECOND, EventType.FINISH, ""));
    SessionHeader header =
        new SessionHeader(Reports.START, SessionHeader.Origin.LIVE, "", Reports.edition(), plan);
    return new Session(header, events, List.of());
  }
}
