package squeezewell.cli;

import java.util.function.ToIntFunction;
import picocli.CommandLine.Option;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;

/** How far breaths are prompted: {@code --prompts}. */
final class PromptsOption {
  @Option(names = "--prompts", paramLabel = "WORD")
  Prompting prompts = Prompting.THROUGHOUT;

  @Option(names = "--start-level", paramLabel = "N", converter = OptionTypes.StartLevel.class)
  Long startLevel;

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
    PracticePlan with = plan.with(prompts);
    if (with.prompting() != prompts) {
      throw unfit(prompts);
    }
    if (prompts == Prompting.FADING) {
      return with.withStartLevel(
          startLevel == null ? usual.applyAsInt(plan.guidance()) : startLevel.intValue());
    }
    if (startLevel != null) {
      throw BadInputException.notAllowed(
          "--start-level", "", startLevel.toString(), "a level only with --prompts fading");
    }
    return with;
  }

  /** Where the chest is compressed, breaths are prompted throughout. */
  static BadInputException unfit(Prompting prompts) {
    return BadInputException.notAllowed(
        "--prompts",
        "",
        prompts.word(),
        Prompting.THROUGHOUT.word() + " where the chest is compressed");
  }
}
