package squeezewell.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import squeezewell.cue.PracticePlan;
import squeezewell.cue.Prompting;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Rhythm;
import squeezewell.session.EventListReader;
import squeezewell.session.EventType;
import squeezewell.session.Fact;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.words.Wording;

/** Reads an event list as a session. The list says nothing of what was asked; options do. */
final class EventListSource {
  private static final Wording WORDS = Wording.beside(EventListSource.class);
  private static final int USUAL_MINUTES = 5;

  private EventListSource() {}

  /**
   * Reads a list. Without {@code --minutes} the practice lasts until the list's {@code finish}, or
   * else until the last breath has had its interval or the last event has come, whichever is later.
   * A list without events is taken to last {@value #USUAL_MINUTES} minutes, with a note.
   *
   * @param prompting how far breaths were prompted; with none they were silent from the start,
   *     unless the list itself tells when prompts went off
   */
  static Session read(
      Path file, PracticeOptions options, Prompting prompting, PracticeOptions.Choice choice)
      throws BadInputException {
    Session read = read(file, options, choice, prompting);
    boolean told = read.events().stream().anyMatch(e -> e.what() == EventType.PROMPTS_OFF);
    if (prompting != Prompting.NONE || told) {
      return read;
    }
    List<SessionEvent> events = new ArrayList<>();
    events.add(new SessionEvent(1, 0, Fact.Prompts.test()));
    for (SessionEvent event : read.events()) {
      events.add(new SessionEvent(events.size() + 1, event.atNanos(), event.fact()));
    }
    return new Session(read.header(), events, read.notes());
  }

  private static Session read(
      Path file, PracticeOptions options, PracticeOptions.Choice choice, Prompting prompting)
      throws BadInputException {
    if (options.hasMinutes()) {
      return EventListReader.read(file, header(choice, options.lengthNanos(0), prompting));
    }
    Session open =
        EventListReader.read(file, header(choice, PracticePlan.LONGEST_NANOS, prompting));
    if (open.events().isEmpty()) {
      return new Session(
          header(choice, options.lengthNanos(USUAL_MINUTES), prompting),
          List.of(),
          List.of(WORDS.say("list.no-length", USUAL_MINUTES)));
    }
    long end = end(open.events(), spacing(choice.guidance().rhythm()));
    long practised = open.schedule().practisedAt(end);
    long length = Math.max(1, Math.min(practised, PracticePlan.LONGEST_NANOS));
    return new Session(header(choice, length, prompting), open.events(), open.notes());
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
    PracticePlan plan = PracticeOptions.plan(choice, 0, lengthNanos);
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
