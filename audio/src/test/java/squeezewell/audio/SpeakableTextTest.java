package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class SpeakableTextTest {
  @Test
  void aSentenceStaysAsItIs() {
    assertThat(SpeakableText.of("There is a pulse, about 110. The chest doesn't move."))
        .contains("There is a pulse, about 110. The chest doesn't move.");
  }

  @Test
  void markupControlsAndSignsOfDirectionBecomeSpaces() {
    assertThat(SpeakableText.of("<speak><break time=\"9s\"/>no pulse</speak>"))
        .contains("speak break time 9s / no pulse /speak");
    assertThat(SpeakableText.of("[[h@l'oU]] \u0000\u0007\u001b[31mred\u202e txet\u2066"))
        .contains("h l'oU 31mred txet");
    assertThat(SpeakableText.of("a`rm -rf $HOME`; \"b\" | c > d"))
        .contains("a rm -rf HOME ; b c d");
  }

  @Test
  void printedSignsAreTakenInTheirPlainForm() {
    assertThat(SpeakableText.of("SpO₂ isn’t known – wait…")).contains("SpO2 isn't known , wait...");
  }

  @Test
  void whatIsNotEnglishIsNotRead() {
    assertThat(SpeakableText.of("Kein Puls, der Brustkorb hebt sich nicht. Schön.")).isEmpty();
    assertThat(SpeakableText.of("脈なし")).isEmpty();
    assertThat(SpeakableText.of("Нет пульса")).isEmpty();
  }

  @Test
  void nothingAndTooMuchAreNotRead() {
    assertThat(SpeakableText.of("")).isEmpty();
    assertThat(SpeakableText.of(" -- ... \u200b")).isEmpty();
    assertThat(SpeakableText.of(text('a', SpeakableText.LONGEST))).isPresent();
    assertThat(SpeakableText.of(text('a', SpeakableText.LONGEST + 1))).isEmpty();
    assertThat(SpeakableText.of(text('a', 1_000_000))).isEmpty();
    // One sign that stands for eighteen letters.
    assertThat(SpeakableText.of(text('\ufdfa', SpeakableText.LONGEST))).isEmpty();
  }

  @Property
  void whateverIsWrittenOnlyPlainSignsAreSpoken(@ForAll String any) {
    SpeakableText.of(any)
        .ifPresent(
            spoken ->
                assertThat(spoken)
                    .matches("[A-Za-z0-9.,;:?!'/%&+ -]+")
                    .hasSizeLessThanOrEqualTo(SpeakableText.LONGEST));
  }

  static String text(char of, int length) {
    return String.valueOf(of).repeat(length);
  }
}
