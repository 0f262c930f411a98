package squeezewell.desktop.screens.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.AbstractButton;
import javax.swing.JScrollPane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import squeezewell.coach.Command;
import squeezewell.cue.CheckAnswer;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.DrawnButton;
import squeezewell.protocol.PatientChange;

class LiveScreenTest {
  /** Inner sizes of a window, and text sizes, as the drawn sheets have them. */
  static Stream<Arguments> sizes() {
    List<Arguments> all = new ArrayList<>();
    int[][] windows = {
      {360, 640}, {412, 892}, {600, 960}, {840, 600}, {1024, 600}, {1280, 800}, {1920, 1080}
    };
    for (int[] window : windows) {
      for (double text : new double[] {1, 1.25, 1.5, 2}) {
        all.add(Arguments.of(window[0], window[1], text));
      }
    }
    return all.stream();
  }

  private static LiveScreen screen(LiveScenes.Still practice, int width, int height, double text) {
    return screen(practice, width, height, text, "");
  }

  private static LiveScreen screen(
      LiveScenes.Still practice, int width, int height, double text, String notice) {
    LiveScreen screen = LiveScenes.screen(new Look(Palette.lightTheme(), text), practice, notice);
    screen.setSize(width, height);
    screen.doLayout();
    screen.frame();
    screen.doLayout();
    return screen;
  }

  private static void layOut(Container container) {
    container.doLayout();
    for (Component part : container.getComponents()) {
      if (part instanceof Container inner) {
        layOut(inner);
      }
    }
  }

  private static <T extends Component> List<T> parts(Container container, Class<T> kind) {
    List<T> found = new ArrayList<>();
    for (Component part : container.getComponents()) {
      if (part.isVisible() && kind.isInstance(part)) {
        found.add(kind.cast(part));
      } else if (part.isVisible() && part instanceof Container inner) {
        found.addAll(parts(inner, kind));
      }
    }
    return found;
  }

