package squeezewell.report;

/** What must be said wherever results are shown. */
public final class Caution {
  public static final String LINE_1 = "A training aid for manikins. Not a medical device.";
  public static final String LINE_2 = "Follow your local protocols and medical direction.";
  public static final String LINE_3 = "Do not use it in an emergency.";

  /** The whole caution in one line. */
  public static final String TEXT = LINE_1 + " " + LINE_2 + " " + LINE_3;

  private Caution() {}
}
