package squeezewell.desktop.screens;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import squeezewell.equipment.ChildWeight;
import squeezewell.equipment.EquipmentLibrary;
import squeezewell.equipment.EquipmentReader;
import squeezewell.equipment.Sex;
import squeezewell.equipment.VolumeRule;
import squeezewell.protocol.AgeUnit;

class BreathViewTest {
  private static final EquipmentLibrary KIT = EquipmentReader.builtIn();

  private static VolumeRule rule(String id) {
    return KIT.volumes().stream().filter(v -> v.id().equals(id)).findFirst().orElseThrow();
  }

  private static EquipmentAnswer answer(
      BreathView.By by, String height, String age, String kilograms, String rule, String bag) {
    return new BreathView(
            by,
            height,
            Sex.MALE,
            age,
            AgeUnit.YEARS,
            ChildWeight.APLS_5,
            kilograms,
            rule(rule),
            bag)
        .answer();
  }

  @Test
  void anAdultByHeight() {
    // By hand: 50 + 0.91 x 27.6 = 75.116 kg; x 6 = 450.7, x 7 = 525.8 mL; the middle, 488, of 1600
    // is 0.305.
    EquipmentAnswer answer = answer(BreathView.By.HEIGHT, "180", "", "", "adult", "1600");
    assertThat(answer.headline()).isEqualTo("451 to 526 mL a breath");
    assertThat(answer.lines())
        .anyMatch(l -> l.startsWith("Predicted weight 75.1 kg"))
        .contains("By 6 to 7 mL for each kilogram.")
        .contains("About a third of the bag. How much comes out depends on hand and seal.")
        .anyMatch(l -> l.startsWith("The chest decides"));
    assertThat(answer.sources()).hasSize(2);
  }

  @Test
  void aChildByAgeNamesItsRuleAndThatItIsCommonPractice() {
    // Advanced Paediatric Life Support, 5th edition: 6 years, 25 kg; x 6 to 8 is 150 to 200 mL.
    EquipmentAnswer answer = answer(BreathView.By.AGE, "", "6", "", "child", "");
    assertThat(answer.headline()).isEqualTo("150 to 200 mL a breath");
    assertThat(answer.lines()).anyMatch(l -> l.contains("about 25 kg (3 x 6 + 7)"));
    assertThat(answer.lines()).noneMatch(l -> l.contains("bag"));
    assertThat(answer.sources())
        .anyMatch(s -> s.startsWith("Advanced Paediatric Life Support"))
        .anyMatch(s -> s.endsWith("common practice, no source"));
  }

  @Test
  void aNewbornsBreathIsSaidInTenths() {
    // By hand: 3.1 kg x 4 = 12.4, x 8 = 24.8 mL; the middle, 18.6, of 240 is 0.0775.
    EquipmentAnswer answer = answer(BreathView.By.WEIGHT, "", "", "3.1", "newborn", "240");
    assertThat(answer.headline()).isEqualTo("12.4 to 24.8 mL a breath");
    assertThat(answer.lines()).anyMatch(l -> l.startsWith("Less than a tenth of the bag"));
  }

  @Test
  void whatCanNotBeIsNamedWithWhatIsAllowed() {
    assertThat(answer(BreathView.By.HEIGHT, "90", "", "", "adult", "").lines())
        .containsExactly("Height is 90; allowed: a number from 150 to 230 cm");
    assertThat(answer(BreathView.By.AGE, "", "13", "", "child", "").lines().get(0))
        .startsWith("Age is 13 years; allowed: 0 to 12 whole months, or 1 to 12 whole years");
    assertThat(answer(BreathView.By.WEIGHT, "", "", "", "child", "").lines().get(0))
        .startsWith("Weight is missing");
    assertThat(answer(BreathView.By.HEIGHT, "180", "", "", "adult", "huge").good()).isFalse();
  }

  @Test
  void onlyRulesThatFitAreOffered() {
    assertThat(BreathView.rules(KIT, BreathView.By.HEIGHT))
        .extracting(VolumeRule::id)
        .containsExactly("adult", "adult-protective");
    assertThat(BreathView.rules(KIT, BreathView.By.AGE))
        .extracting(VolumeRule::id)
        .containsExactly("child");
    assertThat(BreathView.rules(KIT, BreathView.By.WEIGHT))
        .extracting(VolumeRule::id)
        .containsExactly("child", "newborn");
  }
}
