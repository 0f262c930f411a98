package squeezewell.cli;

/** What was asked for is sound, but it could not be done. The message is for people. */
public final class CommandFailedException extends Exception {
  private static final long serialVersionUID = 1L;

  public CommandFailedException(String message) {
    super(message);
  }
}
