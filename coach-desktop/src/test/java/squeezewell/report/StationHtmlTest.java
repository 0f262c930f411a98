package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.Protocol;
import squeezewell.review.Reviewer;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationLibrary;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationSetup;

class StationHtmlTest {
  private static final long SECOND = 1_000_000_000L;
  private static final String HOSTILE = "<img src=x onerror=alert(1)> & \"so on\"";

  private Session session() throws Exception {
    Station station = StationLibrary.stations().get(0);
    Protocol protocol = GuidelineLibrary.editions().get(0);
    PracticePlan plan =
        StationPractice.plan(
            station,
            protocol,
            protocol.find(station.group(), station.situation()).orElseThrow(),
            0);
    List<SessionEvent> events = new ArrayList<>();
    Journal journal =
        new Journal() {
          @Override
          public void append(SessionEvent event) {
            events.add(event);
          }

          @Override
          public void close() {
            // Nothing to close.
          }
        };
    StationPractice practice =
        new StationPractice(
            station,
            StationSetup.of(station, StationMode.INSTRUCTOR, List.of(), 1),
            plan,
            journal,
            List.of());
    practice.begin(2 * SECOND);
    practice.remark(HOSTILE, 4 * SECOND);
    practice.done("response", 5 * SECOND);
    practice.end(9 * SECOND);
    SessionHeader header =
        new SessionHeader(
            Instant.parse("2026-01-31T12:00:00Z"),
            SessionHeader.Origin.LIVE,
            HOSTILE,
            protocol,
            plan);
    return new Session(header, events, List.of());
  }

  @Test
  void theSheetHoldsTheSentenceTheSignaturesAndNothingFromOutside() throws Exception {
    Session session = session();
    StationResult result = StationResult.of(session.events());
    String page =
        StationHtml.of(session.header(), result, Reviewer.review(session), ZoneOffset.UTC);
    assertThat(page)
        .contains("The criteria of your local examining body decide, not it.")
        .contains("<div>Trainee</div>", "<div>Examiner or partner</div>", "<div>Date</div>")
        .contains("2026-01-31 12:00")
        .contains("default-src &#39;none&#39;".replace("&#39;", "'"))
        .contains("&lt;img src=x onerror=alert(1)&gt; &amp; &quot;so on&quot;")
        .doesNotContain("<img", "<script", "http://", "https://");
  }

  /** Who signs must know that a part of it is missing. */
  @Test
  void whatIsKnownOfTheFileStandsOnTheSheet() throws Exception {
    Session whole = session();
    Session torn =
        new Session(whole.header(), whole.events(), List.of("line 9 was torn off & left out"));
    String page =
        StationHtml.of(
            torn.header(), StationResult.of(torn.events()), Reviewer.review(torn), ZoneOffset.UTC);
    assertThat(page).contains("Note: line 9 was torn off &amp; left out");
  }

  @Test
  void criticalFaultsComeFirstAndRemarksStandOnTheSameTimeLine() throws Exception {
    StationSheet sheet =
        StationSheet.of(StationResult.of(session().events()), Reviewer.review(session()));
    // Touched without gloves; never done: gloves, pulse, breaths, oxygen. No fluid was found.
    assertThat(sheet.outcome()).isEqualTo("5 critical faults");
    // The station's own rule: who touches the patient before putting on gloves is at fault.
    assertThat(sheet.critical().get(0).at()).isEqualTo("0:05");
    assertThat(sheet.critical().get(0).words())
        .isEqualTo("Touched the patient without gloves and eye protection");
    assertThat(sheet.story())
        .filteredOn(e -> e.kind().equals("remark"))
        .singleElement()
        .satisfies(e -> assertThat(e.at() + " " + e.words()).isEqualTo("0:04 " + HOSTILE));
    assertThat(sheet.story())
        .isSortedAccordingTo(java.util.Comparator.comparingLong(StationSheet.Entry::atNanos));
    assertThat(sheet.tasks())
        .filteredOn(r -> r.words().equals("Check for a response and for breathing"))
        .singleElement()
        .satisfies(r -> assertThat(r.how()).isEqualTo("out of order"));
  }
}
