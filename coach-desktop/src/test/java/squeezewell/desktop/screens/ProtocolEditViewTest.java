package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;
import squeezewell.desktop.parts.Choice;
import squeezewell.protocol.GuidelineLibrary;
import squeezewell.protocol.ProtocolDetail;
import squeezewell.protocol.ProtocolDraft;
import squeezewell.protocol.ProtocolValue;

class ProtocolEditViewTest {
  private static ProtocolDraft copy() {
    return ProtocolDraft.copyOf(
        Practices.protocol("aha-2025"),
        GuidelineLibrary.baseOf(Practices.protocol("aha-2025")),
        Set.of("aha-2025"),
        2026);
  }

  private static ProtocolDraft ready() {
    return copy().with(ProtocolDetail.ORGANISATION, "A service");
  }

  @Test
  void aFieldShowsItsUnitItsRangeAndTheGuidelinesValue() {
    ProtocolEditView.Field field = ProtocolEditView.field(copy(), 0, ProtocolValue.BREATH_INTERVAL);
    assertThat(field.label()).isEqualTo("Breath every");
    assertThat(field.unit()).isEqualTo("seconds");
    assertThat(field.hint()).isEqualTo("Allowed: 0.5 to 60 s.");
    // AHA 2025, adult basic life support: one breath every 6 s.
    assertThat(field.guideline()).isEqualTo("As in AHA 2025: 6 s");
    assertThat(field.fault()).isEmpty();
    assertThat(field.source()).isEmpty();
    assertThat(field.spokenName()).isEqualTo("Breath every, in seconds");
    assertThat(field.spoken()).isEqualTo("Allowed: 0.5 to 60 s. As in AHA 2025: 6 s");
  }

  @Test
  void aValueOfOnesOwnStandsBesideTheGuidelinesWithItsSource() {
    ProtocolDraft draft = ready().with(0, ProtocolValue.BREATH_INTERVAL, "5");
    ProtocolEditView.Field field = ProtocolEditView.field(draft, 0, ProtocolValue.BREATH_INTERVAL);
    assertThat(field.guideline()).isEqualTo("Differs from AHA 2025: 6 s");
    assertThat(field.source()).startsWith("American Heart Association, ").contains("(2025)");
  }

  @Test
  void whatTheProgramChoseIsNotLaidAtTheGuidelinesDoor() {
    ProtocolEditView.Field same = ProtocolEditView.field(ready(), 0, ProtocolValue.BREATH_HIGH);
    assertThat(same.guideline()).isEqualTo("This program's own choice: 7 s");
    ProtocolDraft draft = ready().with(0, ProtocolValue.BREATH_HIGH, "8");
    assertThat(ProtocolEditView.field(draft, 0, ProtocolValue.BREATH_HIGH).guideline())
        .isEqualTo("Differs from this program's own choice: 7 s");
  }

  @Test
  void aFaultIsToldInWordsInPlaceOfTheHint() {
    ProtocolDraft draft = ready().with(0, ProtocolValue.BREATH_INTERVAL, "<html>600");
    ProtocolEditView.Field field = ProtocolEditView.field(draft, 0, ProtocolValue.BREATH_INTERVAL);
    assertThat(field.fault())
        .isEqualTo(
            "Not good yet. Allowed: a number from 0.5 to 60 s, with a point and at most 3"
                + " decimals.");
    assertThat(field.spoken()).startsWith("Not good yet. ").doesNotContain("<html>");
    assertThat(field.guideline()).isEqualTo("As in AHA 2025: 6 s");
  }

  @Test
  void itCanBeSavedOnceNothingIsWrongAndSaysWhyNot() {
    assertThat(ProtocolEditView.canSave(copy())).isFalse();
    assertThat(ProtocolEditView.status(copy(), true))
        .containsExactly(
            "It can't be saved yet: one field is not good yet.",
            "Your organisation. Allowed: a text of 1 to 120 characters, without control"
                + " characters.");
    assertThat(ProtocolEditView.canSave(ready())).isTrue();
    assertThat(ProtocolEditView.status(ready(), true)).isEmpty();
    assertThat(ProtocolEditView.status(ready(), false))
        .containsExactly("Nothing to save: all of this stands in the file.");
  }

  @Test
  void manyFaultsAreCountedAndTheFirstAreNamed() {
    ProtocolDraft draft = copy();
    for (ProtocolValue value : draft.values(2)) {
      draft = draft.with(2, value, "no");
    }
    assertThat(ProtocolEditView.status(draft, true))
        .hasSize(6)
        .first()
        .isEqualTo("It can't be saved yet: 16 fields are not good yet.");
    assertThat(ProtocolEditView.status(draft, true))
        .contains("And 12 more.")
        .anyMatch(line -> line.startsWith("Adult, no pulse, no advanced airway, "));
  }

  @Test
  void anApprovalOlderThanTheValuesIsToBeRenewed() {
    ProtocolDraft approved =
        ready()
            .with(ProtocolDetail.APPROVED_BY, "A director")
            .with(ProtocolDetail.APPROVED_ON, "2026-01-31")
            .saved();
    assertThat(ProtocolEditView.status(approved, true)).isEmpty();
    assertThat(ProtocolEditView.status(approved.with(0, ProtocolValue.GAP_LONGEST, "9"), true))
        .containsExactly(
            "The approval was given before these values were changed. Renew it or clear it.");
  }

  @Test
  void everyPatientAndSituationCanBeChosen() {
    assertThat(ProtocolEditView.entries(copy()))
        .hasSameSizeAs(Practices.protocol("aha-2025").guidance())
        .extracting(Choice::toString)
        .contains("Adult, pulse, not breathing", "Child, no pulse, no advanced airway, 2 rescuers");
  }
}
