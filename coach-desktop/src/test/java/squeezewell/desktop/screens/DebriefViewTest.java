package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JLabel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import squeezewell.cue.Prompting;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.UnfoldingColumn;
import squeezewell.desktop.parts.Widgets;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;

class DebriefViewTest {
  @Test
  void anEvenPracticeShowsTheFiguresThatWereAsked() {
    // Worked by hand: 20 breaths 6 s apart make 19 intervals, all in range, 10 a minute.
    DebriefView view = DebriefView.of(Practices.review(Practices.every(6)));
    assertThat(view.figures().get(0).value()).isEqualTo("10.0");
    assertThat(view.figures().get(0).askedFor()).isEqualTo("asked: 10");
    assertThat(view.figures().get(0).judgement()).isEqualTo(Judgement.IN_RANGE);
    assertThat(view.figures().get(1).value()).isEqualTo("19 of 19");
    assertThat(view.figures().get(1).askedFor()).isEqualTo("5 to 7 s");
    assertThat(view.toChange()).isEmpty();
    assertThat(view.wentWell()).isNotEmpty();
    assertThat(view.details().get(0)).startsWith("20 breaths; prompts: 20 given, 20 met, 0 missed");
  }

  @Test
  void aFastPracticeIsCalledFast() {
    // Worked by hand: a breath every 3 s is 20 a minute.
    DebriefView view = DebriefView.of(Practices.review(Practices.every(3)));
    assertThat(view.figures().get(0).value()).isEqualTo("20.0");
    assertThat(view.figures().get(0).judgement()).isEqualTo(Judgement.FAST);
    assertThat(view.toChange()).isNotEmpty();
    assertThat(view.headline()).isEqualTo(view.toChange().get(0).title());
  }

  @Test
  void nothingRecordedIsNotShownAsZero() {
    Review review = Practices.review();
    DebriefView view = DebriefView.of(review);
    assertThat(view.figures().get(0).value()).isEqualTo("–");
    assertThat(view.figures().get(1).value()).isEqualTo("–");
    assertThat(view.headline()).isEqualTo("No breath was recorded");
  }

  @Test
  void breathsThatWereNotPromptedAreNotSaidToHaveMetNone() {
    DebriefView view =
        DebriefView.of(
            Practices.review(
                Practices.protocol(), Practices.plan(3, 2).with(Prompting.NONE), 3, 9, 15, 21));
    assertThat(view.details().get(0)).isEqualTo("4 breaths; prompts: none given");
  }

  @Test
  void aGapWithoutHoldsStandsWhereItCameFrom() {
    DebriefView view = DebriefView.of(Practices.review(0, 20, 26, 32));
    // Worked by hand: from the end of the last squeeze at 0:33 to the end of two minutes is 87 s.
    assertThat(view.figures().get(2).value()).isEqualTo("87 s");
    assertThat(view.figures().get(2).askedFor()).isEqualTo("from 0:33");
    assertThat(view.details()).noneMatch(line -> line.startsWith("Longest gap"));
  }

  @Test
  void theGapIsToldToATenthAndFromWhen() {
    DebriefView.Figure figure = DebriefView.gapFigure(new Metrics.Gap(5.4, 12, 0, 0));
    assertThat(figure.value()).isEqualTo("5.4 s");
    assertThat(figure.askedFor()).isEqualTo("from 0:12");
    // What is not a whole second yet is left off, as on the clock that ran.
    assertThat(DebriefView.gapFigure(new Metrics.Gap(23.4, 36.987, 0, 0)).askedFor())
        .isEqualTo("from 0:36");
  }

  @Test
  void whatToChangeFirstStandsBelowTheHeadline() {
    assertThat(DebriefView.of(Practices.review(Practices.every(3))).first())
        .startsWith("Rhythm not held. Next time ");
    assertThat(DebriefView.of(Practices.review(Practices.every(6))).first()).isEmpty();
    // Nothing but time is wrong with it: the rule needs two minutes.
    double[] minute = {0, 6, 12, 18, 24, 30, 36, 42, 48, 54};
    DebriefView tooShort =
        DebriefView.of(Practices.review(Practices.protocol(), Practices.plan(0, 1), minute));
    assertThat(tooShort.toChange()).isEmpty();
    assertThat(tooShort.first())
        .isEqualTo("Too short to judge: practiced for 1:00; the rule needs 2:00.");
  }