  @ParameterizedTest
  @MethodSource("sizes")
  void padsAndActionsAreLargeEnoughForAFingerAndApart(int width, int height, double text) {
    for (LiveScenes.Still scene : LiveScenes.all().values()) {
      LiveScreen screen = screen(scene, width, height, text);
      List<Component> touched = new ArrayList<>(parts(screen, LivePad.class));
      touched.addAll(parts(screen, AbstractButton.class));
      assertThat(parts(screen, LivePad.class)).isNotEmpty();
      for (Component part : touched) {
        assertThat(part.getHeight()).as("%s", part).isGreaterThanOrEqualTo(47);
        assertThat(part.getWidth()).as("%s", part).isGreaterThanOrEqualTo(48);
        assertThat(new Rectangle(width, height).contains(part.getBounds())).as("%s", part).isTrue();
        for (Component other : touched) {
          assertThat(part == other || !part.getBounds().intersects(other.getBounds()))
              .as("%s and %s", part, other)
              .isTrue();
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("sizes")
  void whatIsPaintedStandsApart(int width, int height, double text) {
    for (int advice : new int[] {0, 3}) {
      for (int notice : new int[] {0, 1}) {
        LivePlaces at =
            LivePlaces.of(new LivePlaces.Room(width, height, text, true, advice, notice));
        List<Rectangle> parts =
            Stream.of(
                    at.header(),
                    at.strip(),
                    at.word(),
                    at.vessel(),
                    at.number(),
                    at.feedback(),
                    at.ribbon(),
                    at.pads(),
                    at.actions(),
                    at.caution())
                .filter(place -> place.height > 0)
                .collect(Collectors.toList());
        for (Rectangle part : parts) {
          assertThat(new Rectangle(width, height).contains(part)).as("%s in %s", part, at).isTrue();
          for (Rectangle other : parts) {
            assertThat(part.equals(other) || !part.intersects(other))
                .as("%s and %s of %s", part, other, at)
                .isTrue();
          }
        }
        assertThat(at.pads().height).isGreaterThanOrEqualTo(100);
        assertThat(at.vessel().height).isGreaterThanOrEqualTo(90);
      }
    }
  }

  /** Word and column are as large at twice the text size as at the usual one. */
  @Test
  void whatIsReadFromAfarKeepsItsSizeWithLargerText() {
    LivePlaces usual = LivePlaces.of(new LivePlaces.Room(412, 892, 1, true, 0, 0));
    LivePlaces twice = LivePlaces.of(new LivePlaces.Room(412, 892, 2, true, 0, 0));
    assertThat(twice.word().height).isEqualTo(usual.word().height);
    assertThat(twice.vessel().width).isEqualTo(usual.vessel().width);
    assertThat(twice.vessel().height).isGreaterThanOrEqualTo(190);
    assertThat(twice.text()).isEqualTo(2);
    assertThat(twice.ribbon().height).isZero();
  }

  @ParameterizedTest
  @MethodSource("sizes")
  void whatSlidesOverNeverCoversPadOrActions(int width, int height, double text) {
    for (String open : List.of("changes", "more")) {
      LiveScreen screen = screen(LiveScenes.adult().until(3), width, height, text);
      List<Component> touched = new ArrayList<>(parts(screen, LivePad.class));
      touched.addAll(parts(screen, AbstractButton.class));
      if (open.equals("changes")) {
        screen.toggleChanges();
      } else {
        screen.toggleMore();
      }
      layOut(screen);
      LivePanel panel = parts(screen, LivePanel.class).get(0);
      touched.forEach(
          part ->
              assertThat(part.getBounds().intersects(panel.getBounds())).as("%s", part).isFalse());
      parts(panel, DrawnButton.class)
          .forEach(part -> assertThat(part.getHeight()).as("%s", part).isGreaterThanOrEqualTo(48));
      JScrollPane list = parts(panel, JScrollPane.class).get(0);
      assertThat(list.getViewport().getView().getWidth()).isLessThanOrEqualTo(list.getWidth());
    }
  }

  @Test
  void aDigitNotesWhatChangedAndAnswersACheck() {
    LiveScenes.Still practice = LiveScenes.adult().until(3);
    LiveScreen screen = screen(practice, 412, 892, 1);
    screen.choose(1, 0);
    assertThat(practice.posted).isEmpty();
    screen.toggleChanges();
    screen.choose(1, 0);
    assertThat(practice.posted).containsExactly(PatientChange.PULSE_LOST);
    assertThat(screen.closePanel()).isFalse();

    LiveScenes.Still checking = LiveScenes.all().get("check");
    LiveScreen answering = screen(checking, 412, 892, 1);
    answering.choose(2, 0);
    assertThat(checking.posted).containsExactly(CheckAnswer.PULSE_FELT);
  }

  @Test
  void escapeOpensMoreAndClosesWhatIsOpen() {
    LiveScenes.Still practice = LiveScenes.adult().until(3);
    LiveScreen screen = screen(practice, 412, 892, 1);
    screen.toggleMore();
    assertThat(parts(screen, LivePanel.class)).hasSize(1);
    screen.toggleMore();
    assertThat(parts(screen, LivePanel.class)).isEmpty();
    screen.toggleChanges();
    screen.toggleMore();
    assertThat(parts(screen, LivePanel.class)).isEmpty();
    screen.togglePause(0);
    assertThat(practice.posted).containsExactly(Command.PAUSE);
  }

  @Test
  void everythingHasANameForAScreenReader() {
    for (LiveScenes.Still scene : LiveScenes.all().values()) {
      LiveScreen screen = screen(scene, 412, 892, 1);
      screen.toggleMore();
      parts(screen, AbstractButton.class)
          .forEach(
              b ->
                  assertThat(b.getAccessibleContext().getAccessibleName())
                      .as("%s", b)
                      .isNotBlank());
      parts(screen, LiveStage.class)
          .forEach(
              stage ->
                  assertThat(stage.getAccessibleContext().getAccessibleDescription()).isNotBlank());
    }
  }
}
