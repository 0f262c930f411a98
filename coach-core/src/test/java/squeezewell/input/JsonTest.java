package squeezewell.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JsonTest {
  private static JsonValue read(String text) throws BadInputException {
    return Json.readText("a.json", text);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "{",
        "[1,]",
        "{\"a\":1,}",
        "{a:1}",
        "{'a':1}",
        "[1 2]",
        "// x\n1",
        "/* x */ 1",
        "# x\n1",
        "NaN",
        "-Infinity",
        "01",
        "1.",
        ".5",
        "+1",
        "0x1",
        "tru",
        "TRUE",
        "\"a",
        "'a'",
        "\"\t\"",
        "\"\\x\"",
        "\"\\u12\"",
        "1 2",
        "{} {}",
        "[;]",
        "{\"a\"=1}",
        ")]}'\n1"
      })
  void whatIsNotOneJsonValueIsRefused(String text) {
    // RFC 8259 allows none of these.
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(BadInputException.class)
        .hasMessageStartingWith("a.json: ")
        .hasMessageContaining("allowed");
  }

  @Test
  void nestingIsAllowedUpToTwentyFourLevels() throws Exception {
    read("[".repeat(24) + "]".repeat(24));
    assertThatThrownBy(() -> read("[".repeat(25) + "]".repeat(25)))
        .hasMessageContaining("nested more deeply than 24 levels");
  }

  @Test
  void numbersKeepEveryDigit() throws Exception {
    JsonValue value = read("{\"a\": 0.1000000000000000055511151231257827}");
    assertThat(value.number("a", BigDecimal.ZERO, BigDecimal.ONE, ""))
        .isEqualTo(new BigDecimal("0.1000000000000000055511151231257827"));
    assertThat(read("{\"a\": 9007199254740993}").integer("a", 0, Long.MAX_VALUE))
        .isEqualTo(9_007_199_254_740_993L);
    assertThat(read("{\"a\": 1e3}").integer("a", 0, 1_000)).isEqualTo(1_000);
    assertThat(read("{\"a\": 9223372036854775807}").integer("a", 0, Long.MAX_VALUE))
        .isEqualTo(Long.MAX_VALUE);
    assertThatThrownBy(() -> read("{\"a\": 9223372036854775808}").integer("a", 0, Long.MAX_VALUE))
        .isInstanceOf(BadInputException.class);
    assertThatThrownBy(() -> read("{\"a\": 1e-999}").integer("a", 0, 1))
        .hasMessageContaining("a whole number");
  }

  @Test
  void everyValueKnowsItsPlace() throws Exception {
    JsonValue value = read("{\"a\": {\"b\": [0, {\"c\": true}]}}");
    JsonValue inner = value.field("a", "").list("b", 1, "").get(1);
    assertThat(inner.path()).isEqualTo("a.b[1]");
    assertThatThrownBy(() -> inner.text("c", 9))
        .hasMessageStartingWith("a.json: a.b[1].c is true; allowed: a text of 1 to 9 characters");
    assertThatThrownBy(() -> inner.text("d", 9)).hasMessageContaining("a.b[1].d is missing");
    assertThatThrownBy(() -> value.list("a", 0, "a list"))
        .hasMessage("a.json: a is an object; allowed: a list");
    assertThatThrownBy(() -> value.field("a", "").list("b", 3, "three entries"))
        .hasMessage("a.json: a.b is 2 entries; allowed: three entries");
    assertThatThrownBy(() -> read("[]").names())
        .hasMessage("a.json: top is a list; allowed: an object, in braces");
  }

  @Test
  void textIsCheckedForItsLengthAndForControlCharacters() throws Exception {
    assertThat(read("{\"a\": \"é\"}").text("a", 1)).isEqualTo("é");
    for (String bad :
        List.of("\"\"", "\"  \"", "\"ab\"", "\"\\n\"", "\"\\u001b\"", "\"\\u009b\"", "1")) {
      JsonValue value = read("{\"a\": " + bad + "}");
      assertThatThrownBy(() -> value.text("a", 1)).hasMessageContaining("a text of 1 to 1");
    }
    assertThat(read("{\"a\": \"\\n\"}").freeText("a", 1)).isEqualTo("\n");
    assertThat(read("{}").freeText("a", 1)).isEmpty();
    assertThatThrownBy(() -> read("{\"a\": \"ab\"}").freeText("a", 1))
        .hasMessageContaining("a text of at most 1");
    assertThatThrownBy(() -> read("{\"a\": []}").freeText("a", 1))
        .hasMessageContaining("a is a list");
  }

  @Test
  void nullCountsAsMissing() throws Exception {
    JsonValue value = read("{\"a\": null}");
    assertThat(value.has("a")).isFalse();
    assertThat(value.flagOr("a", true)).isTrue();
    assertThat(value.textOr("a", 5, "x")).isEqualTo("x");
    assertThatThrownBy(() -> value.field("a", "b")).hasMessageContaining("a is missing");
  }

  @Test
  void aFaultInOneLineOfAFileIsToldWithItsColumnOnly() {
    assertThatThrownBy(() -> Json.readText("a.jsonl: line 3", "{\"n\": }"))
        .hasMessageContaining("a.jsonl: line 3: not well-formed JSON at column ")
        .hasMessageNotContaining("line 1");
    assertThatThrownBy(() -> Json.readText("a.json", "{\n\"n\": }"))
        .hasMessageContaining("not well-formed JSON at line 2 column ");
  }

  @Test
  void fieldsThatNobodyAskedForAreNamedWithTheNearestThatWas() throws BadInputException {
    JsonValue value =
        read(
            "{\"titel\": 1, \"list\": [{\"alpha\": 1, \"beta\": 2}, {\"c\": 3}], \"more\":"
                + " {\"depth\": 4}, \"other\": {\"e\": 5}, \"late\": null}");
    assertThat(value.unknown()).as("nobody looked into it").isEmpty();
    assertThat(value.textOr("title", 9, "none")).isEqualTo("none");
    assertThat(value.list("list", 1, "").get(0).has("alpha")).isTrue();
    value.field("more", "").allow(List.of("width"));
    assertThat(value.flagOr("late", true)).isTrue();
    assertThat(value.unknown())
        .extracting(u -> u.value().path() + u.question())
        .containsExactly("titel; did you mean title?", "other", "list[0].beta", "more.depth");
    assertThat(value.unknown().get(0).known()).containsExactly("late", "list", "more", "title");
  }

  @Test
  void soManyUnknownFieldsAreNamedAndNoMore() throws BadInputException {
    StringBuilder text = new StringBuilder("{\"a\": 1");
    for (int i = 0; i <= Faults.MOST; i++) {
      text.append(", \"x").append(i).append("\": 1");
    }
    JsonValue value = read(text + "}");
    assertThat(value.has("a")).isTrue();
    assertThat(value.unknown()).hasSize(Faults.MOST);
  }
}
