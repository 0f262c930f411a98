package squeezewell.cli;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
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

/** The past sessions of a home. */
@Command(name = "book")
final class BookCommand extends CliCommand {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  @Mixin HomeOption home = new HomeOption();

  @Option(names = "--json")
  boolean json;

  BookCommand(Surroundings around) {
    super(around);
  }

  @Override
  public Integer call() throws BadInputException {
    HomeFolder folder = home.home();
    List<SessionStore.Entry> entries =
        new SessionStore(folder).entries().collect(Collectors.toList());
    RecordBook book = new SessionStore(folder).book();
    if (json) {
      around.out().println(JsonText.of(writer -> write(writer, entries, book, folder.zone())));
      return DONE;
    }
    if (entries.isEmpty()) {
      around.print("No sessions yet in " + folder.root());
    }
    for (SessionStore.Entry entry : entries) {
      print(entry, book, folder.zone());
    }
    return DONE;
  }

  private void print(SessionStore.Entry entry, RecordBook book, ZoneId zone) {
    if (entry.session().isEmpty()) {
      around.print(entry.file().getFileName() + "  can't be read");
      around.print(TextWrap.wrap(entry.problem(), 78, "    "));
      return;
    }
    Session session = entry.session().get();
    SessionHeader header = session.header();
    Review review = Reviewer.review(session);
    Metrics metrics = review.metrics();
    OptionalDouble rate = metrics.rate().overallPerMinute();
    around.print(
        WHEN.format(LocalDateTime.ofInstant(header.startedAt(), zone))
            + "  "
            + Quantities.clock(review.asked().practisedNanos())
            + early(review, session)
            + "  "
            + header.protocol().title()
            + ", "
            + header.plan().guidance().patient().id()
            + (header.origin() == SessionHeader.Origin.VIRTUAL ? "  (virtual trainee)" : ""));
    around.print(
        "    breaths "
            + metrics.breathCount()
            + (rate.isPresent()
                ? ", " + Quantities.decimals(rate.getAsDouble(), 1) + " a minute"
                : "")
            + (metrics.interval().count() > 0
                ? ", in range "
                    + metrics.interval().inRangeCount()
                    + " of "
                    + metrics.interval().count()
                : ""));
    around.print(TextWrap.wrap(review.headline(), 78, "    "));
    PastPractice.of(session)
        .map(practice -> book.words(practice, zone))
        .filter(words -> !words.isEmpty())
        .ifPresent(words -> around.print(TextWrap.wrap(words, 78, "    ")));
  }

  /** Whether it was ended, or the program stopped, before its time. */
  private static String early(Review review, Session session) {
    long asked = review.asked().lengthNanos();
    if (review.asked().practisedNanos() >= asked) {
      return "";
    }
    return " of " + Quantities.clock(asked) + (session.finished() ? ", ended early" : ", cut off");
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
