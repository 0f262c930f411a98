package squeezewell;

/** Entry point of the runnable jar. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {}
}
