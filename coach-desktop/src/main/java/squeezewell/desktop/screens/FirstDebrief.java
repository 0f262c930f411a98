package squeezewell.desktop.screens;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import squeezewell.coach.Coach;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Kit;
import squeezewell.desktop.parts.PlotPicture;
import squeezewell.protocol.ClinicalFinding;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.review.Review;
import squeezewell.review.Reviewer;
import squeezewell.session.Journal;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * Gets ready for the first debrief after a start. Most of the time that it would take is spent on
 * loading classes and linking them for the first time, those of the chart library above all, so a
 * made-up practice is reviewed and its charts are drawn before anybody waits for one. Nothing of it
 * is shown or kept.
 */
public final class FirstDebrief {
  private static final long SECOND = 1_000_000_000L;

  private FirstDebrief() {}

  /** Begins in the background and returns. The program may end before it is done. */
  public static void prepareInBackground(Look look) {
    Thread thread = new Thread(() -> prepare(look), "ready for a debrief");
    thread.setDaemon(true);
    thread.start();
  }

  /** Reviews a made-up practice in which a pulse is lost, and draws its charts. */
  static void prepare(Look look) {
    Review review = Reviewer.review(practice());
    DebriefView.of(review);
    PlotsView plots = PlotsView.of(review);
    PlotPicture.draw(look, plots.intervals(), look.px(Kit.CONTENT_WIDTH), look.px(170), 1);
  }

  private static Session practice() {
    Protocol protocol = GuidelineLibrary.editions().get(0);
    PracticePlan plan =
        PracticePlan.of(
            protocol,
            protocol.find(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING).get(),
            0,
            300 * SECOND,
            0);
    SessionHeader header =
        new SessionHeader(Instant.EPOCH, SessionHeader.Origin.VIRTUAL, "", protocol, plan);
    List<SessionEvent> events = new ArrayList<>();
    new VirtualTrainee(1, TraineeFault.SKIPS)
        .practise(
            new Coach(plan, new Kept(events), List.of()),
            new ManualClock(),
            List.of(new VirtualTrainee.Scripted(240 * SECOND, ClinicalFinding.PULSE_LOST)));
    return new Session(header, events, List.of());
  }

  private record Kept(List<SessionEvent> events) implements Journal {
    @Override
    public void append(SessionEvent event) {
      events.add(event);
    }

    @Override
    public void close() {
      // Nothing is open.
    }
  }
}
