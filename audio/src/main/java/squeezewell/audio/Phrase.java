package squeezewell.audio;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.CheckKind;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
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
  PULSE_CHECK_SOON,
  CHECK_THE_PULSE,
  PULSE_CHECK_OVERDUE,
  RHYTHM_CHECK_SOON,
  CHECK_THE_RHYTHM,
  RHYTHM_CHECK_OVERDUE,
  CHECK_SOON,
  HEART_RATE,
  SWITCH_COMPRESSORS_SOON,
  RHYTHM_CHECK_SWITCH,
  SWITCH_COMPRESSORS,
  SQUEEZE_NOW,
  COMPRESS_NOW,
  COMPRESS_WITHOUT_PAUSING,
  BREATHS_ONLY,
  WATCH_BREATHING,
  FIVE_SECONDS_LEFT,
  STOP_SOON,
  STOP_AND_SQUEEZE,
  STOP_AND_COMPRESS,
  STOP_SUCTION,
  ONE_MINUTE,
  FINISHED;

  private static final List<Phrase> NUMBERS =
      List.of(ONE, TWO, THREE, FOUR, FIVE, SIX, SEVEN, EIGHT, NINE, TEN);
  private static final long FIVE_SECONDS = 5_000_000_000L;

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
   * What is said for a reminder or a change, in words that fit what is done for the patient: three
   * at most, and for a newborn so short that they end between two breaths. A time is named only if
   * the limits in force really have it.
   *
   * @param cue any cue
   * @param inForce what is in force when it is given
   * @return empty for a cue without words
   */
  static Optional<Phrase> reminder(Cue cue, ActiveGuidance inForce) {
    return Optional.ofNullable(
        switch (cue.kind()) {
          case RHYTHM_CHANGED -> changeTo(inForce.guidance().rhythm());
          case WATCH -> WATCH_BREATHING;
          case NO_RATE -> BREATHS_ONLY;
          case PULSE_CHECK_SOON, PULSE_CHECK_DUE -> check(cue, inForce);
          case PULSE_CHECK_LIMIT -> goOn(inForce);
          case SUCTION_SOON ->
              inForce.limits().suctionNotice().nanos() == FIVE_SECONDS
                  ? FIVE_SECONDS_LEFT
                  : STOP_SOON;
          case SUCTION_LIMIT ->
              inForce.check() == CheckKind.HEART_RATE ? goOn(inForce) : stop(inForce);
          case LAST_MINUTE -> ONE_MINUTE;
          case SESSION_END -> FINISHED;
          case SQUEEZE, RELEASE, COUNT, COMPRESS, PULSE_CHECK_SECOND, PULSE_CHECK_ENOUGH -> null;
        });
  }

  private static Phrase goOn(ActiveGuidance inForce) {
    return switch (inForce.care()) {
      case BREATHE, BREATHE_NO_RATE -> SQUEEZE_NOW;
      // Where somebody compresses through suction, it is the breaths that waited.
      case COMPRESS -> inForce.compressing() ? SQUEEZE_NOW : COMPRESS_NOW;
      case WATCH -> WATCH_BREATHING;
    };
  }

  private static Phrase stop(ActiveGuidance inForce) {
    return switch (goOn(inForce)) {
      case SQUEEZE_NOW -> STOP_AND_SQUEEZE;
      case COMPRESS_NOW -> STOP_AND_COMPRESS;
      default -> STOP_SUCTION;
    };
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
    int when = cue.kind() == CueKind.PULSE_CHECK_SOON ? 0 : cue.count() > 1 ? 2 : 1;
    List<Phrase> aheadDueAndLate =
        inForce.changesCompressors()
            ? List.of(SWITCH_COMPRESSORS_SOON, RHYTHM_CHECK_SWITCH, SWITCH_COMPRESSORS)
            : switch (inForce.check()) {
              case PULSE -> List.of(PULSE_CHECK_SOON, CHECK_THE_PULSE, PULSE_CHECK_OVERDUE);
              case RHYTHM -> List.of(RHYTHM_CHECK_SOON, CHECK_THE_RHYTHM, RHYTHM_CHECK_OVERDUE);
              case HEART_RATE -> List.of(CHECK_SOON, HEART_RATE, HEART_RATE);
            };
    return aheadDueAndLate.get(when);
  }
}
