package squeezewell.review.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import squeezewell.cue.Segment;
import squeezewell.review.measure.Analysis;
import squeezewell.review.measure.Interruption;
import squeezewell.review.measure.Practice;
import squeezewell.session.EventType;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** What a reader should know about how a review came about. */
public final class Notes {
  private static final Wording WORDS = Sayings.WORDS;
  public static final String SLIP = WORDS.say("rule.slip");

  private Notes() {}

  public static List<String> of(Session session, Practice practice) {
    List<String> notes = new ArrayList<>(session.notes());
    boolean live = session.header().origin() != SessionHeader.Origin.EVENT_LIST;
    long practised = practice.practisedNanos();
    long asked = practice.plan().lengthNanos();
    if (live && !session.finished()) {
      notes.add(WORDS.say("note.cut-off", Quantities.clock(practice.endNanos())));
    } else if (practised < asked && !inStation(session)) {
      notes.add(WORDS.say("note.early", Quantities.clock(practised), Quantities.clock(asked)));
    }
    long after =
        session.breaths().stream()
            .filter(b -> b.startNanos() - practice.zeroNanos() > practice.endNanos())
            .count();
    if (after > 0) {
      notes.add(WORDS.say("note.after-end", after));
    }
    long withoutRate =
        practice.holds(Segment.Kind.NO_RATE).stream().mapToLong(Interruption::excusedNanos).sum();
    if (withoutRate > 0) {
      notes.add(WORDS.say("note.no-rate", Quantities.clock(withoutRate)));
    }
    if (practice.holds(Segment.Kind.STALLED).size() > 0) {
      notes.add(WORDS.say("note.stalled"));
    }
    return notes;
  }

  /** What came after a test and is not judged; empty if nothing did. */
  public static Optional<String> afterTest(Analysis all, Analysis tested) {
    int after = all.practice().breaths().size() - tested.practice().breaths().size();
    String end = Quantities.clock(tested.practice().endNanos());
    return after == 0 ? Optional.empty() : Optional.of(WORDS.say("note.after-test", end, after));
  }

  /** A station ends when it ends; how long its breathing lasts is not laid down. */
  public static boolean inStation(Session session) {
    return session.events().stream().anyMatch(e -> e.what() == EventType.STATION);
  }
}
