package squeezewell.coach;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import squeezewell.session.Fact;
import squeezewell.session.Journal;
import squeezewell.session.SavingTrouble;
import squeezewell.session.SessionEvent;

/**
 * Writes the events of a practice down, numbered and in order. One that can't be saved is kept and
 * saved before the next, since a journal has no gaps.
 */
final class EventLog {
  private final Journal journal;
  private final Deque<SessionEvent> unsaved = new ArrayDeque<>();
  private int lastNumber;
  private long lastNanos;
  private String trouble = "";

  EventLog(Journal journal) {
    this.journal = Objects.requireNonNull(journal, "journal");
  }

  /** Writes an event down; returns its time, which is not before that of the event before. */
  long append(Fact fact, long at) {
    lastNanos = Math.max(at, lastNanos);
    lastNumber++;
    unsaved.add(new SessionEvent(lastNumber, lastNanos, fact));
    try {
      while (!unsaved.isEmpty()) {
        journal.append(unsaved.peek());
        unsaved.remove();
      }
      trouble = "";
    } catch (IOException e) {
      trouble = SavingTrouble.notSaved(e);
    }
    return lastNanos;
  }

  /** The number of the last event; 0 before the first. */
  int lastNumber() {
    return lastNumber;
  }

  /** The time of the last event, session time; 0 before the first. */
  long lastNanos() {
    return lastNanos;
  }

  /** Why events are not being saved, for people; empty if they are. */
  String trouble() {
    return trouble;
  }
}
