package squeezewell.desktop.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.event.MouseEvent;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.picture.PlotData;
import squeezewell.picture.PlotPicture;
import squeezewell.protocol.Judgement;

/** Paints charts into pictures, moves through them by keys and mouse, and looks and listens. */
class PlainChartTest {
  private static final Palette LIGHT = Palette.lightTheme();

  private String words = "";

  private PlainChart chart(double scale, PlotData data) {
    PlainChart chart = new PlainChart(new Look(LIGHT, scale), data, Runnable::run, Runnable::run);
    chart.tell(text -> words = text);
    chart.setSize((int) (364 * scale), (int) (250 * scale));
    // The first painting asks for the chart, which is there for the second.
    Painted.of(chart);
    return chart;
  }

  private static PlotData data(List<PlotData.Stop> stops, List<PlotData.Bar> bars) {
    return new PlotData(
        "a chart",
        "minutes",
        "seconds",
        0,
        10,
        0,
        10,
        List.of(),
        List.of(),
        stops,
        false,
        bars,
        List.of(),
        List.of(),
        List.of(),
        "all in one sentence",
        1);
  }

  private static PlotData.Stop point(double x, double y, Judgement judgement) {
    return new PlotData.Stop(
        PlotData.Kind.POINT, x, y, judgement, "point at " + x + ", " + judgement.label());
  }

  private static List<PlotData.Stop> four() {
    return List.of(
        point(1, 5, Judgement.IN_RANGE),
        point(3, 2, Judgement.FAST),
        point(5, 5, Judgement.UNJUDGED),
        point(9, 8, Judgement.SLOW));
  }

