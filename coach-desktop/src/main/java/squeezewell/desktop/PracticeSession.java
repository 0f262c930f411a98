package squeezewell.desktop;

import java.util.List;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.live.LiveScreen;
import squeezewell.files.Comfort;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.LivePractice;
import squeezewell.protocol.Protocol;

/** A practice that runs. */
final class PracticeSession extends LiveSession<LiveScreen> {
  private final LivePractice practice;
  private final Comfort comfort;
  private final Runnable projector;

  PracticeSession(
      HomeFolder home,
      Settings settings,
      EventTime time,
      Protocol protocol,
      PracticePlan plan,
      Runnable projector,
      Consumer<LiveSession<?>> onEnd) {
    super(home, settings, time, protocol, plan, onEnd);
    comfort = settings.comfort();
    this.projector = projector;
    practice =
        new LivePractice(
            plan, clock(), kept(), List.of(sound()), state -> changed(state.finished()));
  }

  @Override
  LivePractice run() {
    return practice;
  }

  @Override
  Widgets fitted(Stage stage) {
    return stage.kit();
  }

  @Override
  LiveScreen screen(Widgets kit) {
    return new LiveScreen(
        kit.look(), practice, protocol(), keys(), soundLine(), comfort, projector);
  }

  @Override
  public void digit(int digit, long nanoTime) {
    screen().ifPresent(shown -> shown.choose(digit, nanoTime));
  }

  @Override
  void act(PracticeKeys.Action action, long nanoTime) {
    switch (action) {
      case FINDINGS -> screen().ifPresent(LiveScreen::toggleChanges);
      case UNDO_FINDING -> {
        // What is offered was worked out before the slip is taken back.
        screen().ifPresent(LiveScreen::closePanel);
        practice.post(Command.UNDO_FINDING, nanoTime);
      }
      case PAUSE -> screen().ifPresent(LiveScreen::toggleMore);
      case FINISH -> practice.post(Command.FINISH, nanoTime);
      default -> throw new IllegalArgumentException(action.name());
    }
  }
}
