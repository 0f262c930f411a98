package squeezewell.audio;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
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
  RHYTHM_CHECK_IN_TEN,
  RHYTHM_CHECK_SOON,
  CHECK_THE_RHYTHM,
  RHYTHM_CHECK_OVERDUE,
  HEART_RATE_CHECK_IN_TEN,
  HEART_RATE_CHECK_SOON,
  CHECK_THE_HEART_RATE,
  HEART_RATE_CHECK_OVERDUE,
  CHANGE_COMPRESSORS_SOON,
  CHECK_RHYTHM_CHANGE_COMPRESSORS,
  CHANGE_COMPRESSORS_NOW,
  TEN_SECONDS_SQUEEZE,
  TEN_SECONDS_COMPRESS,
  TEN_SECONDS_WATCH,
  SQUEEZE_NOW,
  COMPRESS_NOW,
  COMPRESS_WITHOUT_PAUSING,
  BREATHS_ONLY,
  BREATHS_ONLY_NO_RATE,
  WATCH_THE_BREATHING,
  FIVE_SECONDS_OF_SUCTION,
  SUCTION_NEARLY_OVER,
  STOP_SUCTION,
  STOP_SUCTION_COMPRESS,
  STOP_SUCTION_WATCH,
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

  /**
   * Its sound.
   *
   * @param rate frames a second
   * @throws IllegalStateException if the program's own file is damaged
   */
  float[] samples(int rate) {
    String resource = "voice/" + file() + ".wav";
    try (InputStream stream =
        Objects.requireNonNull(Phrase.class.getResourceAsStream(resource), resource)) {
      return Resampler.convert(WavReader.read(stream), rate);
    } catch (IOException e) {
      throw new IllegalStateException("the spoken prompt " + resource + " is damaged", e);
    }
  }

  /** A number; empty if it is not among the recorded ones. */
  static Optional<Phrase> number(int number) {
    return number >= 1 && number <= NUMBERS.size()
        ? Optional.of(NUMBERS.get(number - 1))
        : Optional.empty();
  }

  /**
   * What is said for a reminder or a change, in words that fit what is done for the patient. A time
   * is named only if the limits in force really have it.
   *
   * @param cue any cue
   * @param inForce what is in force when it is given
   * @return empty for a cue without words
   */
  static Optional<Phrase> reminder(Cue cue, ActiveGuidance inForce) {
    Limits limits = inForce.limits();
    return Optional.ofNullable(
        switch (cue.kind()) {
          case RHYTHM_CHANGED -> changeTo(inForce.guidance().rhythm());
          case WATCH -> WATCH_THE_BREATHING;
          case NO_RATE -> BREATHS_ONLY_NO_RATE;
          case PULSE_CHECK_SOON, PULSE_CHECK_DUE -> check(cue, inForce);
          case PULSE_CHECK_LIMIT -> {
            boolean ten = cue.count() == 1 && limits.pulseCheckLongest().nanos() == TEN_SECONDS;
            yield switch (inForce.care()) {
              case BREATHE, BREATHE_NO_RATE -> ten ? TEN_SECONDS_SQUEEZE : SQUEEZE_NOW;
              case COMPRESS -> ten ? TEN_SECONDS_COMPRESS : COMPRESS_NOW;
              case WATCH -> ten ? TEN_SECONDS_WATCH : WATCH_THE_BREATHING;
            };
          }
          case SUCTION_SOON ->
              limits.suctionNotice().nanos() == FIVE_SECONDS
                  ? FIVE_SECONDS_OF_SUCTION
                  : SUCTION_NEARLY_OVER;
          case SUCTION_LIMIT ->
              switch (inForce.care()) {
                case BREATHE, BREATHE_NO_RATE -> STOP_SUCTION;
                // Where somebody compresses meanwhile, it is the breaths that waited.
                case COMPRESS -> inForce.compressing() ? STOP_SUCTION : STOP_SUCTION_COMPRESS;
                case WATCH -> STOP_SUCTION_WATCH;
              };
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

  private static Phrase check(Cue cue, ActiveGuidance inForce) {
    boolean soon = cue.kind() == CueKind.PULSE_CHECK_SOON;
    boolean overdue = !soon && cue.count() > 1;
    boolean inTen = soon && inForce.limits().pulseCheckNotice().nanos() == TEN_SECONDS;
    if (inForce.changesCompressors()) {
      return when(
          soon,
          overdue,
          CHANGE_COMPRESSORS_SOON,
          CHECK_RHYTHM_CHANGE_COMPRESSORS,
          CHANGE_COMPRESSORS_NOW);
    }
    return switch (inForce.check()) {
      case PULSE ->
          when(
              soon,
              overdue,
              inTen ? PULSE_CHECK_IN_TEN : PULSE_CHECK_SOON,
              CHECK_THE_PULSE,
              PULSE_CHECK_OVERDUE);
      case RHYTHM ->
          when(
              soon,
              overdue,
              inTen ? RHYTHM_CHECK_IN_TEN : RHYTHM_CHECK_SOON,
              CHECK_THE_RHYTHM,
              RHYTHM_CHECK_OVERDUE);
      case HEART_RATE ->
          when(
              soon,
              overdue,
              inTen ? HEART_RATE_CHECK_IN_TEN : HEART_RATE_CHECK_SOON,
              CHECK_THE_HEART_RATE,
              HEART_RATE_CHECK_OVERDUE);
    };
  }

  private static Phrase when(boolean soon, boolean overdue, Phrase ahead, Phrase due, Phrase late) {
    if (soon) {
      return ahead;
    }
    return overdue ? late : due;
  }
}
