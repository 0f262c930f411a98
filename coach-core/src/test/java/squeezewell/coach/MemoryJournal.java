package squeezewell.coach;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;

/** A journal in memory that can be made to fail. */
final class MemoryJournal implements Journal {
  final List<SessionEvent> events = new ArrayList<>();
  boolean full;

  @Override
  public void append(SessionEvent event) throws IOException {
    if (full) {
      throw new IOException("no space left");
    }
    events.add(event);
  }

  @Override
  public void close() {
    // Nothing is open.
  }

  /** The events as "milliseconds word detail". */
  List<String> lines() {
    return events.stream()
        .map(e -> (e.atNanos() / 1_000_000 + " " + e.what().word() + " " + e.detail()).trim())
        .collect(Collectors.toList());
  }
}
