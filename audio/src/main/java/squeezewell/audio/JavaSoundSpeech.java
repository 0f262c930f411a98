package squeezewell.audio;

import com.sun.speech.freetts.Voice;
import com.sun.speech.freetts.en.us.cmu_us_kal.KevinVoiceDirectory;

/**
 * Speaks with FreeTTS, an English synthesiser in plain Java, inside this process: no other program,
 * no file, no network. Its name says that it touches Java Sound: the synthesiser hands its sound
 * over in those terms. No device is opened. It loads its voice when it first speaks.
 */
public final class JavaSoundSpeech implements SpeechMaker {
  private static final String VOICE = "kevin16";

  private Voice voice;

  @Override
  public SpokenLine speak(String text) throws SpeechException {
    if (voice == null) {
      voice = load();
    }
    JavaSoundSpeechSink sink = new JavaSoundSpeechSink(MOST_SECONDS);
    voice.setAudioPlayer(sink);
    if (!voice.speak(text) || !sink.complete()) {
      throw new SpeechException("could not speak " + text.length() + " characters");
    }
    return EvenLoudness.of(sink.samples(), sink.rate());
  }

  @Override
  public void close() {
    if (voice != null) {
      voice.deallocate();
      voice = null;
    }
  }

  /** By its own directory: the usual way would look for voices beside the program. */
  private static Voice load() throws SpeechException {
    for (Voice each : new KevinVoiceDirectory().getVoices()) {
      if (each.getName().equals(VOICE)) {
        each.allocate();
        return each;
      }
    }
    throw new SpeechException("the voice " + VOICE + " is missing");
  }
}
