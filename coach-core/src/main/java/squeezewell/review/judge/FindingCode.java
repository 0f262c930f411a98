package squeezewell.review.judge;

import static squeezewell.review.judge.Severity.ADVICE;
import static squeezewell.review.judge.Severity.FAULT;
import static squeezewell.review.judge.Severity.GOOD;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * Everything that may be told of a practice. The order of harm is our own choice: too many breaths
 * first, since that is both the commonest and the most harmful mistake in bagging; then breaths
 * that do not come, and compressions; then the checks; then how single breaths are given; then how
 * they follow the prompts.
 */
public enum FindingCode {
  NO_BREATHS("no-breaths", 2, Theme.BREATHS, FAULT),
  TOO_FEW_BREATHS("too-few-breaths", 0, Theme.RECORD, ADVICE),
  NOTHING_TO_JUDGE("nothing-to-judge", 0, Theme.RECORD, ADVICE),
  SLIP("slip", 0, Theme.RECORD, ADVICE),
  COMPRESSIONS_MISSING("compressions-missing", 1, Theme.COMPRESSIONS, FAULT, ADVICE),
  TOO_FAST("too-fast", 10, Theme.BREATHS, FAULT),
  DOUBLE_BREATHS("double-breaths", 9, Theme.BREATHS, FAULT, ADVICE),
  FAST_BURST("fast-burst", 11, Theme.BREATHS, FAULT, ADVICE),
  SPED_UP("sped-up", 12, Theme.BREATHS, FAULT, ADVICE),
  UNPROMPTED_FAST("unprompted-fast", 13, Theme.BREATHS, FAULT),
  SLOWED_DOWN("slowed-down", 20, Theme.BREATHS, FAULT, ADVICE),
  LONG_GAP("long-gap", 22, Theme.BREATHS, FAULT),
  COMPRESS_TOO_SLOW("compress-too-slow", 23, Theme.COMPRESSIONS, FAULT),
  PAUSE_TOO_LONG("pause-too-long", 24, Theme.COMPRESSIONS, FAULT),
  COMPRESS_TOO_FAST("compress-too-fast", 25, Theme.COMPRESSIONS, FAULT),
  BREATHS_MISSING("breaths-missing", 26, Theme.BREATHS, FAULT),
  COMPRESSIONS_LATE("compressions-late", 27, Theme.COMPRESSIONS, FAULT),
  COMPRESSIONS_WENT_ON("compressions-went-on", 27, Theme.COMPRESSIONS, ADVICE),
  TOO_SLOW("too-slow", 30, Theme.BREATHS, FAULT),
  UNPROMPTED_SLOW("unprompted-slow", 31, Theme.BREATHS, FAULT),
  PULSE_CHECK_MISSED("pulse-check-missed", 40, Theme.CHECKS, FAULT),
  PULSE_CHECK_LATE("pulse-check-late", 41, Theme.CHECKS, FAULT),
  PULSE_CHECK_EARLY("pulse-check-early", 41, Theme.CHECKS, ADVICE),
  PULSE_CHECK_LONG("pulse-check-long", 42, Theme.CHECKS, FAULT),
  PULSE_CHECK_SHORT("pulse-check-short", 43, Theme.CHECKS, FAULT),
  SUCTION_LONG("suction-long", 50, Theme.CHECKS, FAULT),
  SHORT_SQUEEZE("short-squeeze", 60, Theme.SQUEEZES, FAULT),
  LONG_SQUEEZE("long-squeeze", 60, Theme.SQUEEZES, FAULT),
  SQUEEZES_UNEVEN("squeezes-uneven", 60, Theme.SQUEEZES, FAULT, ADVICE),
  MISSED_PROMPTS("missed-prompts", 70, Theme.BREATHS, FAULT, ADVICE),
  RHYTHM_UNEVEN("rhythm-uneven", 71, Theme.BREATHS, FAULT),
  UNPROMPTED_UNEVEN("unprompted-uneven", 71, Theme.BREATHS, FAULT),
  RHYTHM_NOT_HELD("rhythm-not-held", 71, Theme.RULE, ADVICE),
  RHYTHM_UNDECIDED("rhythm-undecided", 71, Theme.RULE, ADVICE),
  TEST_INTERRUPTED("test-interrupted", 71, Theme.RULE, ADVICE),
  EXTRA_BREATHS("extra-breaths", 72, Theme.PROMPTS, ADVICE),
  BREATHS_NOT_NEEDED("breaths-not-needed", 72, Theme.PROMPTS, ADVICE),
  WRONG_NUMBER("wrong-number", 33, Theme.COMPRESSIONS, FAULT, ADVICE),
  A_LITTLE_FAST("a-little-fast", 28, Theme.BREATHS, FAULT, ADVICE),
  A_LITTLE_SLOW("a-little-slow", 32, Theme.BREATHS, FAULT, ADVICE),
  LATE_BREATH("late-breath", 75, Theme.BREATHS, ADVICE),
  ANTICIPATES("anticipates", 80, Theme.PROMPTS, ADVICE),
  LATE("late", 80, Theme.PROMPTS, ADVICE),
  OWN_TEMPO("own-tempo", 90, Theme.PROMPTS, ADVICE),
  RHYTHM_EVEN("rhythm-even", 100, Theme.BREATHS, GOOD),
  UNPROMPTED_HELD("unprompted-held", 100, Theme.BREATHS, GOOD),
  COMPRESSIONS_GOOD("compressions-good", 100, Theme.COMPRESSIONS, GOOD),
  COMPRESSIONS_AT_ONCE("compressions-at-once", 101, Theme.COMPRESSIONS, GOOD),
  PROMPTS_MET("prompts-met", 101, Theme.PROMPTS, GOOD),
  NO_LONG_GAP("no-long-gap", 102, Theme.BREATHS, GOOD),
  CHECKS_ON_TIME("checks-on-time", 103, Theme.CHECKS, GOOD),
  SQUEEZES_GOOD("squeezes-good", 104, Theme.SQUEEZES, GOOD),
  SUCTION_WITHIN_LIMIT("suction-within-limit", 105, Theme.CHECKS, GOOD);

