package squeezewell.audio;

/**
 * Our own sounds at full volume. All peaks lie below 0.75 of full scale, all frequencies were
 * chosen by us within one friendly chord (C, E, G), well away from the patterns of clinical alarms:
 * no sharp harmonics, no fast repeated bursts. Squeeze and release carry overtones, so that at
 * least half of their energy lies above 600 Hz, where a small loudspeaker in a noisy room is heard.
 * Pure.
 */
final class Tones {
  private static final double C3 = 130.81;
  private static final double G3 = 196.00;
  private static final double C4 = 261.63;
  private static final double G4 = 392.00;
  private static final double B4 = 493.88;
  private static final double C5 = 523.25;
  private static final double E5 = 659.26;
  private static final double G5 = 783.99;

  /** The swell is silent this long before the squeeze ends, so that the release stands free. */
  static final double SWELL_GAP_SECONDS = 0.04;

  private static final double SHORTEST_SWELL_SECONDS = 0.1;

  private static final double[] OVERTONES = {0.2, 0.2, 0.34, 0.26};

  private Tones() {}

  /**
   * The squeeze: rises in pitch and loudness to its end.
   *
   * @param rate frames a second
   * @param seconds length of the squeeze
   */
  static float[] swell(int rate, double seconds) {
    double length = Math.max(SHORTEST_SWELL_SECONDS, seconds - SWELL_GAP_SECONDS);
    double octaves = Math.log(G4 / C4);
    return new Wave(rate, length)
        .add(
            0,
            t -> C4 * Math.exp(octaves * t / length),
            t -> {
              double rise = Math.sin(Math.PI / 2 * t / length);
              return 0.20 * Math.exp(-t / 0.015) + 0.10 + 0.45 * rise * rise;
            },
            OVERTONES)
        .endingOver(Math.min(0.08, length / 3));
  }

  /** The release: falls in pitch and dies away. */
  static float[] fall(int rate) {
    return new Wave(rate, 0.42)
        .add(
            0,
            t -> C4 + (G4 - C4) * Math.exp(-t / 0.12),
            t -> 0.55 * Math.exp(-t / 0.13),
            OVERTONES)
        .endingOver(0.08);
  }

  /** A count: short and soft; one that leads in to the next squeeze is higher. */
  static float[] count(int rate, boolean leadIn) {
    double pitch = leadIn ? B4 : G4;
    return new Wave(rate, 0.09)
        .add(0, t -> pitch, t -> (leadIn ? 0.70 : 0.55) * Math.exp(-t / 0.024), 0.75, 0.25)
        .endingOver(0.02);
  }

  /** A chest compression: a dry tick. */
  static float[] tick(int rate) {
    return new Wave(rate, 0.07)
        .add(0, t -> 620, t -> 0.55 * Math.exp(-t / 0.010), 0.75, 0.25)
        .endingOver(0.02);
  }

  /** Something comes up: two rising notes. */
  static float[] chime(int rate) {
    return notes(rate, 0.20, C5, G5);
  }

  /** Something is due or has reached its limit: three rising notes. */
  static float[] call(int rate) {
    return notes(rate, 0.16, C5, E5, G5);
  }

  /** Enough time has passed: one note. */
  static float[] note(int rate) {
    return notes(rate, 0.20, E5);
  }

  /** The end: three falling notes. */
  static float[] close(int rate) {
    return notes(rate, 0.28, G5, E5, C5);
  }

  /** In a replay: the bag was squeezed. Low and wooden, where the prompts sing. */
  static float[] knock(int rate) {
    return new Wave(rate, 0.16)
        .add(0, t -> G3, t -> 0.55 * Math.exp(-t / 0.030), 0.5, 0.25, 0.15, 0.1)
        .endingOver(0.04);
  }

  /** In a replay: the bag was let go. */
  static float[] lowKnock(int rate) {
    return new Wave(rate, 0.16)
        .add(0, t -> C3, t -> 0.45 * Math.exp(-t / 0.030), 0.4, 0.3, 0.2, 0.1)
        .endingOver(0.04);
  }

  /** In a replay: the chest was compressed. */
  static float[] tap(int rate) {
    return new Wave(rate, 0.06)
        .add(0, t -> G3, t -> 0.40 * Math.exp(-t / 0.010), 0.4, 0.3, 0.3)
        .endingOver(0.02);
  }

  private static float[] notes(int rate, double apartSeconds, double... pitches) {
    Wave wave = new Wave(rate, apartSeconds * (pitches.length - 1) + 0.9);
    for (int i = 0; i < pitches.length; i++) {
      double pitch = pitches[i];
      // Only the first note marks an instant; the others come in softly.
      double attack = i == 0 ? 0 : 0.012;
      wave.add(
          i * apartSeconds,
          t -> pitch,
          t -> 0.30 * Math.exp(-t / 0.22) * (t >= attack ? 1 : softly(t / attack)),
          0.9,
          0.1);
    }
    return wave.endingOver(0.15);
  }

  private static double softly(double part) {
    return 0.5 - 0.5 * Math.cos(Math.PI * part);
  }
}