  @Test
  void aRhythmOfCyclesHasNoRangeAndNoneIsShown() {
    DebriefView view =
        DebriefView.of(
            Practices.review(
                Practices.protocol("aha-2025"),
                Practices.plan(
                    Practices.protocol("aha-2025"),
                    PatientGroup.ADULT,
                    Situation.ARREST_NO_ADVANCED_AIRWAY,
                    0,
                    2),
                16.4,
                18.4,
                36.7,
                38.7));
    // No compression was recorded, so nothing is said of their rate.
    assertThat(view.figures().get(0).name()).isEqualTo("compressions/min");
    assertThat(view.figures().get(0).value()).isEqualTo("–");
    assertThat(view.figures().get(0).askedFor()).isEqualTo("0 in all");
    assertThat(view.details().get(0)).isEqualTo("0 compressions");
    assertThat(view.asked()).contains("no pulse, no advanced airway");
    assertThat(view.marks()).filteredOn(m -> m.kind() == RibbonMark.Kind.BREATH).hasSize(4);
  }

  @Test
  void aRhythmThatChangedIsShownPartByPart() {
    // Breaths at 0, 6 .. 54 (10, so 9 intervals), no pulse at 60 s, compressions from 60 s on.
    DebriefView view = DebriefView.of(Practices.lostPulse());
    assertThat(view.found()).containsExactly("1   at 1:00: No pulse");
    assertThat(view.parts()).hasSize(2);
    assertThat(view.parts().get(0).title()).isEqualTo("0:00 to 1:00");
    assertThat(view.parts().get(0).asked()).isEqualTo("pulse, not breathing");
    assertThat(view.parts().get(0).lines())
        .containsExactly("10 breaths, 10 a minute; 9 of 9 intervals in range");
    assertThat(view.parts().get(0).verdict())
        .isEqualTo("Too short to judge (practiced for 1:00; the rule needs 2:00)");
    assertThat(view.parts().get(1).asked()).isEqualTo("no pulse, no advanced airway");
    assertThat(view.parts().get(1).lines())
        .containsExactly("0 breaths", "30 compressions, 120 a minute");
    assertThat(view.figures()).extracting(DebriefView.Figure::value).startsWith("9 of 9", "120");
    assertThat(view.marks()).filteredOn(m -> m.kind() == RibbonMark.Kind.COMPRESSION).hasSize(30);
    assertThat(view.marks())
        .filteredOn(m -> m.kind() == RibbonMark.Kind.FINDING)
        .extracting(RibbonMark::startNanos)
        .containsExactly(60 * Practices.SECOND);
  }

  @Test
  void aPracticeThatWasEndedEarlySaysSo() {
    assertThat(DebriefView.of(Practices.review(Practices.every(6))).asked()).startsWith("2:00, ");
    assertThat(DebriefView.of(Practices.lostPulse()).asked()).startsWith("1:30 of 2:00, adult");
  }

  @Test
  void theScreenHoldsThePartsAtAnySizeOfText() throws Exception {
    for (double scale : new double[] {1, 2}) {
      Widgets kit = new Widgets(new Look(Palette.darkTheme(), scale));
      JScrollPane[] page = new JScrollPane[1];
      SwingUtilities.invokeAndWait(
          () ->
              page[0] =
                  DebriefScreen.build(
                      kit, null, Practices.lostPulse(), "today", DebriefScreen.Actions.none()));
      List<String> texts = new ArrayList<>();
      collect(page[0], texts, kit.look().px(Widgets.CONTENT_WIDTH));
      assertThat(texts)
          .contains("Part by part", "1   at 1:00: No pulse", "0:00 to 1:00: pulse, not breathing")
          .contains("30 compressions, 120 a minute.");
    }
  }

  @Test
  void whatToPractiseNextIsAddedWhenItIsKnown() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 1));
    List<Consumer<DebriefScreen.Next>> asked = new ArrayList<>();
    List<String> before = new ArrayList<>();
    List<String> after = new ArrayList<>();
    SwingUtilities.invokeAndWait(
        () -> {
          Runnable nothing = () -> {};
          JScrollPane page =
              DebriefScreen.build(
                  kit,
                  null,
                  Practices.lostPulse(),
                  "today",
                  new DebriefScreen.Actions(asked::add, nothing, nothing, nothing, nothing));
          int width = kit.look().px(Widgets.CONTENT_WIDTH);
          collect(page, before, width);
          asked
              .get(0)
              .accept(
                  new DebriefScreen.Next(
                      List.of("Fade again.", "Take the test on another day."), nothing));
          collect(page, after, width);
        });
    assertThat(asked).hasSize(1);
    assertThat(before).isNotEmpty().doesNotContain("Next practice");
    assertThat(after).containsAll(before);
    assertThat(after)
        .containsSubsequence("Next practice", "Fade again.", "Take the test on another day.");
  }

  private static void collect(Container part, List<String> texts, int width) {
    if (part instanceof UnfoldingColumn column) {
      column.unfold();
    }
    for (Component child : part.getComponents()) {
      if (child instanceof JTextArea text) {
        texts.add(text.getText());
        assertThat(text.getPreferredSize().width).isLessThanOrEqualTo(width);
      } else if (child instanceof JLabel label && label.getText() != null) {
        texts.add(label.getText());
      }
      if (child instanceof Container inner) {
        collect(inner, texts, width);
      }
    }
  }
}
