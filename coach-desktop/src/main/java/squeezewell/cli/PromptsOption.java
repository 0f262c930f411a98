package squeezewell.cli;

import java.util.function.ToIntFunction;
import picocli.CommandLine.Option;
import squeezewell.cue.CueFader;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;

/** How far breaths are prompted: {@code --prompts}. */
final class PromptsOption {
  @Option(
      names = "--prompts",
      paramLabel = "WORD",
      description =
          "throughout: every breath is prompted (if it is not given). fading: fewer and fewer while"
              + " the rhythm is held; they come back when it is lost. none: no breath is prompted"
              + " after the count-in, a test of two minutes or more. Reminders and limits are told"
              + " in any case. Rhythms with compressions are prompted throughout.")
  String prompts = Prompting.THROUGHOUT.word();

  @Option(
      names = "--start-level",
      paramLabel = "N",
      description =
          "With --prompts fading: the level to begin with, 0 (every breath prompted at first) to 4."
              + " If it is not given, drill goes on from the trainee's last such practice, and demo"
              + " begins with 0.")
  String startLevel = "";

  /** That practice with breaths prompted as far as was asked. */
  PracticePlan in(PracticePlan plan) throws BadInputException {
    return in(plan, guidance -> 0);
  }

  /**
   * That practice with breaths prompted as far as was asked.
   *
   * @param usual the level to begin with if none is given; asked only where prompts fade
   */
  PracticePlan in(PracticePlan plan, ToIntFunction<Guidance> usual) throws BadInputException {
    Prompting chosen =
        PracticeOptions.word("--prompts", prompts, Prompting.values(), Prompting::word);
    PracticePlan with = plan.with(chosen);
    if (with.prompting() != chosen) {
      throw BadInputException.notAllowed(
          "--prompts", "", prompts, Prompting.THROUGHOUT.word() + " where the chest is compressed");
    }
    if (chosen == Prompting.FADING) {
      return with.withStartLevel(
          startLevel.isEmpty()
              ? usual.applyAsInt(plan.guidance())
              : (int) Numbers.whole("--start-level", startLevel, 0, CueFader.HIGHEST_START));
    }
    if (!startLevel.isEmpty()) {
      throw BadInputException.notAllowed(
          "--start-level", "", startLevel, "a level only with --prompts fading");
    }
    return with;
  }
}
