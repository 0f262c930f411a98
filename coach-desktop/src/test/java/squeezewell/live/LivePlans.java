package squeezewell.live;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import squeezewell.cue.PracticePlan;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.session.Journal;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/** What the tests of a live practice practise, and a journal that can be made to fail. */
final class LivePlans {
  private LivePlans() {}

  static PracticePlan plan() {
    return new PracticePlan(
        protocol().find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).orElseThrow(),
        0,
        600_000_000_000L,
        0);
  }

  static SessionHeader header() {
    return new SessionHeader(
        Instant.EPOCH, SessionHeader.Origin.LIVE, "Sam Learner", protocol(), plan());
  }

  private static Protocol protocol() {
    return GuidelineLibrary.editions().get(0);
  }

  /** A journal that can be made to fail. */
  static final class Fragile implements Journal {
    final List<SessionEvent> events = new ArrayList<>();
    volatile IOException failure;
    volatile RuntimeException fault;
    volatile boolean closed;

    @Override
    public void append(SessionEvent event) throws IOException {
      if (fault != null) {
        throw fault;
      }
      if (failure != null) {
        throw failure;
      }
      events.add(event);
    }

    @Override
    public void close() throws IOException {
      closed = true;
      if (failure != null) {
        throw failure;
      }
    }
  }
}
