package squeezewell.review.say;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import squeezewell.protocol.PatientChange;
import squeezewell.review.SessionBuilder;

class ReviewJsonTest {
  @Test
  void theAgreedKeysCarryTheFigures() throws IOException {
    JsonObject json =
        json(
            SessionBuilder.ofSeconds(174)
                .breathsEvery(6, 6, 114)
                .pulseCheck(116, 124)
                .suction(150.5, 170.5));
    assertThat(json.getAsJsonObject("breaths").get("count").getAsInt()).isEqualTo(19);
    assertThat(number(json, "rate", "overallPerMinute")).isEqualTo("10");
    assertThat(number(json, "interval", "count")).isEqualTo("18");
    assertThat(number(json, "interval", "meanSeconds")).isEqualTo("6");
    assertThat(number(json, "interval", "medianSeconds")).isEqualTo("6");
    assertThat(number(json, "interval", "sdSeconds")).isEqualTo("0");
    assertThat(number(json, "interval", "inRangeFraction")).isEqualTo("1");
    // 60 s less the 8 s of the check and the 20 s of the suction
    assertThat(number(json, "gap", "longestSeconds")).isEqualTo("32");
    assertThat(number(json, "gap", "longestNetSeconds")).isEqualTo("32");
    assertThat(json.getAsJsonObject("prompts").keySet())
        .contains("given", "met", "missed", "extra");
    assertThat(json.getAsJsonObject("asynchrony").keySet()).contains("meanSeconds", "sdSeconds");
    assertThat(json.getAsJsonObject("inspiration").get("meanSeconds").isJsonNull()).isTrue();
    JsonObject check = json.getAsJsonArray("pulseChecks").get(0).getAsJsonObject();
    assertThat(check.get("dueSeconds").getAsString()).isEqualTo("120");
    assertThat(check.get("startedSeconds").getAsString()).isEqualTo("116");
    assertThat(check.get("lengthSeconds").getAsString()).isEqualTo("8");
    JsonObject suction = json.getAsJsonArray("suctions").get(0).getAsJsonObject();
    assertThat(suction.get("startedSeconds").getAsString()).isEqualTo("150.5");
    assertThat(suction.get("lengthSeconds").getAsString()).isEqualTo("20");
    assertThat(suction.get("withinLimit").getAsBoolean()).isFalse();
    assertThat(json.getAsJsonObject("drift").keySet()).contains("percentPerMinute");
    JsonObject finding = json.getAsJsonArray("findings").get(0).getAsJsonObject();
    assertThat(finding.get("code").getAsString()).isEqualTo("long-gap");
    assertThat(finding.get("severity").getAsString()).isEqualTo("fault");
    assertThat(finding.get("text").getAsString()).isNotEmpty();
  }

  @Test
  void partsAndWhatWasFoundStandInIt() throws IOException {
    // 19 intervals of 6 s before the change at 120 s, none judged after it.
    JsonObject json =
        json(
            SessionBuilder.ofSeconds(180)
                .breathsEvery(6, 0.2, 114.2)
                .finding(60, PatientChange.GAG)
                .finding(120, PatientChange.PULSE_LOST)
                .compressions(100, 120.5, 0.5));
    assertThat(json.getAsJsonArray("found").toString())
        .isEqualTo(
            "[{\"atSeconds\":60,\"finding\":\"gag\",\"label\":\"Gags on the oral airway\","
                + "\"undone\":false,\"changedRhythm\":false},"
                + "{\"atSeconds\":120,\"finding\":\"pulse-lost\",\"label\":\"No pulse\","
                + "\"undone\":false,\"changedRhythm\":true}]");
    assertThat(json.getAsJsonArray("parts")).hasSize(2);
    JsonObject first = json.getAsJsonArray("parts").get(0).getAsJsonObject();
    JsonObject second = json.getAsJsonArray("parts").get(1).getAsJsonObject();
    assertThat(first.get("fromSeconds").getAsString()).isEqualTo("0");
    assertThat(first.get("toSeconds").getAsString()).isEqualTo("120");
    assertThat(first.get("situation").getAsString()).isEqualTo("pulse, not breathing");
    assertThat(number(first, "interval", "count")).isEqualTo("19");
    assertThat(number(first, "asked", "intervalSeconds")).isEqualTo("6");
    assertThat(first.getAsJsonObject("verdict").get("outcome").getAsString()).isEqualTo("held");
    assertThat(second.getAsJsonObject("rate").get("overallPerMinute").isJsonNull()).isTrue();
    assertThat(number(second, "compressions", "count")).isEqualTo("100");
    assertThat(second.getAsJsonObject("verdict").get("outcome").getAsString())
        .isEqualTo("not-judged");
    // In the whole, what rests on ranges is known, since one part has one.
    assertThat(number(json, "interval", "excessBreaths")).isEqualTo("0");
    assertThat(number(json, "interval", "meanSeconds")).isEqualTo("6");
    JsonObject plain = json(SessionBuilder.ofSeconds(60));
    assertThat(plain.getAsJsonArray("parts")).isEmpty();
    assertThat(plain.getAsJsonArray("found")).isEmpty();
  }

  @Test
  void whatCantBeComputedIsNull() throws IOException {
    JsonObject json = json(SessionBuilder.ofSeconds(130));
    assertThat(json.getAsJsonObject("breaths").get("count").getAsInt()).isZero();
    assertThat(json.getAsJsonObject("rate").get("overallPerMinute").isJsonNull()).isTrue();
    for (String key : new String[] {"meanSeconds", "medianSeconds", "sdSeconds"}) {
      assertThat(json.getAsJsonObject("interval").get(key).isJsonNull()).isTrue();
    }
    assertThat(json.getAsJsonObject("interval").get("inRangeFraction").isJsonNull()).isTrue();
    assertThat(json.getAsJsonObject("asynchrony").get("meanSeconds").isJsonNull()).isTrue();
    assertThat(json.getAsJsonObject("drift").get("percentPerMinute").isJsonNull()).isTrue();
    JsonObject check = json.getAsJsonArray("pulseChecks").get(0).getAsJsonObject();
    assertThat(check.get("startedSeconds").isJsonNull()).isTrue();
    assertThat(check.get("lengthSeconds").isJsonNull()).isTrue();
  }

  @Test
  void secondsArePlainDecimals() throws IOException {
    StringBuilder text = new StringBuilder();
    ReviewJson.write(
        SessionBuilder.ofSeconds(2_000).breathsEvery(6.0000001, 0.0000001, 1_200).review(), text);
    assertThat(text.toString()).contains("\"atSeconds\": 0.0000001,").doesNotContain("E-", "E+");
  }

  private static JsonObject json(SessionBuilder session) throws IOException {
    StringBuilder text = new StringBuilder();
    ReviewJson.write(session.review(), text);
    return JsonParser.parseString(text.toString()).getAsJsonObject();
  }

  private static String number(JsonObject json, String object, String key) {
    return json.getAsJsonObject(object).get(key).getAsString();
  }
}
