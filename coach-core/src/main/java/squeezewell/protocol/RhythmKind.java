package squeezewell.protocol;

/** The words for the kinds of rhythm in protocol files. */
enum RhythmKind {
  STEADY_BREATHS("steady-breaths"),
  CONTINUOUS_COMPRESSIONS("continuous-compressions"),
  COMPRESSION_CYCLE("compression-cycle");

  private final String id;

  RhythmKind(String id) {
    this.id = id;
  }

  String id() {
    return id;
  }

  static RhythmKind of(Rhythm rhythm) {
    if (rhythm instanceof Rhythm.SteadyBreaths) {
      return STEADY_BREATHS;
    }
    return rhythm instanceof Rhythm.ContinuousCompressions
        ? CONTINUOUS_COMPRESSIONS
        : COMPRESSION_CYCLE;
  }
}
