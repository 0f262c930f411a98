package squeezewell.report;

import squeezewell.words.Wording;

/** What must be said wherever results are shown. */
public final class Caution {
  private static final Wording WORDS = Wording.beside(Caution.class);

  public static final String LINE_1 = WORDS.say("caution.1");
  public static final String LINE_2 = WORDS.say("caution.2");
  public static final String LINE_3 = WORDS.say("caution.3");

  /** The whole caution in one line. */
  public static final String TEXT = LINE_1 + " " + LINE_2 + " " + LINE_3;

  private Caution() {}
}
