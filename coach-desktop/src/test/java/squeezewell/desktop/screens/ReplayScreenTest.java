package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.ScreenParts.allOf;
import static squeezewell.desktop.screens.ScreenParts.everythingLiesWithin;
import static squeezewell.desktop.screens.ScreenParts.layOut;

import java.awt.event.KeyEvent;
import java.util.List;
import javax.swing.JTextArea;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.coach.Replay;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.Ribbon;
import squeezewell.desktop.parts.SessionSlider;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.ReplayPlayer;
import squeezewell.session.ManualClock;

class ReplayScreenTest {
  private static final long SECOND = 1_000_000_000L;

  private final ManualClock clock = new ManualClock();
  private final ReplayPlayer player =
      new ReplayPlayer(new Replay(ReplayViewTest.session()), clock, source -> {});
  private int left;
  private int muted;

  private ReplayScreen screen(Look look) {
    return screen(look, "1 Mar 2026, 09:00");
  }

  private ReplayScreen screen(Look look, String when) {
    return new ReplayScreen(
        new Widgets(look),
        player,
        when,
        new SoundLine(() -> "No sound.", () -> muted % 2 == 1, () -> muted++),
        () -> left++);
  }

  /** Inner sizes of a window, and text sizes; the sizes are our own choice. */
  @ParameterizedTest
  @CsvSource({"412,892,1", "824,976,2", "824,620,2", "350,600,1", "1500,620,1.5"})
  void nothingFallsOffTheScreenAtAnySize(int width, int height, double scale) {
    Look look =
        new Look(Palette.lightTheme(), scale)
            .fitting(width, height, ReplayScreen.LEAST_WIDTH, ReplayScreen.LEAST_HEIGHT);
    ReplayScreen screen = screen(look);
    screen.setSize(width, height);
    layOut(screen);
    everythingLiesWithin(screen);
    List<ActionButton> buttons = allOf(screen, ActionButton.class);
    assertThat(buttons).hasSize(9);
    buttons.forEach(
        b -> {
          assertThat(b.getHeight()).as(b.getText()).isGreaterThanOrEqualTo(look.px(46));
          assertThat(b.getAccessibleContext().getAccessibleDescription()).startsWith("Key ");
        });
  }

  /** The story and the controls beside each other leave room for larger type in a low window. */
  @ParameterizedTest
  @CsvSource({"1024,600,2", "824,620,2", "680,400,1", "1500,620,1.5"})
  void nothingFallsOffALowScreenEither(int width, int height, double scale) {
    Look look =
        new Look(Palette.lightTheme(), scale)
            .fitting(width, height, ReplayScreen.BESIDE_WIDTH, ReplayScreen.BESIDE_HEIGHT);
    ReplayScreen screen = screen(look);
    screen.setSize(width, height);
    layOut(screen);
    everythingLiesWithin(screen);
    SessionSlider slider = allOf(screen, SessionSlider.class).get(0);
    Ribbon ribbon = allOf(screen, Ribbon.class).get(0);
    // In the right half and in the left one.
    assertThat(SwingUtilities.convertPoint(slider, 0, 0, screen).x).isGreaterThan(width / 2);
    assertThat(SwingUtilities.convertPoint(ribbon, ribbon.getWidth(), 0, screen).x)
        .isLessThanOrEqualTo(width / 2);
    allOf(screen, ActionButton.class)
        .forEach(
            b -> assertThat(b.getHeight()).as(b.getText()).isGreaterThanOrEqualTo(look.px(46)));
    // The window grows: one column again.
    screen.setSize(width, look.px(ReplayScreen.LEAST_HEIGHT));
    layOut(screen);
    everythingLiesWithin(screen);
    assertThat(SwingUtilities.convertPoint(slider, 0, 0, screen).x).isLessThan(width / 4);
  }

  /** A date and a name of 80 letters; a name may have 200. */
  @ParameterizedTest
  @CsvSource({"412,892,1", "824,620,2", "350,640,1"})
  void aLongNameIsShownWholeAndPushesNothingOff(int width, int height, double scale) {
    Look look =
        new Look(Palette.lightTheme(), scale)
            .fitting(width, height, ReplayScreen.LEAST_WIDTH, ReplayScreen.LEAST_HEIGHT);
    String name = "Trainee of the second group, ".repeat(3).substring(0, 80);
    ReplayScreen screen = screen(look, "1 Mar 2026, 09:00, " + name);
    screen.setSize(width, height);
    layOut(screen);
    everythingLiesWithin(screen);
    JTextArea title = allOf(screen, JTextArea.class).get(0);
    assertThat(title.getText()).endsWith(name);
    assertThat(title.getHeight()).isGreaterThanOrEqualTo(title.getPreferredSize().height);
    assertThat(title.getWidth()).isGreaterThanOrEqualTo(title.getPreferredSize().width);
  }

  @Test
  void theKeysPlaySkipChangeTheSpeedAndLeave() {
    ReplayScreen screen = screen(new Look(Palette.darkTheme(), 1));
    press(screen, KeyEvent.VK_SPACE);
    assertThat(player.playing()).isTrue();
    press(screen, KeyEvent.VK_SPACE);
    press(screen, KeyEvent.VK_RIGHT);
    press(screen, KeyEvent.VK_RIGHT);
    press(screen, KeyEvent.VK_LEFT);
    assertThat(player.nowNanos()).isEqualTo(10 * SECOND);
    press(screen, KeyEvent.VK_UP);
    press(screen, KeyEvent.VK_UP);
    press(screen, KeyEvent.VK_DOWN);
    assertThat(player.speed()).isEqualTo(2);
    press(screen, KeyEvent.VK_PAGE_DOWN);
    assertThat(player.nowNanos()).isEqualTo(20 * SECOND);
    press(screen, KeyEvent.VK_PAGE_DOWN);
    assertThat(player.nowNanos()).isEqualTo(120 * SECOND);
    press(screen, KeyEvent.VK_PAGE_UP);
    assertThat(player.nowNanos()).isEqualTo(20 * SECOND);
    press(screen, KeyEvent.VK_END);
    assertThat(player.nowNanos()).isEqualTo(150 * SECOND);
    press(screen, KeyEvent.VK_HOME);
    assertThat(player.nowNanos()).isZero();
    press(screen, KeyEvent.VK_M);
    assertThat(muted).isEqualTo(1);
    press(screen, KeyEvent.VK_ESCAPE);
    assertThat(left).isEqualTo(1);
  }

  @Test
  void theSliderTellsAndSetsTheMoment() {
    ReplayScreen screen = screen(new Look(Palette.lightTheme(), 1));
    SessionSlider slider = allOf(screen, SessionSlider.class).get(0);
    assertThat(slider.getMaximum()).isEqualTo(1_500);
    slider.setValue(424);
    assertThat(player.nowNanos()).isEqualTo(42_400_000_000L);
    assertThat(slider.getAccessibleContext().getAccessibleDescription()).isEqualTo("0:39 of 2:27");
    press(screen, KeyEvent.VK_RIGHT);
    assertThat(slider.getValue()).isEqualTo(524);
  }

  private static void press(ReplayScreen screen, int key) {
    screen
        .getActionForKeyStroke(KeyStroke.getKeyStroke(key, 0))
        .actionPerformed(new java.awt.event.ActionEvent(screen, 0, ""));
  }
}
