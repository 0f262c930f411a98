package squeezewell.audio;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import squeezewell.cue.ActiveGuidance;
import squeezewell.cue.Cue;
import squeezewell.cue.CueKind;
import squeezewell.protocol.BreathPlan;
import squeezewell.protocol.Rhythm;

/**
 * Which sounds belong to which cue, at one frame rate. All but the swell are made when the bank is
 * made, so that nothing is computed while sound plays. Not thread-safe.
 */
final class SoundBank {
  /** The words of a reminder wait for its chime. */
  private static final double WORDS_AFTER_SECONDS = 0.55;

  /** Those of a change wait for the plan's lead and a tick, which lasts 0.07 s. */
  private static final double CHANGE_WORDS_AFTER_SECONDS = 0.15;

  /** How long the sound of a release can be heard. */
  private static final double RELEASE_SECONDS = 0.4;

  /** With spoken counts a faint tone marks the instant, since a word has no sharp start. */
  private static final double MARK_SHARE = 0.5;

  private final int rate;
  private final float[] fall;
  private final float[] count;
  private final float[] leadIn;
  private final float[] tick;
  private final float[] chime;
  private final float[] call;
  private final float[] note;
  private final float[] close;
  private final float[] knock;
  private final float[] lowKnock;
  private final float[] tap;
  private final Map<Phrase, float[]> phrases = new EnumMap<>(Phrase.class);
  private final Map<Long, float[]> swells = new HashMap<>();

  /**
   * Makes all sounds.
   *
   * @param rate frames a second, 22,050 or more
   */
  SoundBank(int rate) {
    this.rate = rate;
    this.fall = Tones.fall(rate);
    this.count = Tones.count(rate, false);
    this.leadIn = Tones.count(rate, true);
    this.tick = Tones.tick(rate);
    this.chime = Tones.chime(rate);
    this.call = Tones.call(rate);
    this.note = Tones.note(rate);
    this.close = Tones.close(rate);
    this.knock = Tones.knock(rate);
    this.lowKnock = Tones.lowKnock(rate);
    this.tap = Tones.tap(rate);
    for (Phrase phrase : Phrase.values()) {
      phrases.put(phrase, phrase.samples(rate));
    }
  }

  int rate() {
    return rate;
  }

  /**
   * What something sounds like.
   *
   * @param sounding a prompt, or what was done
   * @param style how counts are given
   * @return in no particular order; empty if it is silent
   */
  List<Layer> of(Sounding sounding, CountStyle style) {
    if (sounding instanceof Sounding.Prompt prompt) {
      List<Layer> layers = ofPrompt(prompt, style);
      return prompt.words()
          ? layers
          : layers.stream().filter(l -> l.kind() != SoundKind.VOICE).toList();
    }
    if (!(sounding instanceof Sounding.Deed deed)) {
      return List.of();
    }
    float[] done =
        switch (deed.act()) {
          case SQUEEZED -> knock;
          case LET_GO -> lowKnock;
          case COMPRESSED -> tap;
        };
    return List.of(Layer.of(SoundKind.DONE, done));
  }

  private List<Layer> ofPrompt(Sounding.Prompt prompt, CountStyle style) {
    Cue cue = prompt.cue();
    ActiveGuidance inForce = prompt.inForce();
    return switch (cue.kind()) {
      case SQUEEZE -> squeeze(prompt.swellNanos(), style);
      case RELEASE -> List.of(Layer.of(SoundKind.RELEASE, fall));
      case COUNT -> count(cue.count(), cue.leadIn() ? leadIn : count, style);
      case PULSE_CHECK_SECOND -> count(cue.count(), count, style);
      case COMPRESS -> List.of(Layer.of(SoundKind.COMPRESSION, tick));
      case PULSE_CHECK_SOON, SUCTION_SOON, LAST_MINUTE -> reminder(chime, cue, inForce);
      case PULSE_CHECK_DUE, PULSE_CHECK_LIMIT, SUCTION_LIMIT -> reminder(call, cue, inForce);
      case PULSE_CHECK_ENOUGH -> reminder(note, cue, inForce);
      case SESSION_END -> reminder(close, cue, inForce);
      case RHYTHM_CHANGED, WATCH, NO_RATE -> change(cue, inForce);
    };
  }

  /** How long a squeeze of a rhythm is, nanoseconds. */
  static long squeezeNanos(Rhythm rhythm) {
    return rhythm instanceof Rhythm.CompressionCycle cycle
        ? cycle.inspirationNanos()
        : rhythm.steadyBreaths().map(BreathPlan::inspirationNanos).orElse(0L);
  }

  /** The swell of a squeeze. */
  float[] swell(long lengthNanos) {
    return swells.computeIfAbsent(lengthNanos, nanos -> Tones.swell(rate, nanos / 1e9));
  }

  /** A spoken prompt. */
  float[] words(Phrase phrase) {
    return phrases.get(phrase);
  }

  private List<Layer> squeeze(long lengthNanos, CountStyle style) {
    Layer swell = Layer.of(SoundKind.SQUEEZE, swell(lengthNanos));
    return style == CountStyle.SPOKEN
        ? List.of(swell, Layer.of(SoundKind.VOICE, words(Phrase.SQUEEZE)))
        : List.of(swell);
  }

  private List<Layer> count(int number, float[] tone, CountStyle style) {
    Optional<Phrase> word = Phrase.number(number);
    if (style == CountStyle.SILENT) {
      return List.of();
    }
    if (style == CountStyle.SOUND || word.isEmpty()) {
      return List.of(Layer.of(SoundKind.COUNT, tone));
    }
    return List.of(
        new Layer(SoundKind.COUNT, tone, 0, MARK_SHARE),
        Layer.of(SoundKind.VOICE, words(word.get())));
  }

  private List<Layer> reminder(float[] tone, Cue cue, ActiveGuidance inForce) {
    Layer sound = Layer.of(SoundKind.REMINDER, tone);
    int after = (int) Math.round(WORDS_AFTER_SECONDS * rate);
    return Phrase.reminder(cue, inForce)
        .map(p -> List.of(sound, new Layer(SoundKind.VOICE, words(p), after, 1)))
        .orElse(List.of(sound));
  }

  /**
   * A change has no sound of its own: the first sound of the new rhythm must stand free. The words
   * wait until that is over, the tick of a compression or the whole of a breath.
   */
  private List<Layer> change(Cue cue, ActiveGuidance inForce) {
    Rhythm rhythm = inForce.guidance().rhythm();
    boolean breaths = cue.kind() == CueKind.RHYTHM_CHANGED && rhythm.compressions().isEmpty();
    double wait =
        CHANGE_WORDS_AFTER_SECONDS + (breaths ? squeezeNanos(rhythm) / 1e9 + RELEASE_SECONDS : 0);
    int after = (int) Math.round(wait * rate);
    return Phrase.reminder(cue, inForce)
        .map(p -> List.of(new Layer(SoundKind.VOICE, words(p), after, 1)))
        .orElse(List.of());
  }
}
