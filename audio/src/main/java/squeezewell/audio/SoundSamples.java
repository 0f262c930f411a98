package squeezewell.audio;

/** Single sounds, so that a person can hear each kind while setting its volume. Pure. */
public final class SoundSamples {
  private static final long PREVIEW_SQUEEZE_NANOS = 1_000_000_000L;

  /** One of the lines that are rendered ahead. */
  private static final String EXAMINER_PREVIEW = "There is a pulse. The chest does not move.";

  private SoundSamples() {}

  /**
   * One sound of a kind as it would be heard in a practice.
   *
   * @param kind which kind
   * @param levels its volume; a muted kind gives silence
   * @param rate frames a second, 44,100 or 48,000
   * @return mono samples, -1 to 1
   */
  public static float[] render(SoundKind kind, SoundLevels levels, int rate) {
    float[] sound =
        switch (kind) {
          case SQUEEZE -> Tones.swell(rate, PREVIEW_SQUEEZE_NANOS / 1e9);
          case RELEASE -> Tones.fall(rate);
          case COUNT -> Tones.count(rate, false);
          case COMPRESSION -> Tones.tick(rate);
          case REMINDER -> Tones.chime(rate);
          case VOICE -> Phrase.CHECK_THE_PULSE.samples(rate);
          case EXAMINER -> Resampler.convert(PreparedLines.find(EXAMINER_PREVIEW).get(), rate);
          case DONE -> Tones.knock(rate);
        };
    float gain = (float) levels.gain(kind);
    for (int i = 0; i < sound.length; i++) {
      sound[i] *= gain;
    }
    return sound;
  }
}
