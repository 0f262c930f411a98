package squeezewell.desktop;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import squeezewell.desktop.screens.PastScreen;
import squeezewell.files.SessionStore;
import squeezewell.input.BadInputException;
import squeezewell.review.Reviewer;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.station.run.StationResult;
import squeezewell.trainee.PastPractice;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Quantities;

/** Turns kept sessions into lines for the list. */
final class PastPractices {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);

  private static final long SECOND = 1_000_000_000L;

  private PastPractices() {}

  /** A date and time for people. */
  static String when(Instant at, ZoneId zone) {
    return WHEN.format(at.atZone(zone));
  }

  /** The date and time of a practice, and the name if one was given. */
  static String of(Session session, ZoneId zone) {
    String when = when(session.header().startedAt(), zone);
    String trainee = session.header().trainee();
    return trainee.isEmpty() ? when : when + ", " + trainee;
  }

  /** How a practice ended, if it was not at its planned end; else empty. */
  static String ended(Session session, Review review) {
    if (!session.finished()) {
      return "stopped before its end";
    }
    if (StationResult.isIn(session.events())) {
      // Its plan is longer than any station; its own result says how it ended.
      return "";
    }
    long planned = session.header().plan().lengthNanos();
    long practised = review.asked().practisedNanos();
    return practised < planned - SECOND
        ? "ended early, " + Quantities.clock(practised) + " of " + Quantities.clock(planned)
        : "";
  }

  /** The station of a session and what came of it; empty if there is none that can be read. */
  private static Optional<String> station(Session session) {
    if (!StationResult.isIn(session.events())) {
      return Optional.empty();
    }
    try {
      StationResult result = StationResult.of(session.events());
      return Optional.of(
          "Station: " + result.state().station().title() + ". " + result.outcome().label());
    } catch (BadInputException e) {
      return Optional.of("Station that can't be read: " + e.getMessage());
    }
  }

  static void read(SessionStore store, ZoneId zone, Consumer<PastScreen.Line> each)
      throws BadInputException {
    RecordBook book = store.book();
    try (Stream<SessionStore.Entry> entries = store.entries()) {
      entries.forEach(entry -> each.accept(line(entry, book, zone)));
    }
  }

  private static PastScreen.Line line(SessionStore.Entry entry, RecordBook book, ZoneId zone) {
    if (!entry.session().isPresent()) {
      return new PastScreen.Line(
          entry.file(), "Can't be read: " + entry.file().getFileName(), entry.problem(), false);
    }
    Session session = entry.session().get();
    Review review = Reviewer.review(session);
    Metrics metrics = review.metrics();
    String rate =
        metrics.rate().overallPerMinute().isPresent()
            ? String.format(
                Locale.ROOT, ", %.1f/min", metrics.rate().overallPerMinute().getAsDouble())
            : "";
    String detail =
        Stream.of(
                when(session.header().startedAt(), zone),
                review.asked().protocolTitle()
                    + (review.asked().local().isPresent() ? ", local protocol" : ""),
                Quantities.count(metrics.breathCount(), "breath") + rate,
                session.header().trainee(),
                ended(session, review),
                PastPractice.of(session).map(practice -> book.words(practice, zone)).orElse(""))
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining("  ·  "));
    return new PastScreen.Line(
        entry.file(), station(session).orElse(review.headline()), detail, true);
  }
}
