package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.PatientGroup;
import squeezewell.protocol.Protocol;
import squeezewell.protocol.Situation;
import squeezewell.report.SideBySide;

class LibraryValuesTest {
  private static final List<Protocol> EDITIONS = GuidelineLibrary.editions();
  private static final SideBySide ADULT =
      SideBySide.of(
          EDITIONS, new SideBySide.Choice(PatientGroup.ADULT, Situation.PULSE_NO_BREATHING, 0));

  private static SideBySide.Entry entry(String value, String edition) {
    return ADULT.values().stream()
        .filter(v -> v.name().equals(value))
        .flatMap(v -> v.entries().stream())
        .filter(e -> Phrases.edition(e.protocol()).startsWith(edition))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void whatChangedBetweenTwoEditionsIsSaid() {
    // American Heart Association: one breath every 5 to 6 s in 2015, every 6 s from 2020 on, as
    // course texts report both.
    assertThat(entry("One breath every", "AHA 2015").value()).isEqualTo("5 to 6 s");
    assertThat(entry("One breath every", "AHA 2020").value()).isEqualTo("6 s");
    assertThat(entry("One breath every", "AHA 2020").change())
        .isEqualTo("Changed: 5 to 6 s in 2015");
    assertThat(entry("One breath every", "AHA 2025").change()).isEmpty();
  }

  @Test
  void anotherOrganisationIsNoEarlierEdition() {
    assertThat(entry("One breath every", "ERC 2021").change()).isEmpty();
  }

  @Test
  void whatIsNotConfirmedOrOurOwnIsMarked() {
    assertThat(entry("One breath every", "ERC 2021").source().line()).endsWith("from memory");
    assertThat(entry("In range", "AHA 2020").source().line()).endsWith("our own choice");
  }

  @Test
  void everyChoiceHasValuesAndEveryValueItsSource() {
    for (SideBySide.Choice choice : SideBySide.choices(EDITIONS)) {
      SideBySide view = SideBySide.of(EDITIONS, choice);
      assertThat(view.values()).as(choice.toString()).hasSizeGreaterThanOrEqualTo(4);
      assertThat(view.values()).allSatisfy(v -> assertThat(v.entries()).isNotEmpty());
      assertThat(view.values())
          .flatExtracting(SideBySide.Value::entries)
          .allSatisfy(e -> assertThat(e.source().line()).isNotBlank());
    }
  }
}
