package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import squeezewell.review.Reviewer;
import squeezewell.session.Session;
import squeezewell.session.SessionHeader;

class XapiJsonTest {
  /**
   * xAPI 1.0.3, part two, appendix A: "Completion with Verb named attempted and Duration expressed
   * in seconds". Copyright 2013 Advanced Distributed Learning Initiative, Apache License 2.0.
   */
  private static final String PUBLISHED =
      """
      {"id": "7ccd3322-e1a5-411a-a67d-6a735c76f119",
       "timestamp": "2015-12-18T12:17:00+00:00",
       "actor": {"objectType": "Agent", "name": "Example Learner",
                 "mbox": "mailto:example.learner@adlnet.gov"},
       "verb": {"id": "http://adlnet.gov/expapi/verbs/attempted",
                "display": {"en-US": "attempted"}},
       "object": {"id": "http://example.adlnet.gov/xapi/example/simpleCBT",
                  "definition": {"name": {"en-US": "simple CBT course"},
                                 "description": {"en-US": "A fictitious example CBT course."}}},
       "result": {"score": {"scaled": 0.95}, "success": true, "completion": true,
                  "duration": "PT1234S"}}
      """;

  @Test
  void theRulesAcceptThePublishedExample() {
    assertThat(XapiRules.faults(published())).isEmpty();
  }

  @Test
  void theRulesFindWhatAStoreMustRefuse() {
    refused("actor", s -> s.remove("actor"));
    refused("null", s -> s.getAsJsonObject("result").add("response", JsonNull.INSTANCE));
    refused("boolean", s -> s.getAsJsonObject("result").addProperty("success", "true"));
    refused("duration", s -> s.getAsJsonObject("result").addProperty("duration", "1234 s"));
    refused("duration", s -> s.getAsJsonObject("result").addProperty("duration", "PT"));
    refused("duration", s -> s.getAsJsonObject("result").addProperty("duration", "P4W1D"));
    refused("id", s -> s.addProperty("id", "7ccd3322"));
    refused("timestamp", s -> s.addProperty("timestamp", "18.12.2015"));
    refused("scheme", s -> s.getAsJsonObject("verb").addProperty("id", "attempted"));
    refused("IRI", s -> s.getAsJsonObject("verb").addProperty("id", "http://a b/"));
    refused(
        "tag",
        s ->
            s.getAsJsonObject("verb")
                .getAsJsonObject("display")
                .addProperty("not a language", "attempted"));
    refused("identifiers", s -> s.getAsJsonObject("actor").remove("mbox"));
    refused("may have no", s -> s.addProperty("Actor", "x"));
  }

  @Test
  void aPracticeIsOneStatementThatStoresTake() {
    JsonObject it = only(Reports.steady(6));
    assertThat(XapiRules.faults(it)).isEmpty();
    assertThat(it.get("timestamp").getAsString()).isEqualTo("2026-01-31T12:00:00.000Z");
    assertThat(account(it).get("homePage").getAsString()).isEqualTo("https://squeezewell.invalid/");
    assertThat(account(it).get("name").getAsString()).isEqualTo("Trainee 7");
    assertThat(it.getAsJsonObject("verb").get("id").getAsString())
        .isEqualTo("http://adlnet.gov/expapi/verbs/completed");
    assertThat(it.getAsJsonObject("object").get("id").getAsString())
        .isEqualTo("https://squeezewell.invalid/xapi/activities/aha-2025/adult/pulse-no-breathing");
    JsonObject result = it.getAsJsonObject("result");
    assertThat(result.get("success").getAsBoolean()).isTrue();
    assertThat(result.get("completion").getAsBoolean()).isTrue();
    assertThat(result.get("duration").getAsString()).isEqualTo("PT120S");
    assertThat(result.has("score")).isFalse();
    assertThat(it.has("version")).isFalse();
    JsonObject mean =
        result
            .getAsJsonObject("extensions")
            .getAsJsonObject("https://squeezewell.invalid/xapi/metrics/interval.meanSeconds");
    // 20 breaths at 0, 6, ... 114 s: 19 intervals of 6 s.
    assertThat(mean.get("value").getAsDouble()).isEqualTo(6);
    assertThat(mean.get("unit").getAsString()).isEqualTo("s");
    assertThat(mean.get("observations").getAsInt()).isEqualTo(19);
    assertThat(it.toString()).contains(Caution.TEXT).contains("American Heart Association");
  }

  @Test
  void aRhythmThatWasNotHeldIsNoSuccess() {
    JsonObject result = only(Reports.steady(2)).getAsJsonObject("result");
    assertThat(result.get("success").getAsBoolean()).isFalse();
  }

