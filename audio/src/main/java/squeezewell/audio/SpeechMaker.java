package squeezewell.audio;

/** Makes words into sound, on this machine alone. One thread at a time uses it. */
public interface SpeechMaker extends AutoCloseable {
  /**
   * Speaks. May take seconds the first time.
   *
   * @param text what {@link SpeakableText} made of it
   * @throws SpeechException if nothing comes of it, or more than {@link #MOST_SECONDS}
   */
  SpokenLine speak(String text) throws SpeechException;

  /** Gives back what it holds. */
  @Override
  void close();

  /** No line of an examiner is as long as this (our own choice). */
  int MOST_SECONDS = 30;
}
