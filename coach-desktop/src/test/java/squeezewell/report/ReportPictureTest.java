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
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** The ribbon of a page: it must fit on a sheet however long the practice was. */
class ReportPictureTest {
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
    String svg = ribbon(practice(minutes), 8);
    assertThat(svg.split("<text x=\"4\"", -1)).hasSize(rows + 1);
    assertThat(svg)
        .contains(rowMinutes + " minutes a row")
        .contains("viewBox=\"0 0 720 " + rows * 76);
    // A breath at half of the first row stands in the middle of its 668 points, 44 from the left.
    // Of those on the same point only the first is painted.
    assertThat(svg).containsPattern("<rect x=\"37(7\\.[5-9]|8[.\"])");
  }

  /** By hand: an hour in at most twelve rows is five minutes a row, with 600 breaths of 6 s. */
  @Test
  void withMoreRowsAnHourIsDrawnWholeInRowsOfFiveMinutes() {
    String svg = ribbon(practice(60), 12);
    assertThat(svg).contains("5 minutes a row").contains("viewBox=\"0 0 720 " + 12 * 76);
    assertThat(svg.split("height=\"15\" rx=\"2.5\"", -1)).hasSize(601);
    // The last at 59:54, 294 of the 300 s of its row: 44 + 294 / 300 * 668 = 698.64.
    assertThat(svg).contains("x=\"698.64\" y=\"" + (11 * 76 + 44) + "\"");
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
    String svg =
        ReportPicture.intervals(review.parts().get(2), review.startNanos()).orElseThrow().svg();
    // From minute 1 to 3 and a hundredth of the two minutes more, on 682 points from 26 on: that
    // at 2:00 stands at 26 + 682 / 2.02 = 363.62, and its square begins 4 points before.
    assertThat(svg).contains(">1</text>").contains(">3</text>").contains("M359.62 ");
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
    assertThat(ribbon(late, 8).split("<text x=\"4\"", -1)).hasSize(3);
  }

  /**
   * Two minutes are 668 points from 44, a second 5.57. The pause from 1:00 is from 378 to 383.57
   * and its word, 30 points long with six for a letter, in its middle from 365.78. That from 1:02
   * is from 389.13 to 444.8; 8 points after the first word, from 403.78, 41.02 are left of it, and
   * its word is in their middle, at 409.29. That from 1:12.5 is 3 points long, and the word before
   * leaves no room.
   */
  @Test
  void noWordOfAPauseStandsOnTheOneBefore() {
    String svg = ribbon(pausing(60, 61, 62, 72, 72.5, 73), 8);
    assertThat(words(svg, "pause")).containsExactly("365.78", "409.29");
    assertThat(svg.split("fill=\"#dcecef\"", -1)).hasSize(4);
  }

  /**
   * By hand: 1:59 stands at 706.43. The lanes end at 722, and 4 points before that the word of 30.
   * In the next row the pause goes on from a second before its start, 38.43, to 155.33, with its
   * word in the middle.
   */
  @Test
  void aWordAtTheEndOfARowIsNotCut() {
    assertThat(words(ribbon(pausing(119, 140), 8), "pause")).containsExactly("688", "81.88");
  }

  /** By hand: a breath in two is left out, so of the 20 prompts of two minutes 10 are hollow. */
  @Test
  void aMissedPromptIsHollow() {
    List<SessionEvent> events = new ArrayList<>();
    for (SessionEvent event : practice(2).events()) {
      if (event.what() == EventType.FINISH || event.atNanos() / Reports.SECOND % 12 < 6) {
        events.add(
            SessionEvent.of(events.size() + 1, event.atNanos(), event.what(), event.detail()));
      }
    }
    String svg = ribbon(new Session(practice(2).header(), events, List.of()), 8);
    assertThat(svg.split("<path fill=\"#4a5c64\" d=\"M[0-9. L]*Z\"", -1)).hasSize(11);
    assertThat(svg.split("<path fill=\"none\" stroke=\"#4a5c64\" d=\"M[0-9. L]*Z\"", -1))
        .hasSize(11);
  }

  private static String ribbon(Session session, int mostRows) {
    return ReportPicture.ribbon(Reviewer.review(session), mostRows).svg();
  }

  private static List<String> words(String svg, String word) {
    List<String> places = new ArrayList<>();
    Matcher matcher =
        Pattern.compile("<text x=\"([0-9.]+)\" y=\"\\d+\" fill=\"#4a5c64\">" + word).matcher(svg);
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
