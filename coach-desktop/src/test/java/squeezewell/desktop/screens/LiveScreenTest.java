package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.awt.Container;
import java.util.List;
import javax.swing.JPanel;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.BreathPad;
import squeezewell.desktop.parts.Kit;
import squeezewell.live.LivePractice;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;

class LiveScreenTest {
  /** Inner sizes of a window, and text sizes; the sizes are our own choice. */
  @ParameterizedTest
  @CsvSource({"412,892,1", "824,976,2", "824,556,2", "330,556,1", "1500,580,1.5"})
  void nothingFallsOffTheScreenAtAnySize(int width, int height, double scale) {
    Look look =
        new Look(Palette.lightTheme(), scale)
            .fitting(width, height, LiveScreen.LEAST_WIDTH, LiveScreen.LEAST_HEIGHT);
    LiveScreen screen = screen(look);
    screen.setSize(width, height);
    layOut(screen);
    for (Component part : screen.getComponents()) {
      assertThat(screen.getBounds().contains(part.getBounds())).as("%s", part).isTrue();
      assertThat(part.getHeight()).as("%s", part).isPositive();
      if (part instanceof BreathPad) {
        assertThat(part.getHeight()).isGreaterThanOrEqualTo(look.px(48));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"412,892,1", "824,556,2"})
  void everyActionOfAPracticeCanBeReachedWithTheMouse(int width, int height, double scale) {
    Look look =
        new Look(Palette.darkTheme(), scale)
            .fitting(width, height, LiveScreen.LEAST_WIDTH, LiveScreen.LEAST_HEIGHT);
    LiveScreen screen = screen(look);
    screen.setSize(width, height);
    layOut(screen);
    long buttons = 0;
    for (Component part : screen.getComponents()) {
      if (part instanceof JPanel panel) {
        for (Component inner : panel.getComponents()) {
          if (inner instanceof ActionButton) {
            assertThat(inner.getHeight()).isGreaterThanOrEqualTo(look.px(46));
            buttons++;
          }
        }
      }
    }
    assertThat(buttons).isEqualTo(PracticeKeys.Action.values().length);
  }

  private static LiveScreen screen(Look look) {
    LivePractice practice =
        new LivePractice(
            Practices.plan(3, 2),
            MonotonicClock.startNow(),
            Journal.none(),
            List.of(),
            state -> {});
    PracticeKeys keys =
        new PracticeKeys(
            List.of(),
            false,
            new PracticeKeys.Listener() {
              @Override
              public void squeezeBegan(long nanoTime) {
                // Not used here.
              }

              @Override
              public void squeezeEnded(long nanoTime) {
                // Not used here.
              }

              @Override
              public void compressed(long nanoTime) {
                // Not used here.
              }

              @Override
              public void action(PracticeKeys.Action action, long nanoTime) {
                // Not used here.
              }
            });
    return new LiveScreen(
        new Kit(look), practice, Practices.protocol(), keys, () -> "", () -> false);
  }

  private static void layOut(Container container) {
    container.doLayout();
    for (Component part : container.getComponents()) {
      if (part instanceof Container inner) {
        layOut(inner);
      }
    }
  }
}
