package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static squeezewell.desktop.screens.ScreenParts.allOf;
import static squeezewell.desktop.screens.ScreenParts.everythingLiesWithin;
import static squeezewell.desktop.screens.ScreenParts.layOut;

import java.util.List;
import javax.swing.JCheckBox;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.look.Palette;
import squeezewell.desktop.parts.ActionButton;
import squeezewell.desktop.parts.BreathPad;
import squeezewell.desktop.parts.TaskButton;
import squeezewell.desktop.parts.Widgets;
import squeezewell.live.LiveStation;
import squeezewell.session.Journal;
import squeezewell.session.MonotonicClock;
import squeezewell.station.file.Station;
import squeezewell.station.run.StationMode;
import squeezewell.station.run.StationPractice;
import squeezewell.station.run.StationSetup;

class StationRunScreenTest {
  /** Inner sizes of a window, and text sizes; the sizes are our own choice. */
  @ParameterizedTest
  @CsvSource({
    "412,892,1,0",
    "824,976,2,0",
    "824,556,2,0",
    "330,640,1,0",
    "412,892,1,1",
    "824,976,2,1",
    "824,556,2,1",
    "330,640,1,1"
  })
  void everythingFitsAndCanBeTapped(int width, int height, double scale, long exercise)
      throws Exception {
    Look look =
        new Look(Palette.lightTheme(), scale)
            .fitting(width, height, StationRunScreen.LEAST_WIDTH, StationRunScreen.LEAST_HEIGHT);
    StationRunScreen screen = screen(look, exercise == 1);
    screen.setSize(width, height);
    layOut(screen);
    everythingLiesWithin(screen);
    List<ActionButton> actions = allOf(screen, ActionButton.class);
    assertThat(actions).hasSize(5);
    actions.forEach(b -> assertThat(b.getHeight()).isGreaterThanOrEqualTo(look.px(46)));
    List<TaskButton> tasks = allOf(screen, TaskButton.class);
    // What is next; then two tasks of the preparation, or those of the exercise with what is left.
    assertThat(tasks).hasSizeGreaterThanOrEqualTo(exercise == 1 ? 10 : 3);
    for (TaskButton task : tasks) {
      assertThat(task.getHeight()).isGreaterThanOrEqualTo(look.px(46));
      assertThat(task.getWidth()).isGreaterThanOrEqualTo(look.px(46));
      assertThat(task.getAccessibleContext().getAccessibleDescription()).startsWith("Key ");
    }
    List<BreathPad> pads = allOf(screen, BreathPad.class);
    assertThat(pads).hasSize(exercise == 1 ? 1 : 0);
    pads.forEach(pad -> assertThat(pad.getHeight()).isGreaterThanOrEqualTo(look.px(48)));
  }

  @Test
  void theKitStaysTickedWhenTheScreenIsMadeAnewInAnotherSize() throws Exception {
    Ticks ticks = new Ticks();
    List<JCheckBox> before =
        allOf(screen(new Look(Palette.lightTheme(), 1), false, ticks), JCheckBox.class);
    assertThat(before).hasSizeGreaterThan(3).noneMatch(JCheckBox::isSelected);
    before.get(0).doClick(0);
    before.get(1).doClick(0);
    before.get(2).doClick(0);
    before.get(1).doClick(0);
    List<JCheckBox> after =
        allOf(screen(new Look(Palette.lightTheme(), 2), false, ticks), JCheckBox.class);
    assertThat(after.stream().filter(JCheckBox::isSelected).map(JCheckBox::getText))
        .containsExactly(before.get(0).getText(), before.get(2).getText());
  }

  private static StationRunScreen screen(Look look, boolean exercise) throws Exception {
    return screen(look, exercise, new Ticks());
  }

  private static StationRunScreen screen(Look look, boolean exercise, Ticks ticks)
      throws Exception {
    Station station = StationRunViewTest.station();
    LiveStation live =
        new LiveStation(
            station,
            StationSetup.of(station, StationMode.ALONE, List.of(), 1),
            StationPractice.plan(
                station,
                Practices.protocol(),
                StationsView.guidance(station, Practices.protocol()).orElseThrow(),
                0),
            MonotonicClock.startNow(),
            Journal.none(),
            List.of(),
            now -> {});
    if (exercise) {
      live.post((to, at) -> to.begin(at), System.nanoTime());
      live.start();
      long end = System.nanoTime() + 10_000_000_000L;
      while (!live.now().station().exerciseFromNanos().isPresent()) {
        assertThat(System.nanoTime()).as("the station begins").isLessThan(end);
        Thread.onSpinWait();
      }
    }
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
    StationRunScreen screen =
        new StationRunScreen(
            new Widgets(look), live, keys, ticks, new SoundLine(() -> "", () -> false, () -> {}));
    if (exercise) {
      live.close();
    }
    return screen;
  }
}
