package squeezewell.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import squeezewell.review.Reviewer;
import squeezewell.session.Session;

class ReportKindTest {
  @ParameterizedTest
  @CsvSource({
    "a.html, PICTURE, PAGE",
    "A.PNG, PAGE, PICTURE",
    "a-breaths.csv, FIGURES, BREATHS",
    "a.csv, BREATHS, BREATHS",
    "a.csv, PAGE, FIGURES",
    "a-xapi.json, PAGE, STATEMENTS",
    "a.json, PAGE, STATEMENTS",
  })
  void aNameAsksForItsKind(String name, ReportKind chosen, ReportKind kind) {
    assertThat(ReportKind.named(name, chosen)).contains(kind);
  }

  @Test
  void aNameWithoutAKnownEndingAsksForNone() {
    assertThat(ReportKind.named("a", ReportKind.PAGE)).isEmpty();
    assertThat(ReportKind.named("a.pdf", ReportKind.PAGE)).isEqualTo(Optional.empty());
  }

  @Test
  void anotherKindChangesTheEndingOnly() {
    assertThat(ReportKind.FIGURES.rename("a.b.html")).isEqualTo("a.b-figures.csv");
    assertThat(ReportKind.PAGE.rename("a-figures.csv")).isEqualTo("a.html");
    assertThat(ReportKind.PICTURE.rename("a")).isEqualTo("a.png");
  }

  @Test
  void eachKindHoldsWhatItSays() {
    Session session = Reports.steady(6);
    for (ReportKind kind : ReportKind.of(session)) {
      byte[] content = kind.content(session, Reviewer.review(session), Reports.ZONE);
      String start = new String(content, 0, 20, StandardCharsets.ISO_8859_1);
      assertThat(start)
          .startsWith(
              switch (kind) {
                case PAGE -> "<!DOCTYPE html>";
                case PICTURE -> "\u0089PNG";
                case FIGURES -> "part,name,value";
                case BREATHS -> "at_s,end_s";
                case STATEMENTS -> "[\n  {\n    \"id\"";
              });
    }
  }
}
