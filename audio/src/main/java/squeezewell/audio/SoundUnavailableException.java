package squeezewell.audio;

/** No sound device can be opened. */
public final class SoundUnavailableException extends Exception {
  private static final long serialVersionUID = 1;

  public SoundUnavailableException(String message, Throwable cause) {
    super(message, cause);
  }
}
