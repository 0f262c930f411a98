package squeezewell.cli;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import squeezewell.files.HomeFolder;
import squeezewell.files.SessionStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;
import squeezewell.review.say.Review;
import squeezewell.session.SessionHeader;
import squeezewell.trainee.FadingStart;
import squeezewell.trainee.NextPractice;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Wording;

/** What the past practices of a home say about a practice and the next, in text. */
final class NextText {
  private static final Wording WORDS = Wording.beside(NextText.class);
  private final CliContext around;
  private final HomeFolder folder;

  NextText(CliContext around, HomeFolder folder) {
    this.around = around;
    this.folder = folder;
  }

  /** The level of fading that a practice begins with; says why if it goes on from another one. */
  int levelOfLastTime(String trainee, Guidance guidance) {
    Optional<FadingStart> start = book().fadingStart(trainee, guidance);
    if (start.isPresent() && start.get().lastLevel() > 0) {
      around.print(
          WORDS.say(
              "next.begins-with",
              start.get().words(folder.zone()),
              FadingStart.asks(start.get().level())),
          "");
    }
    return start.map(FadingStart::level).orElse(0);
  }

  /** Prints what to practise after a practice that was kept; nothing where there is no advice. */
  void print(SessionHeader header, Review review) {
    Optional<NextPractice> next =
        NextPractice.of(
            book(),
            header.trainee(),
            header.plan().guidance(),
            folder.zone(),
            NextPractice.Result.of(review));
    if (next.isPresent()) {
      around.print("");
      around.print(WORDS.say("next.title"));
      for (String line : next.get().lines()) {
        around.print(line, "  ");
      }
    }
  }

  /**
   * A folder that can't be listed holds nothing to go on from; keeping the practice tells of it. A
   * session dated in the future decides nothing.
   */
  private RecordBook book() {
    try {
      return new SessionStore(folder).bookUpTo(Instant.now());
    } catch (BadInputException e) {
      return RecordBook.of(List.of());
    }
  }
}
