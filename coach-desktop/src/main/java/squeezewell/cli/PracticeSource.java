package squeezewell.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.files.ProtocolStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Rhythm;
import squeezewell.session.EventListReader;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.words.Wording;

/**
 * Reads a file that a person names as a practice: a session or an event list. A list says nothing
 * of what was asked; options do.
 */
final class PracticeSource {
  private static final Wording WORDS = Wording.beside(PracticeSource.class);
  private static final int USUAL_MINUTES = 5;

  private PracticeSource() {}

  static boolean isEventList(String file) {
    return file.toLowerCase(Locale.ROOT).endsWith(".csv");
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
      return silencedIfTest(list(source, practice, choice, prompts), prompts);
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

  /** With no prompts they were silent from the start, unless the list itself tells when. */
  private static Session silencedIfTest(Session list, Prompting prompts) {
    boolean told = list.events().stream().anyMatch(e -> e.what() == EventType.PROMPTS_OFF);
    if (prompts != Prompting.NONE || told) {
      return list;
    }
    List<SessionEvent> events = new ArrayList<>();
    events.add(new SessionEvent(1, 0, Fact.Prompts.test()));
    for (SessionEvent event : list.events()) {
      events.add(new SessionEvent(events.size() + 1, event.atNanos(), event.fact()));
    }
    return new Session(list.header(), events, list.notes());
  }

  /**
   * Reads a list. Without {@code --minutes} the practice lasts until the list's {@code finish}, or
   * else until the last breath has had its interval or the last event has come, whichever is later.
   * A list without events is taken to last {@value #USUAL_MINUTES} minutes, with a note.
   */
  private static Session list(
      Path file, PracticeOptions options, PracticeOptions.Choice choice, Prompting prompts)
      throws BadInputException {
    if (options.hasMinutes()) {
      return EventListReader.read(file, header(choice, options.lengthNanos(0), prompts));
    }
    Session open = EventListReader.read(file, header(choice, PracticePlan.LONGEST_NANOS, prompts));
    if (open.events().isEmpty()) {
      return new Session(
          header(choice, options.lengthNanos(USUAL_MINUTES), prompts),
          List.of(),
          List.of(WORDS.say("list.no-length", USUAL_MINUTES)));
    }
    long end = end(open.events(), spacing(choice.guidance().rhythm()));
    long practised = open.schedule().practisedAt(end);
    long length = Math.max(1, Math.min(practised, PracticePlan.LONGEST_NANOS));
    return new Session(header(choice, length, prompts), open.events(), open.notes());
  }

  private static long end(List<SessionEvent> events, long spacingNanos) {
    long end = 0;
    for (SessionEvent event : events) {
      if (event.what() == EventType.FINISH) {
        return event.atNanos();
      }
      long known = event.what() == EventType.BREATH ? spacingNanos : 0;
      end = Math.max(end, event.atNanos() + known);
    }
    return end;
  }

  /** How long a breath stands for, until the next is asked for. */
  private static long spacing(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.CompressionCycle cycle) {
      return cycle.pauseNanos() / cycle.breathsPerCycle();
    }
    return rhythm.steadyBreaths().orElseThrow().interval().nanosAt(1);
  }

  private static SessionHeader header(
      PracticeOptions.Choice choice, long lengthNanos, Prompting prompting) {
    PracticePlan plan = choice.plan(0, lengthNanos, 0);
    return new SessionHeader(
        Instant.EPOCH,
        SessionHeader.Origin.EVENT_LIST,
        "",
        choice.protocol(),
        new PracticePlan(
            plan.guidance(),
            plan.alternatives(),
            plan.countInNanos(),
            plan.lengthNanos(),
            plan.leadNanos(),
            prompting,
            plan.rescuers(),
            0));
  }
}
