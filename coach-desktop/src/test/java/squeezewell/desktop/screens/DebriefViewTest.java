package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import squeezewell.desktop.parts.RibbonMark;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.Judgement;
import squeezewell.review.Review;

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
    assertThat(view.details().get(0)).startsWith("20 breaths; 20 prompts: 20 met, 0 missed");
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
  void aGapWithoutHoldsStandsWhereItCameFrom() {
    DebriefView view = DebriefView.of(Practices.review(0, 20, 26, 32));
    // Worked by hand: from the end of the last squeeze at 0:33 to the end of two minutes is 87 s.
    assertThat(view.figures().get(2).value()).isEqualTo("87 s");
    assertThat(view.figures().get(2).askedFor()).isEqualTo("from 0:33");
    assertThat(view.details()).noneMatch(line -> line.startsWith("Longest gap"));
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
}
