package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import squeezewell.cue.Prompting;
import squeezewell.files.HomeFolder;
import squeezewell.files.SessionStore;
import squeezewell.input.BadInputException;
import squeezewell.review.Reviewer;
import squeezewell.review.measure.Metrics;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;
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

  BookCommand(CliContext around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException {
    HomeFolder folder = home.home();
    List<SessionStore.Entry> entries =
        new SessionStore(folder).entries().collect(Collectors.toList());
    RecordBook book = new SessionStore(folder).book();
    if (json) {
      around.printJson(writer -> write(writer, entries, book, folder.zone()));
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

  private static void write(
      JsonWriter json, List<SessionStore.Entry> entries, RecordBook book, ZoneId zone)
      throws IOException {
    json.beginObject();
    json.name("sessions").beginArray();
    for (SessionStore.Entry entry : entries) {
      json.beginObject();
      json.name("file").value(entry.file().toString());
      json.name("problem").value(entry.problem().isEmpty() ? null : entry.problem());
      if (entry.session().isPresent()) {
        write(json, entry.session().get(), book, zone);
      }
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  private static void write(JsonWriter json, Session session, RecordBook book, ZoneId zone)
      throws IOException {
    SessionHeader header = session.header();
    Review review = Reviewer.review(session);
    Metrics metrics = review.metrics();
    OptionalDouble rate = metrics.rate().overallPerMinute();
    json.name("startedAt").value(header.startedAt().toString());
    json.name("origin").value(header.origin().word());
    json.name("trainee").value(header.trainee());
    json.name("protocol").value(header.protocol().id());
    json.name("patient").value(header.plan().guidance().patient().id());
    json.name("situation").value(header.plan().guidance().situation().id());
    json.name("finished").value(session.finished());
    json.name("practisedSeconds").value(Quantities.exactSeconds(review.asked().practisedNanos()));
    json.name("breaths").value(metrics.breathCount());
    json.name("ratePerMinute").value(rate.isPresent() ? (Double) rate.getAsDouble() : null);
    json.name("intervals").value(metrics.interval().count());
    json.name("intervalsInRange").value(metrics.interval().inRangeCount());
    json.name("headline").value(review.headline());
    Optional<PastPractice> practice = PastPractice.of(session);
    boolean fades = session.header().plan().prompting() == Prompting.FADING;
    json.name("prompts").value(session.header().plan().prompting().word());
    json.name("startLevel").value(fades ? (Integer) header.plan().startLevel() : null);
    json.name("endLevel").value(fades ? practice.map(PastPractice::endLevel).orElse(null) : null);
    json.name("daysHeldWithoutPrompts");
    if (practice.isPresent()) {
      json.beginArray();
      for (LocalDate day :
          book.upTo(header.startedAt())
              .heldAlone(header.trainee(), header.plan().guidance(), zone)
              .days()) {
        json.value(day.toString());
      }
      json.endArray();
    } else {
      json.nullValue();
    }
  }
}
