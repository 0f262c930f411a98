package squeezewell.audio;

/** Words could not be made into sound. */
public final class SpeechException extends Exception {
  private static final long serialVersionUID = 1L;

  public SpeechException(String message) {
    super(message);
  }
}
