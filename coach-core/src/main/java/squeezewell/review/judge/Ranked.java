package squeezewell.review.judge;

/**
 * A finding and its place in the order of harm.
 *
 * @param harm smaller is worse
 * @param finding what to tell
 */
public record Ranked(int harm, Finding finding) {
  // The order of harm (our own choice): too many breaths first, since that is both the commonest
  // and the most harmful mistake in bagging; then breaths that do not come,
  // and compressions; then the checks; then
  // how single breaths are given; then how they follow the prompts.
  static final int NOTHING = 0;
  static final int COMPRESSIONS_MISSING = 1;
  static final int TOO_FAST = 10;
  static final int SPED_UP = 11;
  static final int UNPROMPTED_FAST = 12;
  static final int SLOWED_DOWN = 20;
  static final int SKIPS = 21;
  static final int LONG_GAP = 22;
  static final int COMPRESS_TOO_SLOW = 23;
  static final int PAUSE_LONG = 24;
  static final int COMPRESS_TOO_FAST = 25;
  static final int BREATHS_MISSING = 26;
  static final int CHANGE_SLOW = 27;
  static final int TOO_SLOW = 30;
  static final int UNPROMPTED_SLOW = 31;
  static final int CHECK_MISSED = 40;
  static final int CHECK_LATE = 41;
  static final int CHECK_LONG = 42;
  static final int CHECK_SHORT = 43;
  static final int SUCTION_LONG = 50;
  static final int SQUEEZE = 60;
  static final int MISSED_PROMPTS = 70;
  static final int UNEVEN = 71;
  static final int EXTRA_BREATHS = 72;
  static final int WRONG_NUMBER = 73;
  static final int TEMPO_OFF = 74;
  static final int LATE_BREATH = 75;
  static final int AGAINST_PROMPT = 80;
  static final int OWN_TEMPO = 90;
  static final int WENT_WELL = 100;

  static Ranked fault(int harm, String code, String title, String text) {
    return new Ranked(harm, new Finding(code, Finding.Severity.FAULT, title, text));
  }

  static Ranked advice(int harm, String code, String title, String text) {
    return new Ranked(harm, new Finding(code, Finding.Severity.ADVICE, title, text));
  }

  static Ranked good(int order, String code, String title, String text) {
    return new Ranked(WENT_WELL + order, new Finding(code, Finding.Severity.GOOD, title, text));
  }

  boolean isCode(String code) {
    return finding.code().equals(code);
  }

  boolean is(Finding.Severity severity) {
    return finding.severity() == severity;
  }
}
