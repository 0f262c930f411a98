package squeezewell.protocol;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lengths of a check. 5 to 10 s: AHA, basic life support; the 2 s are our own choice. */
class CheckLengthTest {
  @DisplayName("under 2 s not made, to 5 s too short, to 10 s right, over 10 s too long")
  @ParameterizedTest
  @CsvSource({
    "0.3,NOT_MADE",
    "1.999,NOT_MADE",
    "2,TOO_SHORT",
    "4.999,TOO_SHORT",
    "5,RIGHT",
    "10,RIGHT",
    "10.001,TOO_LONG",
    "60,TOO_LONG",
  })
  void ofThePulse(double seconds, CheckLength length) {
    assertThat(judge(Situation.PULSE_NO_BREATHING, seconds)).isEqualTo(length);
  }

  @DisplayName("a rhythm check has no least length")
  @ParameterizedTest
  @CsvSource({"0.3,RIGHT", "1.9,RIGHT", "3,RIGHT", "10,RIGHT", "10.001,TOO_LONG"})
  void ofTheRhythm(double seconds, CheckLength length) {
    assertThat(judge(Situation.ARREST_NO_ADVANCED_AIRWAY, seconds)).isEqualTo(length);
    assertThat(judge(Situation.ARREST_ADVANCED_AIRWAY, seconds)).isEqualTo(length);
  }

  private static CheckLength judge(Situation situation, double seconds) {
    Guidance guidance =
        GuidelineLibrary.find("aha-2025").get().find(PatientGroup.ADULT, situation, 2).get();
    return CheckLength.judge(guidance, Math.round(seconds * 1e9));
  }
}
