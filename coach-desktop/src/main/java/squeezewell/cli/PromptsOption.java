package squeezewell.cli;

import picocli.CommandLine.Option;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;

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

  /** That practice with breaths prompted as far as was asked. */
  PracticePlan in(PracticePlan plan) throws BadInputException {
    Prompting chosen =
        PracticeOptions.word("--prompts", prompts, Prompting.values(), Prompting::word);
    PracticePlan with = plan.with(chosen);
    if (with.prompting() != chosen) {
      throw BadInputException.notAllowed(
          "--prompts", "", prompts, Prompting.THROUGHOUT.word() + " where the chest is compressed");
    }
    return with;
  }
}
