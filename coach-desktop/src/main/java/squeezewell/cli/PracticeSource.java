package squeezewell.cli;

import java.nio.file.Path;
import java.util.Locale;
import squeezewell.cue.Prompting;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.session.Session;
import squeezewell.session.SessionReader;

/** Reads a file that a person names as a practice: a session or an event list. */
final class PracticeSource {
  private PracticeSource() {}

  static boolean isEventList(String file) {
    return file.toLowerCase(Locale.ROOT).endsWith(".csv");
  }

  /**
   * Reads a session, or an event list with what the options say was asked.
   *
   * @param source where {@code file} is
   */
  static Session read(
      String file, Path source, PracticeOptions practice, HomeOption home, CliContext around)
      throws BadInputException {
    return read(file, source, practice, Prompting.THROUGHOUT, home, around);
  }

  /**
   * Reads a session, or an event list with what the options say was asked.
   *
   * @param source where {@code file} is
   * @param prompts how far breaths were prompted; for an event list only
   */
  static Session read(
      String file,
      Path source,
      PracticeOptions practice,
      Prompting prompts,
      HomeOption home,
      CliContext around)
      throws BadInputException {
    if (isEventList(file)) {
      PracticeOptions.Choice choice = practice.choice(ProtocolStore.read(home.home()), around::say);
      if (prompts != Prompting.THROUGHOUT && !Prompting.mayFallSilent(choice.guidance())) {
        throw PromptsOption.unfit(prompts);
      }
      return EventListSource.read(source, practice, prompts, choice);
    }
    if (!file.toLowerCase(Locale.ROOT).endsWith(".jsonl")) {
      throw BadInputException.notAllowed(
          "FILE", "", file, "a session, ending in .jsonl, or an event list, ending in .csv");
    }
    return SessionReader.read(source);
  }

  /** Refuses options that say what was asked where every file says so itself. */
  static void refuseOptions(PracticeOptions practice) throws BadInputException {
    if (practice.anyGiven()) {
      throw BadInputException.fault(
          "--protocol, --patient, --age, --weight, --situation, --rescuers, --minutes",
          "",
          "a session says itself what was asked; allowed: these options with an event list");
    }
  }
}
