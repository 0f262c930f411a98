package squeezewell.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import squeezewell.input.BadInputException;
import squeezewell.session.Journal;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.storage.FileJournal;
import squeezewell.words.Wording;

/** A practice faster than time: its facts stay in memory, and in a home if one was named. */
final class VirtualPractice {
  private static final Wording WORDS = Wording.beside(VirtualPractice.class);

  private VirtualPractice() {}

  /** Practises to the end. */
  interface Body {
    /** What went wrong with keeping it, in a sentence; empty if nothing did. */
    String practise(Journal journal);
  }

  /**
   * Practises, and says where the session is kept if it is.
   *
   * @throws CommandFailedException if it could not be kept
   */
  static Session run(SessionHeader header, HomeOption home, CliContext around, Body body)
      throws BadInputException, IOException, CommandFailedException {
    List<SessionEvent> events = new ArrayList<>();
    if (home.isGiven()) {
      Path file = home.home().make().newSessionFile(header.startedAt());
      try (FileJournal kept = FileJournal.create(file, header)) {
        practise(body, new Copy(events, kept));
      }
      around.say(WORDS.say("kept", file));
    } else {
      practise(body, new Copy(events, Journal.none()));
    }
    return new Session(header, events, List.of());
  }

  private static void practise(Body body, Journal journal) throws CommandFailedException {
    String trouble = body.practise(journal);
    if (!trouble.isEmpty()) {
      throw new CommandFailedException(trouble);
    }
  }

  /** Keeps the facts in memory beside another journal. */
  private record Copy(List<SessionEvent> events, Journal kept) implements Journal {
    @Override
    public void append(SessionEvent event) throws IOException {
      kept.append(event);
      events.add(event);
    }

    @Override
    public void close() throws IOException {
      kept.close();
    }
  }
}
