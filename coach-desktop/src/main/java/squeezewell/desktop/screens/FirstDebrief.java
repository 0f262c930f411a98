package squeezewell.desktop.screens;

import java.awt.AWTEvent;
import java.awt.Component;
import java.awt.Container;
import java.awt.Graphics;
import java.awt.Image;
import java.awt.Toolkit;
import java.awt.event.AWTEventListener;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import squeezewell.coach.Coach;
import squeezewell.coach.ScriptedFinding;
import squeezewell.coach.TraineeFault;
import squeezewell.coach.VirtualTrainee;
import squeezewell.cue.PracticePlan;
import squeezewell.desktop.look.Look;
import squeezewell.desktop.parts.Widgets;
import squeezewell.picture.PlotPicture;
import squeezewell.picture.PlotsView;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientChange;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.Journal;
import squeezewell.session.ManualClock;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;

/**
 * Gets ready for the first debrief after a start. Most of the time that it would take is spent on
 * loading classes and linking them for the first time, so a made-up practice is reviewed, its
 * charts are drawn and its debrief is built and painted before anybody waits for one. Nothing of it
 * is shown or kept.
 */
public final class FirstDebrief {
  private static final long SECOND = 1_000_000_000L;
  private static final int SHOWN_HEIGHT = 892;

  /** What was done a few times is compiled by then, not only loaded. */
  private static final int TIMES = 4;

  private FirstDebrief() {}

  /**
   * Begins in the background and returns. The program may end before it is done.
   *
   * @param window where debriefs will be shown; painting for it takes other code than painting into
   *     a picture in memory
   * @param mayPaint asked on the event thread, which the last part holds up for a moment: whether
   *     nothing runs there that must not wait
   */
  public static void prepareInBackground(Widgets kit, Component window, BooleanSupplier mayPaint) {
    CompletableFuture<Void> touched = firstInput();
    Thread thread =
        new Thread(
            () -> {
              Review review = null;
              for (int time = 0; time < TIMES; time++) {
                review = prepare(kit.look());
              }
              touched.join();
              paintLater(kit, review, window, mayPaint, TIMES);
            },
            "ready for a debrief");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * With its first input the toolkit compares its clock with the display's, once for the whole run.
   * While the display is busy with our drawing that comparison is wrong by tens of milliseconds,
   * and so is every squeeze after it.
   */
  private static CompletableFuture<Void> firstInput() {
    CompletableFuture<Void> touched = new CompletableFuture<>();
    Toolkit toolkit = Toolkit.getDefaultToolkit();
    toolkit.addAWTEventListener(
        new AWTEventListener() {
          @Override
          public void eventDispatched(AWTEvent event) {
            toolkit.removeAWTEventListener(this);
            touched.complete(null);
          }
        },
        AWTEvent.KEY_EVENT_MASK | AWTEvent.MOUSE_EVENT_MASK | AWTEvent.MOUSE_MOTION_EVENT_MASK);
    return touched;
  }

  /** Each time is an event of its own, so that keys and clicks in between are not held up. */
  private static void paintLater(
      Widgets kit, Review review, Component window, BooleanSupplier mayPaint, int times) {
    SwingUtilities.invokeLater(
        () -> {
          if (times > 0 && window.isDisplayable() && mayPaint.getAsBoolean()) {
            paint(kit, review, window::createVolatileImage);
            paintLater(kit, review, window, mayPaint, times - 1);
          }
        });
  }

  /** Reviews a made-up practice in which a pulse is lost, and draws its charts. */
  static Review prepare(Look look) {
    Review review = Reviewer.review(practice());
    DebriefView.of(review);
    PlotsView plots = PlotsView.of(review);
    PlotPicture.draw(look, plots.intervals(), look.px(Widgets.CONTENT_WIDTH), look.px(170), 1);
    return review;
  }

  /**
   * Builds the debrief and paints it into an image. Only on the event thread.
   *
   * @param images makes an image of a width and a height in device pixels
   * @return the image
   */
  static <T extends Image> T paint(
      Widgets kit, Review review, BiFunction<Integer, Integer, T> images) {
    JScrollPane page = DebriefScreen.build(kit, null, review, "", DebriefScreen.Actions.none());
    page.setSize(kit.look().px(Widgets.CONTENT_WIDTH), kit.look().px(SHOWN_HEIGHT));
    layOut(page);
    T image = images.apply(page.getWidth(), page.getHeight());
    Graphics g = image.getGraphics();
    try {
      page.paint(g);
    } finally {
      g.dispose();
    }
    return image;
  }

  private static void layOut(Container part) {
    part.doLayout();
    for (Component inner : part.getComponents()) {
      if (inner instanceof Container container) {
        layOut(container);
      }
    }
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
            new Coach(plan, Journal.to(events::add), List.of()),
            new ManualClock(),
            List.of(new ScriptedFinding(240 * SECOND, PatientChange.PULSE_LOST)));
    return new Session(header, events, List.of());
  }
}
