package squeezewell.report;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Situation;
import squeezewell.review.judge.Verdict;
import squeezewell.review.say.Figure;
import squeezewell.review.say.FigureValue;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;

/**
 * A practice as statements for a learning record store, by xAPI 2.0 (IEEE 9274.1.1) and also by
 * xAPI 1.0.3: no {@code version}, so that a store of either puts its own. One statement for the
 * practice, and one more for each part if the rhythm changed. It holds no score: what there is to
 * say is whether the rhythm was held, and the figures.
 *
 * <p>Identifiers come from what was recorded, so that bringing the same practice in twice makes no
 * second statement. Verbs and the type of activity are those of Advanced Distributed Learning; all
 * else is named under {@link #BASE}.
 */
public final class XapiJson {
  /** Where our own names begin. See {@link XapiAccount#PLACEHOLDER} for why it leads nowhere. */
  public static final String BASE = "https://squeezewell.invalid/xapi/";

  /** "The actor finished or concluded the activity normally." */
  private static final String COMPLETED = "http://adlnet.gov/expapi/verbs/completed";

  /** "The actor made an effort to access the object." */
  private static final String ATTEMPTED = "http://adlnet.gov/expapi/verbs/attempted";

  private static final String SIMULATION = "http://adlnet.gov/expapi/activities/simulation";

  /** Our namespace: the identifier of {@link #BASE} in RFC 9562's namespace of addresses. */
  private static final UUID NAMESPACE =
      NamedUuid.of(UUID.fromString("6ba7b811-9dad-11d1-80b4-00c04fd430c8"), BASE);

  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ss.SSS'Z'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private final SessionHeader header;
  private final long zeroNanos;
  private final XapiAccount account;
  private final UUID registration;
  private final String actorName;
  private final JsonWriter json;

  private XapiJson(Session session, XapiAccount account, JsonWriter json) {
    this.header = session.header();
    this.zeroNanos = Session.zeroNanos(header.plan(), session.breaths());
    this.account = account;
    this.registration = NamedUuid.of(NAMESPACE, XapiIdentity.of(session));
    this.actorName = actorName(session.header(), account, registration);
    this.json = json;
  }

  /** Why there can be no statements about that session; empty if there can. */
  public static Optional<String> whyNot(SessionHeader header) {
    return header.origin() == SessionHeader.Origin.VIRTUAL
        ? Optional.of("a virtual practice is nobody's learning")
        : Optional.empty();
  }

  /**
   * The statements as a JSON array.
   *
   * @throws IllegalArgumentException if {@link #whyNot} gives a reason
   */
  public static String of(Session session, Review review, XapiAccount account) {
    if (whyNot(session.header()).isPresent()) {
      throw new IllegalArgumentException(whyNot(session.header()).get());
    }
    StringWriter text = new StringWriter();
    try (JsonWriter json = new JsonWriter(text)) {
      json.setIndent("  ");
      json.setHtmlSafe(false);
      new XapiJson(session, account, json).write(review);
    } catch (IOException e) {
      throw new IllegalStateException("a text in memory can't be written", e);
    }
    return text.append("\n").toString();
  }

  private void write(Review review) throws IOException {
    json.beginArray();
    statement(review, 0);
    for (int i = 0; i < review.parts().size(); i++) {
      statement(review.parts().get(i), i + 1);
    }
    json.endArray();
  }

  /** The statement about the whole for part 0, else about that part. */
  private void statement(Review review, int part) throws IOException {
    Prescription asked = review.asked();
    boolean whole = part == 0;
    boolean complete = whole && asked.practisedNanos() >= asked.lengthNanos();
    json.beginObject();
    json.name("id").value(id(part).toString());
    if (header.origin() != SessionHeader.Origin.EVENT_LIST) {
      json.name("timestamp").value(when(whole ? 0 : zeroNanos + review.startNanos()));
    }
    actor();
    json.name("verb").beginObject();
    json.name("id").value(complete ? COMPLETED : ATTEMPTED);
    languageMap("display", complete ? "completed" : "attempted");
    json.endObject();
    json.name("object");
    activity(review, whole);
    json.name("result").beginObject();
    Verdict verdict = review.verdict();
    switch (verdict.outcome()) {
      case HELD -> json.name("success").value(true);
      case NOT_HELD -> json.name("success").value(false);
      case UNDECIDED, TOO_SHORT, NOT_JUDGED -> {}
    }
    if (whole) {
      json.name("completion").value(complete);
    }
    long practised = whole ? asked.practisedNanos() : review.endNanos() - review.startNanos();
    json.name("duration").value(duration(practised));
    figures(review);
    json.endObject();
    context(review, whole);
    json.endObject();
  }

  private UUID id(int part) {
    return NamedUuid.of(registration, account.homePage() + "\n" + actorName + "\n" + part);
  }

  private static String actorName(SessionHeader header, XapiAccount account, UUID registration) {
    if (!account.name().isEmpty()) {
      return account.name();
    }
    // Without a name each practice is somebody else's: nobody gets another's record.
    return header.trainee().isEmpty() ? "unnamed-" + registration : PlainText.of(header.trainee());
  }

