package squeezewell.cli;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.cue.Prompting;
import squeezewell.files.HomeFolder;
import squeezewell.files.SessionStore;
import squeezewell.input.BadInputException;
import squeezewell.protocol.Guidance;
import squeezewell.review.Reviewer;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
import squeezewell.trainee.HeldAlone;
import squeezewell.trainee.PastPractice;
import squeezewell.trainee.RecordBook;
import squeezewell.words.Quantities;
import squeezewell.words.Wording;

/** The past sessions of a home. */
@Command(name = "book")
final class BookCommand extends CliCommand {
  private static final Wording WORDS = Wording.beside(BookCommand.class);
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  @Mixin HomeOption home = new HomeOption();

  @Option(names = "--json")
  boolean json;

  @Override
  public Integer call() throws BadInputException {
    HomeFolder folder = home.home();
    List<SessionStore.Entry> entries = new SessionStore(folder).entries().toList();
    RecordBook book = new SessionStore(folder).book();
    if (json) {
      List<Map<String, Object>> sessions =
          entries.stream().map(entry -> tree(entry, book, folder.zone())).toList();
      around.printJson(JsonText.of(Map.of("sessions", sessions)));
      return DONE;
    }
    if (entries.isEmpty()) {
      around.print(WORDS.say("book.none", folder.root()));
    }
    for (SessionStore.Entry entry : entries) {
      print(entry, book, folder.zone());
    }
    return DONE;
  }

  private void print(SessionStore.Entry entry, RecordBook book, ZoneId zone) {
    if (entry.session().isEmpty()) {
      around.print(WORDS.say("book.unreadable", entry.file().getFileName()));
      around.print(entry.problem(), "    ");
      return;
    }
    Session session = entry.session().get();
    SessionHeader header = session.header();
    Review review = Reviewer.review(session);
    Metrics metrics = review.metrics();
    OptionalDouble rate = metrics.rate().overallPerMinute();
    boolean virtual = header.origin() == SessionHeader.Origin.VIRTUAL;
    around.print(
        WORDS.say(
            virtual ? "book.practice.virtual" : "book.practice",
            WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone)),
            length(review, session),
            header.protocol().title(),
            header.plan().guidance().patient().id()));
    List<String> figures = new ArrayList<>();
    figures.add(WORDS.say("book.breaths", metrics.breathCount()));
    rate.ifPresent(r -> figures.add(WORDS.say("book.rate", Quantities.decimals(r, 1))));
    if (metrics.interval().count() > 0) {
      figures.add(
          WORDS.say(
              "book.in-range", metrics.interval().inRangeCount(), metrics.interval().count()));
    }
    around.print("    " + String.join(", ", figures));
    around.print(review.headline(), "    ");
    PastPractice.of(session)
        .map(practice -> book.words(practice, zone))
        .filter(words -> !words.isEmpty())
        .ifPresent(words -> around.print(words, "    "));
  }

  /** How long it was; also whether it was ended, or the program stopped, before its time. */
  private static String length(Review review, Session session) {
    long asked = review.asked().lengthNanos();
    String practised = Quantities.clock(review.asked().practisedNanos());
    return review.asked().practisedNanos() >= asked
        ? practised
        : WORDS.say(
            session.finished() ? "book.early" : "book.cut-off", practised, Quantities.clock(asked));
  }

  private static Map<String, Object> tree(SessionStore.Entry entry, RecordBook book, ZoneId zone) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("file", entry.file().toString());
    json.put("problem", entry.problem().isEmpty() ? null : entry.problem());
    entry.session().ifPresent(session -> put(json, session, book, zone));
    return json;
  }

  private static void put(Map<String, Object> json, Session session, RecordBook book, ZoneId zone) {
    SessionHeader header = session.header();
    Guidance guidance = header.plan().guidance();
    Prompting prompting = header.plan().prompting();
    Review review = Reviewer.review(session);
    Metrics metrics = review.metrics();
    OptionalDouble rate = metrics.rate().overallPerMinute();
    Optional<PastPractice> practice = PastPractice.of(session);
    boolean fades = prompting == Prompting.FADING;
    json.put("startedAt", header.startedAt().toString());
    json.put("origin", header.origin().word());
    json.put("trainee", header.trainee());
    json.put("protocol", header.protocol().id());
    json.put("patient", guidance.patient().id());
    json.put("situation", guidance.situation().id());
    json.put("finished", session.finished());
    json.put("practisedSeconds", Quantities.exactSeconds(review.asked().practisedNanos()));
    json.put("breaths", metrics.breathCount());
    json.put("ratePerMinute", rate.isPresent() ? (Double) rate.getAsDouble() : null);
    json.put("intervals", metrics.interval().count());
    json.put("intervalsInRange", metrics.interval().inRangeCount());
    json.put("headline", review.headline());
    json.put("prompts", prompting.word());
    json.put("startLevel", fades ? (Integer) header.plan().startLevel() : null);
    json.put("endLevel", fades ? practice.map(PastPractice::endLevel).orElse(null) : null);
    HeldAlone held = book.upTo(header.startedAt()).heldAlone(header.trainee(), guidance, zone);
    json.put(
        "daysHeldWithoutPrompts",
        practice.map(p -> held.days().stream().map(LocalDate::toString).toList()).orElse(null));
  }
}
