package squeezewell.desktop;

import java.nio.file.Path;
import java.util.function.Consumer;
import squeezewell.desktop.screens.CompareScreen;
import squeezewell.desktop.screens.DebriefScreen;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.PastScreen;
import squeezewell.desktop.screens.PicturesScreen;
import squeezewell.desktop.screens.StationResultScreen;
import squeezewell.files.HomeFolder;
import squeezewell.files.SessionStore;
import squeezewell.input.BadInputException;
import squeezewell.report.PracticeLabel;
import squeezewell.report.StationSheet;
import squeezewell.review.Review;
import squeezewell.review.Reviewer;
import squeezewell.session.Session;
import squeezewell.station.StationResult;

/** The screens that look back on what was practised. Used on the event thread. */
final class Debriefs {
  private final HomeFolder home;
  private final Stage stage;
  private final Navigator navigator;
  private final Consumer<ReplaySession> onReplay;

  /**
   * @param home where past practices lie
   * @param stage where screens are shown
   * @param navigator leads to other screens
   * @param onReplay shows a practice played back
   */
  Debriefs(HomeFolder home, Stage stage, Navigator navigator, Consumer<ReplaySession> onReplay) {
    this.home = home;
    this.stage = stage;
    this.navigator = navigator;
    this.onReplay = onReplay;
  }

  /** Tells of each past practice. */
  void readPast(Consumer<PastScreen.Line> each) throws BadInputException {
    PastPractices.read(new SessionStore(home), home.zone(), each);
  }

  private <T> void work(Background.Work<T> work, Consumer<T> then, Runnable otherwise) {
    Background.run(stage.window(), work, then, otherwise);
  }

  /** Shows the debrief of a past practice. */
  void open(Path file) {
    work(
        () -> {
          Session session = new SessionStore(home).open(file);
          return new Reviewed(session, Reviewer.review(session));
        },
        done -> showDebrief(done.session(), done.review(), navigator::toPast),
        () -> {});
  }

  /** Plays a past practice back. */
  void openReplay(Path file) {
    work(
        () -> new SessionStore(home).open(file),
        session -> startReplay(session, PastPractices.of(session, home.zone()), navigator::toPast),
        () -> {});
  }

  private void startReplay(Session session, String when, Runnable back) {
    onReplay.accept(new ReplaySession(session, navigator.settings(), when, back));
  }

  /** Shows the debrief of what has just been practised. */
  void show(Session session) {
    // Without a debrief there must be another screen: that of the practice does nothing any more.
    work(
        () -> Reviewer.review(session),
        review -> showDebrief(session, review, navigator::toSetup),
        stage::again);
  }

  private record Reviewed(Session session, Review review) {}

  private record Pair(Reviewed a, Reviewed b) {}

  private Reviewed reviewed(Path file) throws BadInputException {
    Session session = new SessionStore(home).open(file);
    return new Reviewed(session, Reviewer.review(session));
  }

  /** Shows two past practices side by side. */
  void compare(Path a, Path b) {
    work(() -> new Pair(reviewed(a), reviewed(b)), this::showComparison, () -> {});
  }

  private void showComparison(Pair pair) {
    stage.remember(() -> showComparison(pair));
    stage.showScreen(
        CompareScreen.build(
            stage.kit(),
            pair.a().review(),
            PracticeLabel.of(pair.a().session().header(), home.zone()),
            pair.b().review(),
            PracticeLabel.of(pair.b().session().header(), home.zone()),
            navigator::toPast));
  }

  /** A station's own result comes first; the review of its breaths is reached from it. */
  private void showDebrief(Session session, Review review, Runnable back) {
    if (StationResult.isIn(session.events())) {
      try {
        showResult(session, StationResult.of(session.events()), review, back);
        return;
      } catch (BadInputException e) {
        Dialogs.tell(
            stage.window(), "The station can't be shown, only its breaths", e.getMessage());
      }
    }
    showReview(session, review, back);
  }

  private void showResult(Session session, StationResult result, Review review, Runnable back) {
    stage.remember(() -> showResult(session, result, review, back));
    String when = PastPractices.when(session.header().startedAt(), home.zone());
    String trainee = session.header().trainee();
    stage.showScreen(
        StationResultScreen.build(
            stage.kit(),
            navigator,
            StationSheet.of(result),
            review,
            trainee.isEmpty() ? when : when + ", " + trainee,
            new StationResultScreen.Ways(
                () -> showReview(session, review, () -> showResult(session, result, review, back)),
                () -> StationSaver.save(stage.window(), session, result, review, home.zone()),
                back)));
  }

  private void showReview(Session session, Review review, Runnable back) {
    stage.remember(() -> showReview(session, review, back));
    String when = PastPractices.of(session, home.zone());
    String ended = PastPractices.ended(session, review);
    String title = when + (ended.isEmpty() ? "" : ", " + ended);
    Runnable again = () -> showReview(session, review, back);
    stage.showScreen(
        DebriefScreen.build(
            stage.kit(),
            navigator,
            review,
            title,
            () -> startReplay(session, when, again),
            () -> ReportSaver.save(stage.window(), session, review, home.zone()),
            () -> showPictures(review, title, again),
            back));
  }

  private void showPictures(Review review, String when, Runnable back) {
    stage.remember(() -> showPictures(review, when, back));
    stage.showScreen(PicturesScreen.build(stage.kit(), review, when, back));
  }
}
