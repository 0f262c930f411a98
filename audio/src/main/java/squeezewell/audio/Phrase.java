package squeezewell.audio;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import squeezewell.cue.Cue;
import squeezewell.protocol.Limits;

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
  TEN_SECONDS_SQUEEZE,
  SQUEEZE_NOW,
  FIVE_SECONDS_OF_SUCTION,
  SUCTION_NEARLY_OVER,
  STOP_SUCTION,
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
   * What is said for a reminder. A time is named only if the limits in force really have it.
   *
   * @param cue any cue
   * @param limits the limits in force
   * @return empty for a cue that is no reminder, or one without words
   */
  static Optional<Phrase> reminder(Cue cue, Limits limits) {
    return Optional.ofNullable(
        switch (cue.kind()) {
          case PULSE_CHECK_SOON ->
              limits.pulseCheckNotice().nanos() == TEN_SECONDS
                  ? PULSE_CHECK_IN_TEN
                  : PULSE_CHECK_SOON;
          case PULSE_CHECK_DUE -> cue.count() > 1 ? PULSE_CHECK_OVERDUE : CHECK_THE_PULSE;
          case PULSE_CHECK_LIMIT ->
              cue.count() == 1 && limits.pulseCheckLongest().nanos() == TEN_SECONDS
                  ? TEN_SECONDS_SQUEEZE
                  : SQUEEZE_NOW;
          case SUCTION_SOON ->
              limits.suctionNotice().nanos() == FIVE_SECONDS
                  ? FIVE_SECONDS_OF_SUCTION
                  : SUCTION_NEARLY_OVER;
          case SUCTION_LIMIT -> STOP_SUCTION;
          case LAST_MINUTE -> ONE_MINUTE_LEFT;
          case SESSION_END -> PRACTICE_OVER;
          case SQUEEZE, RELEASE, COUNT, COMPRESS, PULSE_CHECK_SECOND, PULSE_CHECK_ENOUGH -> null;
        });
  }
}