  @Test
  void whatWasNotDecidedIsNeitherSuccessNorFailure() {
    Session whole = Reports.steady(6);
    // Only the first half minute: too short for the rule, and not completed.
    Session cut = new Session(whole.header(), whole.events().subList(0, 10), whole.notes());
    JsonObject it = only(cut);
    assertThat(XapiRules.faults(it)).isEmpty();
    assertThat(it.getAsJsonObject("result").has("success")).isFalse();
    assertThat(it.getAsJsonObject("result").get("completion").getAsBoolean()).isFalse();
    assertThat(it.getAsJsonObject("verb").get("id").getAsString())
        .isEqualTo("http://adlnet.gov/expapi/verbs/attempted");
  }

  @Test
  void aChangedRhythmHasAStatementForEachPartThatPointsToTheWhole() {
    Session session = Reports.changing();
    JsonArray all = statements(session, XapiAccount.unsaid());
    int parts = Reviewer.review(session).parts().size();
    assertThat(parts).isEqualTo(2);
    assertThat(all).hasSize(1 + parts);
    Set<String> ids = new HashSet<>();
    for (JsonElement statement : all) {
      assertThat(XapiRules.faults(statement.getAsJsonObject())).isEmpty();
      ids.add(statement.getAsJsonObject().get("id").getAsString());
    }
    assertThat(ids).hasSize(1 + parts);
    JsonObject second = all.get(2).getAsJsonObject();
    assertThat(second.get("timestamp").getAsString()).isEqualTo("2026-01-31T12:00:30.000Z");
    assertThat(second.getAsJsonObject("context").getAsJsonObject("statement").get("id"))
        .isEqualTo(all.get(0).getAsJsonObject().get("id"));
    assertThat(second.getAsJsonObject("object").get("id").getAsString())
        .endsWith("/arrest-no-advanced-airway");
  }

  @Test
  void theSamePracticeHasTheSameIdentifierAndAnotherHasAnother() {
    String first = id(Reports.steady(6), XapiAccount.unsaid());
    assertThat(id(Reports.steady(6), XapiAccount.unsaid())).isEqualTo(first);
    assertThat(id(Reports.steady(5.9), XapiAccount.unsaid())).isNotEqualTo(first);
    assertThat(id(Reports.steady(SessionHeader.Origin.LIVE, "Trainee 8"), XapiAccount.unsaid()))
        .isNotEqualTo(first);
    assertThat(id(Reports.steady(6), new XapiAccount("https://centre.example/", "7")))
        .isNotEqualTo(first);
  }

  @Test
  void nobodyGetsTheRecordOfAnUnnamedTrainee() {
    JsonObject it = only(Reports.steady(SessionHeader.Origin.EVENT_LIST, ""));
    assertThat(XapiRules.faults(it)).isEmpty();
    assertThat(account(it).get("name").getAsString()).startsWith("unnamed-");
    // When a list of events was made is not known.
    assertThat(it.has("timestamp")).isFalse();
  }

  @Test
  void aVirtualTraineeHasNoLearningRecord() {
    Session session = Reports.steady(SessionHeader.Origin.VIRTUAL, "");
    assertThatThrownBy(() -> statements(session, XapiAccount.unsaid()))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(ReportKind.of(session)).doesNotContain(ReportKind.STATEMENTS);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "https://centre.example/",
        "http://lms.centre.example:8080/x/%C3%A9?y=1#z",
        "https://centre.example"
      })
  void aHomePageIsAnAddress(String address) {
    assertThat(XapiAccount.isHome(address)).isTrue();
    assertThat(java.net.URI.create(address).isAbsolute()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "centre.example",
        "javascript:alert(1)",
        "https://",
        "https://a b/",
        "https://user@centre.example/",
        "https://centre.example/\"x",
        "https://centre.example/%zz",
        "https://-a.example/"
      })
  void whatIsNoAddressIsRefused(String address) {
    assertThat(XapiAccount.isHome(address)).isFalse();
  }

  private static void refused(String fault, Consumer<JsonObject> spoil) {
    JsonObject statement = published();
    spoil.accept(statement);
    assertThat(XapiRules.faults(statement))
        .isNotEmpty()
        .allSatisfy(found -> assertThat(found).contains(fault));
  }

  private static JsonObject published() {
    return JsonParser.parseString(PUBLISHED).getAsJsonObject();
  }

  private static JsonObject account(JsonObject statement) {
    return statement.getAsJsonObject("actor").getAsJsonObject("account");
  }

  private static String id(Session session, XapiAccount account) {
    return statements(session, account).get(0).getAsJsonObject().get("id").getAsString();
  }

  private static JsonObject only(Session session) {
    JsonArray all = statements(session, XapiAccount.unsaid());
    assertThat(all).hasSize(1);
    return all.get(0).getAsJsonObject();
  }

  private static JsonArray statements(Session session, XapiAccount account) {
    return JsonParser.parseString(XapiJson.of(session, Reviewer.review(session), account))
        .getAsJsonArray();
  }
}
