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

/** What a reader should know about how a review came about. */
public final class Notes {
  public static final String SLIP = Sayings.WORDS.say("rule.slip");

  private Notes() {}

  public static List<String> of(Session session, Practice practice) {
    List<String> notes = new ArrayList<>(session.notes());
    boolean live = session.header().origin() != SessionHeader.Origin.EVENT_LIST;
    long practised = practice.practisedNanos();
    long asked = practice.plan().lengthNanos();
    if (live && !session.finished()) {
      notes.add(
          "The record stops in the middle. What was recorded up to "
              + Quantities.clock(practice.endNanos())
              + " is reviewed.");
    } else if (practised < asked && !inStation(session)) {
      notes.add(
          "The practice was ended early: "
              + Quantities.clock(practised)
              + " of "
              + Quantities.clock(asked)
              + ".");
    }
    long after =
        session.breaths().stream()
            .filter(b -> b.startNanos() - practice.zeroNanos() > practice.endNanos())
            .count();
    if (after > 0) {
      notes.add(
          Words.count(after, "breath")
              + " came after the end of the practice and "
              + (after == 1 ? "is" : "are")
              + " left out.");
    }
    long withoutRate =
        practice.holds(Segment.Kind.NO_RATE).stream().mapToLong(Interruption::excusedNanos).sum();
    if (withoutRate > 0) {
      notes.add(
          "For "
              + Quantities.clock(withoutRate)
              + " the patient needed breaths and no compressions, and this edition gives no rate"
              + " for them. How they came then is not judged.");
    }
    if (practice.holds(Segment.Kind.STALLED).size() > 0) {
      notes.add("The program stood still for a while. That time is left out.");
    }
    return notes;
  }

  /** What came after a test and is not judged; empty if nothing did. */
  public static Optional<String> afterTest(Analysis all, Analysis tested) {
    int after = all.practice().breaths().size() - tested.practice().breaths().size();
    return after == 0
        ? Optional.empty()
        : Optional.of(
            "The test ended at "
                + Quantities.clock(tested.practice().endNanos())
                + ". "
                + Words.count(after, "later breath")
                + (after == 1 ? " is" : " are")
                + " in the figures and pictures and not judged.");
  }

  /** A station ends when it ends; how long its breathing lasts is not laid down. */
  public static boolean inStation(Session session) {
    return session.events().stream().anyMatch(e -> e.what() == EventType.STATION);
  }
}
