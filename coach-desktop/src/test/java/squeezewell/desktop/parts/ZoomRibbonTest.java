package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.FontMetrics;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.MarkIndex;
import squeezewell.picture.PartSpan;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Judgement;

/** Paints the ribbon into pictures, moves it by keys and mouse, and looks and listens. */
class ZoomRibbonTest {
  private static final long SECOND = 1_000_000_000L;

  private String words = "";
  private String span = "";

  private ZoomRibbon ribbon(double scale, List<RibbonMark> marks, long seconds) {
    MarkIndex index = MarkIndex.of(marks);
    ZoomRibbon ribbon =
        new ZoomRibbon(
            new Look(Palette.lightTheme(), scale),
            index,
            List.of(),
            place -> "mark " + place,
            place -> index.marks().get(place).judgement() == Judgement.SLOW,
            0,
            seconds * SECOND);
    ribbon.tell(text -> words = text, text -> span = text);
    ribbon.setSize((int) (372 * scale), (int) (132 * scale));
    return ribbon;
  }

  private static RibbonMark breath(long seconds, Judgement judgement) {
    return new RibbonMark(
        RibbonMark.Kind.BREATH, seconds * SECOND, (seconds + 1) * SECOND, judgement);
  }

  private static List<RibbonMark> breaths(int count) {
    List<RibbonMark> marks = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      marks.add(breath(6L * k, k % 5 == 3 ? Judgement.SLOW : Judgement.IN_RANGE));
    }
    return marks;
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void aBreathStandsWhereItsTimeIs(double scale) {
    // Ten pixels of margin, 352 for 88 s, so 4 for a second: 44.5 s, the middle, stands at 188.
    ZoomRibbon ribbon = ribbon(scale, List.of(breath(44, Judgement.IN_RANGE)), 88);
    BufferedImage picture = Painted.of(ribbon);
    int tide = 0;
    double sum = 0;
    for (int x = 0; x < picture.getWidth(); x++) {
      for (int y = 0; y < picture.getHeight(); y++) {
        if (Painted.near(picture, x, y, 0, Palette.lightTheme().tide())) {
          tide++;
          sum += x + 0.5;
        }
      }
    }
    assertThat(tide).isPositive();
    assertThat(sum / tide).isCloseTo(188 * scale, within(2 * scale));
  }

  @Test
  void aPartThatIsTooNarrowForItsWordsShowsItsLetterAndNeverHalfAWord() {
    Look look = new Look(Palette.lightTheme(), 1);
    BufferedImage picture = new BufferedImage(10, 10, BufferedImage.TYPE_INT_RGB);
    FontMetrics metrics = picture.createGraphics().getFontMetrics(look.font(11));
    PartSpan part = new PartSpan(0, SECOND, "B", "no pulse, no advanced airway");
    int full = metrics.stringWidth("B: no pulse, no advanced airway");
    int letter = metrics.stringWidth("B");
    assertThat(ZoomRibbon.partText(part, metrics, full))
        .isEqualTo("B: no pulse, no advanced airway");
    assertThat(ZoomRibbon.partText(part, metrics, full - 1)).isEqualTo("B");
    assertThat(ZoomRibbon.partText(part, metrics, letter)).isEqualTo("B");
    assertThat(ZoomRibbon.partText(part, metrics, letter - 1)).isEmpty();
  }

  @Test
  void theKeysZoomMoveAndShowAll() {
    ZoomRibbon ribbon = ribbon(1, breaths(20), 120);
    assertThat(span).isEqualTo("Shown: all, 0:00 to 2:00");
    // 120 s over 1.5 is 80 s, around the middle: 20 to 100 s.
    Painted.press(ribbon, "typed +");
    assertThat(span).isEqualTo("Shown: 0:20 to 1:40");
    // A quarter of 80 s.
    Painted.press(ribbon, "RIGHT");
    assertThat(span).isEqualTo("Shown: 0:40 to 2:00");
    Painted.press(ribbon, "HOME");
    assertThat(span).isEqualTo("Shown: 0:00 to 1:20");
    Painted.press(ribbon, "LEFT");
    assertThat(span).isEqualTo("Shown: 0:00 to 1:20");
    Painted.press(ribbon, "END");
    assertThat(span).isEqualTo("Shown: 0:40 to 2:00");
    Painted.press(ribbon, "typed -");
    assertThat(span).isEqualTo("Shown: all, 0:00 to 2:00");
    Painted.press(ribbon, "typed +");
    Painted.press(ribbon, "typed 0");
    assertThat(span).isEqualTo("Shown: all, 0:00 to 2:00");
  }

  @Test
  void theKeysGoFromMarkToMarkAndToWhatWasNotAsAsked() {
    ZoomRibbon ribbon = ribbon(1, breaths(10), 60);
    Painted.press(ribbon, "typed .");
    assertThat(words).isEqualTo("mark 0");
    Painted.press(ribbon, "typed >");
    assertThat(words).isEqualTo("mark 3");
    Painted.press(ribbon, "typed >");
    assertThat(words).isEqualTo("mark 8");
    Painted.press(ribbon, "typed >");
    assertThat(words).isEqualTo("No such mark after this.");
    Painted.press(ribbon, "typed ,");
    assertThat(words).isEqualTo("mark 7");
    Painted.press(ribbon, "typed <");
    assertThat(words).isEqualTo("mark 3");
    assertThat(ribbon.getAccessibleContext().getAccessibleDescription()).isEqualTo("mark 3");
  }

