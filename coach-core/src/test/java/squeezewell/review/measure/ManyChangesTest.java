package squeezewell.review.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.cue.PulseCheckDue;
import squeezewell.protocol.PatientChange;
import squeezewell.review.SessionBuilder;
import squeezewell.session.EventType;
import squeezewell.session.Session;

/** A session of many parts is cut so that no part looks through what belongs to the others. */
class ManyChangesTest {
  private static Session session(int changes) {
    double apart = 3_600.0 / (changes + 1);
    SessionBuilder session = SessionBuilder.ofSeconds(3_600);
    for (int k = 1; k <= changes; k++) {
      session.finding(
          k * apart, k % 2 == 1 ? PatientChange.BREATHING_SLOW : PatientChange.BREATHING_STOPPED);
      session.event(k * apart + apart / 4, EventType.PULSE_CHECK, "");
      session.event(k * apart + apart / 2, EventType.PULSE_CHECK_END, "");
      session.breaths(k * apart + 3 * apart / 4);
    }
    return session.build();
  }

  /** Counted, not timed: with each check in one part, twice the file is twice the looks. */
  @Test
  void eachCheckIsLookedAtInOnePartOnly() {
    for (int changes : new int[] {3, 50, 400}) {
      Session session = session(changes);
      Practice whole = Practice.of(session);
      Alignment none = Alignment.of(new long[0], new long[0]);
      List<PulseCheckDue> inParts = new ArrayList<>();
      int parts = 0;
      for (PracticeParts.Part part : PracticeParts.of(session, whole, none)) {
        inParts.addAll(part.practice().checks());
        parts++;
      }
      assertThat(parts).isEqualTo(changes + 1);
      assertThat(inParts).containsExactlyInAnyOrderElementsOf(whole.checks());
      assertThat(inParts.stream().filter(c -> c.startedNanos().isPresent()).count())
          .isEqualTo(changes);
    }
  }
}
