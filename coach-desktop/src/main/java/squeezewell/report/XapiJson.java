package squeezewell.report;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import java.math.BigDecimal;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Situation;
import squeezewell.review.say.Figure;
import squeezewell.review.say.FigureValue;
import squeezewell.review.say.Figures;
import squeezewell.review.say.Prescription;
import squeezewell.review.say.Review;
import squeezewell.session.Session;
import squeezewell.session.SessionEvent;
import squeezewell.session.SessionHeader;
import squeezewell.words.Wording;

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
  private static final Wording WORDS = Wording.beside(XapiJson.class);

  private static final Gson GSON =
      new GsonBuilder().setPrettyPrinting().disableHtmlEscaping().create();

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

  private XapiJson(Session session, XapiAccount account) {
    this.header = session.header();
    this.zeroNanos = Session.zeroNanos(header.plan(), session.breaths());
    this.account = account;
    this.registration = NamedUuid.of(NAMESPACE, identity(session));
    this.actorName = actorName(session.header(), account, registration);
  }

  /** Why there can be no statements about that session; empty if there can. */
  public static Optional<String> whyNot(SessionHeader header) {
    return header.origin() == SessionHeader.Origin.VIRTUAL
        ? Optional.of(WORDS.say("xapi.virtual"))
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
    return GSON.toJson(new XapiJson(session, account).statements(review)) + "\n";
  }

  private List<Object> statements(Review review) {
    List<Object> statements = new ArrayList<>();
    statements.add(statement(review, 0));
    for (int i = 0; i < review.parts().size(); i++) {
      statements.add(statement(review.parts().get(i), i + 1));
    }
    return statements;
  }

  /** The statement about the whole for part 0, else about that part. */
  private Map<String, Object> statement(Review review, int part) {
    Prescription asked = review.asked();
    boolean whole = part == 0;
    boolean complete = whole && asked.practisedNanos() >= asked.lengthNanos();
    Map<String, Object> result = object();
    switch (review.verdict().outcome()) {
      case HELD -> result.put("success", true);
      case NOT_HELD -> result.put("success", false);
      case UNDECIDED, TOO_SHORT, NOT_JUDGED -> {}
    }
    if (whole) {
      result.put("completion", complete);
    }
    long practised = whole ? asked.practisedNanos() : review.endNanos() - review.startNanos();
    result.put("duration", duration(practised));
    result.put("extensions", figures(review));
    Map<String, Object> statement = object("id", id(part).toString());
    if (header.origin() != SessionHeader.Origin.EVENT_LIST) {
      long after = whole ? 0 : zeroNanos + review.startNanos();
      statement.put("timestamp", WHEN.format(header.startedAt().plusNanos(after)));
    }
    statement.put(
        "actor",
        object(
            "objectType",
            "Agent",
            "account",
            object("homePage", account.homePage(), "name", actorName)));
    statement.put(
        "verb",
        object(
            "id",
            complete ? COMPLETED : ATTEMPTED,
            "display",
            object("en", complete ? "completed" : "attempted")));
    statement.put("object", activity(review, whole));
    statement.put("result", result);
    statement.put("context", context(review, whole));
    return statement;
  }

  /** Names and values by turns, in that order. */
  private static Map<String, Object> object(Object... fields) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < fields.length; i += 2) {
      object.put((String) fields[i], fields[i + 1]);
    }
    return object;
  }

  /** A text that two sessions have in common only if the same was recorded in both. */
  private static String identity(Session session) {
    SessionHeader header = session.header();
    List<Object> facts =
        new ArrayList<>(
            List.of(
                header.startedAt(),
                header.origin().word(),
                header.trainee(),
                header.protocol().id(),
                header.plan().guidance().patient().id(),
                header.plan().guidance().situation().id(),
                header.plan().countInNanos(),
                header.plan().lengthNanos()));
    for (SessionEvent event : session.events()) {
      facts.addAll(List.of(event.atNanos(), event.what().word(), event.detail()));
    }
    // Each with its length first, so that no text can run over into the next.
    return facts.stream()
        .map(fact -> fact.toString().length() + ":" + fact + "\n")
        .collect(Collectors.joining());
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

  private Map<String, Object> activity(Review review, boolean whole) {
    Prescription asked = review.asked();
    boolean changed = !review.parts().isEmpty();
    String name =
        WORDS.say(
            changed ? "xapi.name.changing" : "xapi.name",
            asked.patient().toLowerCase(Locale.ROOT),
            changed ? header.plan().guidance().situation().label() : asked.situation(),
            PlainText.of(asked.protocolTitle()));
    return object(
        "objectType",
        "Activity",
        "id",
        activityId(situation(review, whole), changed),
        "definition",
        object(
            "name",
            object("en", name),
            "description",
            object("en", WORDS.say("xapi.description", Caution.TEXT)),
            "type",
            SIMULATION));
  }

  /** The same practice has the same identifier; a local protocol's identifier is its own. */
  private String activityId(Situation situation, boolean changed) {
    Guidance start = header.plan().guidance();
    String local =
        header.protocol().local()
            ? "local-" + NamedUuid.of(NAMESPACE, header.protocol().toString()) + "/"
            : "";
    return BASE
        + "activities/"
        + local
        + header.protocol().id()
        + "/"
        + start.patient().id()
        + "/"
        + situation.id()
        + (start.rescuers() == 0 ? "" : "/rescuers-" + start.rescuers())
        + (changed ? "/changing" : "");
  }

  private Situation situation(Review review, boolean whole) {
    return header.plan().all().stream()
        .map(Guidance::situation)
        .filter(each -> !whole && each.label().equals(review.asked().situation()))
        .findFirst()
        .orElse(header.plan().guidance().situation());
  }

  private Map<String, Object> figures(Review review) {
    Map<String, Object> figures =
        object(
            BASE + "result/verdict",
            object(
                "outcome",
                Figure.slug(review.verdict().outcome().name()),
                "rule",
                PlainText.of(review.rule()),
                "reasons",
                plain(review.reasons())));
    for (FigureValue metric : Figures.of(review)) {
      // What can't be computed is left out: some stores refuse null even here.
      if (metric.value().isPresent() && metric.isNumber()) {
        Map<String, Object> figure =
            object("value", new BigDecimal(metric.value().get()), "unit", metric.unit());
        metric.observations().ifPresent(count -> figure.put("observations", count));
        figures.put(BASE + "metrics/" + metric.name(), figure);
      }
    }
    return figures;
  }

  private Map<String, Object> context(Review review, boolean whole) {
    Prescription asked = review.asked();
    Map<String, Object> context =
        object(
            "registration", registration.toString(), "platform", "Squeezewell", "language", "en");
    if (!whole) {
      String parent = activityId(header.plan().guidance().situation(), true);
      context.put("statement", object("objectType", "StatementRef", "id", id(0).toString()));
      context.put(
          "contextActivities",
          object("parent", List.of(object("objectType", "Activity", "id", parent))));
    }
    Map<String, Object> guideline = object("id", asked.protocolId());
    guideline.put("title", PlainText.of(asked.protocolTitle()));
    guideline.put("organisation", PlainText.of(asked.organisation()));
    guideline.put("year", asked.year());
    guideline.put("local", header.protocol().local());
    guideline.put("source", PlainText.of(asked.source().line()));
    Map<String, Object> extensions = object(BASE + "context/guideline", guideline);
    extensions.put(BASE + "context/origin", header.origin().word());
    extensions.put(BASE + "context/notes", plain(review.notes()));
    extensions.put(BASE + "context/caution", Caution.TEXT);
    context.put("extensions", extensions);
    return context;
  }

  private static List<String> plain(List<String> texts) {
    return texts.stream().map(PlainText::of).toList();
  }

  /** Seconds with at most two decimals, the precision that the specification asks for. */
  private static String duration(long nanos) {
    BigDecimal seconds = BigDecimal.valueOf(nanos / 10_000_000L, 2).stripTrailingZeros();
    return "PT" + (seconds.scale() < 0 ? seconds.setScale(0) : seconds).toPlainString() + "S";
  }
}
