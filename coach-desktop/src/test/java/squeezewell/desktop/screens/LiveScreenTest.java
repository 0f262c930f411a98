package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.ScreenParts.allOf;
import static squeezewell.desktop.screens.ScreenParts.everythingLiesWithin;
import static squeezewell.desktop.screens.ScreenParts.layOut;

import java.util.List;
import javax.swing.JComponent;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.BreathPad;
import squeezewell.desktop.parts.Widgets;
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
    everythingLiesWithin(screen);
    allOf(screen, BreathPad.class)
        .forEach(pad -> assertThat(pad.getHeight()).isGreaterThanOrEqualTo(look.px(48)));
    assertThat(allOf(screen, BreathPad.class)).hasSize(1);
    screen.toggleFindings();
    layOut(screen);
    everythingLiesWithin(screen);
  }

  @ParameterizedTest
  @CsvSource({"412,892,1", "824,976,2", "824,556,2", "330,556,1"})
  void everyFindingCanBeTapped(int width, int height, double scale) {
    Look look =
        new Look(Palette.lightTheme(), scale)
            .fitting(width, height, LiveScreen.LEAST_WIDTH, LiveScreen.LEAST_HEIGHT);
    LiveScreen screen = screen(look);
    screen.setSize(width, height);
    screen.toggleFindings();
    layOut(screen);
    List<ActionButton> buttons = allOf(screen, ActionButton.class);
    // Seven that may be found in an adult with a pulse, and the one that closes.
    assertThat(buttons).hasSize(8);
    buttons.forEach(
        b -> {
          assertThat(b.getHeight()).isGreaterThanOrEqualTo(look.px(46));
          assertThat(b.getAccessibleContext().getAccessibleDescription()).startsWith("Key ");
        });
    // A screen reader is told of the list as a whole and of what each leads to.
    JComponent list = (JComponent) buttons.get(0).getParent();
    assertThat(list.isFocusable()).isTrue();
    assertThat(list.getAccessibleContext().getAccessibleName())
        .startsWith("What was found? 1, No pulse; 2, ")
        .contains("Vomit in the airway");
    assertThat(list.getAccessibleContext().getAccessibleDescription()).contains("F closes");
    assertThat(buttons.get(0).getAccessibleContext().getAccessibleDescription())
        .startsWith("Key 1. Then: ");
    assertThat(screen.closeFindings()).isTrue();
    assertThat(screen.closeFindings()).isFalse();
    assertThat(allOf(screen, BreathPad.class)).hasSize(1);
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
    List<ActionButton> buttons = allOf(screen, ActionButton.class);
    buttons.forEach(b -> assertThat(b.getHeight()).isGreaterThanOrEqualTo(look.px(46)));
    assertThat(buttons).hasSize(PracticeKeys.Action.values().length);
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
            new EventTime(),
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

              @Override
              public void finishWasShort() {
                // Not used here.
              }

              @Override
              public void digit(int digit, long nanoTime) {
                // Not used here.
              }
            });
    return new LiveScreen(
        new Widgets(look),
        practice,
        Practices.protocol(),
        keys,
        new SoundLine(() -> "", () -> false, () -> {}));
  }
}
