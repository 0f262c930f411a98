package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javax.swing.SwingUtilities;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.Widgets;
import squeezewell.picture.MarksView;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotsView;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Judgement;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Situation;
import squeezewell.review.say.Review;
import squeezewell.words.Quantities;

/** What the pictures show and say of each mark. */
class PicturesTest {
  @Test
  void aBreathIsToldWithItsPromptTheBreathBeforeAndItsSqueeze() {
    // Prompts every 6 s from 0; the third breath at 12.4 s, 6.3 s after the second at 6.1 s.
    MarksView view = MarksView.of(Practices.review(0, 6.1, 12.4, 17.8));
    List<String> breaths = words(view, RibbonMark.Kind.BREATH);
    assertThat(breaths.get(0)).isEqualTo("Breath at 0:00.0, on its prompt; squeeze 1.0 s.");
    assertThat(breaths.get(2))
        .isEqualTo(
            "Breath at 0:12.4, 0.4 s late, 6.3 s after the one before, in range; squeeze 1.0 s.");
    assertThat(breaths.get(3)).contains("0.2 s early, 5.4 s after the one before, in range");
    List<String> prompts = words(view, RibbonMark.Kind.PROMPT);
    assertThat(prompts.get(2))
        .isEqualTo("Prompt at 0:12.0 to squeeze for 1.0 s, met by a breath 0.4 s late.");
    assertThat(words(view, RibbonMark.Kind.MISSED).get(0))
        .contains("0:24.0")
        .contains("missed: no breath answers it");
  }

