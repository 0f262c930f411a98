package squeezewell.report;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a learning record store must refuse, by the text of xAPI 1.0.3 (Advanced Distributed
 * Learning, xAPI-Spec, part two, "Experience API Data"), sections 2.2 and 2.4 and 4.1 to 4.6, as
 * far as statements with an agent and an activity go. Version 2.0 (IEEE 9274.1.1) kept these rules;
 * its own text is not free and was not seen.
 */
public final class XapiRules {
  /** 2.4.4: "A UUID in the standard string form". */
  private static final Pattern UUID_FORM =
      Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}");

  /** 4.6: ISO 8601:2004, 4.4.3.2: a number before each letter, the last may have decimals. */
  private static final Pattern DURATION =
      Pattern.compile(
          "P(?=.)(\\d+W|(\\d+Y)?(\\d+M)?(\\d+D)?(T(?=.)(\\d+H)?(\\d+M)?(\\d+(\\.\\d+)?S)?)?)");

  /** 4.5: RFC 3339, with at least the precision of a second given and the zone. */
  private static final Pattern TIMESTAMP =
      Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?(Z|[+-]\\d\\d:\\d\\d)");

  private final List<String> faults = new ArrayList<>();

  private XapiRules() {}

  /** What is wrong with a statement; empty if nothing is. */
  public static List<String> faults(JsonObject statement) {
    XapiRules rules = new XapiRules();
    rules.statement(statement);
    return rules.faults;
  }

  private void statement(JsonObject it) {
    only(
        "statement",
        it,
        Set.of("actor", "verb", "object"),
        Set.of(
            "id",
            "result",
            "context",
            "timestamp",
            "stored",
            "authority",
            "version",
            "attachments"));
    noNulls("statement", it);
    uuid(it, "id");
    matches(it, "timestamp", TIMESTAMP);
    part(it, "actor").ifPresent(this::agent);
    part(it, "verb").ifPresent(this::verb);
    part(it, "object").ifPresent(this::activity);
    part(it, "result").ifPresent(this::result);
    part(it, "context").ifPresent(this::context);
  }

  /** 2.4.2.1: exactly one inverse functional identifier. */
  private void agent(JsonObject it) {
    only(
        "actor",
        it,
        Set.of(),
        Set.of("objectType", "name", "mbox", "mbox_sha1sum", "openid", "account"));
    long identifiers =
        it.keySet().stream()
            .filter(Set.of("mbox", "mbox_sha1sum", "openid", "account")::contains)
            .count();
    require(identifiers == 1, "actor has " + identifiers + " identifiers");
    text(it, "objectType", "Agent");
    if (it.has("mbox")) {
      require(it.get("mbox").getAsString().matches("mailto:[^@\\s]+@[^@\\s]+"), "mbox");
    }
    part(it, "account")
        .ifPresent(
            account -> {
              only("account", account, Set.of("homePage", "name"), Set.of());
              iri("account.homePage", string(account, "homePage"));
              require(!string(account, "name").isEmpty(), "account.name is empty");
            });
  }

  private void verb(JsonObject it) {
    only("verb", it, Set.of("id"), Set.of("display"));
    iri("verb.id", string(it, "id"));
    languageMap(it, "display");
  }

  private void activity(JsonObject it) {
    only("object", it, Set.of("id"), Set.of("objectType", "definition"));
    text(it, "objectType", "Activity");
    iri("object.id", string(it, "id"));
    part(it, "definition")
        .ifPresent(
            definition -> {
              only(
                  "definition",
                  definition,
                  Set.of(),
                  Set.of("name", "description", "type", "moreInfo", "extensions"));
              languageMap(definition, "name");
              languageMap(definition, "description");
              if (definition.has("type")) {
                iri("definition.type", string(definition, "type"));
              }
              extensions(definition);
            });
  }

  private void result(JsonObject it) {
    only(
        "result",
        it,
        Set.of(),
        Set.of("score", "success", "completion", "response", "duration", "extensions"));
    for (String name : List.of("success", "completion")) {
      require(
          !it.has(name)
              || (it.get(name).isJsonPrimitive() && it.get(name).getAsJsonPrimitive().isBoolean()),
          name + " is no boolean");
    }
    matches(it, "duration", DURATION);
    extensions(it);
  }

  private void context(JsonObject it) {
    only(
        "context",
        it,
        Set.of(),
        Set.of(
            "registration",
            "instructor",
            "team",
            "contextActivities",
            "revision",
            "platform",
            "language",
            "statement",
            "extensions"));
    uuid(it, "registration");
    if (it.has("language")) {
      languageTag(string(it, "language"));
    }
    part(it, "statement")
        .ifPresent(
            reference -> {
              only("context.statement", reference, Set.of("objectType", "id"), Set.of());
              text(reference, "objectType", "StatementRef");
              uuid(reference, "id");
            });
    part(it, "contextActivities")
        .ifPresent(
            kinds -> {
              only(
                  "contextActivities",
                  kinds,
                  Set.of(),
                  Set.of("parent", "grouping", "category", "other"));
              kinds
                  .entrySet()
                  .forEach(
                      kind ->
                          kind.getValue()
                              .getAsJsonArray()
                              .forEach(a -> activity(a.getAsJsonObject())));
            });
    extensions(it);
  }

  /** 4.1: the keys are IRIs; the values may be anything. */
  private void extensions(JsonObject it) {
    part(it, "extensions").ifPresent(map -> map.keySet().forEach(key -> iri("extension", key)));
  }

  /** 4.2: keys by RFC 5646, values are texts. */
  private void languageMap(JsonObject it, String name) {
    part(it, name)
        .ifPresent(
            map -> {
              for (Map.Entry<String, JsonElement> entry : map.entrySet()) {
                languageTag(entry.getKey());
                require(
                    entry.getValue().isJsonPrimitive()
                        && entry.getValue().getAsJsonPrimitive().isString(),
                    name + " holds no text");
              }
            });
  }

  private void languageTag(String tag) {
    try {
      new Locale.Builder().setLanguageTag(tag).build();
    } catch (IllformedLocaleException e) {
      faults.add("language tag " + tag);
    }
  }

  /** 2.2: "containing IRL or IRI values without a scheme". Ours are all in ASCII. */
  private void iri(String where, String text) {
    try {
      require(new URI(text).isAbsolute(), where + " has no scheme: " + text);
    } catch (URISyntaxException e) {
      faults.add(where + " is no IRI: " + text);
    }
  }

  /** 2.2: no null but inside extensions. */
  private void noNulls(String where, JsonObject it) {
    for (Map.Entry<String, JsonElement> entry : it.entrySet()) {
      require(!entry.getValue().isJsonNull(), where + "." + entry.getKey() + " is null");
      if (entry.getValue().isJsonObject() && !entry.getKey().equals("extensions")) {
        noNulls(where + "." + entry.getKey(), entry.getValue().getAsJsonObject());
      }
    }
  }

  private void only(String where, JsonObject it, Set<String> needed, Set<String> allowed) {
    needed.forEach(name -> require(it.has(name), where + " has no " + name));
    it.keySet()
        .forEach(
            name ->
                require(
                    needed.contains(name) || allowed.contains(name),
                    where + " may have no " + name));
  }

  private Optional<JsonObject> part(JsonObject it, String name) {
    if (!it.has(name) || it.get(name).isJsonNull()) {
      return Optional.empty();
    }
    if (!it.get(name).isJsonObject()) {
      faults.add(name + " is no object");
      return Optional.empty();
    }
    return Optional.of(it.getAsJsonObject(name));
  }

  private void uuid(JsonObject it, String name) {
    matches(it, name, UUID_FORM);
  }

  private void matches(JsonObject it, String name, Pattern form) {
    require(
        !it.has(name) || form.matcher(string(it, name)).matches(),
        name + " has another form: " + it.get(name));
  }

  private void text(JsonObject it, String name, String text) {
    require(!it.has(name) || string(it, name).equals(text), name + " is not " + text);
  }

  private static String string(JsonObject it, String name) {
    JsonElement value = it.get(name);
    return value != null && value.isJsonPrimitive() && value.getAsJsonPrimitive().isString()
        ? value.getAsString()
        : "";
  }

  private void require(boolean holds, String fault) {
    if (!holds) {
      faults.add(fault);
    }
  }
}
