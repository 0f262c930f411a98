package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.List;
import javax.swing.JComponent;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.RibbonMark;
import squeezewell.protocol.Judgement;

/** Paints parts into pictures and looks at the pixels. */
class PaintTest {
  /** Text is drawn in the program's own font, whichever test ran before. */
  @BeforeAll
  static void font() {
    new Look(Palette.lightTheme(), 1).install();
  }

  private static final long SECOND = 1_000_000_000L;

  @ParameterizedTest
  @ValueSource(doubles = {1, 1.5, 2})
  void theTideColumnIsAsFullAsItIsTold(double scale) {
    Look look = new Look(Palette.darkTheme(), scale);
    TideColumn column = new TideColumn(look);
    for (double fill : new double[] {0, 0.25, 0.5, 1}) {
      column.setSize(look.px(176), look.px(330));
      column.show(fill, 1, 6);
      BufferedImage picture = paint(column);
      int x = look.px(70);
      int water = 0;
      for (int y = 0; y < picture.getHeight(); y++) {
        water += near(picture, x, y, Palette.darkTheme().tide()) ? 1 : 0;
      }
      assertThat(water / (double) picture.getHeight()).isCloseTo(fill, within(0.06));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void aLateBreathStandsToTheRightOfItsPromptAndBelowTheLine(double scale) {
    Look look = new Look(Palette.lightTheme(), scale);
    Ribbon ribbon = new Ribbon(look);
    ribbon.setSize(look.px(372), look.px(80));
    ribbon.show(
        List.of(
            new RibbonMark(RibbonMark.Kind.PROMPT, 10 * SECOND, 10 * SECOND, Judgement.UNJUDGED),
            new RibbonMark(RibbonMark.Kind.BREATH, 12 * SECOND, 14 * SECOND, Judgement.SLOW)),
        0,
        20 * SECOND);
    BufferedImage picture = paint(ribbon);
    Color plum = Palette.lightTheme().plum();
    Color soft = Palette.lightTheme().softText();
    double prompt = centre(picture, soft);
    double breath = centre(picture, plum);
    // Worked by hand: ten pixels of margin, 352 for 20 s, so 3 s from 10 s to the middle at 13 s.
    assertThat(breath - prompt).isCloseTo(3.0 / 20 * 352 * scale, within(3 * scale));
    for (int y = 0; y < picture.getHeight() / 2; y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        assertThat(near(picture, x, y, plum)).isFalse();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void aCompressionIsAThinTickBelowTheLineAndABreathIsNot(double scale) {
    assertThat(widest(scale, RibbonMark.Kind.COMPRESSION)).isBetween(1, (int) (2 * scale));
    assertThat(widest(scale, RibbonMark.Kind.BREATH)).isGreaterThan((int) (4 * scale));
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void whatWasFoundIsALineOverBothLanes(double scale) {
    Look look = new Look(Palette.lightTheme(), scale);
    Ribbon ribbon = new Ribbon(look);
    ribbon.setSize(look.px(372), look.px(86));
    ribbon.show(
        List.of(
            new RibbonMark(RibbonMark.Kind.FINDING, 16 * SECOND, 16 * SECOND, Judgement.UNJUDGED)),
        0,
        32 * SECOND);
    BufferedImage picture = paint(ribbon);
    int dark = 0;
    for (int y = 0; y < picture.getHeight(); y++) {
      boolean there = false;
      for (int x = look.px(184); x <= look.px(188); x++) {
        there |= new Color(picture.getRGB(x, y)).getRed() < 130;
      }
      dark += there ? 1 : 0;
    }
    // From 3 to 13 pixels above the foot, and the number below it.
    assertThat(dark / scale).isGreaterThan(70);
  }

  /** Whatever else stands there, the word is drawn as if it stood alone. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void nothingRunsThroughTheWordOfAPause(double scale) {
    // Ten pixels of margin and 352 for 3,520 s: one for 10 s, so the check's middle is at 186.
    RibbonMark check = span(RibbonMark.Kind.PULSE_CHECK, 1_755, 1_765);
    BufferedImage alone = ribbon(scale, 3_520, check);
    BufferedImage among =
        ribbon(
            scale,
            3_520,
            check,
            span(RibbonMark.Kind.SILENCE, 500, 3_000),
            span(RibbonMark.Kind.FINDING, 1_760, 1_760),
            span(RibbonMark.Kind.SUCTION, 1_830, 1_840),
            span(RibbonMark.Kind.PULSE_CHECK, 1_875, 1_885));
    int letters = 0;
    for (int x = (int) (172 * scale); x < (int) (200 * scale); x++) {
      for (int y = (int) (6 * scale); y < (int) (17 * scale); y++) {
        assertThat(new Color(among.getRGB(x, y)))
            .as("at %d, %d", x, y)
            .isEqualTo(new Color(alone.getRGB(x, y)));
        letters += near(alone, x, y, Palette.lightTheme().softText()) ? 1 : 0;
      }
    }
    // Of thin letters few pixels have the colour of the text itself; without the word none has.
    assertThat(letters).isGreaterThan(10);
  }

  /** By hand: the check's middle is at 10 + 113 = 123, and so is that of the watched time. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void aCheckAndTheWatchedTimeAroundItBothHaveTheirWord(double scale) {
    RibbonMark check = span(RibbonMark.Kind.PULSE_CHECK, 1_125, 1_135);
    BufferedImage alone = ribbon(scale, 3_520, check);
    BufferedImage among = ribbon(scale, 3_520, span(RibbonMark.Kind.WATCH, 400, 1_860), check);
    int watch = 0;
    for (int y = (int) (6 * scale); y < (int) (17 * scale); y++) {
      for (int x = (int) (111 * scale); x < (int) (135 * scale); x++) {
        assertThat(among.getRGB(x, y)).as("at %d, %d", x, y).isEqualTo(alone.getRGB(x, y));
      }
      for (int x = (int) (50 * scale); x < (int) (104 * scale); x++) {
        watch += near(among, x, y, Palette.lightTheme().softText()) ? 1 : 0;
        watch += near(among, (int) (246 * scale) - x, y, Palette.lightTheme().softText()) ? 1 : 0;
      }
    }
    assertThat(watch).isGreaterThan(5);
  }

  private static RibbonMark span(RibbonMark.Kind kind, long from, long to) {
    return new RibbonMark(kind, from * SECOND, to * SECOND, Judgement.UNJUDGED);
  }

  private static BufferedImage ribbon(double scale, long seconds, RibbonMark... marks) {
    Look look = new Look(Palette.lightTheme(), scale);
    Ribbon ribbon = new Ribbon(look);
    ribbon.setSize(look.px(372), look.px(86));
    ribbon.show(List.of(marks), 0, seconds * SECOND);
    return paint(ribbon);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void theChosenOfAFewIsToldByABarAndNotByItsShadeAlone(double scale) {
    for (Palette palette : List.of(Palette.lightTheme(), Palette.darkTheme())) {
      Look look = new Look(palette, scale);
      look.install();
      ChoiceButton button = new ChoiceButton(look, "Rate", true, 80);
      button.setSize(button.getPreferredSize());
      assertThat(widestRow(paint(button), palette.tide())).isGreaterThan(look.px(40));
      button.setSelected(false);
      assertThat(widestRow(paint(button), palette.tide())).isZero();
    }
  }

  private static int widestRow(BufferedImage picture, Color colour) {
    int widest = 0;
    for (int y = 0; y < picture.getHeight(); y++) {
      int wide = 0;
      for (int x = 0; x < picture.getWidth(); x++) {
        wide += near(picture, x, y, colour) ? 1 : 0;
      }
      widest = Math.max(widest, wide);
    }
    return widest;
  }

  /** The widest row of a mark's own colour in the lane of what was done. */
  private static int widest(double scale, RibbonMark.Kind kind) {
    Look look = new Look(Palette.lightTheme(), scale);
    Ribbon ribbon = new Ribbon(look);
    ribbon.setSize(look.px(372), look.px(80));
    // Ten pixels of margin and 352 for 32 s: 16 s stands at 186, between two pixels at any scale.
    ribbon.show(
        List.of(new RibbonMark(kind, 16 * SECOND, 16 * SECOND, Judgement.UNJUDGED)),
        0,
        32 * SECOND);
    BufferedImage picture = paint(ribbon);
    int widest = 0;
    for (int y = picture.getHeight() / 2 + look.px(2); y < picture.getHeight(); y++) {
      int wide = 0;
      // Outside the round corners nothing is painted.
      for (int x = look.px(20); x < picture.getWidth() - look.px(20); x++) {
        Color there = new Color(picture.getRGB(x, y));
        wide += there.getRed() < 200 ? 1 : 0;
      }
      widest = Math.max(widest, wide);
    }
    return widest;
  }

  private static BufferedImage paint(JComponent part) {
    BufferedImage picture =
        new BufferedImage(part.getWidth(), part.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D g2 = picture.createGraphics();
    part.paint(g2);
    g2.dispose();
    return picture;
  }

  private static boolean near(BufferedImage picture, int x, int y, Color colour) {
    Color there = new Color(picture.getRGB(x, y));
    return Math.abs(there.getRed() - colour.getRed()) < 12
        && Math.abs(there.getGreen() - colour.getGreen()) < 12
        && Math.abs(there.getBlue() - colour.getBlue()) < 12;
  }

  private static double centre(BufferedImage picture, Color colour) {
    double sum = 0;
    int count = 0;
    for (int y = 0; y < picture.getHeight(); y++) {
      for (int x = 0; x < picture.getWidth(); x++) {
        if (near(picture, x, y, colour)) {
          sum += x;
          count++;
        }
      }
    }
    assertThat(count).isPositive();
    return sum / count;
  }
}