  @Test
  void whatIsOutOfRangeExtraOrMissedIsNotAsAsked() {
    // 3 s between the second and third: too soon, and one too many for the prompts at 0, 6, 12.
    MarksView view = MarksView.of(Practices.review(0, 6, 9, 12));
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < view.index().marks().size(); i++) {
      if (view.notAsAsked(i) && view.index().marks().get(i).startNanos() < 15e9) {
        faults.add(view.words(i));
      }
    }
    assertThat(faults)
        .containsExactly(
            "Breath at 0:09.0, extra: it answers no prompt, 3.0 s after the one before, fast;"
                + " squeeze 1.0 s.",
            "Breath at 0:12.0, on its prompt, 3.0 s after the one before, fast; squeeze 1.0 s.");
  }

  @Test
  void partsFindingsAndCompressionsAreTold() {
    MarksView view = MarksView.of(Practices.lostPulse());
    assertThat(words(view, RibbonMark.Kind.FINDING))
        .containsExactly("Found at 1:00.0 (1): No pulse.");
    // Worked by hand: half a second apart is 120 a minute.
    assertThat(words(view, RibbonMark.Kind.COMPRESSION).get(1))
        .isEqualTo("Compression at 1:00.5, 0.50 s after the one before, 120 a minute, in range.");
    assertThat(view.parts()).hasSize(2);
    assertThat(view.parts().get(1).fromNanos()).isEqualTo(60_000_000_000L);
    // Findings have numbers, so parts have letters.
    assertThat(view.parts().get(1).full()).isEqualTo("B: no pulse, no advanced airway");
    PlotData intervals = PlotsView.of(Practices.lostPulse()).intervals();
    assertThat(intervals.found()).containsExactly(1.0);
    assertThat(intervals.partStarts()).containsExactly(1.0);
    // Only the first part has a range: 5 to 7 s, from 0 to 1 minute.
    assertThat(intervals.ranges()).containsExactly(new PlotData.Box(0, 1, 5, 7));
    assertThat(intervals.stops()).anyMatch(s -> s.words().startsWith("Part B begins at 1:00.0: "));
  }

  /** As spreadsheets name their columns: the 26th is Z, the 702nd ZZ, the 16,384th XFD. */
  @Test
  void partsBeyondTheAlphabetHaveTwoLetters() {
    assertThat(Quantities.letters(0)).isEqualTo("A");
    assertThat(Quantities.letters(25)).isEqualTo("Z");
    assertThat(Quantities.letters(26)).isEqualTo("AA");
    assertThat(Quantities.letters(701)).isEqualTo("ZZ");
    assertThat(Quantities.letters(702)).isEqualTo("AAA");
    assertThat(Quantities.letters(16_383)).isEqualTo("XFD");
  }

  @Test
  void theChartsShowWhatTheReviewFound() {
    Review review = Practices.review(0, 6.1, 12.4, 17.8, 24, 44, 50.2, 53, 60, 66, 71.7);
    PlotsView plots = PlotsView.of(review);
    DescriptiveStatistics lateness = new DescriptiveStatistics();
    points(plots.lateness()).forEach(p -> lateness.addValue(p.y()));
    assertThat(lateness.getMean())
        .isCloseTo(
            review.metrics().asynchrony().orElseThrow().meanSeconds().getAsDouble(), within(1e-9));
    assertThat(plots.lateness().yLow()).isLessThan(lateness.getMin());
    assertThat(plots.lateness().yHigh()).isGreaterThan(lateness.getMax());
    List<PlotData.Stop> intervals = points(plots.intervals());
    assertThat(intervals).hasSize(10);
    // 20 s is beyond twice the longest in range, 14 s: at the edge, but told as it is.
    assertThat(intervals.get(4).y()).isEqualTo(14);
    assertThat(intervals.get(4).words())
        .isEqualTo(
            "Breath at 0:44.0, 20.0 s after the one before, slow (drawn at the upper edge).");
    PlotData lengths = plots.histogram();
    // The bars of each judgement add up to the intervals that have it.
    for (Judgement judgement : Judgement.values()) {
      double sum =
          lengths.bars().stream()
              .filter(b -> b.judgement() == judgement)
              .mapToDouble(b -> b.yHigh() - b.yLow())
              .sum();
      assertThat((long) sum)
          .isEqualTo(intervals.stream().filter(p -> p.judgement() == judgement).count());
    }
    assertThat(lengths.ranges()).hasSize(1);
    assertThat(lengths.ranges().get(0).xLow()).isEqualTo(5);
    assertThat(lengths.ranges().get(0).xHigh()).isEqualTo(7);
    assertThat(lengths.stops().get(lengths.stops().size() - 1).words())
        .isEqualTo("14 s or longer: 1 interval, 1 slow.");
  }

  @Test
  void aBreathFurtherFromItsPromptThanTheRangeAllowsIsTooEarlyOrTooLate() {
    // A prompt every 6 s from 0, asked for 5 to 7 s: the band is 1 s to either side. Breaths at
    // 0, 7.0 (just in band), 13.3 (1.3 s late), 18, 22.6 (1.4 s early), 29.6 (0.4 s early).
    PlotData late = PlotsView.of(Practices.review(0, 7, 13.3, 18, 22.6, 29.6)).lateness();
    assertThat(points(late).stream().map(PlotData.Stop::judgement))
        .containsExactly(
            Judgement.IN_RANGE,
            Judgement.IN_RANGE,
            Judgement.SLOW,
            Judgement.IN_RANGE,
            Judgement.FAST,
            Judgement.IN_RANGE);
    assertThat(points(late).get(1).words()).isEqualTo("Breath at 0:07.0, 1.0 s late, in band.");
    assertThat(points(late).get(2).words()).isEqualTo("Breath at 0:13.3, 1.3 s late, too late.");
    assertThat(points(late).get(4).words()).isEqualTo("Breath at 0:22.6, 1.4 s early, too early.");
    assertThat(late.summary()).contains("4 in band, 1 too early, 1 too late");
    assertThat(late.ranges()).containsExactly(new PlotData.Box(0, 2, -1, 1));
    assertThat(points(late).stream().filter(PlotData.Stop::notAsAsked)).hasSize(2);
  }

  @Test
  void withoutARangeLatenessIsToldAndNotJudged() {
    PlotData late =
        PlotsView.of(
                Practices.review(
                    Practices.protocol(),
                    Practices.plan(
                        Practices.protocol(),
                        PatientGroup.ADULT,
                        Situation.ARREST_NO_ADVANCED_AIRWAY,
                        0,
                        2),
                    20,
                    21,
                    40))
            .lateness();
    assertThat(late.ranges()).isEmpty();
    // In cycles a trainee's own cycle counts, and not the beat of the prompts.
    assertThat(points(late)).isEmpty();
    assertThat(late.summary()).doesNotContain("band");
  }

  @Test
  void whatIsDoneAheadForTheFirstDebriefDrawsAWholeScreen() throws Exception {
    Widgets kit = new Widgets(new Look(Palette.lightTheme(), 1));
    Review review = FirstDebrief.prepare(kit.look());
    Set<Integer> upper = new HashSet<>();
    Set<Integer> lower = new HashSet<>();
    SwingUtilities.invokeAndWait(
        () -> {
          BufferedImage painted =
              FirstDebrief.paint(
                  kit, review, (w, h) -> new BufferedImage(w, h, BufferedImage.TYPE_INT_RGB));
          for (int y = 0; y < painted.getHeight(); y++) {
            for (int x = 0; x < painted.getWidth(); x++) {
              (y < painted.getHeight() / 2 ? upper : lower).add(painted.getRGB(x, y));
            }
          }
        });
    // Text, ribbon and cards have many colours; an empty page has one.
    assertThat(upper).hasSizeGreaterThan(10);
    assertThat(lower).hasSizeGreaterThan(10);
  }

  @Test
  void theRateIsJudgedByTheRangeOfItsPart() {
    // 60 s over 5 to 7 s: 8.6 to 12 breaths a minute are in range, so 10 is and 20 is not.
    PlotData even = PlotsView.of(Practices.review(Practices.every(6))).rate();
    assertThat(points(even)).isNotEmpty().allMatch(p -> p.judgement() == Judgement.IN_RANGE);
    assertThat(points(even)).allMatch(p -> Math.abs(p.y() - 10) < 1e-6);
    assertThat(even.ranges().get(0).yLow()).isCloseTo(60.0 / 7, within(1e-9));
    assertThat(even.ranges().get(0).yHigh()).isCloseTo(12, within(1e-9));
    PlotData fast = PlotsView.of(Practices.review(Practices.every(3))).rate();
    assertThat(points(fast)).isNotEmpty().allMatch(p -> p.judgement() == Judgement.FAST);
    // At the limit itself it is in range.
    PlotData limit = PlotsView.of(Practices.review(Practices.every(5))).rate();
    assertThat(points(limit)).isNotEmpty().allMatch(p -> p.judgement() == Judgement.IN_RANGE);
  }

  @Test
  void withoutABreathThereIsNothingToShowAndThatIsSaid() {
    PlotsView plots = PlotsView.of(Practices.review());
    assertThat(plots.rate().summary()).startsWith("Not known");
    assertThat(plots.lateness().summary()).isEqualTo("No breath answered a prompt.");
    assertThat(plots.histogram().bars()).isEmpty();
    assertThat(plots.intervals().summary()).startsWith("0 intervals");
  }

  private static List<PlotData.Stop> points(PlotData data) {
    return data.stops().stream()
        .filter(s -> s.kind() == PlotData.Kind.POINT)
        .collect(Collectors.toList());
  }

  private static List<String> words(MarksView view, RibbonMark.Kind kind) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < view.index().marks().size(); i++) {
      if (view.index().marks().get(i).kind() == kind) {
        words.add(view.words(i));
      }
    }
    return words;
  }
}