  /** Wherever the wheel is turned, the mark under the pointer stays under it. */
  @ParameterizedTest
  @CsvSource({"70, -1", "190, -3", "300, -6"})
  void theWheelKeepsWhatIsUnderThePointer(int x, int notches) {
    ZoomRibbon ribbon = ribbon(1, breaths(600), 3_600);
    for (int turn = 0; turn < -notches; turn++) {
      Painted.wheel(ribbon, x, 90, -1);
    }
    double zoomed = Math.pow(1.5, -notches);
    // By hand: the pointer is at (x - 10) / 352 of an hour; as much of what is shown lies before.
    double at = (x - 10) / 352.0 * 3_600;
    double from = at - (x - 10) / 352.0 * 3_600 / zoomed;
    long[] shown = shown();
    assertThat((double) shown[0]).isCloseTo(from, within(1.0));
    assertThat((double) shown[1]).isCloseTo(from + 3_600 / zoomed, within(1.0));
  }

  @Test
  void draggingMovesWithThePointer() {
    ZoomRibbon ribbon = ribbon(1, breaths(600), 3_600);
    Painted.press(ribbon, "typed +");
    // 2400 s over 352 pixels: 88 pixels to the left are 600 s on.
    Painted.mouse(ribbon, MouseEvent.MOUSE_PRESSED, 200, 60);
    Painted.mouse(ribbon, MouseEvent.MOUSE_DRAGGED, 112, 60);
    assertThat(span).isEqualTo("Shown: 20:00 to 60:00");
  }

  @Test
  void pointingTellsAndLeavingTellsOfTheChosenOneAgain() {
    // Four pixels a second: the breath of 44 to 45 s lies at 186 to 190.
    ZoomRibbon ribbon =
        ribbon(1, List.of(breath(10, Judgement.SLOW), breath(44, Judgement.IN_RANGE)), 88);
    Painted.mouse(ribbon, MouseEvent.MOUSE_MOVED, 188, 90);
    assertThat(words).isEqualTo("mark 1");
    Painted.mouse(ribbon, MouseEvent.MOUSE_MOVED, 120, 90);
    assertThat(words).isEmpty();
    Painted.mouse(ribbon, MouseEvent.MOUSE_CLICKED, 52, 90);
    assertThat(ribbon.chosen()).isZero();
    Painted.mouse(ribbon, MouseEvent.MOUSE_MOVED, 188, 90);
    assertThat(words).isEqualTo("mark 1");
    Painted.mouse(ribbon, MouseEvent.MOUSE_EXITED, 400, 400);
    assertThat(words).isEqualTo("mark 0");
  }

  @Test
  void theChosenMarkIsRinged() {
    ZoomRibbon ribbon = ribbon(1, List.of(breath(44, Judgement.IN_RANGE)), 88);
    BufferedImage before = Painted.of(ribbon);
    Painted.press(ribbon, "typed .");
    BufferedImage after = Painted.of(ribbon);
    // Left of the breath at 186, three pixels off.
    assertThat(Painted.near(before, 183, 75, 1, Palette.lightTheme().text())).isFalse();
    assertThat(Painted.near(after, 183, 75, 1, Palette.lightTheme().text())).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "1, 1", "0, 132", "372, 0", "3, 5000", "5000, 3", "20, 20"})
  void noSizeBreaksIt(int width, int height) {
    for (int count : new int[] {0, 1, 10_000}) {
      ZoomRibbon ribbon = ribbon(1, breaths(count), Math.max(1, 6L * count));
      ribbon.setSize(width, height);
      Painted.of(ribbon);
      for (String key : new String[] {"typed +", "typed .", "typed >", "RIGHT", "END", "typed 0"}) {
        Painted.press(ribbon, key);
        Painted.of(ribbon);
      }
      Painted.mouse(ribbon, MouseEvent.MOUSE_MOVED, width / 2, height / 2);
      Painted.wheel(ribbon, width / 2, height / 2, -3);
      Painted.mouse(ribbon, MouseEvent.MOUSE_DRAGGED, -50, 5);
      assertThat(shown()[0]).isNotNegative();
      assertThat(shown()[1]).isLessThanOrEqualTo(Math.max(1, 6L * count));
    }
  }

  @Test
  void withoutAMarkTheKeysSaySo() {
    ZoomRibbon ribbon = ribbon(1, List.of(), 1);
    Painted.press(ribbon, "typed .");
    assertThat(words).isEqualTo("No such mark after this.");
    Painted.press(ribbon, "typed ,");
    assertThat(words).isEqualTo("No such mark before this.");
    assertThat(ribbon.chosen()).isEqualTo(MarkIndex.NONE);
  }

  /** The ends of what is shown, in seconds. */
  private long[] shown() {
    String[] ends =
        span.replaceAll("[^0-9: to]*", "").replaceAll(".*?(\\d.*)", "$1").split(" to ", -1);
    return new long[] {seconds(ends[0]), seconds(ends[1])};
  }

  private static long seconds(String clock) {
    long sum = 0;
    for (String part : clock.trim().split(":", -1)) {
      sum = sum * 60 + Long.parseLong(part);
    }
    return sum;
  }
}
