package squeezewell.desktop.screens.practice;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.cue.Prompting;
import squeezewell.protocol.Guidance;
import squeezewell.trainee.FadingStart;
import squeezewell.trainee.RecordBook;

/**
 * How far breaths can be prompted in a practice to come, given what was practised before. Pure.
 *
 * @param book the past practices
 * @param zone where their days are counted
 */
record PromptsView(RecordBook book, ZoneId zone) {
  /**
   * One way.
   *
   * @param prompting how far breaths are prompted
   * @param startLevel the level that fading begins with; 0 where prompts do not fade
   * @param anew whether going on from last time is offered too, and this is not it
   */
  record Way(Prompting prompting, int startLevel, String label, boolean anew) {
    @Override
    public String toString() {
      return label;
    }
  }

  /** The ways there are; fading that goes on from last time stands before fading anew. */
  List<Way> choices(String trainee, Guidance guidance) {
    int level = book.fadingStart(trainee, guidance).map(FadingStart::level).orElse(0);
    List<Way> choices = new ArrayList<>();
    for (Prompting each : PlanView.prompting(guidance)) {
      if (each == Prompting.FADING && level > 0) {
        choices.add(new Way(each, level, each.label() + ", from level " + level, false));
        choices.add(new Way(each, 0, each.label() + ", from the beginning", true));
      } else {
        choices.add(new Way(each, 0, each.label(), false));
      }
    }
    return List.copyOf(choices);
  }

  /** What a way means, a paragraph each. */
  List<String> lines(String trainee, Guidance guidance, Way chosen) {
    Optional<FadingStart> last = book.fadingStart(trainee, guidance);
    boolean fades = chosen.prompting() == Prompting.FADING && Prompting.mayFallSilent(guidance);
    List<String> lines = new ArrayList<>();
    if (fades && last.isPresent() && last.get().lastLevel() > 0) {
      lines.add(
          last.get().words(zone)
              + " You begin with "
              + FadingStart.asks(chosen.startLevel())
              + ".");
    }
    if (!fades || chosen.startLevel() == 0) {
      lines.addAll(PlanView.prompts(guidance, chosen.prompting()));
    } else {
      lines.add("Hold the rhythm and more of them fall silent. They come back when you lose it.");
    }
    String held = book.heldAlone(trainee, guidance, zone).words();
    if (chosen.prompting() == Prompting.NONE && Prompting.mayFallSilent(guidance)) {
      Optional.of(held).filter(words -> !words.isEmpty()).ifPresent(lines::add);
    }
    return List.copyOf(lines);
  }
}
