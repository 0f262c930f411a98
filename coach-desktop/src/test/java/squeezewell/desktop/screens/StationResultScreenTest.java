package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.ScreenParts.allOf;

import java.lang.reflect.Proxy;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.report.StationSheet;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.Fact;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.station.file.Station;
import squeezewell.station.file.StationTask;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationResult;
import squeezewell.station.run.StationSetup;

class StationResultScreenTest {
  private static final long SECOND = Practices.SECOND;

  /** A torn file or a full disk is told where the result is read, not only behind a button. */
  @Test
  void whatIsKnownOfTheFileStandsWithTheResult() throws Exception {
    assertThat(texts(List.of("line 9 was torn off and is left out")))
        .contains("line 9 was torn off and is left out");
    assertThat(texts(List.of())).noneMatch(t -> t.contains("torn"));
  }

  @Test
  void anExaminerChangesAMarkWithTheReason() throws Exception {
    List<Fact.MarkChange> changes = new ArrayList<>();
    JScrollPane page = page(List.of(), StationRunViewTest.station().tasks(), changes::add);
    JTextField reason =
        allOf(page, JTextField.class).stream()
            .filter(f -> "reason".equals(f.getName()))
            .findFirst()
            .orElseThrow();
    reason.setText("Straps were loose");
    press(page, "Not done properly");
    press(page, "Remark on it");
    press(page, "Earlier");
    assertThat(changes.stream().map(Fact.MarkChange::text))
        .containsExactly("protect improper Straps were loose", "protect earlier 5");
    assertThat(allOf(page(List.of(), List.of(), changes::add), JButton.class))
        .noneMatch(b -> b.getText().equals("Earlier"));
  }

  private static void press(JScrollPane page, String words) {
    allOf(page, JButton.class).stream()
        .filter(b -> words.equals(b.getText()))
        .findFirst()
        .orElseThrow()
        .doClick();
  }

  private static List<String> texts(List<String> notes) throws Exception {
    return allOf(page(notes, List.of(), change -> {}), JTextArea.class).stream()
        .map(JTextArea::getText)
        .toList();
  }

  private static JScrollPane page(
      List<String> notes, List<StationTask> tasks, Consumer<Fact.MarkChange> onMark)
      throws Exception {
    Station station = StationRunViewTest.station();
    PracticePlan plan =
        StationPractice.plan(
            station,
            Practices.protocol(),
            StationsView.guidance(station, Practices.protocol()).orElseThrow(),
            0);
    List<SessionEvent> events = new ArrayList<>();
    StationPractice practice =
        new StationPractice(
            station,
            StationSetup.of(station, StationMode.ALONE, List.of(), 1),
            plan,
            new Journal() {
              @Override
              public void append(SessionEvent event) {
                events.add(event);
              }

              @Override
              public void close() {
                // Nothing is open.
              }
            },
            List.of());
    practice.begin(2 * SECOND);
    practice.end(9 * SECOND);
    Session session =
        new Session(
            new SessionHeader(
                Instant.parse("2026-03-01T09:00:00Z"),
                SessionHeader.Origin.LIVE,
                "",
                Practices.protocol(),
                plan),
            events,
            notes);
    Review review = Reviewer.review(session);
    // Nobody presses a button here.
    Navigator navigator =
        (Navigator)
            Proxy.newProxyInstance(
                Navigator.class.getClassLoader(),
                new Class<?>[] {Navigator.class},
                (proxy, method, arguments) -> null);
    return StationResultScreen.build(
        new Widgets(new Look(Palette.lightTheme(), 1)),
        navigator,
        StationSheet.of(StationResult.of(events), review),
        review,
        "1 March 2026",
        new StationResultScreen.Actions(() -> {}, () -> {}, () -> {}, tasks, onMark));
  }
}