  /** The place of missed prompts where breaths were left out one at a time. */
  static final int SKIPS = 21;

  /** The place of an uneven rhythm that is so all along. */
  static final int UNEVEN_ALL_ALONG = 21;

  /** What a finding is about. */
  public enum Theme {
    /** The breaths over time; a fault of them counts against the rhythm. */
    BREATHS,
    /** How the breaths followed the prompts. */
    PROMPTS,
    /** How single breaths were given. */
    SQUEEZES,
    COMPRESSIONS,
    /** Checks and suction. */
    CHECKS,
    /** What the rule gives. */
    RULE,
    /** Whether there is anything to judge. */
    RECORD
  }

  private final String id;
  private final int priority;
  private final Theme theme;

  @SuppressWarnings("ImmutableEnumChecker") // an immutable copy
  private final Set<Severity> severities;

  FindingCode(String id, int priority, Theme theme, Severity... severities) {
    this.id = id;
    this.priority = priority;
    this.theme = theme;
    this.severities = Collections.unmodifiableSet(EnumSet.copyOf(Arrays.asList(severities)));
  }

  /** The word for programs; stable. */
  public String id() {
    return id;
  }

  /** Its place among those of one severity; smaller is worse. */
  public int priority() {
    return priority;
  }

  /** What it is about. */
  public Theme theme() {
    return theme;
  }

  /** What it may be. */
  public Set<Severity> severities() {
    return severities;
  }

  /** Whether one breath that was not recorded can look like it. */
  boolean mayBeALostBreath() {
    return this == LONG_GAP || this == MISSED_PROMPTS;
  }

  /** What says the same, or less, of the same breaths, and need not be told beside it. */
  Set<FindingCode> silences(Severity severity) {
    boolean fault = severity == FAULT;
    return switch (this) {
      // What looks good beside them is only their by-product: who squeezes too often has no gap.
      case TOO_FAST -> off(NO_LONG_GAP);
      case DOUBLE_BREATHS -> off(NO_LONG_GAP, LATE_BREATH);
      case TOO_SLOW, RHYTHM_UNEVEN -> off(LATE_BREATH, NO_LONG_GAP);
      case FAST_BURST -> ofPrompts();
      case A_LITTLE_FAST ->
          fault ? ofPrompts(NO_LONG_GAP, UNPROMPTED_UNEVEN) : EnumSet.of(OWN_TEMPO);
      case A_LITTLE_SLOW -> fault ? ofPrompts(UNPROMPTED_UNEVEN) : EnumSet.of(OWN_TEMPO);
      case UNPROMPTED_FAST -> EnumSet.of(FAST_BURST, A_LITTLE_FAST);
      case UNPROMPTED_SLOW -> EnumSet.of(A_LITTLE_SLOW);
      case SLOWED_DOWN, SPED_UP -> fault ? off() : ofPrompts();
      case BREATHS_MISSING -> EnumSet.of(MISSED_PROMPTS);
      default -> EnumSet.noneOf(FindingCode.class);
    };
  }

  /** These, what follows the prompts, and what is told of the time without them alone. */
  private static Set<FindingCode> off(FindingCode... codes) {
    Set<FindingCode> all = ofPrompts(codes);
    all.addAll(EnumSet.of(UNPROMPTED_FAST, UNPROMPTED_SLOW, UNPROMPTED_UNEVEN));
    return all;
  }

  /** These, and what tells how breaths followed the prompts, which means little beside them. */
  private static Set<FindingCode> ofPrompts(FindingCode... codes) {
    Set<FindingCode> all =
        EnumSet.of(OWN_TEMPO, EXTRA_BREATHS, MISSED_PROMPTS, PROMPTS_MET, ANTICIPATES, LATE);
    all.addAll(Arrays.asList(codes));
    return all;
  }

  /** The same of what is told of a practice with all its parts. */
  Set<FindingCode> silencesInAll(Severity severity) {
    if (this == BREATHS_NOT_NEEDED) {
      return EnumSet.of(EXTRA_BREATHS);
    }
    if (theme == Theme.RULE) {
      return EnumSet.of(RHYTHM_EVEN, UNPROMPTED_HELD);
    }
    Set<FindingCode> silenced = EnumSet.noneOf(FindingCode.class);
    if (theme == Theme.BREATHS && severity != GOOD) {
      silenced.addAll(EnumSet.of(RHYTHM_NOT_HELD, RHYTHM_UNDECIDED));
    }
    if (theme == Theme.BREATHS && severity == FAULT) {
      silenced.add(RHYTHM_EVEN);
    }
    return silenced;
  }
}
