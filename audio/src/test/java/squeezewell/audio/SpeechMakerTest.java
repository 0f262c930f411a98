package squeezewell.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The real synthesiser, in this process. */
@Timeout(120)
class SpeechMakerTest {
  private static final SpeechMaker MAKER = new JavaSoundSpeech();

  @AfterAll
  static void close() {
    MAKER.close();
  }

  /** English is spoken at 120 to 200 words a minute; ten words take 3 to 5 s. */
  @Test
  void aLineOfAnOwnStationIsSpokenAtAPersonsPace() throws SpeechException {
    SpokenLine line = MAKER.speak("The driver of the lorry has a pulse of about fifty.");
    assertThat(line.rate()).isEqualTo(16_000);
    assertThat(line.nanos() / 1e9).isBetween(2.2, 5.5);
  }

  @Test
  void itIsAsLoudAsTheLinesThatAreRenderedAhead() throws SpeechException {
    SpokenLine own = MAKER.speak("There is a pulse. The chest does not move.");
    SpokenLine built = PreparedLines.find("There is a pulse. The chest does not move.").get();
    assertThat(20 * Math.log10(level(own) / level(built))).as("decibels").isCloseTo(0, within(3.0));
  }

  /** A whisper of noise would pass for speech by length alone: voices lie below 4 kHz. */
  @Test
  void mostOfItsEnergyLiesWhereAVoiceIs() throws SpeechException {
    SpokenLine line = MAKER.speak("There is no pulse and no breathing now.");
    double voice = 0;
    double all = 0;
    for (int hertz = 50; hertz < 8_000; hertz += 50) {
      double power = power(line, hertz);
      all += power;
      voice += hertz >= 80 && hertz <= 4_000 ? power : 0;
    }
    assertThat(voice / all).isGreaterThan(0.9);
  }

  @Test
  void hostileTextIsHarmless() {
    List<String> texts =
        List.of(
            SpeakableTextTest.text('a', 1_000_000),
            SpeakableTextTest.text('9', SpeakableText.LONGEST),
            SpeakableTextTest.text('x', SpeakableText.LONGEST),
            "-w /tmp/should-not-be-there.wav",
            "--help",
            "\"; rm -rf ~; echo \"",
            "<speak><audio src=\"http://example.invalid/a.wav\"/>one</speak>",
            "[[ { } ]] %n %s \\u0000",
            "\u0000\u0001\u202e\u2066evil\u2069",
            "1/0 -0 1e999 99:99 $1,000,000,000,000.99 31.02.2026",
            "..,,;;::??!!''--//%%&&++",
            "' ' ' - - - . a",
            "\ud800");
    for (String text : texts) {
      Optional<String> speakable = SpeakableText.of(text);
      if (speakable.isPresent()) {
        try {
          SpokenLine line = MAKER.speak(speakable.get());
          assertThat(line.nanos()).isLessThanOrEqualTo(SpeechMaker.MOST_SECONDS * 1_000_000_000L);
        } catch (SpeechException e) {
          assertThat(e).hasMessageContaining("");
        }
      }
    }
    assertThat(java.nio.file.Path.of("/tmp/should-not-be-there.wav")).doesNotExist();
  }

  @Test
  void whatWouldTakeTooLongIsNotSpoken() {
    String digits = SpeakableTextTest.text('9', SpeakableText.LONGEST);
    assertThatThrownBy(() -> MAKER.speak(digits)).isInstanceOf(SpeechException.class);
  }

  @Test
  void theLongestLineOfAStationIsSpoken() throws SpeechException {
    StringBuilder text = new StringBuilder();
    while (text.length() < 280) {
      text.append("The chest rises. ");
    }
    assertThat(MAKER.speak(text.toString().trim()).nanos()).isGreaterThan(10_000_000_000L);
  }

  private static double level(SpokenLine line) {
    double sum = 0;
    for (int i = 0; i < line.frames(); i++) {
      sum += line.at(i) * line.at(i);
    }
    return Math.sqrt(sum / line.frames());
  }

  /** Goertzel's method, over the first second. */
  private static double power(SpokenLine line, int hertz) {
    double turn = 2 * Math.cos(2 * Math.PI * hertz / line.rate());
    double last = 0;
    double before = 0;
    for (int i = 0; i < line.rate(); i++) {
      double next = line.at(i) + turn * last - before;
      before = last;
      last = next;
    }
    return last * last + before * before - turn * last * before;
  }
}