  private void actor() throws IOException {
    json.name("actor").beginObject();
    json.name("objectType").value("Agent");
    json.name("account").beginObject();
    json.name("homePage").value(account.homePage());
    json.name("name").value(actorName);
    json.endObject();
    json.endObject();
  }

  private void activity(Review review, boolean whole) throws IOException {
    Prescription asked = review.asked();
    boolean changed = !review.parts().isEmpty();
    json.beginObject();
    json.name("objectType").value("Activity");
    json.name("id").value(activityId(situation(review, whole), changed));
    json.name("definition").beginObject();
    languageMap(
        "name",
        "Manual ventilation practice: "
            + asked.patient().toLowerCase(Locale.ROOT)
            + ", "
            + (changed ? header.plan().guidance().situation().label() : asked.situation())
            + (changed ? ", with findings that change the rhythm" : "")
            + " ("
            + PlainText.of(asked.protocolTitle())
            + ")");
    languageMap("description", "Paced practice on a manikin. " + Caution.TEXT);
    json.name("type").value(SIMULATION);
    json.endObject();
    json.endObject();
  }

  /** The same practice has the same identifier; a local protocol's identifier is its own. */
  private String activityId(Situation situation, boolean changed) {
    Guidance start = header.plan().guidance();
    String edition =
        header.protocol().local()
            ? "local-"
                + NamedUuid.of(NAMESPACE, header.protocol().toString())
                + "/"
                + header.protocol().id()
            : header.protocol().id();
    return BASE
        + "activities/"
        + edition
        + "/"
        + start.patient().id()
        + "/"
        + situation.id()
        + (start.rescuers() == 0 ? "" : "/rescuers-" + start.rescuers())
        + (changed ? "/changing" : "");
  }

  private Situation situation(Review review, boolean whole) {
    if (!whole) {
      for (Guidance guidance : header.plan().all()) {
        if (guidance.situation().label().equals(review.asked().situation())) {
          return guidance.situation();
        }
      }
    }
    return header.plan().guidance().situation();
  }

  private void figures(Review review) throws IOException {
    json.name("extensions").beginObject();
    json.name(BASE + "result/verdict").beginObject();
    json.name("outcome").value(Figure.slug(review.verdict().outcome().name()));
    json.name("rule").value(PlainText.of(review.rule()));
    json.name("reasons").beginArray();
    for (String reason : review.reasons()) {
      json.value(PlainText.of(reason));
    }
    json.endArray();
    json.endObject();
    for (FigureValue metric : Figures.of(review)) {
      // What can't be computed is left out: some stores refuse null even here.
      if (metric.value().isPresent() && metric.isNumber()) {
        json.name(BASE + "metrics/" + metric.name()).beginObject();
        json.name("value").value(new BigDecimal(metric.value().get()));
        json.name("unit").value(metric.unit());
        if (metric.observations().isPresent()) {
          json.name("observations").value(metric.observations().getAsInt());
        }
        json.endObject();
      }
    }
    json.endObject();
  }

  private void context(Review review, boolean whole) throws IOException {
    Prescription asked = review.asked();
    json.name("context").beginObject();
    json.name("registration").value(registration.toString());
    json.name("platform").value("Squeezewell");
    json.name("language").value("en");
    if (!whole) {
      json.name("statement").beginObject();
      json.name("objectType").value("StatementRef");
      json.name("id").value(id(0).toString());
      json.endObject();
      json.name("contextActivities").beginObject().name("parent").beginArray().beginObject();
      json.name("objectType").value("Activity");
      json.name("id").value(activityId(header.plan().guidance().situation(), true));
      json.endObject().endArray().endObject();
    }
    json.name("extensions").beginObject();
    json.name(BASE + "context/guideline").beginObject();
    json.name("id").value(asked.protocolId());
    json.name("title").value(PlainText.of(asked.protocolTitle()));
    json.name("organisation").value(PlainText.of(asked.organisation()));
    json.name("year").value(asked.year());
    json.name("local").value(header.protocol().local());
    json.name("source").value(PlainText.of(asked.source().line()));
    json.endObject();
    json.name(BASE + "context/origin").value(header.origin().word());
    notes(review.notes());
    json.name(BASE + "context/caution").value(Caution.TEXT);
    json.endObject();
    json.endObject();
  }

  private void notes(List<String> notes) throws IOException {
    json.name(BASE + "context/notes").beginArray();
    for (String note : notes) {
      json.value(PlainText.of(note));
    }
    json.endArray();
  }

  private void languageMap(String name, String english) throws IOException {
    json.name(name).beginObject().name("en").value(english).endObject();
  }

  private String when(long afterNanos) {
    Instant instant = header.startedAt().plusNanos(afterNanos);
    return WHEN.format(instant);
  }

  /** Seconds with at most two decimals, the precision that the specification asks for. */
  private static String duration(long nanos) {
    BigDecimal seconds = BigDecimal.valueOf(nanos / 10_000_000L, 2).stripTrailingZeros();
    return "PT" + (seconds.scale() < 0 ? seconds.setScale(0) : seconds).toPlainString() + "S";
  }
}