  private static Rectangle2D place(double scale, PlotData data, PlotData.Stop stop) {
    return PlotPicture.draw(
            new Look(LIGHT, scale), data, (int) (364 * scale), (int) (250 * scale), 1)
        .place(stop, 1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void marksStandInProportionAndHaveTheirColour(double scale) {
    PlotData data = data(four(), List.of());
    BufferedImage picture = Painted.of(chart(scale, data));
    Rectangle2D one = place(scale, data, data.stops().get(0));
    Rectangle2D three = place(scale, data, data.stops().get(1));
    Rectangle2D nine = place(scale, data, data.stops().get(3));
    // 3 is a quarter of the way from 1 to 9, and 5 is half of the way from 2 to 8.
    assertThat(three.getCenterX() - one.getCenterX())
        .isCloseTo((nine.getCenterX() - one.getCenterX()) / 4, within(0.5));
    assertThat(one.getCenterY())
        .isCloseTo((three.getCenterY() + nine.getCenterY()) / 2, within(0.5));
    for (PlotData.Stop stop : data.stops()) {
      Rectangle2D at = place(scale, data, stop);
      assertThat(
              Painted.near(
                  picture, at.getCenterX(), at.getCenterY(), 1, LIGHT.of(stop.judgement())))
          .as(stop.words())
          .isTrue();
    }
  }

  /** Told apart by shape: how wide each mark is at its head, its middle and its foot. */
  @Test
  void earlyLateInRangeAndNotJudgedDifferInShape() {
    int[] square = widths(Judgement.IN_RANGE);
    int[] up = widths(Judgement.FAST);
    int[] down = widths(Judgement.SLOW);
    int[] dash = widths(Judgement.UNJUDGED);
    assertThat(square[0]).isEqualTo(square[2]).isGreaterThan(4);
    assertThat(up[0]).isLessThan(up[2]);
    assertThat(down[0]).isGreaterThan(down[2]);
    assertThat(dash[0]).isZero();
    assertThat(dash[2]).isZero();
    assertThat(dash[1]).isGreaterThan(4);
  }

  private int[] widths(Judgement judgement) {
    PlotData data = data(List.of(point(5, 5, judgement)), List.of());
    BufferedImage picture = Painted.of(chart(1, data));
    Rectangle2D at = place(1, data, data.stops().get(0));
    Color colour = LIGHT.of(judgement);
    int[] widths = new int[3];
    for (int row = 0; row < 3; row++) {
      int y = (int) Math.floor(at.getCenterY()) + (row - 1) * 3;
      for (int x = (int) at.getCenterX() - 9; x <= at.getCenterX() + 9; x++) {
        widths[row] += Painted.near(picture, x, y, 0, colour) ? 1 : 0;
      }
    }
    return widths;
  }

  @Test
  void theKeysGoFromMarkToMarkAndToWhatWasNotAsAsked() {
    PlainChart chart = chart(1, data(four(), List.of()));
    assertThat(chart.getAccessibleContext().getAccessibleDescription())
        .isEqualTo("all in one sentence");
    Painted.press(chart, "RIGHT");
    assertThat(words).isEqualTo("point at 1.0, in range");
    Painted.press(chart, "typed .");
    assertThat(words).isEqualTo("point at 3.0, fast");
    Painted.press(chart, "typed >");
    assertThat(words).isEqualTo("point at 9.0, slow");
    Painted.press(chart, "RIGHT");
    assertThat(words).isEqualTo("No such mark after this.");
    Painted.press(chart, "HOME");
    assertThat(words).isEqualTo("point at 1.0, in range");
    Painted.press(chart, "LEFT");
    assertThat(words).isEqualTo("No such mark before this.");
    Painted.press(chart, "END");
    Painted.press(chart, "typed <");
    assertThat(words).isEqualTo("point at 3.0, fast");
    assertThat(chart.getAccessibleContext().getAccessibleDescription())
        .isEqualTo("point at 3.0, fast");
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void pointingTellsOfTheNearestMarkAndClickingRingsIt(double scale) {
    PlotData data = data(four(), List.of());
    PlainChart chart = chart(scale, data);
    Rectangle2D at = place(scale, data, data.stops().get(3));
    int x = (int) at.getCenterX();
    int y = (int) at.getCenterY();
    Painted.mouse(chart, MouseEvent.MOUSE_MOVED, x + 3, y - 3);
    assertThat(words).isEqualTo("point at 9.0, slow");
    Painted.mouse(chart, MouseEvent.MOUSE_MOVED, x - (int) (60 * scale), y);
    assertThat(words).isEmpty();
    BufferedImage before = Painted.of(chart);
    Painted.mouse(chart, MouseEvent.MOUSE_PRESSED, x, y);
    BufferedImage after = Painted.of(chart);
    assertThat(words).isEqualTo("point at 9.0, slow");
    assertThat(Painted.near(before, x - 7 * scale, y, 1, LIGHT.text())).isFalse();
    assertThat(Painted.near(after, x - 7 * scale, y, 1, LIGHT.text())).isTrue();
  }

  @Test
  void aBarIsToldOfWhereverItIsPointedAt() {
    PlotData.Stop bar = new PlotData.Stop(PlotData.Kind.BAR, 5, 8, Judgement.IN_RANGE, "the bar");
    PlotData data = data(List.of(bar), List.of(new PlotData.Bar(4, 6, 0, 8, Judgement.IN_RANGE)));
    PlainChart chart = chart(1, data);
    Rectangle2D at = place(1, data, bar);
    Painted.mouse(chart, MouseEvent.MOUSE_MOVED, (int) at.getMinX() + 2, 30);
    assertThat(words).isEqualTo("the bar");
    Painted.mouse(chart, MouseEvent.MOUSE_MOVED, (int) at.getMaxX() + 3, 30);
    assertThat(words).isEmpty();
    assertThat(Painted.near(Painted.of(chart), at.getCenterX(), at.getMaxY() - 5, 1, LIGHT.tide()))
        .isTrue();
  }

  /** A finding is never hidden behind what was asked for. */
  @Test
  void whatWasFoundIsALineOverTheRangeToo() {
    PlotData data =
        new PlotData(
            "a chart",
            "minutes",
            "seconds",
            0,
            10,
            0,
            10,
            List.of(new PlotData.Box(0, 10, 2, 8)),
            List.of(),
            four(),
            false,
            List.of(),
            List.of(7.0),
            List.of(),
            List.of(),
            "all in one sentence",
            1);
    Rectangle2D at = place(1, data, point(7, 5, Judgement.IN_RANGE));
    assertThat(
            Painted.near(
                Painted.of(chart(1, data)), at.getCenterX(), at.getCenterY(), 1, LIGHT.text()))
        .isTrue();
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "1, 1", "0, 250", "364, 0", "3, 3000", "3000, 3", "20, 20"})
  void noSizeBreaksIt(int width, int height) {
    for (int count : new int[] {0, 1, 10_000}) {
      List<PlotData.Stop> stops = new ArrayList<>();
      for (int k = 0; k < count; k++) {
        stops.add(point(10.0 * k / count, k % 9, k % 2 == 0 ? Judgement.FAST : Judgement.IN_RANGE));
      }
      PlainChart chart = chart(1, data(stops, List.of()));
      chart.setSize(width, height);
      Painted.of(chart);
      for (String key : new String[] {"RIGHT", "END", "typed <", "HOME", "LEFT"}) {
        Painted.press(chart, key);
        Painted.of(chart);
      }
      Painted.mouse(chart, MouseEvent.MOUSE_MOVED, width / 2, height / 2);
      Painted.mouse(chart, MouseEvent.MOUSE_PRESSED, width / 2, height / 2);
      assertThat(chart.drawn()).isTrue();
    }
  }

  @Test
  void keysAndTheMouseWorkBeforeItIsDrawn() {
    List<Runnable> waiting = new ArrayList<>();
    PlainChart chart =
        new PlainChart(new Look(LIGHT, 1), data(four(), List.of()), waiting::add, Runnable::run);
    chart.tell(text -> words = text);
    chart.setSize(364, 250);
    Painted.of(chart);
    Painted.of(chart);
    assertThat(chart.drawn()).isFalse();
    assertThat(waiting).hasSize(1);
    Painted.mouse(chart, MouseEvent.MOUSE_MOVED, 100, 100);
    Painted.press(chart, "RIGHT");
    assertThat(words).isEqualTo("point at 1.0, in range");
    Painted.of(chart);
  }
}
