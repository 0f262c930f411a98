package squeezewell.audio;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.protocol.Guidance;
import squeezewell.protocol.Limits;
import squeezewell.protocol.Rhythm;

/** The spoken prompts. Each constant has a WAV file of its name among the resources. */
enum Phrase {
  SQUEEZE,
  ONE,
  TWO,
  THREE,
  FOUR,
  FIVE,
  SIX,
  SEVEN,
  EIGHT,
  NINE,
  TEN,
  PULSE_CHECK_IN_TEN,
  PULSE_CHECK_SOON,
  CHECK_THE_PULSE,
  PULSE_CHECK_OVERDUE,
  CHANGE_COMPRESSORS_SOON,
  CHECK_RHYTHM_CHANGE_COMPRESSORS,
  CHANGE_COMPRESSORS_NOW,
  TEN_SECONDS_SQUEEZE,
  TEN_SECONDS_COMPRESS,
  SQUEEZE_NOW,
  COMPRESS_NOW,
  COMPRESS_WITHOUT_PAUSING,
  BREATHS_ONLY,
  WATCH_THE_BREATHING,
  FIVE_SECONDS_OF_SUCTION,
  SUCTION_NEARLY_OVER,
  STOP_SUCTION,
  STOP_SUCTION_COMPRESS,
  ONE_MINUTE_LEFT,
  PRACTICE_OVER;

  private static final List<Phrase> NUMBERS =
      List.of(ONE, TWO, THREE, FOUR, FIVE, SIX, SEVEN, EIGHT, NINE, TEN);
  private static final long FIVE_SECONDS = 5_000_000_000L;
  private static final long TEN_SECONDS = 10_000_000_000L;

  /** The name of its file, without ending. */
  String file() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** A number; empty if it is not among the recorded ones. */
  static Optional<Phrase> number(int number) {
    return number >= 1 && number <= NUMBERS.size()
        ? Optional.of(NUMBERS.get(number - 1))
        : Optional.empty();
  }

  /**
   * What is said for a reminder or a change. A time is named only if the limits in force really
   * have it.
   *
   * @param cue any cue
   * @param guidance the rhythm and limits in force
   * @return empty for a cue without words
   */
  static Optional<Phrase> reminder(Cue cue, Guidance guidance) {
    Limits limits = guidance.limits();
    boolean compress = guidance.rhythm().compressions().isPresent();
    return Optional.ofNullable(
        switch (cue.kind()) {
          case RHYTHM_CHANGED -> changeTo(guidance.rhythm());
          case WATCH -> WATCH_THE_BREATHING;
          case PULSE_CHECK_SOON, PULSE_CHECK_DUE -> check(cue, guidance);
          case PULSE_CHECK_LIMIT -> {
            boolean ten = cue.count() == 1 && limits.pulseCheckLongest().nanos() == TEN_SECONDS;
            if (compress) {
              yield ten ? TEN_SECONDS_COMPRESS : COMPRESS_NOW;
            }
            yield ten ? TEN_SECONDS_SQUEEZE : SQUEEZE_NOW;
          }
          case SUCTION_SOON ->
              limits.suctionNotice().nanos() == FIVE_SECONDS
                  ? FIVE_SECONDS_OF_SUCTION
                  : SUCTION_NEARLY_OVER;
          // Where somebody compresses meanwhile, it is the breaths that waited.
          case SUCTION_LIMIT ->
              compress && !guidance.compressesDuringSuction()
                  ? STOP_SUCTION_COMPRESS
                  : STOP_SUCTION;
          case LAST_MINUTE -> ONE_MINUTE_LEFT;
          case SESSION_END -> PRACTICE_OVER;
          case SQUEEZE, RELEASE, COUNT, COMPRESS, PULSE_CHECK_SECOND, PULSE_CHECK_ENOUGH -> null;
        });
  }

  private static Phrase changeTo(Rhythm rhythm) {
    if (rhythm.compressions().isEmpty()) {
      return BREATHS_ONLY;
    }
    return rhythm instanceof Rhythm.ContinuousCompressions
        ? COMPRESS_WITHOUT_PAUSING
        : COMPRESS_NOW;
  }

  private static Phrase check(Cue cue, Guidance guidance) {
    boolean soon = cue.kind() == CueKind.PULSE_CHECK_SOON;
    boolean overdue = !soon && cue.count() > 1;
    if (guidance.changesCompressorsAtChecks()) {
      if (soon) {
        return CHANGE_COMPRESSORS_SOON;
      }
      return overdue ? CHANGE_COMPRESSORS_NOW : CHECK_RHYTHM_CHANGE_COMPRESSORS;
    }
    if (soon) {
      boolean ten = guidance.limits().pulseCheckNotice().nanos() == TEN_SECONDS;
      return ten ? PULSE_CHECK_IN_TEN : PULSE_CHECK_SOON;
    }
    return overdue ? PULSE_CHECK_OVERDUE : CHECK_THE_PULSE;
  }
}
