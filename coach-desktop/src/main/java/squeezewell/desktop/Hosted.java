package squeezewell.desktop;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import javax.swing.JComponent;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.RunningView;
import squeezewell.desktop.screens.SoundLine;
import squeezewell.files.Settings;
import squeezewell.live.PracticeSound;
import squeezewell.live.Shown;

/**
 * What runs in the window, a practice, a station or a replay, with its sound and its screen. The
 * screen is made anew when the window's size asks for other type. Used on the event thread.
 *
 * @param <S> its screen
 */
abstract class Hosted<S extends JComponent & RunningView> {
  private Optional<S> screen = Optional.empty();
  private double scale = 1;

  /** What is looked at. */
  abstract Shown shown();

  abstract PracticeSound sound();

  /** Large type must not push the pad or the column off a small screen in mid-practice. */
  abstract Widgets fitted(Stage stage);

  abstract S screen(Widgets kit);

  /** Ends it now. */
  abstract void close();

  /** The screen, while there is one. */
  final Optional<S> screen() {
    return screen;
  }

  /**
   * Shows it.
   *
   * @param mayLeave asked when the window is to close meanwhile
   */
  final void show(Stage stage, BooleanSupplier mayLeave) {
    stopDrawing();
    Widgets kit = fitted(stage);
    scale = kit.look().scale();
    S made = screen(kit);
    screen = Optional.of(made);
    stage.showScreen(made, mayLeave);
    made.open();
  }

  /** Whether its screen has the type that the window's size asks for. */
  final boolean fits(Stage stage) {
    return fitted(stage).look().scale() == scale;
  }

  /** What a person must know; empty if all is well. */
  String notice() {
    return sound().notice();
  }

  final SoundLine soundLine() {
    return new SoundLine(this::notice, sound()::muted, sound()::toggleMute);
  }

  final void stopDrawing() {
    screen.ifPresent(RunningView::close);
  }

  final void apply(Settings settings) {
    sound().apply(settings);
  }
}
