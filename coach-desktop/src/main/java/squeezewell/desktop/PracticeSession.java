package squeezewell.desktop;

import java.util.List;
import java.util.function.Consumer;
import squeezewell.coach.Command;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Segment;
import squeezewell.desktop.input.EventTime;
import squeezewell.desktop.input.PracticeKeys;
import squeezewell.desktop.parts.Widgets;
import squeezewell.desktop.screens.LiveScreen;
import squeezewell.files.HomeFolder;
import squeezewell.files.Settings;
import squeezewell.live.LivePractice;
import squeezewell.protocol.Protocol;

/** A practice that runs. */
final class PracticeSession extends LiveSession<LiveScreen> {
  private final LivePractice practice;

  PracticeSession(
      HomeFolder home,
      Settings settings,
      EventTime time,
      Protocol protocol,
      PracticePlan plan,
      Consumer<LiveSession<?>> onEnd) {
    super(home, settings, time, protocol, plan, onEnd);
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
    return stage.fittedKit(LiveScreen.LEAST_WIDTH, LiveScreen.LEAST_HEIGHT);
  }

  @Override
  LiveScreen screen(Widgets kit) {
    return new LiveScreen(kit, practice, protocol(), keys(), soundLine());
  }

  @Override
  public void digit(int digit, long nanoTime) {
    screen().ifPresent(shown -> shown.choose(digit, nanoTime));
  }

  @Override
  void act(PracticeKeys.Action action, long nanoTime) {
    switch (action) {
      case FINDINGS -> screen().ifPresent(LiveScreen::toggleFindings);
      case UNDO_FINDING -> {
        // What is offered was worked out before the slip is taken back.
        screen().ifPresent(LiveScreen::closeFindings);
        practice.post(Command.UNDO_FINDING, nanoTime);
      }
      case PAUSE -> {
        // Escape first leaves what stands open.
        if (!screen().map(LiveScreen::closeFindings).orElse(false)) {
          toggle(Segment.Kind.PAUSED, nanoTime);
        }
      }
      case FINISH -> practice.post(Command.FINISH, nanoTime);
      default -> throw new IllegalArgumentException(action.name());
    }
  }
}
