package squeezewell.audio;

/** An open device has stopped playing. */
final class SoundLostException extends Exception {
  private static final long serialVersionUID = 1;

  SoundLostException(String message) {
    super(message);
  }
}
