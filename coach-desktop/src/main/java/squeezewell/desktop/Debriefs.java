package squeezewell.desktop;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import squeezewell.desktop.screens.CompareScreen;
import squeezewell.desktop.screens.DebriefScreen;
import squeezewell.desktop.screens.Navigator;
import squeezewell.desktop.screens.PastScreen;
import squeezewell.desktop.screens.PicturesScreen;
import squeezewell.desktop.screens.StationResultScreen;
import squeezewell.desktop.screens.Today;
import squeezewell.files.HomeFolder;
import squeezewell.files.LastChoice;
import squeezewell.files.SessionStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;
import squeezewell.report.PracticeLabel;
import squeezewell.report.StationSheet;
import squeezewell.review.Reviewer;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.session.SessionReader;
import squeezewell.station.run.StationResult;
import squeezewell.trainee.NextPractice;
import squeezewell.trainee.RecordBook;

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
    work(() -> reviewed(file), done -> showDebrief(done, navigator::toPast), () -> {});
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
    work(() -> reviewed(session), done -> showDebrief(done, navigator::toSetup), stage::again);
  }

  private record Reviewed(Session session, Review review) {}

  private record Pair(Reviewed a, Reviewed b) {}

  private Reviewed reviewed(Path file) throws BadInputException {
    return reviewed(new SessionStore(home).open(file));
  }

  private Reviewed reviewed(Session session) {
    return new Reviewed(session, Reviewer.review(session));
  }

  /** How far back the last practice of a person is looked for, in files. */
  private static final int FAR_BACK = 50;

  /** What a person is to practise today, from the last practice that gives advice. */
  Optional<Today> today(String trainee) throws BadInputException {
    SessionStore store = new SessionStore(home);
    List<Path> files = store.files();
    for (Path file : files.subList(0, Math.min(FAR_BACK, files.size()))) {
      try {
        SessionHeader header = SessionReader.readHeader(file);
        if (header.trainee().trim().equals(trainee)
            && header.origin() == SessionHeader.Origin.LIVE) {
          Session session = store.open(file);
          Review review = Reviewer.review(session);
          Optional<NextPractice> advice = advice(session, review);
          if (advice.isPresent()) {
            return advice.map(a -> new Today(review, a, choice(header, a)));
          }
        }
      } catch (BadInputException e) {
        // The list of past practices tells of a file that can't be read.
      }
    }
    return Optional.empty();
  }

  private LastChoice choice(SessionHeader header, NextPractice advice) {
    Guidance guidance = header.plan().guidance();
    return new LastChoice(
        header.protocol().id(),
        guidance.patient(),
        guidance.situation(),
        guidance.rescuers(),
        navigator.settings().lastChoice().minutes(),
        advice.prompting());
  }

  /** What followed from all that had been practised by then; a station has its own result. */
  private Optional<NextPractice> advice(Session session, Review review) {
    SessionHeader header = session.header();
    Optional<NextPractice> next = Optional.empty();
    if (header.origin() == SessionHeader.Origin.LIVE && !StationResult.isIn(session.events())) {
      try {
        RecordBook book = new SessionStore(home).book().upTo(header.startedAt());
        next =
            NextPractice.of(
                book,
                header.trainee(),
                header.plan().guidance(),
                home.zone(),
                NextPractice.Result.of(review));
      } catch (BadInputException e) {
        // The folder can't be listed, which the list of past practices tells.
      }
    }
    return next;
  }

  private DebriefScreen.Next next(Session session, Review review) {
    return advice(session, review)
        .map(a -> new DebriefScreen.Next(a.lines(), () -> follow(session.header(), a)))
        .orElse(new DebriefScreen.Next(List.of(), navigator::toSetup));
  }

  /** Sets up just what was advised: the same rhythm, prompted as far as that. */
  private void follow(SessionHeader header, NextPractice advice) {
    navigator.keep(navigator.settings().withLastChoice(choice(header, advice)));
    navigator.toSetup();
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
  private void showDebrief(Reviewed done, Runnable back) {
    Session session = done.session();
    if (StationResult.isIn(session.events())) {
      try {
        showResult(done, StationResult.of(session.events()), back);
        return;
      } catch (BadInputException e) {
        stage.sheets().tell("The station can't be shown, only its breaths", e.getMessage());
      }
    }
    showReview(done, back);
  }

  private void showResult(Reviewed done, StationResult result, Runnable back) {
    Session session = done.session();
    stage.remember(() -> showResult(done, result, back));
    String when = PastPractices.when(session.header().startedAt(), home.zone());
    String trainee = session.header().trainee();
    stage.showScreen(
        StationResultScreen.build(
            stage.kit(),
            navigator,
            StationSheet.of(result, done.review()),
            done.review(),
            trainee.isEmpty() ? when : when + ", " + trainee,
            new StationResultScreen.Actions(
                () -> showReview(done, () -> showResult(done, result, back)),
                () ->
                    StationSaver.save(stage.window(), session, result, done.review(), home.zone()),
                back,
                result.state().setup().mode().hasExaminer()
                    ? result.state().station().tasks()
                    : List.of(),
                change ->
                    work(
                        () -> reviewed(new SessionStore(home).change(session, change)),
                        changed -> showDebrief(changed, back),
                        () -> {}))));
  }

  private void showReview(Reviewed done, Runnable back) {
    stage.remember(() -> showReview(done, back));
    Session session = done.session();
    Review review = done.review();
    String when = PastPractices.of(session, home.zone());
    String ended = PastPractices.ended(session, review);
    String title = when + (ended.isEmpty() ? "" : ", " + ended);
    Runnable again = () -> showReview(done, back);
    stage.showScreen(
        DebriefScreen.build(
            stage.kit(),
            navigator,
            review,
            title,
            new DebriefScreen.Actions(
                told -> work(() -> next(session, review), told, () -> {}),
                () -> startReplay(session, when, again),
                () -> ReportSaver.save(stage.window(), session, review, home.zone()),
                () -> showPictures(review, title, again),
                back)));
  }

  private void showPictures(Review review, String when, Runnable back) {
    stage.remember(() -> showPictures(review, when, back));
    stage.showScreen(PicturesScreen.build(stage.kit(), review, when, back));
  }
}
